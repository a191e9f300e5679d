"""What each step of a plan depends on: its steps as the tasks and lags of the scheduler.

There are two readings. For the *times* the order written is trusted: steps on what hangs together
keep their order, and everything else may change places. For the *order* only what the rules of the
work ask for counts, so that a plan in the wrong order can be put right: a part is made before it is
needed, thread ends are finished before the glue closes them in, a ring is on the rope before the
caps are. Both let a joint cure to handling before anything pulls on it, and fully before it is
worn, and both are for the whole plan at once.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from contextlib import suppress

from wellstrung.derived.of_plan import Quantities
from wellstrung.formulas import glue
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Step
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare
from wellstrung.subjects import glued, steps
from wellstrung.subjects.base import opens
from wellstrung.work.schedule import END, Lag, Task, Work

#: Fields that name the parts a step works on. The ring that something hangs by is one of many.
_WORKED_ON = ("part", "to", "onto", "from", "around")


def for_times(ask: Quantities, hands: Sequence[float]) -> Work:
    """The steps with these minutes of hands, each after the steps on what it works on."""
    plan, lags = ask.plan, tuple(_lags(ask))
    after = _after_as_written(plan)
    for lag in lags:
        if lag.first < lag.then:
            after[lag.then].add(lag.first)
    return Work(
        tuple(
            Task(minutes, wait_of(step), frozenset(needs))
            for step, minutes, needs in zip(plan.steps, hands, after, strict=True)
        ),
        tuple(lag for lag in lags if lag.then == END or lag.first < lag.then),
    )


def for_order(ask: Quantities) -> Work:
    """The steps with the minutes that the plan writes, each after those that it cannot do without.

    A step that writes no time is taken as quick, so that no joint is believed to have cured for
    longer than the plan says. Raises Missing where no cure time is known.
    """
    after: list[set[int]] = [set() for _ in ask.plan.steps]
    for first, then in _needed(ask):
        if first is not then:
            after[_at(then)].add(_at(first))
    return Work(
        tuple(
            _task(step, frozenset(needs), ask)
            for step, needs in zip(ask.plan.steps, after, strict=True)
        ),
        tuple(_lags(ask)),
    )


def wait_of(step: Step) -> float:
    """The minutes that a step waits; none where it is no wait."""
    return step.minutes("time") if step.verb == "wait" else 0.0


def most_joints(adhesive: Part, ask: Quantities) -> int:
    """How many joints can be glued of one mix before it gels; raises Missing where none is mixed.

    Counting, on the careful side: a mix that gels early, a long stir.
    """
    usable, mixing = ask.of(adhesive, "usable"), ask.of(adhesive, "mixing")
    each = ask.plan.bench.limits["minutes a joint"].value
    return glue.joints_in_a_mix(usable.likely.low, each, mixing.likely.high)


def over_easier_cap(ring: Part, caps: Sequence[Part], ask: Quantities) -> Quantity:
    """The room that a ring has over the cap that it passes more easily, mm; raises Missing."""
    rooms = [ask.of(ring, "inside") - ask.of(cap, "outside") for cap in caps]
    return max(rooms, key=lambda room: room.likely.low)


def _at(step: Step) -> int:
    return step.number - 1


def _task(step: Step, after: frozenset[int], ask: Quantities) -> Task:
    hands, rest = step.minutes("takes"), wait_of(step)
    if step.verb != "glue":
        return Task(hands, rest, after)
    adhesive, most = step.parts["with"], math.inf
    with suppress(Missing):  # nothing is stirred
        most = most_joints(adhesive, ask)
    joints = step.joints / (step.mixes or 1)
    return Task(hands, rest, after, adhesive.name, joints, step.mixes is not None, most)


def _lags(ask: Quantities) -> Iterator[Lag]:
    """Each glued joint to handling before what pulls on it, to full cure before it is worn."""
    for joint in glued.joints(ask.plan):
        made = _at(joint.step)
        handling = ask.of(joint.adhesive, "handling").worst.high
        full = ask.of(joint.adhesive, "full_cure").worst.high
        yield from (Lag(made, _at(step), full) for step in joint.wearing)
        yield Lag(made, END, full)  # what is glued last is worn when all is done
        yield from (Lag(made, _at(step), handling) for step in joint.loading)


# --- for the order


def _needed(ask: Quantities) -> Iterator[tuple[Step, Step]]:
    """Each step that has to come before another, and that other."""
    plan = ask.plan
    for subject in steps.find(plan):
        if isinstance(subject, steps.PartAtWork) and subject.made:
            yield from ((subject.made[0], step) for step in subject.needed_by)
        elif isinstance(subject, steps.ThreadEnds):
            yield from subject.finished_first
        elif isinstance(subject, steps.RingOnCappedRope) and _blocked(subject, ask):
            yield from ((subject.step, glue) for glue in subject.closing if subject.step)
    for step in plan.steps_that(*glued.WEARING):
        if not step.has("part"):  # what was done before the piece is worn stays before it
            yield from ((before, step) for before in plan.steps[: _at(step)])
    for step in plan.steps_that("slide"):
        for other in plan.steps_that("hang"):  # on the rope before anything is hung by it
            if step.parts.get("part") in (other.parts.get("part"), other.parts.get("by")):
                yield step, other


def _blocked(on: steps.RingOnCappedRope, ask: Quantities) -> bool:
    """Whether a ring cannot go on over a cap."""
    if not on.caps or opens(on.ring):
        return False
    try:
        return compare(over_easier_cap(on.ring, on.caps, ask)) is not Verdict.HOLDS
    except Missing:
        return True


# --- for the times


def _after_as_written(plan: Plan) -> list[set[int]]:
    """For each step the last steps on what it works on, and on whatever hangs together with that.

    A wait is for the joints glued since the wait before. A step that is about the whole piece comes
    after all steps before it, and before all steps after it.
    """
    groups: dict[str, _Together] = {}  # what hangs together by now, by the name of each part of it
    whole: set[int] = set()  # the last step about the whole piece
    glued: set[str] = set()
    curing: set[str] | None = None  # what the next wait is for; None where nothing says
    found = []
    for index, step in enumerate(plan.steps):
        parts = _worked_on(plan, step)
        if step.verb == "wait":
            parts = curing = glued or curing
            glued = set()
        elif step.verb == "glue":
            glued = glued | (parts or set())
        if parts is None:
            found.append({together.last for together in groups.values()} | whole)
            whole = {index}
        else:
            touched = {id(groups[name]): groups[name] for name in parts if name in groups}
            found.append({together.last for together in touched.values()} | whole)
            _join(groups, list(touched.values()), parts, index)
    return found


class _Together:
    """Parts that hang together, and the last step on any of them."""

    def __init__(self) -> None:
        self.names: set[str] = set()
        self.last = -1


def _join(
    groups: dict[str, _Together], touched: list[_Together], parts: set[str], index: int
) -> None:
    """All that a step touches hangs together from now on."""
    whole = max(touched, key=lambda together: len(together.names), default=_Together())
    whole.last = index
    for names in (parts, *(other.names for other in touched if other is not whole)):
        whole.names |= names
        groups.update(dict.fromkeys(names, whole))


def _worked_on(plan: Plan, step: Step) -> set[str] | None:
    """The parts that a step works on, or None for a step that is about the whole piece."""
    if step.verb != "close ring":
        return {step.parts[name].name for name in _WORKED_ON if name in step.parts} or None
    ring, around = step.parts.get("part"), step.parts.get("around")
    found = {name.partition(".")[0] for name in step.joins}
    found |= {around.name} if around is not None else set()
    if not found:
        found = {beside.part.name for entry, beside in plan.meetings if entry.part is ring}
        for line in plan.hung:
            if line.by is not None and line.by is ring:
                found |= {line.part.name, line.source.name}
    return found or None
