"""A strand of a stated length holds a whole number of its repeats."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Held, Limit, Misfit, Named, Remedy, Rule
from wellstrung.rulebook.plan import Part, Role, bead_mix
from wellstrung.rulebook.values import Quantity, derived, exact
from wellstrung.rulebook.wording import in_unit_of, number, spelled

STRAND_OFF = Limit(
    "strand off", 5.0, "mm", "made up by how close the beads sit, common practice, no source"
)


def check(named: Named, ask: Ask) -> Answer:
    strand = named.item
    if not named.used or not isinstance(strand, Part) or strand.kind.role is not Role.STRAND:
        return None
    if not strand.has("length") or strand.fills_rest:
        return None  # counted beads make their own length, and what fills the rest is cut to it
    length, repeat = ask.of(strand, "length"), sum(bead_mix(strand).values())
    repeats = derived(
        f"{strand.name} repeats",
        "",
        lambda beads, repeat: beads / repeat,
        beads=ask.of(strand, "beads"),
        repeat=exact("repeat", repeat),
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
    takes = "takes" if sure else "takes about"
    said = f"`{strand.name}` ({spelled(length)}) {takes} {number(repeats.middle)} of its repeats"
    return Misfit(
        says=f"{said} of {in_unit_of(each, length)}, and only whole ones can be strung",
        place=strand.place_of("length"),
        found=f"{number(repeats.middle)} repeats",
        needed=f"whole repeats: {words}",
        remedies=(
            Remedy.write(
                strand.place_of("length"),
                size,
                f"write `length: {size}`, which {near} repeats make",
            ),
            Remedy(f"string {words}, or beads between to make it up"),
        ),
        at_most="warning",
    )


RULE = Rule(
    name="strand-beads",
    family="length",
    subject=Named,
    check=check,
    title="a strand of a stated length holds a whole number of its repeats",
    why="a long repeat cannot be cut short: the strand ends early, or in the middle of its pattern",
    limits=(STRAND_OFF,),
    sources=("counting", "5 mm are made up by how close the beads sit: common practice, no source"),
    bad="a repeat of 60 mm in a strand of 45 cm",
    good="a repeat of 60 mm in a strand of 42 cm",
    level="warning",
)
