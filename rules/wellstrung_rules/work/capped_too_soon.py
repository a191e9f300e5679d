"""A closed ring goes on a rope while it can still pass what stands at one of its ends."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Held,
    Misfit,
    Missing,
    Part,
    Quantity,
    Remedy,
    RingOnCappedRope,
    Rule,
    Verdict,
    about,
    caps_at,
    compare,
)


def check(ring_on_rope: RingOnCappedRope, ask: Ask) -> Answer:
    ring, rope, step = ring_on_rope.ring, ring_on_rope.rope, ring_on_rope.step
    if ring.text("closing") in ("open", "split"):
        return None
    caps = caps_at(ask.plan, rope)
    if not caps:
        return Held()
    if step is None:
        raise Missing(f"a step `{{do: slide, part: {ring.name}, onto: {rope.name}}}` under `work`")
    if not ring_on_rope.blocked_by:
        return Held()
    # the ring may go over either end: the easier one decides
    margin = max((_over(ring, cap, ask) for cap in caps), key=lambda room: room.likely.low)
    if compare(margin) is Verdict.HOLDS:
        return Held(margin)
    cap, glued = ring_on_rope.blocked_by[-1]
    inside, outside = ask.of(ring, "inside"), ask.of(cap, "outside")
    sizes = f"{about(inside)}, and the outside of cap `{cap.name}` is {about(outside)}"
    head = f"ring `{ring.name}` is {ring.text('closing')} and goes on `{rope.name}` in step"
    tail = (
        f"{step.number}, after step {glued.number} has capped both its ends: its inside is {sizes}"
    )
    return Misfit(
        says=f"{head} {tail}",
        may=f"{head} {tail}, so it may not pass",
        place=step.place,
        found=f"step {step.number}",
        needed=f"before step {glued.number}",
        remedies=_remedies(ring_on_rope, ask),
        margin=margin,
        also=(glued.place,),
    )


def _over(ring: Part, cap: Part, ask: Ask) -> Quantity:
    return ask.of(ring, "inside") - ask.of(cap, "outside")


def _remedies(ring_on_rope: RingOnCappedRope, ask: Ask) -> tuple[Remedy, ...]:
    step, glued = ring_on_rope.step, ring_on_rope.blocked_by[-1][1]
    assert step is not None
    name = ring_on_rope.ring.name
    moved = ask.moved_before(step, glued)
    opened = (Edit(ring_on_rope.ring.place_of("closing"), "open"),)
    by_hand = Remedy(f"put `{name}` on before the caps are glued")
    *order, by_hand = ask.in_order(by_hand)
    return (
        Remedy(f"move step {step.number} to before step {glued.number}", moved),
        *order,
        Remedy(f"take an open ring for `{name}`", opened),
        by_hand,
    )


RULE = Rule(
    name="capped-too-soon",
    family="work",
    subject=RingOnCappedRope,
    check=check,
    title="a closed ring is on the rope before both its ends are capped",
    why="a cap glued on is there to stay, and a ring that cannot be opened will not pass it",
    sources=("a solid ring passes only what is narrower than its inside: geometry",),
    bad="glue both caps, then slide the closed carrier on the rope",
    good="slide the closed carrier on the rope, then glue both caps",
)
