"""The line of a strand through the holes of its beads, as often as it passes."""

from __future__ import annotations

from wellstrung.formulas import circles
from wellstrung.rulebook import Answer, Ask, Misfit, Rule, Threaded, kept
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.values import exact, product
from wellstrung.rulebook.wording import about, raised, spelled
from wellstrung_rules.fit import REAM_WET, thinner_or_wider, with_needle

_SOURCE = "equal circles in a circle, Graham, Lubachevsky, Nurmela, Östergård 1998"


def check(join: Threaded, ask: Ask) -> Answer:
    if join.part.kind.role is not Role.STRAND:
        return None
    line, hole = ask.of(join.part, "line"), ask.of(join.bead, "hole")
    passes = join.lines
    ratio = circles.equal_ratio(min(passes, 20))
    bundle = product("lines in the hole", "mm", line, exact("ratio", ratio), source=_SOURCE)
    margin = hole - bundle
    if answer := kept(margin):
        return answer
    times = {1: "", 2: " twice"}.get(passes, f" {passes} times")
    short, thickest = with_needle(join, margin, line.middle + margin.likely.low / ratio, ask)
    return Misfit(
        says=f"the line of `{join.part.name}` ({spelled(line)}) {{does|may}} not pass the hole of"
        f" bead `{join.bead.name}` ({spelled(hole)}){times}: the hole would need to be"
        f" {about(bundle, hole)}",
        place=join.part.place_of("thread"),
        found=spelled(line),
        needed=f"a hole of {raised(hole, short)} or wider",
        remedies=(thinner_or_wider(join, short, thickest, ask, f"; {REAM_WET}"),),
        margin=margin,
        also=(join.bead.key.place,),
    )


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
