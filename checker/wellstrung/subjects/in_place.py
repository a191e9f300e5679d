"""What holds each part in its place: what it hangs by, and who stands beside it to no purpose."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.subjects import linked, on_thread, run
from wellstrung.subjects.base import Subject, named

#: made of thread and beads: one is sewn to the other
_SOFT = WOVEN_WORK | {Role.STRAND, Role.DROP}
_NOTHING: frozenset[int] = frozenset()


class HeldInPlace(Subject, frozen=True):
    """What hangs, or stands in the run beside what it is not known to join.

    `line` is what hangs it; None in the run.
    """

    part: Part
    other: Part
    line: Hung | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """What is held, by which ring, and what holds it."""
        return named(self.part, self.line.by if self.line is not None else None, self.other)


def find(plan: Plan) -> Iterator[HeldInPlace]:
    """Every line that hangs something, and every two of the run that no other subject joins."""
    for line in plan.hung:
        if line.source.part("over") is line.part:
            continue  # a cone sits on the wire that runs through it
        yield HeldInPlace(line.place_of("part"), line.part, line.source, line)
    joins = (*run.joins(plan), *(join for join, _ in linked.in_run(plan)))
    others = (*linked.eyes_meet(plan), *on_thread.ties(plan))
    joined: dict[str, set[int]] = {}  # by which of the subjects each part is joined
    for number, join in enumerate((*joins, *others)):
        for name in join.parts:
            joined.setdefault(name, set()).add(number)
    for before, after in plan.neighbours:
        if before.half and before.part is after.part:
            continue  # the halves of a clasp
        for one, other in product(before.parts, after.parts):
            soft = {one.kind.role, other.kind.role} <= _SOFT
            by_one, by_other = (joined.get(part.name, _NOTHING) for part in (one, other))
            if not soft and by_one.isdisjoint(by_other):
                yield HeldInPlace(after.place, one, other)
