"""A strand of a stated length, or one that fills the rest, holds a whole number of its repeats."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Held, Limit, Misfit, Named, Remedy, Rule
from wellstrung.rulebook.plan import Part, Place, Role, bead_mix
from wellstrung.rulebook.remedies import asked_longer, places_of
from wellstrung.rulebook.values import Quantity, exact, product, turns
from wellstrung.rulebook.wording import in_unit_of, number, plural, spelled

STRAND_OFF = Limit(
    "strand off", 5.0, "mm", "made up by how close the beads sit, common practice, no source"
)


def check(named: Named, ask: Ask) -> Answer:
    strand = named.item
    if not named.used or not isinstance(strand, Part) or strand.kind.role is not Role.STRAND:
        return None
    if not strand.has("length"):
        return None  # counted beads give the length
    length, repeat = ask.of(strand, "length"), sum(bead_mix(strand).values())
    if not length.middle:
        return None  # the others leave nothing to fill: see `finished-length`
    repeats = product(
        f"{strand.name} repeats",
        "",
        ask.of(strand, "beads"),
        exact("beads to repeats", 1 / repeat),
        source="counting",
    )
    each = (length.middle + ask.of(strand, "between").middle) / repeats.middle
    allowed = ask.limit(STRAND_OFF).middle
    low, high = math.floor(repeats.middle), math.ceil(repeats.middle)
    off = min(repeats.middle - low, high - repeats.middle) * each
    if off <= allowed or each / 2 <= allowed:
        return Held()
    takes = "takes" if repeats.likely.high - repeats.likely.low < 1 else "takes about"
    made = {n: length.middle + (n - repeats.middle) * each for n in (low, high) if n}
    words = " or ".join(f"{n} ({_makes(strand, ask, length, made[n])})" for n in made)
    near = min(made, key=lambda n: abs(n - repeats.middle))
    return Misfit(
        says=f"`{strand.name}` ({spelled(length)}) {takes} {number(repeats.middle)} of its repeats"
        f" of {in_unit_of(each, length)}, but only whole ones can be strung",
        place=strand.place_of("length"),
        found=f"{number(repeats.middle)} repeats",
        needed=f"whole repeats: {words}",
        remedies=(
            *_whole(strand, ask, length, near, made[near]),
            Remedy(f"string {words}, or add beads between to fill the length"),
        ),
        at_most="warning",
    )


def _makes(strand: Part, ask: Ask, length: Quantity, made: float) -> str:
    """How long so many repeats are, or the piece with them where they fill its rest."""
    if not strand.fills_rest or (goal := ask.plan.goal) is None:
        return f"about {in_unit_of(made, length)}"
    more = places_of(strand, ask) * (made - length.middle)
    if inside := goal.field == "inside":
        more /= turns(ask.plan).middle
    long = in_unit_of(goal.middle + more, length)
    return f"the {ask.plan.piece} is then about {long}{' inside' if inside else ''}"


def _whole(strand: Part, ask: Ask, length: Quantity, near: int, made: float) -> Iterator[Remedy]:
    """The strand with the nearest whole repeats, or the piece as long as they make it, mm."""
    size, entry = in_unit_of(made, length), strand.node.entries["length"]
    if not strand.fills_rest:
        text = f"write `length: {size}` for {plural(near, 'repeat')}"
        yield Remedy.write(entry.node.place, size, text)
        return
    key, (*_, line, column) = entry.key.place, entry.node.place
    field, makes = f"repeats: {near}", _makes(strand, ask, length, made)
    text = f"write `{field}` in place of `length` ({makes})"
    yield Remedy.write(Place(key.file, key.line, key.column, line, column), field, text)
    for asked in asked_longer(ask, places_of(strand, ask) * (made - length.middle), round):
        yield Remedy(f"{asked.text}, for {plural(near, 'repeat')}", asked.edits)


RULE = Rule(
    name="strand-beads",
    family="length",
    subject=Named,
    check=check,
    fault="strand ends within its repeat",
    title="a strand of a stated length, or that fills the rest, holds a whole number of repeats",
    why="a long repeat cannot be cut short: the strand ends early, or in the middle of its pattern",
    limits=(STRAND_OFF,),
    sources=("counting", "5 mm are made up by how close the beads sit: common practice, no source"),
    bad="a repeat of 60 mm in a strand of 45 cm",
    good="a repeat of 60 mm in a strand of 42 cm",
    level="warning",
)
