"""The front of a sheet: what stands on it, and how large the drawing is that fills its room.

A page may cut words, never the size of its letters: the more remarks, the fewer lines each may
take, and the less room is left for the piece.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from msgspec import Struct

from wellstrung.drawing import Figure, piece
from wellstrung.judging.result import PlanResult
from wellstrung.report.pages.measurements import Measurement
from wellstrung.report.pages.remarks import Numbered, Right

#: between the margins of A4 and of Letter, whichever is less, mm: `@page` in page.css
WIDE, HIGH = 170.0, 254.0
#: type of 11 pt and of 14 pt: how high a line is, mm, and how many signs it surely holds
_SMALL, _LARGE = (4.75, 76), (6.05, 58)
#: remarks in full, and the lines of others in two columns, that a front has room for
_IN_FULL, _ROWS = {False: 5, True: 3}, {False: 18, True: 8}
#: what else stands on a front, in lines: name and verdict, headings, the teacher's line
_FIXED = 12.0
#: heights that drawings may have, mm: beside remarks, and where there are none
_LEAST, _MOST, _ALONE = 24.0, 60.0, 190.0
#: the words below a drawing, mm
_CAPTION = 8.0


class Tier(NamedTuple):
    """How many lines of a remark stand on paper: of its sentence, its values, and what to do.

    It is chosen where the drawing can be `least` mm high.
    """

    says: int
    facts: int
    do: int
    least: float


#: from roomy to tight
_TIERS = (Tier(5, 2, 5, 70.0), Tier(3, 1, 3, 50.0), Tier(2, 1, 2, 36.0), Tier(2, 0, 1, _LEAST))


class Front(Struct, frozen=True):
    """The front of a sheet: remarks in full, others in a line each, and those without room."""

    in_full: tuple[Numbered, ...]
    others: tuple[Numbered, ...]
    left: tuple[Numbered, ...]
    tier: Tier
    drawings: tuple[Figure, ...]


def front(
    result: PlanResult,
    remarks: Sequence[Numbered],
    right: Sequence[Right],
    measured: Sequence[Measurement],
    *,
    large: bool = False,
    besides: int = 0,
) -> Front:
    """The remarks of a plan on its front, and its piece drawn in the room that they leave.

    So many lines are taken `besides`, on it or behind it: the drawing gives way to them.
    """
    in_full, others = remarks[: _IN_FULL[large]], remarks[_IN_FULL[large] :]
    few = others[: 2 * max(_ROWS[large] - besides, 0)]
    line, signs = _LARGE if large else _SMALL
    beside = _FIXED + besides + len(right) + len(measured) + math.ceil(len(few) / 2)
    for tier in _TIERS:
        taken = beside + sum(_lines(one, tier, signs) for one in in_full)
        room = HIGH - taken * line
        if room >= tier.least:
            break
    most = _MOST if remarks else _ALONE
    return Front(
        in_full=tuple(in_full),
        others=tuple(few),
        left=tuple(others[len(few) :]),
        tier=tier,
        drawings=_filling(result, max(min(room, most - besides * line), _LEAST)),
    )


def _filling(result: PlanResult, high: float) -> tuple[Figure, ...]:
    """The drawings that fit into a height one below the other, the whole piece first."""
    shown: list[Figure] = []
    while high >= _LEAST:
        rest = piece.drawings(result, (WIDE, high - _CAPTION))[len(shown) :]
        if not rest or (shown and rest[0].high > high - _CAPTION):
            break
        shown.append(rest[0])
        high -= rest[0].high + _CAPTION
    curved = piece.worn(result) if high >= _LEAST else None
    if curved is not None and curved.high <= high - _CAPTION:
        shown.append(curved)
    return tuple(shown)


def _lines(one: Numbered, tier: Tier, signs: int) -> float:
    """The lines that a remark takes at most, and the gap below it."""
    remark = one.remark
    facts = f"you have {remark.found}; you need {remark.needed}"
    texts = ((remark.problem, tier.says), (facts, tier.facts), (remark.remedy, tier.do))
    return 0.5 + sum(min(math.ceil((len(text) + 12) / signs), most) for text, most in texts if text)
