"""How the end of a rope or a line lies in a cap: which size of it the cap takes, and of wire."""

from __future__ import annotations

from collections.abc import Container, Iterator
from itertools import pairwise

from wellstrung.model.beads import ROUND, listed_for
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Quantities
from wellstrung.quantity.arithmetic import times
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.counts import how_many
from wellstrung.subjects.run import taken


def end_in_cap(rope: Part, cap: Part, ask: Quantities) -> str:
    """The quantity that says how thick a rope is where a cap takes it.

    Of a rope whose rounds differ that of the end which stands there; where one cap is at both ends,
    of the one that it fits worse. Raises Missing.
    """
    if rope.thread.springs:
        return "line"
    if taken(cap) == "nub":
        return "nub.outside"
    if not listed_for(rope, ROUND):
        return "outside"
    bore = ask.of(cap, "bore").middle
    ends = list(_ends_at(rope, cap, ask.plan)) or ["first_end", "last_end"]
    return max(ends, key=lambda end: abs(ask.of(rope, end).middle - bore))


def _ends_at(rope: Part, cap: Part, plan: Plan) -> Iterator[str]:
    for one, other in pairwise(plan.run):
        if one.part is cap and rope in other.parts:
            yield "first_end"
        if other.part is cap and rope in one.parts:
            yield "last_end"


def cords_of_knots(parts: Container[Part], ask: Quantities) -> Iterator[Quantity]:
    """The cord of its own that one sliding knot is tied of, by what it is tied over."""
    met = {end.part: inner.part for end, inner in reversed([*ask.plan.meetings])}
    for clasp, work in met.items():
        one_knot = clasp.traits.slides and clasp.count("sliding", "knots", default=2) == 1
        if one_knot and work in parts:
            yield times(ask.of(clasp, "cord"), how_many(ask.plan, clasp))
