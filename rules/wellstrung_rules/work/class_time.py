"""The work fits into the class at a student's pace, with what cures curing between its meetings."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, ClassMeets, Misfit, Remedy, Rule, done_at_home, kept
from wellstrung.rulebook.plan import Part, Step
from wellstrung.rulebook.values import Quantity, times
from wellstrung.rulebook.wording import hours, often, spelled

#: More parts than this are not brought to a class: then it is another class.
_MOST_BROUGHT = 3


def check(class_: ClassMeets, ask: Ask) -> Answer:
    length, sessions = class_.meets.duration("length"), class_.meets.count("sessions", default=1)
    takes = ask.get("piece.class_time")
    margin = times(length, sessions) - takes
    if answer := kept(margin):
        return answer
    meets = f"{often(sessions)} for {spelled(length)}{' each' if sessions > 1 else ''}"
    tail = f"{_range(takes)} of class for this{_waiting(takes, ask)}, and the class meets {meets}"
    return Misfit(
        says=f"a student {{needs|may need}} {tail}",
        place=class_.meets.place_of("sessions" if class_.meets.has("sessions") else "length"),
        found=f"{hours(length.middle * sessions)} of class",
        needed=f"{hours(takes.likely.high)} of class",
        remedies=_remedies(class_, ask, takes, length),
        margin=margin,
        also=(ask.plan.place_of("work"),),
    )


def _range(takes: Quantity) -> str:
    low, middle, high = (hours(t) for t in (takes.likely.low, takes.middle, takes.likely.high))
    return middle if low == high else f"{middle} (likely {low} to {high})"


def _waiting(takes: Quantity, ask: Ask) -> str:
    """How much of it hands are idle: until the glue allows the next step, or the next meeting."""
    steps = tuple(step for step in ask.plan.steps if not done_at_home(ask.plan, step))
    idle = takes.middle - _minutes(steps, ask)
    return f", {hours(idle)} of it waiting" if round(idle) else ""


def _remedies(
    class_: ClassMeets, ask: Ask, takes: Quantity, length: Quantity
) -> tuple[Remedy, ...]:
    node = class_.meets.node
    longest = sorted(class_.makes, key=lambda made: -_minutes(made[1], ask))
    meetings = math.ceil(takes.likely.high / length.likely.low - 1e-9)
    more = f"meet {often(meetings)} and write `sessions: {meetings}`"
    found = []
    for count in range(1, min(len(longest), _MOST_BROUGHT) + 1):
        brought = longest[:count]
        before = (part.name for part in class_.prepared)
        names = ", ".join((*before, *(part.name for part, _ in brought)))
        what = " and ".join(_brought(part, steps, ask) for part, steps in brought)
        text = f"prepare {what} beforehand and write `prepared: [{names}]`; or {more}"
        found.append(Remedy(text, (ask.with_field(node, "prepared", f"[{names}]"),)))
    edit = ask.with_field(node, "sessions", str(meetings))
    return (*found, Remedy(more, (edit,)), Remedy(more))


def _minutes(steps: tuple[Step, ...], ask: Ask) -> float:
    return sum(ask.get(f"piece.step {step.number}").middle for step in steps)


def _brought(part: Part, steps: tuple[Step, ...], ask: Ask) -> str:
    *most, last = (str(step.number) for step in steps)
    which = f"steps {', '.join(most)} and {last}" if most else f"step {last}"
    return f"`{part.name}` ({which}, {hours(_minutes(steps, ask))})"


RULE = Rule(
    name="class-time",
    family="work",
    subject=ClassMeets,
    check=check,
    title="a student can make the piece in the hours of its class",
    why=(
        "a student goes home with half a rope and a loose cap, and the joint that needs a day has"
        " nowhere to cure when the class meets once"
    ),
    sources=(
        "rates and paces of the bench: from memory until you time your own",
        "work put down at the end of a meeting and taken up in the next, curing between them:"
        " counting, worked out for this project",
    ),
    bad="class: {length: 2 h} for a rope that takes a student four hours to weave",
    good="class: {length: 2 h, prepared: [rope]} for a rope that students bring woven",
    level="warning",
)
