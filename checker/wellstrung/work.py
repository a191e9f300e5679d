"""The bench steps, simulated in the order written: what is capped, glued, curing and loaded when.

Only written waits and written `takes:` move the clock: a step that says nothing of its time is
taken as quick, so a joint is never believed to have cured for longer than the plan says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from wellstrung.joins import Subject
from wellstrung.model import Hung, Part, Plan, Role, Step
from wellstrung.place import Place

#: Steps that put a pull on what was glued.
LOADING = frozenset({"hang", "close ring"})
#: Steps after which the piece is worn or leaves the bench.
WEARING = frozenset({"wear", "pack"})


@dataclass(frozen=True)
class Moment:
    """A step and the minutes since the joint before it was made."""

    step: Step | None
    after: float
    place: Place


@dataclass(frozen=True)
class GluedJoint(Subject):
    """A glued cap and when it is first loaded and first worn."""

    step: Step
    adhesive: Part
    cap: Part
    loaded: Moment | None
    worn: Moment

    @property
    def parts(self) -> tuple[str, ...]:
        """Adhesive, cap."""
        return (self.adhesive.name, self.cap.name)


@dataclass(frozen=True)
class RingOnCappedRope(Subject):
    """A ring that must be slid on a rope, the step that does it, and the caps glued before."""

    ring: Part
    rope: Part
    line: Hung
    step: Step | None
    blocked_by: tuple[tuple[Part, Step], ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, rope."""
        return (self.ring.name, self.rope.name)


def simulate(plan: Plan) -> tuple[Subject, ...]:
    """The subjects that the work steps give."""
    return (*_joints(plan), *_rings_on_ropes(plan))


def caps_at(plan: Plan, rope: Part) -> list[Part]:
    """The caps of a rope in the run's order, one for each end that has one."""
    caps = []
    for before, after in pairwise(plan.run):
        if after.part is rope and before.part.kind.role is Role.CAP:
            caps.append(before.part)
        if before.part is rope and after.part.kind.role is Role.CAP:
            caps.append(after.part)
    return caps


def _clock(plan: Plan) -> list[float]:
    """Minutes from the start at which each step begins, and the end of the last."""
    times = [0.0]
    for step in plan.steps:
        times.append(
            times[-1] + step.minutes("takes") + (step.minutes("time") if step.verb == "wait" else 0)
        )
    return times


def _joints(plan: Plan) -> Iterator[Subject]:
    clock = _clock(plan)
    for index, step in enumerate(plan.steps):
        adhesive, cap = plan.parts.get(str(step.get("with"))), plan.parts.get(str(step.get("part")))
        if step.verb != "glue" or adhesive is None or cap is None:
            continue
        set_at = clock[index + 1]
        loaded = worn = None
        for later, moment in zip(plan.steps[index + 1 :], clock[index + 1 :], strict=False):
            if loaded is None and later.verb in LOADING and _pulls_on(plan, later, cap):
                loaded = Moment(later, moment - set_at, later.place)
            if worn is None and later.verb in WEARING and later.get("part") is None:
                worn = Moment(later, moment - set_at, later.place)
        if worn is None:
            worn = Moment(None, clock[-1] - set_at, plan.steps[-1].place)
        yield GluedJoint(step.place, step, adhesive, cap, loaded, worn)


def _pulls_on(plan: Plan, step: Step, cap: Part) -> bool:
    """Whether a step hangs something from the cap, or from the rope that ends in it."""
    touched = {str(step.get(name)) for name in ("part", "from", "around", "to", "by")}
    if step.verb == "close ring":
        ring = plan.parts.get(str(step.get("part")))
        touched |= {name for entry_ring, name in _ring_neighbours(plan) if entry_ring is ring}
    ropes = {
        rope.name
        for rope in plan.parts.values()
        if rope.kind.role is Role.ROPE and cap in caps_at(plan, rope)
    }
    return bool(touched & (ropes | {cap.name}))


def _ring_neighbours(plan: Plan) -> Iterator[tuple[Part, str]]:
    for before, after in pairwise(plan.run):
        yield before.part, after.part.name
        yield after.part, before.part.name


def _rings_on_ropes(plan: Plan) -> Iterator[Subject]:
    for line in plan.hung:
        if line.by is None or line.source.kind.role is not Role.ROPE:
            continue
        rope, ring = line.source, line.by
        ends = len(caps_at(plan, rope))
        glued: list[tuple[Part, Step]] = []
        step: Step | None = None
        for step in plan.steps:
            if step.verb == "glue" and step.get("to") == rope.name:
                cap = plan.parts[str(step.get("part"))]
                joints = step.get("joints")
                glued += [(cap, step)] * (joints if isinstance(joints, int) else 1)
            if _puts_on(step, ring, line, rope):
                break
        else:
            step = None
        blocked = tuple(glued) if ends and len(glued) >= ends else ()
        yield RingOnCappedRope(
            step.place if step else line.place_of("by"), ring, rope, line, step, blocked
        )


def _puts_on(step: Step, ring: Part, line: Hung, rope: Part) -> bool:
    """Whether a step is the one that brings the ring (with what it carries) on the rope."""
    if step.verb == "slide":
        return step.get("part") in (ring.name, line.part.name) and step.get("onto") == rope.name
    if step.verb == "hang":
        return step.get("part") == line.part.name and step.get("from") in (None, rope.name)
    return step.verb == "close ring" and step.get("part") == ring.name
