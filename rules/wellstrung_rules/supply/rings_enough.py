"""Enough rings on hand for every place in the run and everything that is hung."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Item,
    Misfit,
    Missing,
    Remedy,
    RingsNeeded,
    Rule,
    exact,
    kept,
)


def check(need: RingsNeeded, ask: Ask) -> Answer:
    name = need.ring.name
    if not need.lines:
        raise Missing(f"a line `{{part: {name}, count: ...}}` under `supplies`")
    had = sum(_on_hand(line) for line in need.lines)
    margin = exact("rings on hand", had) - exact("rings needed", need.count)
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"{need.count} of `{name}` are needed in the run and in what hangs, and {had} on hand",
        place=need.lines[-1].node.place,
        found=f"{had} on hand",
        needed=f"{need.count} or more",
        remedies=_remedies(need, had),
        margin=margin,
        also=(need.ring.key.place,),
    )


def _on_hand(line: Item) -> int:
    packed = line.count("packs", default=1) * line.count("pack_of", default=0)
    counted = line.count("count", default=0)
    if not packed and not counted:
        raise line.missing("count")
    return packed + counted


def _remedies(need: RingsNeeded, had: int) -> tuple[Remedy, ...]:
    line, short = need.lines[-1], need.count - had
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
    title=(
        "the rings on hand are as many as the run and what hangs take (whether each has an eye is"
        " `ring-count`)"
    ),
    why="rings are counted by the clasp and forgotten at the fringe, and one size cannot stand in",
    sources=("counting",),
    bad="{part: small, count: 10} for seven in the run and seven drops",
    good="{part: small, pack_of: 20, packs: 1} for seven in the run and seven drops",
)
