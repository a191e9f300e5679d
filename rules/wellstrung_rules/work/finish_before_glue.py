"""Thread ends are woven in before the end of the rope is glued into its cap."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, ThreadEnds
from wellstrung.rulebook.plan import Role


def check(ends: ThreadEnds, ask: Ask) -> Answer:
    rope, glued = ends.rope, ends.glued[0]
    late = next((one for one, glue in ends.finished_first if one.number > glue.number), None)
    if late is not None:
        work = "band" if rope.kind.role is Role.BAND else "rope"
        move = f"move step {late.number} to before step {glued.number}"
        return Misfit(
            says=(
                f"the thread ends of `{rope.name}` are finished in step {late.number}, but the glue"
                f" of step {glued.number} has closed the {work} in"
            ),
            place=late.place,
            found=f"step {late.number}",
            needed=f"before step {glued.number}",
            remedies=(Remedy(move, ask.moved_before(late, glued)), *ask.in_order(Remedy(move))),
            also=(glued.place,),
        )
    if ends.finishing:
        return Held()
    line = f"{{do: finish thread, part: {rope.name}}}"
    if not rope.has("thread"):
        raise Missing(f"a step `{line}` under `work`, or the `thread` of `{rope.name}`")
    return Misfit(
        says=(
            f"`{rope.name}` is glued in step {glued.number}, and no step before it finishes its"
            " thread ends"
        ),
        place=glued.place,
        found="no step",
        needed=f"a step `{line}` before step {glued.number}",
        remedies=_written_in(ends, ask, line),
        at_most="warning",
        also=(rope.place_of("thread"),),
    )


def _written_in(ends: ThreadEnds, ask: Ask, line: str) -> tuple[Remedy, ...]:
    text = f"write `- {line}` before step {ends.glued[0].number}"
    steps = ask.plan.steps[: ends.glued[0].number - 1]
    if not steps:
        return (Remedy(text),)
    return (Remedy(text, (ask.new_item_after(steps[-1].place, line),)), Remedy(text))


RULE = Rule(
    name="finish-before-glue",
    family="work",
    subject=ThreadEnds,
    check=check,
    title="thread ends are finished before the rope is glued into a cap",
    why=(
        "a tail left at a glued end can neither be woven in nor tightened, and one that is cut"
        " short there lets the last rounds slip under the cap"
    ),
    sources=("the needle has no way into a glued end: common practice, no source",),
    bad="{do: glue, part: cap, to: rope, ...}, {do: finish thread, part: rope}",
    good="{do: finish thread, part: rope}, {do: glue, part: cap, to: rope, ...}",
)
