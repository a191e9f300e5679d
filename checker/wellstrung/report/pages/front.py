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
from wellstrung.report.checks import OpenCheck
from wellstrung.report.pages.listings import Care
from wellstrung.report.pages.measurements import Measurement
from wellstrung.report.pages.remarks import Numbered, Right
from wellstrung.report.pages.tables import Table
from wellstrung.report.pages.work_order import Order

#: between the margins of A4 and of Letter, whichever is less, mm: `@page` in page.css
WIDE, HIGH = 170.0, 257.0
#: type of 11 pt and of 14 pt: how high a line is, mm, and how many signs it surely holds
_SMALL, _LARGE = (4.75, 76), (6.05, 58)
#: remarks in full, and the lines of others in two columns, that a front has room for
_IN_FULL, _ROWS = {False: 5, True: 3}, {False: 18, True: 8}
#: what else stands on a front, in lines: name, verdict and the teacher's line; and each heading
_FIXED, _HEADING = 6.5, 1.6
#: heights that drawings may have, mm, and the height up to which they may make one page more
_LEAST, _MOST, _SURE = 24.0, 190.0, 60.0
#: a row of fits, and a time line with what is above and below its steps, in lines
_FIT, _TIME_LINE = 14, 9
#: the words below a drawing, mm
_CAPTION = 8.0


class Tier(NamedTuple):
    """The most lines of a remark: of its sentence, its values and what to do, if it is the first.

    `then` is of the sentences after it.
    A tier is chosen where the drawing, as it comes out, has room. `tight` keeps fewer words beside.
    """

    says: int
    facts: int
    do: int
    then: int
    least: float
    tight: bool = False


#: from roomy to tight
_TIERS = (
    Tier(5, 2, 5, 5, 60.0),
    Tier(3, 1, 3, 3, 55.0),
    Tier(2, 1, 2, 2, 55.0),
    Tier(2, 0, 2, 2, 55.0),
    Tier(2, 0, 1, 2, 55.0),
    Tier(2, 0, 1, 1, 0.0, tight=True),
)
#: a tight front: how much less high its lines are, the lines that its headings save, and how many
#: lines it keeps of what is right and of what to measure
_TIGHT, _SAVED, _KEPT = 0.94, 5.0, (1, 2)


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
    behind: float = 0.0,
) -> Front:
    """The remarks of a plan on its front, and its piece drawn in the room that they leave.

    So many lines are taken `besides`, on it or behind it: the drawing gives way to them; and it is
    so large that the lines `behind` the front stand on one page if they can.
    """
    in_full, others = remarks[: _IN_FULL[large]], remarks[_IN_FULL[large] :]
    few = others[: 2 * max(_ROWS[large] - besides, 0)]
    high, signs = _LARGE if large else _SMALL
    headings = 2 + bool(right) + bool(in_full) + (len(in_full) > 1) + bool(few)
    for tier in _TIERS:
        line = high * _TIGHT if tier.tight else high
        kept = _KEPT if tier.tight else (len(right), len(measured))
        taken = _FIXED + _HEADING * headings + besides + math.ceil(len(few) / 2)
        taken -= _SAVED * tier.tight
        taken += min(kept[0], len(right)) + min(kept[1], len(measured))
        taken += sum(_lines(one, tier, signs, first=not at) for at, one in enumerate(in_full))
        room = HIGH - taken * line
        most = max(_SURE - besides * line, min(_MOST, room + HIGH - behind * line))
        drawn = _filling(result, max(min(room, most), _LEAST)) if room >= tier.least else ()
        if tier.tight or (drawn and sum(one.high for one in drawn) <= room):
            break
    if sum(one.high for one in drawn) > room:
        drawn = _filling(result, _LEAST)  # a drawing so low has no key of its beads
    return Front(
        in_full=tuple(in_full),
        others=tuple(few),
        left=tuple(others[len(few) :]),
        tier=tier,
        drawings=drawn,
    )


def _filling(result: PlanResult, high: float) -> tuple[Figure, ...]:
    """The drawings that fit into a height one below the other, the whole piece first.

    Of a piece without remarks, as it is worn before the close-up, which shows where remarks are.
    """
    shown: list[Figure] = []
    for number in (0, 1, None) if result.numbered else (0, None, 1):
        if high < _LEAST:
            break
        if number is None:
            found = list(filter(None, [piece.worn(result)]))
        else:
            found = piece.drawings(result, (WIDE, high - _CAPTION), only=number)
        nearer = number != 1 or (found and found[0].scale > shown[0].scale)
        if found and nearer and (not shown or found[0].high <= high - _CAPTION):
            shown += found
            high -= found[0].high + _CAPTION
    return tuple(shown)


def _lines(one: Numbered, tier: Tier, signs: int, *, first: bool) -> float:
    """The lines that a remark takes at most, and the gap below it."""
    remark = one.remark
    facts = f"you have {remark.found}; you need {remark.needed}"
    says = tier.says if first else tier.then
    texts = ((remark.problem, says), (facts, tier.facts), (remark.remedy, tier.do))
    return 0.5 + sum(min(math.ceil((len(text) + 12) / signs), most) for text, most in texts if text)


def lines_behind(
    fits: Sequence[Figure],
    order: Order | None,
    tables: Sequence[Table],
    cares: Sequence[Care],
    waiting: Sequence[OpenCheck],
) -> float:
    """About how many lines stand behind the front."""
    signs = _SMALL[1]
    lines = sum(math.ceil(len(care.says) / signs) for care in cares) + 4 * bool(cares)
    lines += math.ceil(len(waiting) / 2) + 2 * bool(waiting) + _FIT * math.ceil(len(fits) / 2)
    lines += sum(3 + len(table.rows) + sum(map(bool, table.below)) for table in tables)
    return lines + (0 if order is None else _TIME_LINE + len(order.steps) + len(order.untimed))
