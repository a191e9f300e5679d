"""A glued joint is not loaded before handling cure and not worn before full cure."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    GluedJoint,
    Held,
    Misfit,
    Moment,
    Quantity,
    Remedy,
    Rule,
    Verdict,
    compare,
    leaf,
    spelled_time,
)


def check(joint: GluedJoint, ask: Ask) -> Answer:
    answers = [
        _judged(joint, ask, moment, cure, words)
        for moment, cure, words in (
            (joint.loaded, "handling", "is pulled on"),
            (joint.worn, "full_cure", _WORN[joint.worn.step.verb if joint.worn.step else ""]),
        )
        if moment is not None
    ]
    # the longer wait mends the shorter one too, so it alone speaks
    for answer in reversed(answers):
        if isinstance(answer, Misfit):
            return answer
    return answers[-1]


_WORN = {"wear": "is worn", "pack": "is packed", "": "counts as ready to wear"}


def _judged(joint: GluedJoint, ask: Ask, moment: Moment, cure: str, words: str) -> Held | Misfit:
    needed = ask.of(joint.adhesive, cure)
    cured = leaf(f"time since step {joint.step.number}", moment.after, "min")
    margin = cured - needed
    if compare(margin, over=RULE.over) is Verdict.HOLDS:
        return Held(margin)
    waits = spelled_time(moment.after)
    asks = spelled_time(needed.worst.high)
    name = cure.replace("_", " ") if cure == "full_cure" else "handling cure"
    when = f"in step {moment.step.number}" if moment.step else "when the last step is done"
    says = (
        f"`{joint.cap.name}`, glued in step {joint.step.number}, {words} {when}, {waits} later, and"
        f" `{joint.adhesive.name}` needs {asks} to its {name}"
    )
    return Misfit(
        says=says,
        may=says,
        place=moment.place,
        found=waits,
        needed=asks,
        remedies=_remedies(joint, ask, moment, needed),
        margin=margin,
        also=(joint.place,),
    )


def _remedies(joint: GluedJoint, ask: Ask, moment: Moment, needed: Quantity) -> tuple[Remedy, ...]:
    missing = needed.worst.high - moment.after
    last = moment.step.number - 1 if moment.step else len(ask.plan.steps)
    remedies = []
    for step in ask.plan.steps[joint.step.number : last]:
        if step.verb == "wait":
            wanted = spelled_time(step.minutes("time") + missing)
            edit = Edit(step.node.entries["time"].node.place, wanted)
            remedies.append(Remedy(f"let step {step.number} wait {wanted}", (edit,)))
    # a wait right behind the glue serves every step that comes after
    line = f"{{do: wait, time: {spelled_time(needed.worst.high)}}}"
    text = f"wait {spelled_time(needed.worst.high)} after step {joint.step.number}: `- {line}`"
    remedies.append(Remedy(text, (ask.new_item_after(joint.place, line),)))
    return (*remedies, Remedy(text))


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
        "a joint is worn when the work ends unless a `wear` or `pack` step says when",
    ),
    bad="{do: glue, ...}, {do: wait, time: 20 min}, {do: wear}",
    good="{do: glue, ...}, {do: wait, time: 24 h}, {do: wear}",
    over="worst",
)
