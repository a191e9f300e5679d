"""What the stitches share: their beads, what the hand adds, rounds against length, mass, thread.

A stitch's own module has its geometry as float functions; here they become quantities of a part.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived import declared
from wellstrung.derived.bead_sizes import mean_size
from wellstrung.derived.declared import (
    by_length,
    count,
    formula,
    hand,
    product,
    written_or,
)
from wellstrung.formulas.thread import PATH_SHARE, WALKED_WORST
from wellstrung.model.beads import COLUMN, bead_mix, listed_for, rounds_listed
from wellstrung.model.item import Bead
from wellstrung.model.looks import Face
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, total
from wellstrung.quantity.value import Quantity

#: What a stitch may ask for: in words, and as the author would write it.
_ASKED = {
    "around": ("how many beads go around", "around: {count}"),
    "beads": ("of which bead it is made", "beads: reed"),
    "core_bead": ("which bead its core is of", "core_bead: reed"),
    "outer": ("which beads go into one outer loop", "outer: [sand, sand, sand]"),
}
#: What only a rope with a core of beads takes.
CORE_FIELDS = ("core_bead", "outer", "core_at_start")


def lacking(part: Part, *fields: str, count: int = 8) -> Iterator[tuple[str, Place]]:
    """What a stitch needs and the part does not say, each with an example to write.

    `count` is the number that the examples show. A part may count its beads `around` or, as some
    patterns do, `each_round`, or list one bead for each column.
    """
    for field in fields:
        counted = part.has("each_round") or listed_for(part, COLUMN)
        if not part.has(field) and not (field == "around" and counted):
            words, example = _ASKED[field]
            yield (
                f"`{part.name}` does not say {words}: write `{example.format(count=count)}`",
                part.key.place,
            )


def counts_around(
    part: Part,
    *,
    count: int,
    columns: Callable[[Part], int] | None = None,
    idle: tuple[str, ...] = ("loop",),
    fewest: int = 0,
) -> Iterator[tuple[str, Place]]:
    """What is wrong where a stitch counts beads around and is made of one mix of them.

    A ring closes with the `fewest` or more. `columns` are those around, of a stitch that takes a
    list with a bead for each column or round; `idle` are fields that say nothing about it.
    """
    yield from lacking(part, "around", "beads", count=count)
    yield from unwanted(part, idle, "only `tubular netting` takes it", "`stitch: tubular netting`")
    yield from unwanted(part, CORE_FIELDS, "only `spiral rope` takes it", "`stitch: spiral rope`")
    yield from wrong_list(part, columns) if columns else not_listed(part)
    field = around_field(part)
    if part.has(field) and around_of(part) < fewest:
        yield too_few(
            part, f"{around_of(part)} beads", part.place_of(field), so_many(field, fewest)
        )


def too_few(
    part: Part, has: str, place: Place, instead: str, *, closes: str = "ring"
) -> tuple[str, Place]:
    """The refusal of so many around that no ring closes, with what to write instead or more of."""
    says = f"`{part.name}` has {has} around, too few to close a {closes}: write {instead} or more"
    return says, place


def not_listed(part: Part) -> Iterator[tuple[str, Place]]:
    """What is wrong with a list of one bead for each column or round where a stitch takes none."""
    tubes = "tubular peyote and herringbone list a bead for each round or column"
    yield from unwanted(part, ("one_for",), tubes, "`stitch: tubular peyote`")


def wrong_list(part: Part, columns: Callable[[Part], int]) -> Iterator[tuple[str, Place]]:
    """What is wrong with a list of one bead for each column, each round or each unit."""
    if not part.has("one_for"):
        return
    each = part.text("one_for")
    named, noun = len(listed_for(part, each)), each.removeprefix("each ")
    if not named:
        yield (
            f"`{part.name}` has `one_for: {each}` and no list of beads: write one for {each}, such"
            " as `beads: [sand, sand, kelp, kelp]`",
            part.place_of("beads"),
        )
        return
    fields = ("around", "each_round") if each == COLUMN else ("rounds", "rows")
    field = next((field for field in fields if part.has(field)), "")
    if not field:
        return
    stated = part.count(field)
    woven_of = columns(part) if each == COLUMN else stated
    if woven_of < named or (each == COLUMN and woven_of > named):
        yield (
            f"`{part.name}` lists {named} beads, one for {each}, and has `{field}: {stated}`: write"
            f" `{field}: {named * stated // woven_of}`, or list a bead for each of its {noun}s",
            part.place_of(field),
        )


def unwanted(
    part: Part, fields: Iterable[str], why: str, instead: str
) -> Iterator[tuple[str, Place]]:
    """Fields that belong to another stitch, each with what to write instead."""
    for field in fields:
        if part.has(field):
            says = f"`{part.name}` has `{field}`, and {why}: take it out, or write {instead}"
            yield says, part.place_of(field)


def around_field(part: Part) -> str:
    """The field in which a part counts its beads."""
    return "each_round" if part.has("each_round") else "around"


def field_around(part: Part) -> str:
    """The field that says how many beads go around, a list of them too; empty where none does."""
    field = around_field(part)
    return field if part.has(field) else "beads" if listed_for(part, COLUMN) else ""


def so_many(field: str, *counts: int) -> str:
    """What to write for another number of beads around: a field, or a list as long."""
    if field == "beads":
        return f"a list of {' or '.join(map(str, counts))} beads"
    return " or ".join(f"`{field}: {count}`" for count in counts)


def around_of(part: Part) -> int:
    """Beads around, of a stitch that adds a bead on every column in every round."""
    listed = None if part.has(around_field(part)) else len(listed_for(part, COLUMN)) or None
    return part.count(around_field(part), default=listed)


def front(around: Callable[[Part], int]) -> Callable[[Part], Face]:
    """What is seen from the front of round work: half of the columns that go around."""
    return lambda part: Face(math.ceil(around(part) / 2))


def beads_of(part: Part) -> Iterator[tuple[Bead, float]]:
    """Each bead of a part with its share of all of them."""
    mix = bead_mix(part)
    if not mix:
        raise part.missing("beads")
    of_all = sum(mix.values())
    for name, number in mix.items():
        yield part.beads[name], number / of_all


def fattest(part: Part, ask: Quantities) -> Quantity:
    """How wide its fattest bead is: what lies against the body, or meets its neighbour."""
    sizes = [ask.of(item, "outside") for item, _ in beads_of(part)]
    return max(sizes, key=lambda size: size.middle)


def bead(what: str) -> Formula:
    """A bead's size; of a mix the mean by share, which the look of the work follows (no print)."""

    def size(part: Part, ask: Quantities) -> Quantity:
        if not (mix := bead_mix(part)):
            raise part.missing("beads")
        return mean_size(part, what, mix, ask)

    return size


def swatch(verb: str) -> str:
    """The advice to make a little of it first."""
    return f"{verb} 2 cm, measure it, write `measured: {{outside: ...}}` in {{part}}"


#: a length as it is woven, or as the plan states it
WOVEN_LENGTH = by_length("length", allowance="woven length")


def rounds_or(otherwise: Formula) -> Formula:
    """The rounds (or rows) that the plan counts or lists; else worked out."""

    def rounds(part: Part, ask: Quantities) -> Quantity:
        field = "rounds" if part.has("rounds") else "rows"
        counted = part.count(field, default=rounds_listed(part))
        return exact(f"{part.name}.rounds", counted) if counted else otherwise(part, ask)

    return rounds


def growth(rise: Formula) -> dict[str, Formula]:
    """Rise, length and rounds (or rows): whichever of the two the plan states gives the other."""
    by_length = formula(
        "rounds", "", lambda length, rise: length / rise, length="length", rise="rise"
    )
    by_rounds = product("length", "mm", "rounds", "rise")
    return {
        "rise": rise,
        "length": written_or(WOVEN_LENGTH, ("length",), otherwise=by_rounds),
        "rounds": rounds_or(by_length),
    }


def beads_by_round(each_round: Callable[[Part], float], source: str) -> Formula:
    """How many beads a part takes: so many a round (or a row)."""
    return product("beads", "", "rounds", count("each round", each_round), source=source)


def _all_beads(part: Part, ask: Quantities) -> Quantity:
    beads = ask.of(part, "beads")
    return weighed(
        part, ask, [(item, beads, share / item.shared) for item, share in beads_of(part)]
    )


#: mass of the beads, g, each by its own count a gram; thread is left out (under 2 %)
mass = written_or(declared.mass("mass"), ("measured", "mass"), otherwise=_all_beads)


def weighed(
    part: Part, ask: Quantities, counted: Iterable[tuple[Bead, Quantity, float]]
) -> Quantity:
    """Mass, g, of beads of several kinds: of each the bead, a count, and its share of the count."""
    counted = list(counted)
    one = len(counted) == 1
    each = declared.of_each((item for item, *_ in counted), "per_gram", ask)
    masses = [
        derived(
            f"{part.name}.mass" if one else f"{part.name}.mass of {item.name}",
            "g",
            lambda beads, share, per_gram: beads * share / per_gram,
            beads=beads,
            share=exact("share", share),
            per_gram=per_gram,
        )
        for (item, beads, share), per_gram in zip(counted, each, strict=True)
    ]
    return masses[0] if one else total(f"{part.name}.mass", "g", masses)


def thread(
    per_bead: Callable[..., float],
    *,
    sizes: tuple[str, ...] = ("length", "outside"),
    share: float = PATH_SHARE,
    turn: Callable[..., float] | None = None,
    each: str = "rounds",
    scan: bool = False,
    **counts: Callable[[Part], float],
) -> Formula:
    """Thread in the work, mm, without tails: counted passes a bead, times the beads.

    `per_bead` takes the bead's `sizes` (as `bead_length`) and the `counts` of the part by name;
    `share` is how far the hand may be off it, either way; `turn` gives what each of its rounds
    (or rows) takes beyond its beads, by the same sizes; `scan` as in `derived`.
    """
    args: dict[str, str | Formula] = {
        "beads": "beads",
        "share": thread_share(share),
        **{f"bead_{size}": bead(size) for size in sizes},
        **{name: count(name, of) for name, of in counts.items()},
    }
    if turn is None:

        def path(beads: float, share: float, **values: float) -> float:
            return beads * per_bead(**values) * share

        return formula("thread", "mm", path, args, scan=scan)

    def turned(turns: float, beads: float, share: float, **values: float) -> float:
        return (beads * per_bead(**values) + turns * turn(**values)) * share

    return formula("thread", "mm", turned, {**args, "turns": each}, scan=scan)


def thread_share(share: float = PATH_SHARE) -> Formula:
    """How far the hand's thread path may be off the counted passes: ± 20 % unless walked."""
    walked = share < PATH_SHARE
    held = "walked through a model of the work" if walked else "worked out for this project"
    return hand(
        "thread path",
        (1 - share, 1.0, 1 + share),
        source=f"counted passes, {held}, ± {share:.0%}".replace("%", " %"),
        cure="note the thread that 5 cm of {part} takes",
        worst=(1 - WALKED_WORST[0], 1 + WALKED_WORST[1]) if walked else None,
    )
