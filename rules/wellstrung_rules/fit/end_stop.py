"""What stops at a hole is wider than it: a loop outside its cone, a turn bead below its leg.

A crimp or a knot that holds beads apart stops at their holes.

A turn bead hangs across its thread, so that it goes into a hole that takes both its length and its
outside.
"""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StopsAt, kept
from wellstrung.rulebook.plan import Bead, Role
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, lowered, raised, spelled


def check(join: StopsAt, ask: Ask) -> Answer:
    if join.carrier.kind.role is Role.STRAND:
        return _hold(join, ask)
    return _turn(join, join.stop, ask) if isinstance(join.stop, Bead) else _loop(join, ask)


def _turn(join: StopsAt, turn: Bead, ask: Ask) -> Answer:
    hole, sizes = ask.of(join.at, "hole"), [ask.of(turn, what) for what in ("outside", "length")]
    wide = max(sizes, key=lambda size: size.middle)
    margin = wide - hole
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"the turn bead `{turn.name}` of `{join.carrier.name}` ({about(wide)}) {{slips|may"
        f" slip}} into the hole of bead `{join.at.name}` above it ({about(hole)})",
        place=join.place,
        found=about(wide),
        needed=f"wider than {about(hole)}",
        remedies=(Remedy(f"turn round a bead of more than {raised(wide, margin)}"),),
        margin=margin,
        also=(join.at.key.place,),
    )


def _hold(join: StopsAt, ask: Ask) -> Answer:
    strand, hole, wide = join.carrier, ask.of(join.at, "hole"), ask.of(join.carrier, "stop")
    margin = wide - hole
    if answer := kept(margin):
        return answer
    tied = join.stop is strand
    what = "the knots" if tied else f"crimp `{join.stop.name}`"
    slips = "{slip|may slip}" if tied else "{slips|may slip}"
    more = "knot a thicker line, or twice over" if tied else "take a larger crimp"
    return Misfit(
        says=f"{what} beside the beads of `{strand.name}` ({about(wide)} across) {slips} into the"
        f" hole of bead `{join.at.name}` ({about(hole)})",
        place=join.place,
        found=f"{about(wide)} across",
        needed=f"wider than {about(hole)}",
        remedies=(Remedy(f"{more}, or string a small bead on each side of each group"),),
        margin=margin,
        also=(join.at.key.place,),
    )


def _loop(join: StopsAt, ask: Ask) -> Answer:
    link, cone_part = join.carrier, join.at
    name, place = link.name, link.place_of("loop", "hole")
    hole, written = ask.of(cone_part, "hole"), ask.of(link, "loop.hole")
    loop = derived(
        "loop outside",
        "mm",
        rings.outside_of,
        inside=written,
        wire=ask.of(link, "wire"),
        source="outside = inside + 2 x wire: geometry",
    )
    margin = loop - hole
    if answer := kept(margin):
        return answer
    wider, cone = raised(written, margin), f"take a cone with a hole of {lowered(hole, margin)}"
    turned = f"turn a loop of {wider} inside for `{name}`, or {cone} or narrower"
    return Misfit(
        says=f"the loop of `{name}` ({about(loop, hole)} outside) {{slips|may slip}} into the"
        f" narrow hole of cone `{cone_part.name}` ({spelled(hole)})",
        place=place,
        found=f"{about(loop, hole)} outside",
        needed=f"wider than {spelled(hole)}",
        remedies=(
            Remedy.write(place, wider, turned),
            Remedy(f"put a bead between cone and loop, or {cone}"),
        ),
        margin=margin,
        also=(cone_part.place_of("hole"),),
    )


RULE = Rule(
    name="end-stop",
    family="fit",
    subject=StopsAt,
    check=check,
    fault="an end slips through its hole",
    title="what stops at a hole is wider: the loop outside a cone, the turn bead below its leg",
    why="a loop that slips into its cone takes the strands out at the wide side, and a turn bead"
    " that slips into the bead above it lets the whole leg go slack",
    sources=("what stops is wider than the hole it stops at: geometry",),
    bad="a loop of 1 mm in 0.6 mm wire (2.2 mm outside) on a cone with a hole of 2.5 mm",
    good="a loop of 2.5 mm in 0.6 mm wire (3.7 mm outside) on a cone with a hole of 2 mm",
)
