"""Stones that are glued on a foundation, sewn round and backed: the steps that do it."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Step
from wellstrung.subjects.base import Subject


class StoneGlued(Subject, frozen=True):
    """A stone that is glued on its foundation and its backing, and the step that sews it round.

    `under` are the steps that glue it on what it is sewn on, `behind` those that glue the backing,
    `edged` those that sew its edge through both.
    """

    part: Part
    sewn: Step
    under: tuple[Step, ...]
    behind: tuple[Step, ...]
    edged: tuple[Step, ...] = ()

    @property
    def in_order(self) -> Iterator[tuple[Step, Step]]:
        """Each step that has to come before another, and that other."""
        yield from ((step, self.sewn) for step in self.under)
        yield from ((self.sewn, step) for step in self.behind)
        for edge in self.edged:
            yield from ((step, edge) for step in (self.sewn, *self.behind))


def sets_stone(step: Step) -> bool:
    """Whether a step glues a stone on what it is sewn on, before it is sewn round."""
    layers = step.parts["part"].traits.glued_on if step.verb == "glue" else ()
    return bool(layers) and step.get("to") == layers[0]


def find(plan: Plan) -> Iterator[StoneGlued]:
    """Every stone that a step glues or edges and a step sews round."""
    for sewn in plan.steps_that("weave"):
        part = sewn.parts.get("part")
        glued = plan.steps_that("glue", part=part) if part and part.traits.glued_on else ()
        edged = plan.steps_that("edge", part=part) if part else []
        if part and (glued or edged):
            under = tuple(step for step in glued if sets_stone(step))
            behind = tuple(step for step in glued if not sets_stone(step))
            yield StoneGlued(sewn.place, part, sewn, under, behind, tuple(edged))
