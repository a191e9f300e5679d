"""The remarks of a plan in the order to fix them, and the checks that passed with most room."""

from __future__ import annotations

import re

from msgspec import Struct

from wellstrung.judging.result import RANK, PlanResult, Remark
from wellstrung.quantity.value import Quantity
from wellstrung.report.checks import cut_line, together

#: so many margins are praised
PRAISED = 3
#: the largest size, mm, g or N, that is still one of a fit
_FIT = 100.0
#: the pointer of a rule's title to similar rules, of no use to the reader of a sheet
_POINTER = re.compile(r" \([^()]*`[^()]*\)")


class Numbered(Struct, frozen=True):
    """A remark with its number, where its line stands, and that line, cut at what is meant."""

    number: int
    remark: Remark
    where: str
    line: tuple[str, str, str]


class Right(Struct, frozen=True):
    """A check that passed with room to spare."""

    parts: str
    title: str
    spare: Quantity | None


def numbered(result: PlanResult) -> list[Numbered]:
    """Every remark but the cautions, errors first; each keeps its number in reading order."""
    found = [
        Numbered(number, remark, _where(result, remark), cut_line(result, remark.place))
        for number, remark in enumerate(result.numbered, 1)
    ]
    return sorted(found, key=lambda one: (not one.remark.counts, -RANK[one.remark.level]))


def _where(result: PlanResult, remark: Remark) -> str:
    """The line of the plan, or of a drawer that it takes parts from."""
    place = remark.place
    return f"line {place.line}" + ("" if place.file == result.file else f" of {place.file}")


def right(result: PlanResult) -> list[Right]:
    """The checks that passed with the most room for their size, each of another rule.

    Room is the least of the likely range, as a share of the largest size that it is worked out
    from. Fits come before lengths; where fewer have a margin, checks of counting fill up.
    """
    chosen: dict[str, Right] = {}
    ranked = sorted(result.held, key=lambda kept: -_room(kept.margin))
    for kept in ranked:
        if kept.rule not in chosen and len(chosen) < PRAISED:
            spare = kept.margin if _room(kept.margin) > 0 else None
            title = _POINTER.sub("", kept.title)
            chosen[kept.rule] = Right(together(kept.parts), title, spare)
    return list(chosen.values())


def _room(margin: Quantity | None) -> float:
    if margin is None or margin.unit not in ("mm", "g", "N"):
        return 0.0
    scale = max((abs(leaf.middle) for leaf in margin.leaves if leaf.unit == margin.unit), default=0)
    if not scale or margin.likely.low <= 0:
        return 0.0
    return margin.likely.low / scale / (1.0 if scale <= _FIT else 1000.0)
