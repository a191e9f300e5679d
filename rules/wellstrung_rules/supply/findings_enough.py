"""Enough rings and other findings on hand for every place in the run and all that is hung."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Edit, Misfit, PiecesNeeded, Remedy, Rule, kept


def check(need: PiecesNeeded, ask: Ask) -> Answer:
    margin = ask.of(need.part, "pieces_on_hand") - ask.of(need.part, "pieces_needed")
    if answer := kept(margin):
        return answer
    had, takes = (
        round(ask.of(need.part, what).middle) for what in ("pieces_on_hand", "pieces_needed")
    )
    return Misfit(
        says=(
            f"{takes} of `{need.part.name}` are needed in the run and in what hangs, and {had} on"
            " hand"
        ),
        place=need.lines[-1].node.place,
        found=f"{had} on hand",
        needed=f"{takes} or more",
        remedies=_remedies(need, takes - had),
        margin=margin,
        also=(need.part.key.place,),
    )


def _remedies(need: PiecesNeeded, short: int) -> tuple[Remedy, ...]:
    line = need.lines[-1]
    by_hand = Remedy(f"have {short} more of `{need.part.name}`")
    if line.has("count"):
        wanted = line.count("count") + short
        edit = Edit(line.place_of("count"), str(wanted))
        return (Remedy(f"have {wanted} of `{need.part.name}`", (edit,)), by_hand)
    if line.has("packs"):
        packs = line.count("packs") + math.ceil(short / line.count("pack_of"))
        edit = Edit(line.place_of("packs"), str(packs))
        return (Remedy(f"have {packs} packs of `{need.part.name}`", (edit,)), by_hand)
    return (by_hand,)


RULE = Rule(
    name="findings-enough",
    family="supply",
    subject=PiecesNeeded,
    check=check,
    fault="not enough findings",
    title=(
        "the rings and other findings on hand are as many as the run and what hangs take (whether"
        " each ring has an eye is `ring-count`)"
    ),
    why="rings are counted by the clasp and forgotten at the fringe, and one size cannot stand in",
    sources=("counting",),
    bad="{part: small, count: 10} for seven in the run and seven drops",
    good="{part: small, pack_of: 20, packs: 1} for seven in the run and seven drops",
)
