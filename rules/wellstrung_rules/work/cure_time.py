"""A glued joint is not loaded before it can be handled and not worn before it has cured fully."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GluedJoint, Held, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.plan import Step
from wellstrung.rulebook.remedies import longer_waits
from wellstrung.rulebook.values import exact, leaf, table
from wellstrung.rulebook.wording import in_unit_of, spelled, spelled_time, waited

_SEWN = {"weave": "sewn round", "edge": "sewn round its edge"}
_WORN = {"wear": "worn", "pack": "packed", "": "taken as ready to wear"}


def check(joint: GluedJoint, ask: Ask) -> Answer:
    if stalled := _stalled(joint, ask):
        return stalled
    how = _SEWN.get(joint.loaded.verb if joint.loaded else "", "pulled on")
    handled = joint.loaded and _judged(joint, ask, joint.loaded, "handling", how)
    end = _judged(joint, ask, joint.worn, "full_cure", _WORN[joint.worn.verb if joint.worn else ""])
    # the longer wait puts the shorter one right too, so it alone is shown
    return handled if isinstance(handled, Misfit) and isinstance(end, Held) else end


def _stalled(joint: GluedJoint, ask: Ask) -> Misfit | None:
    """A room so cold that many formulas never cure fully, however long they have."""
    glue, row = joint.adhesive, table("adhesives").row(joint.adhesive.text("type"))
    if not glue.has("room") or "stalls_below" not in row.cells:
        return None
    cell, room = row.cell("stalls_below"), glue.temperature("room")
    margin = room - exact("stalls below", cell.value, cell.unit, f"adhesives: {cell.grade}")
    if holds(margin, over="worst"):
        return None
    least, warm = (in_unit_of(row.cell(name).value, room) for name in ("stalls_below", "stated_at"))
    text = f"keep the joint at {warm}, for which cure times are stated, and write `room: {warm}`"
    return Misfit(
        says=f"`{joint.cap.name}`, glued in step {joint.step.number}, cures at {spelled(room)},"
        f" but many kinds of {row.name} never cure fully below {least}",
        place=room.place or glue.key.place,
        found=spelled(room),
        needed=f"{least} or more",
        remedies=(Remedy.write(glue.place_of("room"), warm, text), Remedy(text)),
        margin=margin,
        at_most="warning",
        also=(joint.place,),
    )


def _judged(joint: GluedJoint, ask: Ask, until: Step | None, cure: str, words: str) -> Answer:
    """Whether a joint has cured when a step begins, or when the work ends."""
    glue, number = joint.adhesive, joint.step.number
    needed, after = ask.of(glue, cure), ask.minutes_between(joint.step, until)
    margin = leaf(f"time since step {number}", after, "min") - needed
    if answer := kept(margin, over="worst"):
        return answer
    waits, asks = spelled_time(after), spelled_time(least := waited(needed.worst.high))
    room = f" at {glue.text('room')}" if needed.args else ""
    cured = "to cure fully" if cure == "full_cure" else "until it can be handled"
    when = f"in step {until.number}" if until else "when the last step is done"
    between = ask.plan.steps[number : until.number - 1 if until else None]
    later = f"{waits} later" if after else "with no time written in between"
    # one wait after all that is glued before that step serves every joint
    last = [joint.step, *(step for step in between if step.verb == "glue")][-1]
    line = f"{{do: wait, time: {asks}}}"
    text = f"wait {asks} after step {last.number}: `- {line}`"
    *order, by_hand = ask.in_order(Remedy(text))
    return Misfit(
        says=f"`{joint.cap.name}` is glued in step {number} and {words} {when}, {later}, but"
        f" `{glue.name}` needs {asks}{room} {cured}",
        place=(until or ask.plan.steps[-1]).place,
        found=waits,
        needed=asks,
        remedies=(
            *order,
            *longer_waits(between[last.number - number :], least - after),
            Remedy(text, (ask.new_step_after(last, line),)),
            by_hand,
        ),
        margin=margin,
        # a knot holds by itself, and so do the beads round a stone
        at_most="error" if "to" in joint.step.parts else "warning",
        also=(joint.place,),
    )


RULE = Rule(
    name="cure-time",
    family="work",
    subject=GluedJoint,
    check=check,
    fault="glue has no time to cure",
    title="a glued joint rests until it has cured: first until it can be handled, then fully",
    why="five-minute epoxy sets in minutes and looks done, but carries weight only after about a"
    " day; a cap pulled off at the clasp takes the rope's end with it",
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
