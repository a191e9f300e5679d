"""Enough chain on hand for every piece, cut in phase, and for the links lost in cutting."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    ChainCut,
    Misfit,
    Missing,
    Remedy,
    Rule,
    at_least,
    exact,
    kept,
    leaf,
    working,
)


def check(cut: ChainCut, ask: Ask) -> Answer:
    if not cut.pieces:
        return None
    if not cut.on_hand:
        raise Missing(f"a line `{{chain: {cut.chain.name}, length: ...}}` under `supplies`")
    had, whole = ask.of(cut.chain, "pieces_had"), ask.of(cut.chain, "needed")
    wanted, last = len(cut.every_piece), cut.on_hand[-1]
    on_hand = leaf("on hand", cut.lengths[0], "mm", spelled_unit=last.unit)
    # one length is judged in mm, several by the whole pieces that each of them gives
    margin = on_hand - whole if len(cut.lengths) == 1 else had - exact("pieces wanted", wanted)
    if answer := kept(margin):
        return answer
    # chain is bought by the centimetre: round up, never below what the likely links need
    need = at_least(math.ceil(whole.likely.high / 10) * 10, on_hand)
    written = " and ".join(line.text for line in cut.on_hand)
    gives = f"{{gives {had.middle:g}|may give only {had.worst.low:g}}}"
    # of several kinds of piece a better order may give more
    several = len(cut.pieces) > 1
    return Misfit(
        says=f"the chain `{cut.chain.name}` on hand ({written}) {gives} of the {wanted} pieces, cut"
        f" in phase with its pattern{', in the best order found' if several else ''}",
        place=last.place,
        found=written,
        needed=f"{need} in one length",
        remedies=_remedies(cut, need),
        margin=margin,
        at_most="warning" if several else "error",
        also=(cut.chain.key.place,),
        working=tuple(working(whole)),
    )


def _remedies(cut: ChainCut, need: str) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"have {need} in one length, or more in several")
    if len(cut.lengths) > 1:
        return (by_hand,)
    return (Remedy.write(cut.on_hand[0].place, need, f"buy {need} in one length"), by_hand)


RULE = Rule(
    name="chain-enough",
    family="length",
    subject=ChainCut,
    check=check,
    fault="not enough chain",
    title="the chain on hand gives every piece (where it is cut is `chain-cut`)",
    why=(
        "the lengths alone may be enough, but links are lost at each cut and to stay in phase with"
        " the pattern"
    ),
    sources=("counting along the pattern, worked out for this project",),
    bad="seven pieces of 40 mm from {chain: bar chain, length: 28 cm}",
    good="seven pieces of 40 mm from {chain: bar chain, length: 40 cm}",
    yields_to=("chain-cut",),
)
