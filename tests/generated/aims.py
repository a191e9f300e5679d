"""What a plan is held against: whose it is, how long it is to be, how it closes."""

from __future__ import annotations

from generated.draft import Draft

#: by piece: the lengths that it comes in, mm
NECKLACES = (380, 520)
LONG = (620, 1000)
BRACELETS = (165, 200)
ANKLETS = (225, 260)
NAMES = {"collar": 330, "choker": 390, "princess": 460, "matinee": 560, "opera": 760, "rope": 1100}


def worn(draft: Draft, total: float, thick: float, *, rest: bool, closes: str = "clasp") -> None:
    """Piece, wearer and length wanted, for a piece of about this length."""
    head = draft.head
    piece = "necklace" if total > 300 else "anklet" if total > 215 else "bracelet"
    head["piece"] = piece
    draft.maybe(85, head, closes=closes)
    inside = total - 3.1416 * thick
    around = {"necklace": "neck", "bracelet": "wrist", "anklet": "ankle"}[piece]
    ease = {"neck": max(20, min(90, total - 370)), "wrist": 15, "ankle": 12}[around]
    draft.maybe(93, head, wearer=_wearer(draft, around, inside - ease))
    if not rest and not draft.chance(90):
        return
    give = {"necklace": 12, "bracelet": 6, "anklet": 8}[piece]
    if draft.chance(60 if piece == "necklace" else 25):
        head["finished_length"] = draft.sizes.window(total, give)
    else:
        head["inside"] = draft.sizes.window(inside, give)
    if piece == "necklace" and draft.chance(15):
        head["called"] = min(NAMES, key=lambda name: abs(NAMES[name] - total))


def _wearer(draft: Draft, around: str, mm: float) -> dict[str, str]:
    low, high = {"neck": (300, 420), "wrist": (125, 195), "ankle": (190, 255)}[around]
    wearer = {"age": "adult", around: draft.length(round(min(high, max(low, mm)) / 5) * 5)}
    if draft.chance(10):
        wearer["age"] = draft.pick("child", "under three")
    elif not draft.chance(85):
        del wearer["age"]
    return wearer
