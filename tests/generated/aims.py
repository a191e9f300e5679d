"""What a plan is held against: whose it is, how long it is to be, how it closes."""

from __future__ import annotations

import math

from generated.draft import Draft

#: by piece: the lengths that it comes in, mm
NECKLACES = (380, 520)
LONG = (640, 1000)
BRACELETS = (165, 200)
ANKLETS = (225, 260)
NAMES = {"collar": 330, "choker": 390, "princess": 460, "matinee": 560, "opera": 760, "rope": 1100}


def worn(
    draft: Draft, total: float, thick: float, *, rest: bool = False, closes: str = "clasp"
) -> None:
    """Piece, wearer and length wanted, for a piece that comes out at about this length."""
    head = draft.head
    piece = "necklace" if total > 300 else "anklet" if total > 215 else "bracelet"
    head["piece"] = piece
    draft.maybe(85, head, closes=closes)
    inside = total - math.pi * thick
    around = {"necklace": "neck", "bracelet": "wrist", "anklet": "ankle"}[piece]
    ease = {"neck": max(35, min(90, inside - 360)), "wrist": 15, "ankle": 17}[around]
    draft.maybe(93, head, wearer=_wearer(draft, around, inside - ease))
    if not rest and not draft.chance(90):
        return
    give = {"necklace": 12, "bracelet": 6, "anklet": 8}[piece]
    if draft.chance(60 if piece == "necklace" else 25):
        head["finished_length"] = draft.sizes.window(total, give)
    else:
        head["inside"] = draft.sizes.window(inside, give)
    if piece == "necklace" and draft.chance(20):
        nearest = min(NAMES, key=lambda name: abs(NAMES[name] - total))
        head["called"] = nearest if draft.chance(75) else draft.pick(*NAMES)


def _wearer(draft: Draft, around: str, mm: float) -> dict[str, str]:
    low, high = {"neck": (300, 420), "wrist": (125, 195), "ankle": (190, 255)}[around]
    wearer = {"age": "adult", around: draft.length(round(min(high, max(low, mm)) / 5) * 5)}
    if draft.chance(14):
        wearer["age"] = draft.pick("child", "under three", "7 years", "18 months")
        for part in draft.parts.values():
            if part["kind"] == "clasp":
                draft.maybe(60, part, breakaway=draft.pick("5 lb", "20 N", "10 N", "80 N"))
    elif not draft.chance(85):
        del wearer["age"]
    return wearer


def put_on(draft: Draft, inside: float, over: str) -> None:
    """The wearer of a piece that goes on over the hand or the head."""
    around, most = ("wrist", 205) if over == "hand" else ("neck", 585)
    size = 165 if over == "hand" else 360
    wide = min(most, inside - 8) if draft.chance(85) else most
    wearer = {"age": "adult", around: draft.length(size), over: draft.length(round(wide / 5) * 5)}
    draft.maybe(90, draft.head, wearer=wearer)
