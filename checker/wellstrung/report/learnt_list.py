"""What the swatches of a bench taught, for people and as JSON: each cause before and after."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from wellstrung.common.wording import together
from wellstrung.derived.learnt import used
from wellstrung.model.plan import Plan
from wellstrung.quantity.working import number
from wellstrung.reading.learnt import Learnt, LearntCause
from wellstrung.report.terminal import Page

#: so little of a cause, in its half ranges, is no news
_NOTHING = 0.02
_HEAD = "swatches: what they show of your hand and your beads, before and after"


def write(page: Page, learnt: Learnt, plan: Plan | None) -> None:
    """Each cause that swatches narrowed, what contradicts the tables, and what a plan takes."""
    page.line(_HEAD, style="bold")
    for row in learnt.causes:
        if abs(row.shift) < _NOTHING and row.reach > 1 - _NOTHING:
            continue
        after, down, up = _after(row)
        before = _sized(row, row.middle, row.down, row.up)
        page.line(f"{_called(row)}  {before} -> {_sized(row, after, down, up)}", 2)
        lines = ", ".join(str(place.line) for place in row.by)
        page.pair("by", f"{row.by[0].file}:{lines}", 4, gap=9)
        if row.day:
            share = number(100 * row.day * row.up / row.middle)
            page.pair("of it", f"± {share} % from one day to another", 4, gap=9)
    for place, says in learnt.doubts:
        page.line(f"{place.file}:{place.line} {says}", 2)
    if plan is not None:
        page.line(_for(plan, learnt), 2)
    page.line()


def _for(plan: Plan, learnt: Learnt) -> str:
    """Which swatches a plan goes by, and why it leaves the hand of the bench out."""
    names = dict.fromkeys(name for _, names in used(plan) for name in names)
    found = f"in this plan they narrow {together([*names])}" if names else "none is for this plan"
    mine = plan.bench.learnt
    hand = mine.hand if mine is not None else None
    if hand == learnt.maker or not any(row.of == "hand" for row in learnt.causes):
        return found
    whose = f"the bench is that of `{learnt.maker}`" if learnt.maker else "the bench has no `maker`"
    who = f"`{hand}` makes it" if hand else "the students of its class make it"
    return f"{found}; {who} and {whose}, so that the hand is left out"


def _called(row: LearntCause) -> str:
    lot = f", lot {row.lot}" if row.lot else ""
    work = ", ".join(filter(None, (row.thread, f"{row.passes} passes" if row.passes else "")))
    hand = f" ({work})" if work else ""
    of = f" of {row.whose}{lot}{hand}" if row.whose else ""
    return f"{row.name}{of}"


def _after(row: LearntCause) -> tuple[float, float, float]:
    """Its middle and how far it goes down and up, with what varies from day to day."""
    middle = row.middle + row.shift * (row.up if row.shift > 0 else row.down)
    down, up = row.sides(row.down, row.up)
    return middle, down * row.reach, up * row.reach


def _sized(row: LearntCause, middle: float, down: float, up: float) -> str:
    off = f"± {number(up)}" if math.isclose(down, up) else f"-{number(down)} / +{number(up)}"
    return f"{number(middle)} {off}{f' {row.unit}' if row.unit else ''}"


def as_json(learnt: Learnt) -> dict[str, Any]:
    """The same as plain data."""
    return {
        "causes": [_as_json(row) for row in learnt.causes],
        "doubts": [{"place": place._asdict(), "says": says} for place, says in learnt.doubts],
    }


def _as_json(row: LearntCause) -> Mapping[str, Any]:
    middle, down, up = _after(row)
    return {
        "of": row.of,
        "name": row.name,
        "whose": row.whose,
        "lot": row.lot,
        "hand": row.hand,
        "thread": row.thread,
        "passes": row.passes,
        "unit": row.unit,
        "before": [row.middle - row.down, row.middle, row.middle + row.up],
        "after": [middle - down, middle, middle + up],
        "swatches": [place._asdict() for place in row.by],
    }
