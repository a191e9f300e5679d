"""A core that is drawn into the bore of the rope that it fills."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, CoreInRope, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.remedies import next_up
from wellstrung.rulebook.wording import about, at_most, spelled


def check(join: CoreInRope, ask: Ask) -> Answer:
    woven_over = join.core.text("woven_over") if join.core.has("woven_over") else ""
    if woven_over == "yes":
        return None  # the rope takes its width from the core
    core, bore = ask.of(join.core, "outside"), ask.of(join.rope, "inside")
    margin = bore - core
    if answer := kept(margin):
        return answer
    most, place = max(core.middle + margin.likely.low, 0.0), join.core.place_of("outside")
    # a core is listed by the twentieth of a millimetre
    sold = -next_up(-most, 0.05)
    size = at_most(sold or most, core)
    return Misfit(
        says=f"the core `{join.core.name}` ({spelled(core)}) {{is|may be}} too thick for the rope"
        f" `{join.rope.name}`, whose bore is {about(bore, core)}",
        place=place,
        found=spelled(core),
        needed=f"{size} or thinner" if most > 0 else "a rope with a bore",
        remedies=(
            Remedy(
                f"take a core of {size} or thinner for `{join.rope.name}`",
                (Edit(place, size),) if sold > 0 else (),
            ),
            Remedy(f"write `woven_over: yes` in `{join.core.name}` if the rope is woven round it"),
            Remedy("take a thinner core, or add beads to the ring"),
        ),
        margin=margin,
        at_most="error" if woven_over else "warning",
        also=(join.rope.key.place,),
    )


RULE = Rule(
    name="core-in-rope",
    family="fit",
    subject=CoreInRope,
    check=check,
    fault="core too thick",
    title="a core that is drawn into a rope goes into its bore",
    why="a core that is too thick splits the rope's beads apart, or cannot be drawn in at all",
    sources=("what goes in is no thicker than the bore: geometry",),
    bad="a cord of 5 mm, `woven_over: no`, in a rope with a bore of 3.8 mm",
    good="a cord of 3 mm in a rope with a bore of 3.8 mm",
)
