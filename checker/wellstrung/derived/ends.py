"""Which size of a rope a cap takes: its nub, its outside, or that of one end where they differ."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wellstrung.model.beads import ROUND, listed_for
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Quantities
from wellstrung.subjects.run import taken


def end_in_cap(rope: Part, cap: Part, ask: Quantities) -> str:
    """The quantity that says how thick a rope is where a cap takes it.

    Of a rope whose rounds differ that of the end which stands there; where one cap is at both ends,
    of the one that it fits worse. Raises Missing.
    """
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
