"""The line of a strand through the holes of its beads, as often as it passes."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Missing, Rule, Threaded, holds, kept
from wellstrung.rulebook.plan import Role, bead_mix
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, raised, spelled, together
from wellstrung_rules.fit import REAM_WET, lines_in_hole, thinner_or_wider, with_needle


def check(join: Threaded, ask: Ask) -> Answer:
    if join.part.kind.role is not Role.STRAND:
        return None
    hole = ask.of(join.bead, "hole")
    if answer := kept(hole - lines_in_hole(join, join.lines, ask)):
        return answer
    # one line to change: one remark, of the bead that lacks most, with the others by name
    lacks = _too_narrow(join, ask)
    worst, *others = sorted(lacks, key=lambda one: lacks[one].likely.low)
    return _misfit(worst, lacks[worst], {one: lacks[one] for one in others}, ask)


def _too_narrow(join: Threaded, ask: Ask) -> dict[Threaded, Quantity]:
    """The beads of a strand that its line may not pass, each with its margin."""
    found = {}
    for name in bead_mix(join.part):
        one = Threaded(join.place, join.part, ask.plan.beads[name])
        try:
            margin = ask.of(one.bead, "hole") - lines_in_hole(one, one.lines, ask)
        except Missing:  # open by itself
            continue
        if not holds(margin):
            found[one] = margin
    return found


def _misfit(join: Threaded, margin: Quantity, others: dict[Threaded, Quantity], ask: Ask) -> Misfit:
    line, hole = ask.of(join.part, "line"), ask.of(join.bead, "hole")
    ratio = lines_in_hole(join, join.lines, ask).middle / line.middle
    times = {1: "", 2: " twice"}.get(join.lines, f" {join.lines} times")
    short, thickest = with_needle(join, margin, line.middle + margin.likely.low / ratio, ask)
    ream = "" if join.bead.reamed_dry or join.bead.seed else f"; {REAM_WET}"
    return Misfit(
        says=f"the line of `{join.part.name}` ({spelled(line)}) {{does|may}} not pass the hole of"
        f" bead `{join.bead.name}` ({spelled(hole)}){times}: the hole would need to be"
        f" {about(lines_in_hole(join, join.lines, ask), hole)}{_so_do(others)}",
        place=join.part.place_of("thread"),
        found=spelled(line),
        needed=f"a hole of {raised(hole, short)} or wider",
        remedies=(thinner_or_wider(join, short, thickest, ask, ream),),
        margin=margin,
        also=tuple(one.bead.key.place for one in (join, *others)),
    )


def _so_do(others: dict[Threaded, Quantity]) -> str:
    """The other beads of which the same is known, or may be."""
    surely = [f"`{one.bead.name}`" for one, lacks in others.items() if lacks.likely.high < 0]
    maybe = [f"`{one.bead.name}`" for one, lacks in others.items() if lacks.likely.high >= 0]
    goes = f"; the same goes for {together(surely)}" if surely else ""
    return goes + (f"; it may be so with {together(maybe)}" if maybe else "")


RULE = Rule(
    name="string-in-hole",
    family="fit",
    subject=Threaded,
    check=check,
    fault="line too thick for its beads",
    title=(
        "the line of a strand passes its beads as often as it has to (the thread of woven beads is"
        " `hole-passes`, the needle with it `needle-pass`)"
    ),
    why="a pearl whose hole takes the wire once, and not back again, cannot be crimped or knotted",
    sources=(
        "equal circles in a circle: published best ratios",
        "an elastic asks for a hole of twice its thickness: trade table `elastics`, derived",
    ),
    bad="a wire of 0.46 mm twice through a pearl with a hole of 0.6 mm",
    good="a wire of 0.3 mm twice through a pearl with a hole of 0.6 mm",
)
