"""What stops at a hole is wider than it: a loop outside its cone, a turn bead below its leg.

A crimp or a knot that holds beads apart stops at their holes.

A turn bead hangs across its thread, so that it goes into a hole that takes both its length and its
outside.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StopsAt, kept
from wellstrung.rulebook.plan import Bead
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, lowered, raised, spelled

_OUTSIDE = "outside = inside + 2 x wire: geometry"


def check(join: StopsAt, ask: Ask) -> Answer:
    if not isinstance(join.at, Bead):
        return _loop(join, ask)
    hole, stop = ask.of(join.at, "hole"), join.stop
    if isinstance(stop, Bead):
        wide = max((ask.of(stop, what) for what in ("outside", "length")), key=lambda x: x.middle)
    else:
        wide = ask.of(join.carrier, "stop")
    margin = wide - hole
    if answer := kept(margin):
        return answer
    slips = "{slip|may slip}" if stop is join.carrier else "{slips|may slip}"
    what, do = _named(join, raised(wide, margin))
    return Misfit(
        says=f"{what} ({about(wide)} across) {slips} into the hole of bead `{join.at.name}`"
        f" ({about(hole)})",
        place=join.place,
        found=f"{about(wide)} across",
        needed=f"wider than {about(hole)}",
        remedies=(*_knotted(join, ask), Remedy(do)),
        margin=margin,
        also=(join.at.key.place,),
    )


def _knotted(join: StopsAt, ask: Ask) -> Iterator[Remedy]:
    """A wider knot where a single overhand stops there."""
    if join.stop is join.carrier and not join.carrier.has("knot"):
        edit = ask.with_field(join.carrier.node, "knot", "double overhand")
        yield Remedy("tie a second overhand over each: `knot: double overhand`", (edit,))


def _named(join: StopsAt, more: str) -> tuple[str, str]:
    """What stops at a bead, and what to do where it does not."""
    stop, carrier = join.stop, join.carrier
    if isinstance(stop, Bead):
        return f"the turn bead `{stop.name}` of `{carrier.name}`", f"turn round a bead over {more}"
    beside = f"beside the beads of `{carrier.name}`"
    small = "or string a small bead on each side of each group"
    if stop is carrier:
        return f"the knots {beside}", f"knot a thicker line, {small}"
    return f"crimp `{stop.name}` {beside}", f"take a larger crimp, {small}"


def _loop(join: StopsAt, ask: Ask) -> Answer:
    link, cone_part = join.carrier, join.at
    name, place = link.name, link.place_of("loop", "hole")
    hole, written, wire = ask.of(cone_part, "hole"), ask.of(link, "loop.hole"), ask.of(link, "wire")
    loop = derived(
        "loop outside", "mm", rings.outside_of, inside=written, wire=wire, source=_OUTSIDE
    )
    margin = loop - hole
    if answer := kept(margin):
        return answer
    wider, cone = raised(written, margin), f"take a cone with a hole of {lowered(hole, margin)}"
    between = Remedy(f"put a bead between cone and loop, or {cone}")
    turned = f"turn a loop of {wider} inside for `{name}`, or {cone} or narrower"
    return Misfit(
        says=f"the loop of `{name}` ({about(loop, hole)} outside) {{slips|may slip}} into the"
        f" narrow hole of cone `{cone_part.name}` ({spelled(hole)})",
        place=place,
        found=f"{about(loop, hole)} outside",
        needed=f"wider than {spelled(hole)}",
        remedies=(Remedy.write(place, wider, turned), between),
        margin=margin,
        also=(cone_part.place_of("hole"),),
    )


RULE = Rule(
    name="end-stop",
    family="fit",
    subject=StopsAt,
    check=check,
    fault="an end slips through its hole",
    title="what stops at a hole is wider: the loop outside a cone, the turn bead below its leg, the"
    " crimp or knot beside a bead",
    why="a loop that slips into its cone takes the strands out at the wide side, and a turn bead"
    " that slips into the bead above it lets the whole leg go slack",
    sources=("what stops is wider than the hole it stops at: geometry",),
    bad="a loop of 1 mm in 0.6 mm wire (2.2 mm outside) on a cone with a hole of 2.5 mm",
    good="a loop of 2.5 mm in 0.6 mm wire (3.7 mm outside) on a cone with a hole of 2 mm",
)
