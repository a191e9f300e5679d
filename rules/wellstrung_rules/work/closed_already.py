"""A ring that a step closes is one that opens."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, RingClosed, Rule
from wellstrung.rulebook.remedies import other_closings


def check(closing: RingClosed, ask: Ask) -> Answer:
    ring, step = closing.ring, closing.step
    if ask.opens(ring):
        return Held()
    return Misfit(
        says=f"step {step.number} closes `{ring.name}`, which is a {ring.text('closing')} ring and"
        " does not open",
        place=step.place_of("part"),
        found=f"a {ring.text('closing')} ring",
        needed="a ring that opens, or no step that closes it",
        remedies=(
            *other_closings(ring, ask, "open"),
            Remedy(f"take step {step.number} out, or name the ring that is closed there"),
        ),
        also=(ring.key.place,),
    )


RULE = Rule(
    name="closed-already",
    family="work",
    subject=RingClosed,
    check=check,
    fault="step for a ring that is shut",
    title="a ring that a step closes is one that opens",
    why="whoever follows the list looks for the gap of a ring that has none",
    sources=("a soldered or closed ring has no gap: geometry",),
    bad="{do: close ring, part: ring} of a soldered ring",
    good="{do: close ring, part: ring} of an open jump ring",
    yields_to=("no-way-in",),
    level="warning",
)
