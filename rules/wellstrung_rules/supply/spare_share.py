"""Spare beads for those that are misshapen, chipped or lost."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, BeadsNeeded, Misfit, Rule, bead_packs, kept, number


def check(need: BeadsNeeded, ask: Ask) -> Answer:
    takes, had = ask.of(need.bead, "needed"), ask.of(need.bead, "on_hand")
    spare = ask.of(need.bead, "spare")
    if not spare.worst.high:
        return None  # larger beads by the piece, or only a few
    margin = had - takes - spare
    if answer := kept(margin):
        return answer
    over, all_, culled = (
        number(round(count)) for count in (had.middle - takes.middle, had.middle, spare.middle)
    )
    total = f"{math.ceil((takes + spare).likely.high)} beads"
    return Misfit(
        says=f"`{need.bead.name}` on hand leaves {{|about }}{over} of {all_} beads over; culling"
        f" takes {culled}",
        place=need.lines[-1].node.place,
        found=" and ".join(ask.source(line.node.place) for line in need.lines),
        needed=total,
        remedies=bead_packs(need, ask, total),
        margin=margin,
        also=(need.bead.key.place,),
    )


RULE = Rule(
    name="spare-share",
    family="supply",
    subject=BeadsNeeded,
    check=check,
    fault="no spare beads",
    title="some beads are left over for culling (whether the rope can be woven is `beads-enough`)",
    why=(
        "some seed beads are chipped, crooked or too tight for the needle; the ones set aside are"
        " missing at the end of the rope, and the next tube is of another lot"
    ),
    sources=(
        "spare 10 % of Japanese, 15 % of Czech, 5 % of cylinder beads: trade table `stitch_facts`,"
        " spare Japanese beads, spare Czech beads and spare cylinder beads: from memory",
        "5 to 20 % by makers: common practice, no source",
        "none over of larger beads that are bought by the piece: common practice, no source",
    ),
    bad="{bead: kelp, count: 1340} for a rope of 1323 beads of 8/0",
    good="{bead: kelp, pack: 20 g, packs: 3} for a rope of 1323 beads of 8/0",
    level="warning",
    yields_to=("beads-enough",),
)
