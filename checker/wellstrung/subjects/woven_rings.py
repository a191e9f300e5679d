"""What is woven of jump rings, and the rings it is woven of."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.subjects.base import Subject
from wellstrung.subjects.counts import woven_of


class WovenOfRings(Subject, frozen=True):
    """A jump ring, and the part that is woven of it."""

    ring: Part
    weave: Part


def find(plan: Plan) -> Iterator[WovenOfRings]:
    """Every part that is woven of jump rings."""
    for weave in plan.parts.values():
        ring = woven_of(weave)
        if ring is not None:
            yield WovenOfRings(ring.key.place, ring, weave)
