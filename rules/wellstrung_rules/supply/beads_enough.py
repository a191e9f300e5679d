"""Enough beads on hand for every part that is woven from them."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    BeadsNeeded,
    Misfit,
    Quantity,
    Rule,
    bead_packs,
    kept,
    number,
)


def check(need: BeadsNeeded, ask: Ask) -> Answer:
    takes, had = ask.of(need.bead, "needed"), ask.of(need.bead, "on_hand")
    margin = had - takes
    if answer := kept(margin):
        return answer
    names = " and ".join(f"`{part.name}`" for part, _ in need.woven)
    wanted = f"{math.ceil(takes.likely.high)} beads"
    return Misfit(
        says=f"`{need.bead.name}` on hand ({_beads(had)}) {{is|may be}} too little for {names},"
        f" which takes {_beads(takes)}",
        place=need.lines[-1].node.place,
        found=" and ".join(ask.source(line.node.place) for line in need.lines),
        needed=wanted,
        remedies=bead_packs(need, ask, wanted, ", for culling too"),
        margin=margin,
        also=(need.bead.key.place,),
    )


def _beads(count: Quantity) -> str:
    """A number of beads, to the bead."""
    ends = (count.likely.low, count.middle, count.likely.high)
    low, middle, high = (number(round(end)) for end in ends)
    beads = f"{middle} bead{'' if middle == '1' else 's'}"
    return f"{beads}, likely {low}..{high}" if count.causes else beads


RULE = Rule(
    name="beads-enough",
    family="supply",
    subject=BeadsNeeded,
    check=check,
    fault="not enough beads",
    title="the beads on hand weave every part (what is left over is `spare-share`)",
    why="a second tube bought later is of another lot, and the change of colour shows in the rope",
    sources=(
        "beads of a part: counting along its stitch",
        "beads in a gram: trade table `beads`, which grades each size; two have several pages",
    ),
    bad="{bead: kelp, pack: 20 g, packs: 1} for a rope of 1323 beads of 8/0",
    good="{bead: kelp, pack: 20 g, packs: 3} for a rope of 1323 beads of 8/0",
)
