"""The thread of woven beads through one hole, as often as stitch and tails take it there."""

from __future__ import annotations

from wellstrung.formulas import thread
from wellstrung.rulebook import (
    Answer,
    Ask,
    Limit,
    Misfit,
    Rule,
    Threaded,
    fringe_passes,
    kept,
    passes_of,
)
from wellstrung.rulebook.values import derived, exact
from wellstrung.rulebook.wording import about, raised, spelled
from wellstrung_rules.fit import thinner_or_wider, with_needle

WEAVING_IN_PASSES = Limit(
    "weaving-in passes", 1.0, "", "an end woven in passes once more, common practice"
)


def check(join: Threaded, ask: Ask) -> Answer:
    passes = passes_of(ask.plan, join.part, join.bead)
    if passes is None:
        return None
    line, hole = ask.of(join.part, "line"), ask.of(join.bead, "hole")
    extra = ask.limit(WEAVING_IN_PASSES)
    taken = derived(
        "threads in the hole",
        "mm",
        lambda line, passes, extra: thread.hole_needed(0, line, passes + extra),
        line=line,
        passes=exact("passes", passes),
        extra=extra,
        source="k = 1.3: trade table `stitch_facts`, thread packed in a hole, per thread",
    )
    margin = hole - taken
    if answer := kept(margin):
        return answer
    most = line.middle + margin.likely.low * line.middle / taken.middle
    short, thickest = with_needle(join, margin, most, ask)
    stitch = "the stitch, the fringe" if fringe_passes(ask.plan, join.part) else "the stitch"
    return Misfit(
        says=f"the thread of `{join.part.name}` ({about(line)}) {{fills|may fill}} the hole of bead"
        f" `{join.bead.name}` ({about(hole)}) too soon: {stitch} and a woven-in end need"
        f" {passes + round(extra.middle)} passes, which take {about(taken, hole)}",
        place=join.part.place_of("thread"),
        found=spelled(line),
        needed=f"a hole of {raised(hole, short)}",
        remedies=(thinner_or_wider(join, short, thickest, ask),),
        margin=margin,
        at_most="warning",
        also=(join.bead.key.place,),
    )


RULE = Rule(
    name="hole-passes",
    family="fit",
    subject=Threaded,
    check=check,
    fault="bead holes too full of thread",
    title=(
        "the thread passes each woven bead as often as its stitch and a woven-in end need (with the"
        " needle it is `needle-pass`; of a strand it is `string-in-hole`)"
    ),
    why="a bead that is full breaks, or leaves an end that cannot be woven in",
    limits=(WEAVING_IN_PASSES,),
    sources=(
        "hole >= thread x sqrt(k n), k = 1.3, held against three printed figures: trade table"
        " `stitch_facts`, thread packed in a hole, per thread: from memory",
        "one more pass for an end woven in: common practice, no source",
    ),
    bad="nylon F in 15/0 beads",
    good="nylon B in 11/0 beads",
    level="warning",
)
