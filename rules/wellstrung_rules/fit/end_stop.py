"""What stops a cone on its wire link: the loop outside is wider than the cone's narrow hole."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, LinkThroughCone, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, lowered, raised, spelled


def check(join: LinkThroughCone, ask: Ask) -> Answer:
    name, place = join.link.name, join.link.place_of("loop", "hole")
    hole, written = ask.of(join.cone, "hole"), ask.of(join.link, "loop.hole")
    loop = derived(
        "loop outside",
        "mm",
        rings.outside_of,
        inside=written,
        wire=ask.of(join.link, "wire"),
        source="outside = inside + 2 x wire: geometry",
    )
    margin = loop - hole
    if answer := kept(margin):
        return answer
    wider, cone = raised(written, margin), f"take a cone with a hole of {lowered(hole, margin)}"
    turned = f"turn a loop of {wider} inside for `{name}`, or {cone} or narrower"
    return Misfit(
        says=f"the loop of `{name}` ({about(loop, hole)} outside) {{slips|may slip}} into the"
        f" narrow hole of cone `{join.cone.name}` ({spelled(hole)})",
        place=place,
        found=f"{about(loop, hole)} outside",
        needed=f"wider than {spelled(hole)}",
        remedies=(
            Remedy.write(place, wider, turned),
            Remedy(f"put a bead between cone and loop, or {cone}"),
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
