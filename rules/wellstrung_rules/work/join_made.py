"""Every join of the piece is made by a step: glued, sewn, crimped, hung or closed."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, JoinAtWork, Misfit, Remedy, Rule


def check(join: JoinAtWork, ask: Ask) -> Answer:
    if join.made:
        return Held()
    step = f"a step `{join.line}`" if join.line else f"a step that {join.does}"
    by_hand = Remedy(f"write {step} under `work`")
    remedies = [by_hand]
    if join.line:
        remedies.insert(0, Remedy(by_hand.text, (ask.new_step(join.line),)))
    return Misfit(
        says=f"{join.words}, and no step {join.does}",
        place=join.place,
        found="no step",
        needed=step,
        remedies=tuple(remedies),
        also=(ask.plan.place_of("work"),),
    )


RULE = Rule(
    name="join-made",
    family="work",
    subject=JoinAtWork,
    check=check,
    fault="a join that no step makes",
    title="every join of the piece is made by a step, if the plan has steps",
    why="if a step is missing, whoever follows the list is left with loose parts, and closes the"
    " last ring on the doorstep, without pliers",
    sources=("counting: the joins that follow from `run` and `hung`, against the steps",),
    bad="run: [toggle.a, ring, cap, ...] and no step {do: close ring, part: ring}",
    good="run: [toggle.a, ring, cap, ...] and {do: close ring, part: ring}",
    level="warning",
    yields_to=("no-way-in",),
)
