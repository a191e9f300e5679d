"""A drop whose hole goes across its top hangs by a wire bent up on both sides, not on a pin."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, Threaded


def check(join: Threaded, ask: Ask) -> Answer:
    part, bead = join.part, join.bead
    if not part.traits.on_wire or part.traits.takes_tops is bead.top_drilled:
        return Held() if part.traits.takes_tops else None
    if part.traits.takes_tops:
        return _through_its_middle(join)
    pin = part.said("type") if part.has("type") else part.noun
    wrap = Remedy.write(
        part.place_of("type"), "briolette wrap", "bend a wire through its top: `briolette wrap`"
    )
    return Misfit(
        says=f"the hole of `{bead.name}` goes across its top, so that on `{part.name}`, a straight"
        f" {pin}, it lies across the wire and does not hang",
        place=join.place,
        found=f"a straight {pin}",
        needed="what goes through its top and up on both sides",
        remedies=(
            wrap,
            Remedy("hang it by a jump ring through its top, as a `pendant` with `top_eyes`"),
            Remedy("or let thread turn round it: the `turn` of a `bead drop`"),
        ),
        also=(bead.key.place,),
    )


def _through_its_middle(join: Threaded) -> Misfit:
    part, bead = join.part, join.bead
    return Misfit(
        says=f"`{part.name}` is bent up on both sides of the top of a drop, and the hole of"
        f" `{bead.name}` goes through its middle",
        place=join.place,
        found="a hole through the middle",
        needed="a hole across the top",
        remedies=(
            Remedy(f"write `drilled: top` for `{bead.name}` if it is, or take a `head pin`"),
        ),
        also=(bead.key.place,),
    )


RULE = Rule(
    name="top-drilled",
    family="fit",
    subject=Threaded,
    check=check,
    fault="top-drilled drop on a pin",
    title="a top-drilled drop hangs by what goes up on both sides of it",
    why="a head pin through the top of a briolette sticks out in front of the ear, and the drop"
    " stands on its edge",
    sources=("common practice, no source",),
    bad="pin: {kind: wire link, type: head pin, beads: briolette}",
    good="pin: {kind: wire link, type: briolette wrap, beads: briolette}",
    level="warning",
)
