"""The work fits into the class at a student's pace; glue may cure between its meetings."""

from __future__ import annotations

import math
from collections.abc import Iterable

from wellstrung.rulebook import Answer, Ask, ClassMeets, Misfit, Remedy, Rule, done_at_home, kept
from wellstrung.rulebook.plan import Step
from wellstrung.rulebook.values import Quantity, times
from wellstrung.rulebook.wording import hours, in_yaml, often, spelled, steps_named

#: A class to which students bring more parts than these made is another class.
_MOST_BROUGHT = 3


def check(class_: ClassMeets, ask: Ask) -> Answer:
    meets, takes = class_.meets, ask.get("piece.class_time")
    length, sessions = meets.duration("length"), meets.count("sessions", default=1)
    margin = times(length, sessions) - takes
    if answer := kept(margin):
        return answer
    low, middle, high = map(hours, (takes.likely.low, takes.middle, takes.likely.high))
    likely = "" if low == high else f" (likely {low} to {high})"
    in_class = [step for step in ask.plan.steps if not done_at_home(ask.plan, step)]
    # hands are idle until the glue allows the next step, or until the next meeting
    idle = takes.middle - _minutes(in_class, ask)
    waiting = f", {hours(idle)} of it waiting" if round(idle) else ""
    each = " each" if sessions > 1 else ""
    return Misfit(
        says=f"a student {{needs|may need}} {middle}{likely} of class for this{waiting}, but the"
        f" class meets {often(sessions)} for {spelled(length)}{each}",
        place=meets.place_of("sessions" if meets.has("sessions") else "length"),
        found=f"{hours(length.middle * sessions)} of class",
        needed=f"{high} of class",
        remedies=_remedies(class_, ask, takes, length),
        margin=margin,
        also=(ask.plan.place_of("work"),),
    )


def _remedies(
    class_: ClassMeets, ask: Ask, takes: Quantity, length: Quantity
) -> tuple[Remedy, ...]:
    node = class_.meets.node
    longest = sorted(class_.makes, key=lambda made: -_minutes(made[1], ask))
    meetings = math.ceil(takes.likely.high / length.likely.low - 1e-9)
    more = f"meet {often(meetings)} and write `sessions: {meetings}`"
    names, brought, found = [in_yaml(part.name) for part in class_.prepared], [], []
    for part, steps in longest[:_MOST_BROUGHT]:
        names.append(in_yaml(part.name))
        brought.append(f"`{part.name}` ({steps_named(steps)}, {hours(_minutes(steps, ask))})")
        prepared = f"`prepared: [{', '.join(names)}]`"
        text = f"prepare {' and '.join(brought)} beforehand and write {prepared}; or {more}"
        found.append(Remedy(text, (ask.with_field(node, "prepared", names),)))
    return (*found, Remedy(more, (ask.with_field(node, "sessions", str(meetings)),)), Remedy(more))


def _minutes(steps: Iterable[Step], ask: Ask) -> float:
    return sum(ask.get(f"piece.step {step.number}").middle for step in steps)


RULE = Rule(
    name="class-time",
    family="work",
    subject=ClassMeets,
    check=check,
    fault="too long for the class",
    title="a student can make the piece in the hours of the class",
    why="otherwise students go home with half a rope and a loose cap; in a class that meets once,"
    " a joint that needs a day has nowhere to cure",
    sources=(
        "rates of the bench: from memory until you time your own",
        "a student takes 2 to 4 times as long as the teacher, a knot 1.2 min, a leg of fringe 1 min"
        " for 10 beads: a teacher's timing of one class, common practice",
        "work put down at the end of a meeting and taken up in the next, curing between them:"
        " counting, worked out for this project",
    ),
    bad="class: {length: 2 h} for a rope that takes a student four hours to weave",
    good="class: {length: 2 h, prepared: [rope]} for a rope that students bring woven",
    level="warning",
)
