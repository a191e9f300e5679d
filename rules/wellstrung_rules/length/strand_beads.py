"""A strand of a stated length holds a whole number of its repeats."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Held, Limit, Misfit, Named, Remedy, Rule
from wellstrung.rulebook.plan import Part, Role, bead_mix
from wellstrung.rulebook.values import Quantity, exact, product
from wellstrung.rulebook.wording import in_unit_of, number, spelled

STRAND_OFF = Limit(
    "strand off", 5.0, "mm", "made up by how close the beads sit, common practice, no source"
)


def check(named: Named, ask: Ask) -> Answer:
    strand = named.item
    if not named.used or not isinstance(strand, Part) or strand.kind.role is not Role.STRAND:
        return None
    if not strand.has("length") or strand.fills_rest:
        return None  # counted beads give the length, and a strand that fills the rest is cut to it
    length, repeat = ask.of(strand, "length"), sum(bead_mix(strand).values())
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
    sure = repeats.likely.high - repeats.likely.low < 1
    return _misfit(strand, length, repeats, each, (low, high), sure=sure)


def _misfit(
    strand: Part,
    length: Quantity,
    repeats: Quantity,
    each: float,
    whole: tuple[int, int],
    *,
    sure: bool,
) -> Misfit:
    made = {n: length.middle + (n - repeats.middle) * each for n in whole if n}
    choices = [(n, in_unit_of(long, length)) for n, long in made.items()]
    near, size = min(choices, key=lambda choice: abs(choice[0] - repeats.middle))
    words = " or ".join(f"{n} (about {text})" for n, text in choices)
    place, takes = strand.place_of("length"), "takes" if sure else "takes about"
    return Misfit(
        says=f"`{strand.name}` ({spelled(length)}) {takes} {number(repeats.middle)} of its repeats"
        f" of {in_unit_of(each, length)}, but only whole ones can be strung",
        place=place,
        found=f"{number(repeats.middle)} repeats",
        needed=f"whole repeats: {words}",
        remedies=(
            Remedy.write(place, size, f"write `length: {size}` for {near} repeats"),
            Remedy(f"string {words}, or add beads between to fill the length"),
        ),
        at_most="warning",
    )


RULE = Rule(
    name="strand-beads",
    family="length",
    subject=Named,
    check=check,
    fault="strand ends within its repeat",
    title="a strand of a stated length holds a whole number of its repeats",
    why="a long repeat cannot be cut short: the strand ends early, or in the middle of its pattern",
    limits=(STRAND_OFF,),
    sources=("counting", "5 mm are made up by how close the beads sit: common practice, no source"),
    bad="a repeat of 60 mm in a strand of 45 cm",
    good="a repeat of 60 mm in a strand of 42 cm",
    level="warning",
)
