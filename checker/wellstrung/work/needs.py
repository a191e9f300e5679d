"""What each step of a plan has to wait for, as the simulation of the work sees it.

What the rules of the work ask of the order - made before it is needed, finished before it is glued,
on the rope before it is capped, cured before it is loaded - stands here once for every step, for
the search of an order that works.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from wellstrung.model.parts import Missing, Part, Plan, Step
from wellstrung.subjects import steps as at_work
from wellstrung.subjects.glued import LOADING, WEARING, caps_at, passes, pulls_on
from wellstrung.work.order import END, Doing, Wait

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities


def records(plan: Plan, ask: Quantities) -> tuple[tuple[Doing, ...], tuple[Wait, ...]]:
    """The steps as records, and the waits between them."""
    after: list[set[int]] = [set() for _ in plan.steps]
    for subject in at_work.find(plan):
        if isinstance(subject, at_work.PartAtWork) and subject.made:
            for step in subject.needed_by:
                after[_at(step)].add(_at(subject.made[0]))
        elif isinstance(subject, at_work.ThreadEnds):
            _finished_first(plan, subject.rope, after)
        elif isinstance(subject, at_work.RingOnCappedRope):
            _on_before_capped(plan, subject, after, ask)
    _worn_last(plan, after)
    _slid_first(plan, after)
    steps = tuple(
        _doing(plan, step, frozenset(needs - {_at(step)}), ask)
        for step, needs in zip(plan.steps, after, strict=True)
    )
    return steps, tuple(_waits(plan, ask))


def _at(step: Step) -> int:
    return step.number - 1


def _doing(plan: Plan, step: Step, after: frozenset[int], ask: Quantities) -> Doing:
    if step.verb != "glue":
        return Doing(passes(step), after)
    joints = step.joints / (step.mixes or 1)
    adhesive = step.parts["with"]
    most = _most_joints(plan, adhesive, ask)
    return Doing(passes(step), after, adhesive.name, joints, step.mixes is not None, most)


def _most_joints(plan: Plan, adhesive: Part, ask: Quantities) -> float:
    """How many joints one mix is good for; any number where nothing is stirred."""
    try:
        usable, mixing = ask.of(adhesive, "usable"), ask.of(adhesive, "mixing")
    except Missing:
        return math.inf
    each = plan.bench.limits["minutes a joint"].value
    return max(0, math.floor((usable.likely.low - mixing.likely.high) / each + 1e-9))


def _finished_first(plan: Plan, rope: Part, after: list[set[int]]) -> None:
    """Thread ends before the glue; of several steps the later may wait while an end is open."""
    glues = plan.steps_that("glue", to=rope)
    ends = plan.steps_that("finish thread", part=rope)
    for number, finish in enumerate(ends):
        for glue in glues if number == 0 else glues[-1:]:
            after[_at(glue)].add(_at(finish))


def _on_before_capped(
    plan: Plan, on: at_work.RingOnCappedRope, after: list[set[int]], ask: Quantities
) -> None:
    """A ring that passes no cap before the glue that caps the second end."""
    caps = caps_at(plan, on.rope)
    if on.step is None or not caps or on.ring.text("closing") in ("open", "split"):
        return
    glued = [step for step in plan.steps_that("glue", to=on.rope) for _ in range(step.joints)]
    if len(glued) >= len(caps) and not any(_passes(on.ring, cap, ask) for cap in caps):
        after[_at(glued[len(caps) - 1])].add(_at(on.step))


def _passes(ring: Part, cap: Part, ask: Quantities) -> bool:
    try:
        return (ask.of(ring, "inside") - ask.of(cap, "outside")).likely.low >= 0
    except Missing:
        return False


def _worn_last(plan: Plan, after: list[set[int]]) -> None:
    """What was done before the piece was worn or packed is done before it in any order."""
    for step in plan.steps:
        if step.verb in WEARING and step.get("part") is None:
            after[_at(step)] |= set(range(_at(step)))


def _slid_first(plan: Plan, after: list[set[int]]) -> None:
    """What is slid on a rope is there before anything is hung by it."""
    for step in plan.steps:
        for other in plan.steps if step.verb == "slide" else ():
            if other.verb == "hang" and step.get("part") in (other.get("part"), other.get("by")):
                after[_at(other)].add(_at(step))


def _waits(plan: Plan, ask: Quantities) -> list[Wait]:
    """Each glued joint to handling before what pulls on it, to full cure before it is worn."""
    found = []
    for step in plan.steps_that("glue"):
        adhesive, cap = step.parts["with"], step.parts["part"]
        handling = ask.of(adhesive, "handling").worst.high
        full = ask.of(adhesive, "full_cure").worst.high
        worn = [s for s in plan.steps if s.verb in WEARING and s.get("part") is None]
        found += [Wait(_at(step), _at(one), full) for one in worn]
        found.append(Wait(_at(step), END, full))  # what is glued last is worn when all is done
        for other in plan.steps:
            if other.verb in LOADING and pulls_on(plan, other, cap):
                found.append(Wait(_at(step), _at(other), handling))
    return found
