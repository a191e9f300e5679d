"""A ring that a step closes is one that opens, and what hangs from it is on it by then."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, RingClosed, Rule
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.remedies import other_closings
from wellstrung.rulebook.wording import in_yaml
from wellstrung_rules.work import out_of_order


def check(closing: RingClosed, ask: Ask) -> Answer:
    ring, step = closing.ring, closing.step
    if ask.opens(ring):
        late = next((one for one in closing.hung_first if one.number > step.number), None)
        if late is None:
            return Held()
        hangs = f"step {late.number} hangs `{late.parts['part'].name}` on it"
        says = f"step {step.number} closes `{ring.name}`, and only {hangs}"
        return out_of_order(says, late, step, late, ask)
    return Misfit(
        says=f"step {step.number} closes `{ring.name}`, which is a {ring.text('closing')} ring and"
        " does not open",
        place=step.place_of("part"),
        found=f"a {ring.text('closing')} ring",
        needed="a ring that opens, or no step that closes it",
        remedies=(*other_closings(ring, ask, "open"), _without_it(closing, ask)),
        also=(ring.key.place,),
    )


def _without_it(closing: RingClosed, ask: Ask) -> Remedy:
    """The step taken out; where no step hangs the ring, one that does takes its place."""
    ring, step = closing.ring, closing.step
    hangs = any(line.part is ring for line in ask.plan.hung)
    if not hangs or ask.plan.steps_that("hang", part=ring):
        return Remedy(f"take step {step.number} out, or name the ring that is closed there")
    line = f"{{do: hang, part: {in_yaml(ring.name)}}}"
    return Remedy(f"write `{line}` in place of step {step.number}", (Edit(step.place, line),))


RULE = Rule(
    name="closed-already",
    family="work",
    subject=RingClosed,
    check=check,
    fault="step for a ring that is shut",
    title="a ring that a step closes is one that opens, and what hangs from it is on it by then",
    why="whoever follows the list looks for the gap of a ring that has none, or bends a ring open"
    " again that was shut a step before",
    sources=("a soldered or closed ring has no gap: geometry",),
    bad="{do: close ring, part: ring} of a soldered ring",
    good="{do: close ring, part: ring} of an open jump ring",
    yields_to=("no-way-in",),
    level="warning",
)
