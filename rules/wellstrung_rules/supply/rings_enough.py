"""Enough rings on hand for every place in the run and everything that is hung."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Edit, Misfit, Remedy, RingsNeeded, Rule, kept


def check(need: RingsNeeded, ask: Ask) -> Answer:
    margin = ask.of(need.ring, "on_hand") - ask.of(need.ring, "needed")
    if answer := kept(margin):
        return answer
    had, takes = (round(ask.of(need.ring, what).middle) for what in ("on_hand", "needed"))
    return Misfit(
        says=(
            f"{takes} of `{need.ring.name}` are needed in the run and in what hangs, and {had} on"
            " hand"
        ),
        place=need.lines[-1].node.place,
        found=f"{had} on hand",
        needed=f"{takes} or more",
        remedies=_remedies(need, takes - had),
        margin=margin,
        also=(need.ring.key.place,),
    )


def _remedies(need: RingsNeeded, short: int) -> tuple[Remedy, ...]:
    line = need.lines[-1]
    by_hand = Remedy(f"have {short} more of `{need.ring.name}`")
    if line.has("count"):
        wanted = line.count("count") + short
        edit = Edit(line.place_of("count"), str(wanted))
        return (Remedy(f"have {wanted} of `{need.ring.name}`", (edit,)), by_hand)
    if line.has("packs"):
        packs = line.count("packs") + math.ceil(short / line.count("pack_of"))
        edit = Edit(line.place_of("packs"), str(packs))
        return (Remedy(f"have {packs} packs of `{need.ring.name}`", (edit,)), by_hand)
    return (by_hand,)


RULE = Rule(
    name="rings-enough",
    family="supply",
    subject=RingsNeeded,
    check=check,
    fault="not enough rings",
    title=(
        "the rings on hand are as many as the run and what hangs take (whether each has an eye is"
        " `ring-count`)"
    ),
    why="rings are counted by the clasp and forgotten at the fringe, and one size cannot stand in",
    sources=("counting",),
    bad="{part: small, count: 10} for seven in the run and seven drops",
    good="{part: small, pack_of: 20, packs: 1} for seven in the run and seven drops",
)
