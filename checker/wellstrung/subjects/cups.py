"""The last cup of cup chain, in an end that closes over it."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, RunEntry
from wellstrung.subjects.base import Subject
from wellstrung.subjects.chain import of_cups


class CupInEnd(Subject, frozen=True):
    """The last cup of cup chain in an end that closes over it."""

    end: Part
    piece: Part


def at_end(inner: RunEntry, end: RunEntry) -> Iterator[CupInEnd]:
    """The cups that an end in the run closes over, of each chain side by side."""
    yield from (CupInEnd(end.place, end.part, one) for one in inner.parts if of_cups(one))


def hung(plan: Plan) -> Iterator[CupInEnd]:
    """Cup chain that hangs from an end, whose tabs hold its first cup."""
    for line in plan.hung:
        if of_cups(line.part) and line.source.traits.cups and not line.on_thread:
            yield CupInEnd(line.place_of("part"), line.source, line.part)
