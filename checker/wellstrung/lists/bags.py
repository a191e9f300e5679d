"""Bags of beads for one maker: each with its letter, and how its beads are measured out.

The letters follow the steps: the first bead that a step picks up lies in bag A.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from itertools import count, product
from string import ascii_uppercase

from msgspec import Struct

from wellstrung.common import units
from wellstrung.derived import taken
from wellstrung.derived.beads_taken import beads_in
from wellstrung.derived.purchase import Purchase, up
from wellstrung.derived.taken import Taken
from wellstrung.model.beads import beads_picked_up
from wellstrung.model.item import Bead, Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.subjects.counts import how_many

#: Fewer beads than this, and larger ones than seed beads up to the second figure, are counted:
#: common practice, no source.
_FEW, _FEW_LARGE = 50, 120
#: Lighter than this, g, is not weighed: a kitchen scale shows tenths of a gram, and a tenth is
#: then one bead in twenty. Common practice, no source.
_WEIGHED_FROM = 2.0
#: Strung beads sit this much further apart than they are long at most: trade table `bead_strands`.
_SITS = 1.02
#: A size is named by the half centimetre or the quarter inch, mm.
_BY_HALF_CM, _BY_QUARTER_IN = 5.0, 6.35
#: what grows with the size of a piece
_GROWS = (Role.ROPE, Role.BAND, Role.STRAND)


class Bag(Struct, frozen=True):
    """One bag: its letter and the bead, spare beads included; lots are chosen with the stock.

    `grams` is up to the next tenth, None where it is not known; `measured` says how to measure the
    beads out. `up_to` is the largest size, mm, that they serve without the spare ones: infinite
    where another size takes no more of them, None where the plan asks for no length.
    """

    letter: str
    name: str
    describes: str
    pieces: int
    grams: float | None
    measured: str
    up_to: float | None
    inches: bool = False

    @property
    def serves(self) -> str:
        """The largest size in words; empty where none is known."""
        if self.up_to is None:
            return ""
        if math.isinf(self.up_to):
            return "any size"
        return f"up to {units.by_length(self.up_to, inches=self.inches, side='down')}"


def lettered(plan: Plan) -> Mapping[str, str]:
    """The letter of the bag of each bead: as the steps call them, then as the palette has them."""
    made = [part for step in plan.steps for part in step.parts.values()]
    called = [name for part in made for name in (*beads_picked_up(part), *_of_loop(part))]
    bought = {name for name, bead in plan.beads.items() if not bead.has("woven")}
    names = dict.fromkeys(name for name in (*called, *plan.beads) if name in bought)
    return dict(zip(names, _letters(), strict=False))


def _of_loop(part: Part) -> tuple[str, ...]:
    bead = part.bead("loop", "beads")
    return (bead.name,) if bead is not None else ()


def _letters() -> Iterator[str]:
    """A to Z, then AA, AB and on."""
    for length in count(1):
        yield from map("".join, product(ascii_uppercase, repeat=length))


def bags(ask: Quantities) -> list[Bag]:
    """The bags of one maker by their letters; a bead whose number is not known has none."""
    letters = lettered(ask.plan)
    found = [
        _bag(ask.plan.beads[thing.name], thing, bought, letters[thing.name], ask)
        for thing in taken.of_plan(ask)
        if thing.group == "beads"
        and not (bought := taken.purchase(thing, on_hand=False)).missing
        and up(bought.short)
    ]
    return sorted(found, key=lambda bag: (len(bag.letter), bag.letter))


def _bag(bead: Bead, thing: Taken, bought: Purchase, letter: str, ask: Quantities) -> Bag:
    pieces = up(bought.short)
    grams = _grams(bead, thing, pieces, ask)
    return Bag(
        letter,
        bead.name,
        thing.describes,
        pieces,
        grams,
        _measured(bead, pieces, grams, ask),
        _largest(bead, pieces, bought, ask),
        ask.plan.in_inches,
    )


def _grams(bead: Bead, thing: Taken, pieces: int, ask: Quantities) -> float | None:
    """What the beads weigh where the lot is likely heavy, g, and no less than whole beads do.

    None where it is not known.
    """
    assert not isinstance(thing.need, Missing)
    try:
        weight = derived(
            f"{bead.name} in a bag",
            "g",
            lambda beads, spare, per_gram: (beads + spare) / per_gram,
            beads=thing.need,
            spare=thing.spare or exact("spare", 0.0),
            per_gram=ask.of(bead, "per_gram"),
        )
    except Missing:
        return None
    whole = pieces / ask.of(bead, "per_gram").middle
    return up(max(weight.likely.high, whole) * 10) / 10


def _measured(bead: Bead, pieces: int, grams: float | None, ask: Quantities) -> str:
    """How so many beads are measured out: weighed, counted, or strung to a length."""
    if pieces <= (_FEW if bead.seed else _FEW_LARGE):
        return f"count {pieces}"
    if grams is not None and grams >= _WEIGHED_FROM:
        return f"weigh {units.show(grams, 'g', 1)}"
    try:
        length = pieces * ask.of(bead, "length").likely.high * _SITS
    except Missing:
        return f"count {pieces}"
    long = units.by_length(length, inches=ask.plan.in_inches, side="up")
    return f"count {pieces}, or string {long}"


def _largest(bead: Bead, pieces: int, bought: Purchase, ask: Quantities) -> float | None:
    """The largest size that the beads serve: those beyond the need go into the part that grows."""
    goal = ask.plan.goal
    if goal is None:
        return None
    try:
        each = sum(_per_mm(part, bead, ask) for part in _growing(ask))
    except Missing:
        return None
    if not each:
        return math.inf
    step = _BY_QUARTER_IN if ask.plan.in_inches else _BY_HALF_CM
    largest = goal.middle + max(0.0, pieces - bought.need.high) / each
    return max(goal.middle, math.floor(largest / step + 1e-6) * step)


def _growing(ask: Quantities) -> tuple[Part, ...]:
    """What is longer in a larger size: what fills the rest, or else what is longest in the run."""
    places = [
        entry.parts for entry in ask.plan.run if any(one.kind.role in _GROWS for one in entry.parts)
    ]
    rest = [parts for parts in places if any(part.fills_rest for part in parts)]
    if rest or not places:
        return rest[0] if rest else ()
    return max(places, key=lambda parts: ask.of(parts[0], "length").middle)


def _per_mm(part: Part, bead: Bead, ask: Quantities) -> float:
    """How many of a bead a mm more of a part takes, in all the pieces of the plan."""
    if bead.name not in beads_picked_up(part):
        return 0.0
    beads = beads_in(part, bead, how_many(ask.plan, part), ask)
    return beads.likely.high / ask.of(part, "length").middle
