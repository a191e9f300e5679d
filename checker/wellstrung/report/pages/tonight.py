"""Who can go on working before the plan is mended, and for how long.

A step is touched by an error that stands in it, or in a part that it works on; what the remedy
would change counts as well. The steps before the first one touched can be done as they are.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.common.wording import hours
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan, Step
from wellstrung.report.pages.at_place import named_at, near, users
from wellstrung.report.pages.students import Student
from wellstrung.rulebook import Ask
from wellstrung.work.dependencies import wait_of
from wellstrung.work.hours import in_class

#: so many places away from a part the step that joins it is looked for
_FAR = 6
_NO_TIME = "for a time that is not known"


class Evening(Struct, frozen=True):
    """What a student can do as the plan is: in words, how long, and what to mend before the rest.

    `minutes` are of hands, at a student's pace: 0 where nothing can be done, None where a time is
    missing. `whole` says that no error stops the work.
    """

    student: Student
    says: str
    minutes: float | None = 0.0
    whole: bool = False
    mend: Remark | None = None

    @property
    def stuck(self) -> bool:
        """Whether nothing can be done before the plan is mended."""
        return self.minutes == 0.0 and not self.whole


def evenings(students: Sequence[Student]) -> list[Evening]:
    """What each can do: who is stuck first, then who has to stop soonest, then who has not."""
    found = map(_evening, students)
    return sorted(found, key=_soonest)


def _soonest(one: Evening) -> tuple[bool, bool, float, bool]:
    return one.whole, one.minutes is None, one.minutes or 0.0, one.student.plan.readable


def _evening(student: Student) -> Evening:
    plan, first = student.plan, student.plan.fix_first
    if plan.failures and not plan.count("error"):
        return Evening(student, "a check could not be made", mend=first)
    if plan.ask is None:
        return Evening(student, "the plan cannot be read yet", mend=first)
    return _stopped(student, plan.ask) if plan.count("error") else _goes_on(student, plan.ask)


def _goes_on(student: Student, ask: Ask) -> Evening:
    mend = student.plan.fix_first
    if not ask.plan.steps:
        return Evening(student, "the plan lists no steps", None, True, mend)
    minutes = _minutes(ask, len(ask.plan.steps))
    says = _lasts(ask.plan, minutes, len(ask.plan.steps))
    return Evening(student, says, minutes, True, mend)


def _stopped(student: Student, ask: Ask) -> Evening:
    plan, found = ask.plan, list(_errors(student.plan))
    if not plan.steps:
        return Evening(student, "the plan lists no steps", mend=found[0])
    at, mend = min(
        ((_first_touched(plan, remark), remark) for remark in found), key=lambda one: one[0]
    )
    minutes = _minutes(ask, at)
    if not at or minutes == 0:
        return Evening(student, "", mend=mend)
    stop = plan.steps[at]
    says = f"{_lasts(plan, minutes, at)}, before step {stop.number}, {_briefly(stop)}"
    return Evening(student, says, minutes, mend=mend)


def _briefly(step: Step) -> str:
    part = step.parts.get("part")
    if part is None:
        return step.verb
    return f"{step.verb.removesuffix(f' {part.name}')} `{part.name}`"


def _errors(plan: PlanResult) -> Iterator[Remark]:
    return (one for one in plan.numbered if one.level == "error" and one.counts)


def _minutes(ask: Ask, steps: int) -> float | None:
    """Minutes of a student's hands for the first steps; None where a time is missing."""
    try:
        return sum(time.middle for time in in_class(ask.quantities)[:steps])
    except Missing:
        return None


def _lasts(plan: Plan, minutes: float | None, steps: int) -> str:
    waits = sum(wait_of(step) for step in plan.steps[:steps])
    work = _NO_TIME if minutes is None else f"{hours(minutes, days=False)} of work"
    return f"{work}, and {hours(waits, days=True)} of waiting" if waits else work


def _first_touched(plan: Plan, remark: Remark) -> int:
    """The first step that an error touches, counted from 0; 0 where it touches all of the piece.

    Where the checker found the change that mends it, that is all that is touched.
    """
    places = [edit.place for edit in remark.edits]
    if not places:
        places = [remark.place, *([remark.target.place] if remark.target is not None else [])]
        places += [one for one in remark.also if _steps_at(plan, one)]
    return min(index for place in places for index in _touched(plan, place, remark.parts))


def _touched(plan: Plan, place: Place, parts: Sequence[str]) -> list[int]:
    """The steps at a place, or those that first work on what stands there, counted from 0."""
    if steps := _steps_at(plan, place):
        return steps
    names = set(named_at(plan, place)) or set(parts)
    return [_first_with(plan, name) for name in names] or [0]


def _steps_at(plan: Plan, place: Place) -> list[int]:
    """The steps that hold a place; what is written behind a step is done after it."""
    at = [step for step in plan.steps if step.place.holds(place)]
    return [step.number - (place[1:3] < step.place[3:]) for step in at]


def _first_with(plan: Plan, name: str) -> int:
    """The first step on a part, or where none names it, on what is nearest; counted from 0.

    A step that makes what the part only stands next to can be done without the part.
    """
    for names, steps in _ever_further(plan, name):
        for step in steps:
            if names & _named(step):
                return step.number - 1
    return 0


def _ever_further(plan: Plan, name: str) -> Iterator[tuple[frozenset[str], Sequence[Step]]]:
    """A part, then those that use it, then what is ever further from it, with the steps to try."""
    names = frozenset({name})
    yield names, plan.steps
    yield users(plan, name), plan.steps
    joining = [step for step in plan.steps if not _makes(step)]
    for _ in range(_FAR):
        names = near(plan, names)
        yield names, joining


def _makes(step: Step) -> bool:
    part = step.parts.get("part")
    return part is not None and step.verb == part.traits.made_by


def _named(step: Step) -> set[str]:
    joined = {place.partition(".")[0] for place in step.joins}
    return joined.union(part.name for part in step.parts.values())
