"""Thread ends are woven in before the end of the rope is glued into its cap."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, ThreadEnds
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.wording import in_yaml
from wellstrung_rules.work import out_of_order


def check(ends: ThreadEnds, ask: Ask) -> Answer:
    rope, glued = ends.rope, ends.glued[0]
    late = next((one for one, glue in ends.finished_first if one.number > glue.number), None)
    if late is not None:
        work = "band" if rope.kind.role is Role.BAND else "rope"
        says = (
            f"the thread ends of `{rope.name}` are finished in step {late.number}, but the glue of"
        )
        says += f" step {glued.number} has closed the {work} in"
        return out_of_order(says, late, glued, late, ask)
    if ends.finishing:
        return Held()
    line = f"{{do: finish thread, part: {in_yaml(rope.name)}}}"
    if not rope.has("thread"):
        raise Missing(f"a step `{line}` under `work`, or the `thread` of `{rope.name}`")
    by_hand = Remedy(f"write `- {line}` before step {glued.number}")
    written = [
        Remedy(by_hand.text, (ask.new_step_after(step, line),))
        for step in ask.plan.steps[: glued.number - 1][-1:]
    ]
    return Misfit(
        says=f"`{rope.name}` is glued in step {glued.number}, and no step before it finishes its"
        " thread ends",
        place=glued.place,
        found="no step",
        needed=f"a step `{line}` before step {glued.number}",
        remedies=(*written, by_hand),
        at_most="warning",
        also=(rope.place_of("thread"),),
    )


RULE = Rule(
    name="finish-before-glue",
    family="work",
    subject=ThreadEnds,
    check=check,
    fault="glued before threads are finished",
    title="thread ends are finished before the rope is glued into a cap",
    why="a tail at a glued end can be neither woven in nor tightened; if it is cut short there,"
    " the last rounds come loose under the cap",
    sources=("the needle has no way into a glued end: common practice, no source",),
    bad="{do: glue, part: cap, to: rope, ...}, {do: finish thread, part: rope}",
    good="{do: finish thread, part: rope}, {do: glue, part: cap, to: rope, ...}",
)
