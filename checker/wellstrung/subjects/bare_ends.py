"""Memory wire with nothing at its end: its beads slide off unless a loop is turned in it."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.wording import in_yaml
from wellstrung.model.plan import Plan
from wellstrung.subjects.joins_made import JoinAtWork


def find(plan: Plan) -> Iterator[JoinAtWork]:
    """The bare ends of every memory wire, where the plan has steps."""
    yield from every(plan) if plan.steps else ()


def every(plan: Plan) -> Iterator[JoinAtWork]:
    """The bare ends of every memory wire, and the steps that turn or glue something there."""
    ends = [entry.part for entry in plan.run[:1] + plan.run[-1:] if entry.part.thread.springs]
    for wire in dict.fromkeys(ends):
        count = ends.count(wire)
        line = f"{{do: wrap loop, part: {in_yaml(wire.name)}, times: {count}}}"
        end = "its end" if count == 1 else "either end"
        words = f"nothing stops the beads of `{wire.name}` at {end}"
        glued = (step for step in plan.steps_that("glue") if step.parts.get("to") is wire)
        beside = [step for step in glued if step.parts.get("part") not in plan.in_run]
        made = (*plan.steps_that("wrap loop", part=wire), *beside)
        yield JoinAtWork(wire.key.place, (wire,), words, "turns a loop there", line, made)
