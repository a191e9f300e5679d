"""A glued joint is not loaded before handling cure and not worn before full cure."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, GluedJoint, Held, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.plan import Edit, Step
from wellstrung.rulebook.values import exact, leaf, table
from wellstrung.rulebook.wording import in_unit_of, spelled, spelled_time


def check(joint: GluedJoint, ask: Ask) -> Answer:
    stalled = _stalled(joint, ask)
    if stalled is not None:
        return stalled
    answer: Answer = None
    if joint.loaded is not None:
        answer = _judged(joint, ask, joint.loaded, "handling", "pulled on")
    worn = _WORN[joint.worn.verb if joint.worn else ""]
    at_last = _judged(joint, ask, joint.worn, "full_cure", worn)
    # the longer wait puts the shorter one right too, so it alone is shown
    return at_last if isinstance(at_last, Misfit) or not isinstance(answer, Misfit) else answer


def _stalled(joint: GluedJoint, ask: Ask) -> Misfit | None:
    """A room so cold that many formulas never cure fully, however long they have."""
    glue = joint.adhesive
    row = table("adhesives").row(glue.text("type"))
    if not glue.has("room") or "stalls_below" not in row.cells:
        return None
    cell, room = row.cell("stalls_below"), glue.temperature("room")
    least = exact("stalls below", cell.value, cell.unit, source=f"adhesives: {cell.grade}")
    margin = room - least
    if holds(margin, over="worst"):
        return None
    says = (
        f"`{joint.cap.name}`, glued in step {joint.step.number}, cures at {spelled(room)}, but many"
        f" kinds of {row.name} never cure fully below {in_unit_of(cell.value, room)}"
    )
    warm = in_unit_of(row.cell("stated_at").value, room)
    text = f"keep the joint at {warm}, for which cure times are stated, and write `room: {warm}`"
    return Misfit(
        says=says,
        place=room.place or glue.key.place,
        found=spelled(room),
        needed=f"{in_unit_of(cell.value, room)} or more",
        remedies=(Remedy.write(glue.place_of("room"), warm, text), Remedy(text)),
        margin=margin,
        at_most="warning",
        also=(joint.place,),
    )


_WORN = {"wear": "worn", "pack": "packed", "": "taken as ready to wear"}


def _judged(joint: GluedJoint, ask: Ask, step: Step | None, cure: str, words: str) -> Held | Misfit:
    """Whether a joint has cured when a step begins, or when the work ends."""
    needed, after = ask.of(joint.adhesive, cure), ask.minutes_between(joint.step, step)
    margin = leaf(f"time since step {joint.step.number}", after, "min") - needed
    if answer := kept(margin, over="worst"):
        return answer
    waits, asks = spelled_time(after), spelled_time(_up(needed.worst.high))
    room = f" at {joint.adhesive.text('room')}" if needed.args else ""
    until = "to cure fully" if cure == "full_cure" else "until it can be handled"
    when = f"in step {step.number}" if step else "when the last step is done"
    says = (
        f"`{joint.cap.name}` is glued in step {joint.step.number} and {words} {when}, {waits}"
        f" later, but `{joint.adhesive.name}` needs {asks}{room} {until}"
    )
    return Misfit(
        says=says,
        place=(step or ask.plan.steps[-1]).place,
        found=waits,
        needed=asks,
        remedies=_remedies(joint, ask, step, _up(needed.worst.high) - after, asks),
        margin=margin,
        also=(joint.place,),
    )


def _remedies(
    joint: GluedJoint, ask: Ask, until: Step | None, missing: float, asks: str
) -> tuple[Remedy, ...]:
    last = until.number - 1 if until else len(ask.plan.steps)
    longer = []
    for step in ask.plan.steps[joint.step.number : last]:
        if step.verb == "wait":
            time = spelled_time(step.minutes("time") + missing)
            edit = Edit(step.place_of("time"), time)
            longer.append(Remedy(f"let step {step.number} wait {time}", (edit,)))
    # a wait right behind the glue serves every step that comes after
    line = f"{{do: wait, time: {asks}}}"
    text = f"wait {asks} after step {joint.step.number}: `- {line}`"
    new = Remedy(text, (ask.new_item_after(joint.place, line),))
    *order, by_hand = ask.in_order(Remedy(text))
    # the waits that are written already, before more waiting
    return (*order, *longer, new, by_hand)


def _up(minutes: float) -> float:
    """A time worked out for a room, rounded up to whole minutes, or hours from two on."""
    if abs(minutes - round(minutes)) < 1e-6:
        return minutes
    step = 60 if minutes >= 120 else 1
    return math.ceil(minutes / step) * step


RULE = Rule(
    name="cure-time",
    family="work",
    subject=GluedJoint,
    check=check,
    title="a glued joint is left alone until it has cured: to handling, then to full strength",
    why=(
        "five-minute epoxy sets in minutes and looks done, but carries weight only after about a"
        " day; a cap pulled off at the clasp takes the rope's end with it"
    ),
    sources=(
        "5-minute epoxy gels in 5 min and needs 24 h: adhesive makers' pages, copies seen",
        "the rate doubles for each 10 °C, and many epoxies stall below 13 °C: trade table"
        " `adhesives`, epoxy makers' pages, copies seen",
        "a joint is worn when the work ends unless a `wear` or `pack` step says when",
    ),
    bad="{do: glue, ...}, {do: wait, time: 20 min}, {do: wear}",
    good="{do: glue, ...}, {do: wait, time: 24 h}, {do: wear}",
    over="worst",
)
