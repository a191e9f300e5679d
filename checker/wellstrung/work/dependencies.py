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
from wellstrung.subjects import closed, glued, steps, stones
from wellstrung.subjects.base import opens
from wellstrung.subjects.pulled import pulling_on, pulls
from wellstrung.work.schedule import END, Lag, Task, Work
from wellstrung.work.search import MOST_LOOKS, Found, nearest

#: Fields that name the parts a step works on. The ring that something hangs by is one of many.
_WORKED_ON = ("part", "to", "onto", "from", "around")


def for_times(ask: Quantities, hands: Sequence[float]) -> Work:
    """The steps with these minutes of hands, each after the steps on what it works on."""
    after, lags = _after_as_written(ask.plan), tuple(_last_lags(ask))
    for lag in lags:
        if lag.then != END:
            after[lag.then].add(lag.first)
    each = zip(ask.plan.steps, hands, after, strict=True)
    tasks = (Task(minutes, wait_of(step), frozenset(needs)) for step, minutes, needs in each)
    return Work(tuple(tasks), lags)


def for_order(ask: Quantities) -> Work:
    """The steps with the minutes that the plan writes, each after those that it cannot do without.

    A step that writes no time is taken as quick, so that no joint is believed to have cured for
    longer than the plan says. Raises Missing where no cure time is known.
    """
    after: list[set[int]] = [set() for _ in ask.plan.steps]
    for first, then in _needed(ask):
        if first is not then:
            after[_at(then)].add(_at(first))
    each = zip(ask.plan.steps, after, strict=True)
    tasks = (_task(step, frozenset(needs), ask) for step, needs in each)
    return Work(tuple(tasks), tuple(_lags(ask)))


def order_that_works(ask: Quantities) -> Found | None:
    """The order without faults that is nearest to the one written; None where a value is missing.

    Of a plan with more steps than a search could look through it is not even begun.
    """
    if len(ask.plan.steps) ** 2 > MOST_LOOKS:
        return Found(None, 0, stopped=True)
    try:
        return nearest(for_order(ask))
    except Missing:
        return None


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


def _cures(step: Step, ask: Quantities) -> tuple[float, float]:
    """Minutes from a glue step to handling, and to full cure, on the careful side."""
    adhesive = step.parts["with"]
    handling, full = ask.of(adhesive, "handling"), ask.of(adhesive, "full_cure")
    return handling.worst.high, full.worst.high


# --- for the order


def _lags(ask: Quantities) -> Iterator[Lag]:
    """Each glued joint to handling before what pulls on it, to full cure before it is worn."""
    wearing = glued.wearing(ask.plan)
    for step in ask.plan.gluing:
        handling, full = _cures(step, ask)
        yield from (Lag(_at(step), _at(worn), full) for worn in wearing)
        yield Lag(_at(step), END, full)  # what is glued last is worn when all is done
        loads = pulling_on(ask.plan, step) if step.verb == "glue" else ()
        for load, others in loads:
            yield Lag(_at(step), _at(load), handling, frozenset(map(_at, others)))


def _needed(ask: Quantities) -> Iterator[tuple[Step, Step]]:
    """Each step that has to come before another, and that other."""
    plan = ask.plan
    for subject in steps.find(plan):
        if isinstance(subject, steps.PartAtWork) and subject.made:
            yield from ((subject.made[0], step) for step in subject.needed_by)
        elif isinstance(subject, steps.ThreadEnds):
            yield from subject.finished_first
        elif isinstance(subject, steps.RingOnCappedRope) and _blocked(subject, ask):
            closing = glued.closing_glue(plan, subject.rope)
            yield from ((subject.step, glued_on) for glued_on in closing if subject.step)
    for stone in stones.find(plan):
        yield from stone.in_order
    for ring in closed.find(plan):
        yield from ((hung, ring.step) for hung in ring.hung_first)
    for step in glued.wearing(plan):  # what was done before the piece is worn stays before it
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


def _last_lags(ask: Quantities) -> Iterator[Lag]:
    """The lags of the order written that no other takes care of.

    Of one adhesive the last on a cap cures last, and what was worn once had cured.
    """
    wearing, pulls_on = set(glued.wearing(ask.plan)), dict[Step, list[Part]]()
    for cap in pulls(ask.plan):
        for step in glued.loading(ask.plan, cap):
            pulls_on.setdefault(step, []).append(cap)
    last: dict[Part, dict[Part, Step]] = {}  # by cap and adhesive
    unworn: dict[tuple[Part, Part], Step] = {}
    for step in ask.plan.steps:
        if step.verb == "glue":
            cap, adhesive = step.parts["part"], step.parts["with"]
            last.setdefault(cap, {})[adhesive] = unworn[cap, adhesive] = step
        for cap in pulls_on.get(step, ()):
            for made in last.get(cap, {}).values():
                yield Lag(_at(made), _at(step), _cures(made, ask)[0])
        if step in wearing:
            yield from (Lag(_at(one), _at(step), _cures(one, ask)[1]) for one in unworn.values())
            unworn = {}
    yield from (Lag(_at(one), END, _cures(one, ask)[1]) for one in unworn.values())


def _after_as_written(plan: Plan) -> list[set[int]]:
    """For each step the last steps on what it works on, and on whatever hangs together with that.

    A wait is for the joints glued since the wait before. A step that is about the whole piece comes
    after all steps before it, and before all steps after it.
    """
    groups: dict[str, _Together] = {}  # what hangs together by now, by the name of each part of it
    since: dict[int, _Together] = {}  # those with a step since the last one about the whole piece
    whole: set[int] = set()  # that one
    fresh: set[str] = set()  # what was glued since the last wait
    curing: set[str] | None = None  # what the next wait is for; None where nothing says
    found = []
    for index, step in enumerate(plan.steps):
        parts = _worked_on(plan, step)
        if step.verb == "wait":
            parts = curing = fresh or curing
            fresh = set()
        elif step.verb == "glue":
            fresh = fresh | (parts or set())
        if parts is None:
            found.append({together.last for together in since.values()} | whole)
            since, whole = {}, {index}
            continue
        touched = {id(groups[name]): groups[name] for name in parts if name in groups}
        found.append({together.last for together in touched.values()} | whole)
        together = _joined(groups, list(touched.values()), parts)
        together.last = index
        for key in touched:
            since.pop(key, None)
        since[id(together)] = together
    return found


class _Together:
    """Parts that hang together, and the last step on any of them."""

    def __init__(self) -> None:
        self.names: set[str] = set()
        self.last = -1


def _joined(groups: dict[str, _Together], touched: list[_Together], parts: set[str]) -> _Together:
    """All that a step touches, which hangs together from now on."""
    whole = max(touched, key=lambda together: len(together.names), default=_Together())
    for names in (parts, *(other.names for other in touched if other is not whole)):
        whole.names |= names
        groups.update(dict.fromkeys(names, whole))
    return whole


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
