"""A closed ring goes on a rope while one end of the rope still lets it pass."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    Misfit,
    Missing,
    Remedy,
    RingOnCappedRope,
    Rule,
    kept,
    over_easier_cap,
)
from wellstrung.rulebook.remedies import other_closings
from wellstrung.rulebook.wording import about


def check(ring_on_rope: RingOnCappedRope, ask: Ask) -> Answer:
    ring, rope, step = ring_on_rope.ring, ring_on_rope.rope, ring_on_rope.step
    if ask.opens(ring):
        return None
    if not ring_on_rope.caps:
        return Held()
    if step is None:
        raise Missing(f"a step `{{do: slide, part: {ring.name}, onto: {rope.name}}}` under `work`")
    glued = ring_on_rope.capped
    if glued is None or step.number < glued.number:
        return Held()
    margin = over_easier_cap(ring, ring_on_rope.caps, ask.quantities)
    if answer := kept(margin):
        return answer
    cap = glued.parts["part"]
    inside, outside = about(ask.of(ring, "inside")), about(ask.of(cap, "outside"))
    *order, by_hand = ask.in_order(Remedy(f"put `{ring.name}` on before the caps are glued"))
    return Misfit(
        says=f"ring `{ring.name}` is {ring.text('closing')} and goes on `{rope.name}` in step"
        f" {step.number}, after step {glued.number} has capped both ends: the inside of the ring"
        f" is {inside}, and the outside of cap `{cap.name}` is {outside}{{|, so it may not pass}}",
        place=step.place,
        found=f"step {step.number}",
        needed=f"before step {glued.number}",
        remedies=(
            ask.moved_before(step, glued),
            *order,
            *other_closings(ring, ask, "open"),
            by_hand,
        ),
        margin=margin,
        also=(glued.place,),
    )


RULE = Rule(
    name="capped-too-soon",
    family="work",
    subject=RingOnCappedRope,
    check=check,
    fault="capped before a closed ring is on",
    title="a closed ring is on the rope before both its ends are capped",
    why="a glued cap stays on, and a ring that does not open will not pass it",
    sources=("a solid ring passes only what is narrower than its inside: geometry",),
    bad="glue both caps, then slide the closed carrier on the rope",
    good="slide the closed carrier on the rope, then glue both caps",
)
