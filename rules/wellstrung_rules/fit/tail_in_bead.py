"""The tail that is turned back through a crimp, and on into the bead beside it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Threaded, kept
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.wording import about, raised, spelled
from wellstrung_rules.fit import lines_in_hole, thinner_or_wider

TAIL_HIDDEN = Limit(
    "tail hidden", 20.0, "mm", "a longer tail is hidden in beads, common practice, no source"
)


def check(join: Threaded, ask: Ask) -> Answer:
    strand = join.part
    if not strand.has("thread", "tail") or not _beside_crimp(join, ask):
        return None
    tail, place = strand.length("thread", "tail"), strand.place_of("thread", "tail")
    if tail.middle < ask.limit(TAIL_HIDDEN).middle:
        return None  # it ends at the crimp
    line, hole = ask.of(strand, "line"), ask.of(join.bead, "hole")
    taken = lines_in_hole(join, join.lines + 1, ask)
    margin = hole - taken
    if answer := kept(margin):
        return answer
    thickest = line.middle + margin.likely.low * line.middle / taken.middle
    other = thinner_or_wider(join, margin, thickest, ask).text
    accept = f"{{rule: {RULE.name}, part: {strand.name}, because: cut off at the crimp}}"
    return Misfit(
        says=f"the tail of `{strand.name}` ({spelled(line)}) {{does|may}} not go back through bead"
        f" `{join.bead.name}` beside the crimp: with it the hole ({spelled(hole)}) would need to be"
        f" {about(taken, hole)}",
        place=place,
        found=f"a tail of {spelled(tail)}",
        needed=f"a hole of {raised(hole, margin)} or wider, or no tail in it",
        remedies=(
            Remedy(
                f"press the crimp, then cut the tail off beside it and write `accept: [{accept}]`,"
                f" or {other}"
            ),
        ),
        margin=margin,
        at_most="warning",
        also=(join.bead.key.place,),
    )


def _beside_crimp(join: Threaded, ask: Ask) -> bool:
    """Whether the bead is the first or the last of a strand that a crimp ends.

    Beads given by their shares alone lie in no order: none of them is known to be.
    """
    listed = join.part.node_at("beads")
    beads = listed.value if listed is not None else {}
    ends = (beads[0], beads[-1]) if isinstance(beads, list) else (beads,)
    return join.bead.name in ends and any(
        join.part in entry.parts and beside.part.kind.role is Role.CRIMP
        for entry, beside in ask.plan.meetings
    )


RULE = Rule(
    name="tail-in-bead",
    family="fit",
    subject=Threaded,
    check=check,
    fault="no room for the tail beside a crimp",
    title=(
        "the tail that is turned back through a crimp goes on into the bead beside it (the line"
        " alone is `string-in-hole`, the crimp `crimp-bore`)"
    ),
    why="a tail that stops at the first bead is cut there, and its stub scratches the neck",
    limits=(TAIL_HIDDEN,),
    sources=(
        "equal circles in a circle: published best ratios",
        "a tail of 2 cm or more is hidden in the beads: common practice, no source",
    ),
    bad="tail: 3 in, of a wire of 0.38 mm beside a pearl with a hole of 0.5 mm",
    good="tail: 3 in, of a wire of 0.25 mm beside a pearl with a hole of 0.5 mm",
    level="warning",
    yields_to=("string-in-hole",),
)
