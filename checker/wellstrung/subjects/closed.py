"""Rings that steps close, and what steps hang on them after that."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.subjects.base import Eyes, Subject, opens, own_eyes


class RingClosed(Subject, frozen=True):
    """A ring, a step that closes it, and the steps that hang on it what needs it open."""

    ring: Part
    step: Step
    hung_first: tuple[Step, ...]


def find(plan: Plan) -> Iterator[RingClosed]:
    """Each step that closes a ring."""
    for step in plan.steps_that("close ring"):
        ring = step.parts.get("part")
        if ring is not None and ring.kind.role is Role.RING:
            yield RingClosed(step.place, ring, step, tuple(_hung_first(ring, step, plan)))


def _hung_first(ring: Part, closed: Step, plan: Plan) -> Iterator[Step]:
    once = plan.steps_that("close ring", part=ring) == [closed]
    split = ring.traits.opens and not ring.traits.gapes
    if split or not once or closed.joins or closed.get("times") is not None:
        return  # it opens again, or only some of several are closed
    hung = {line.part for line in plan.hung if ring in (line.source, line.by)}
    for step in plan.steps_that("hang"):
        part = step.parts.get("part")
        if part is not None and part in hung and not _has_way_in(part, plan):
            yield step


def _has_way_in(part: Part, plan: Plan) -> bool:
    """Whether an eye of a part opens, or a step wraps a loop of it."""
    eyes = any(opens(Eyes(part, key)) for key in own_eyes(part))
    return eyes or bool(plan.steps_that("wrap loop", part=part))
