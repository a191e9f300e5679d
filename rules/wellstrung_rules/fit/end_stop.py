"""What stops a cone on its wire link: the loop outside is wider than the cone's narrow hole."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, LinkThroughCone, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(join: LinkThroughCone, ask: Ask) -> Answer:
    hole = ask.of(join.cone, "hole")
    loop = derived(
        "loop outside",
        "mm",
        rings.outside_of,
        inside=ask.of(join.link, "loop.hole"),
        wire=ask.of(join.link, "wire"),
        source="outside = inside + 2 x wire: geometry",
    )
    margin = loop - hole
    if answer := kept(margin):
        return answer
    loops = f"the loop of `{join.link.name}` ({about(loop, hole)} outside)"
    cone = f"the narrow hole of cone `{join.cone.name}` ({spelled(hole)})"
    size = in_unit_of(hole.middle + margin.likely.low, hole)
    written = ask.of(join.link, "loop.hole")
    wider = in_unit_of(written.middle - margin.likely.low, written)
    return Misfit(
        says=f"{loops} {{slips|may slip}} into {cone}",
        place=join.link.place_of("loop", "hole"),
        found=f"{about(loop, hole)} outside",
        needed=f"wider than {spelled(hole)}",
        remedies=(
            Remedy.write(
                join.link.place_of("loop", "hole"),
                wider,
                f"turn a loop of {wider} inside for `{join.link.name}`, or take a cone with a hole"
                f" of {size} or narrower",
            ),
            Remedy(f"put a bead between cone and loop, or take a cone with a hole of {size}"),
        ),
        margin=margin,
        also=(join.cone.place_of("hole"),),
    )


RULE = Rule(
    name="end-stop",
    family="fit",
    subject=LinkThroughCone,
    check=check,
    title="the loop outside a cone is wider than the cone's narrow hole",
    why="a loop that slips into the cone takes the strands' ends out at the wide side",
    sources=("what stops is wider than the hole it stops at: geometry",),
    bad="a loop of 1 mm in 0.6 mm wire (2.2 mm outside) on a cone with a hole of 2.5 mm",
    good="a loop of 2.5 mm in 0.6 mm wire (3.7 mm outside) on a cone with a hole of 2 mm",
)
