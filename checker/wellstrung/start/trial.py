"""A draft before the checker: what it says of it, and the values that it is content with."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from msgspec import Struct

from wellstrung.common import units
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.quantity.assumed import assumed_in
from wellstrung.rulebook import Missing
from wellstrung.start.leaves import Choose, Fill, Noted, Plan, Slot, copied, slots
from wellstrung.start.writer import written

_UNREADABLE, _CLEAN = (1, 0, 0), (0, 0, 0)
#: how often all values are chosen anew: one that comes first may depend on one that comes later
_ROUNDS = 2
#: how many sizes round a likely one are tried
_FEW = 7


class Tried(Struct, frozen=True):
    """A draft with every value settled, its text, and what the checker found."""

    plan: Plan
    text: str
    result: PlanResult

    @property
    def score(self) -> tuple[int, int, int]:
        """How much there is against it: unreadable, errors, warnings."""
        if not self.result.readable or self.result.failures:
            return _UNREADABLE
        return 0, self.result.count("error"), self.result.count("warning")

    def rank(self, part: str) -> tuple[int, int, bool, int]:
        """The score, where a warning about the part itself weighs more than one about another."""
        unreadable, errors, warnings = self.score
        return unreadable, errors, self.against(part), warnings

    def against(self, part: str) -> bool:
        """Whether there is anything against one part, or of no part against the whole."""
        if not self.result.readable or not part:
            return self.score != _CLEAN
        return any(remark.counts and part in remark.parts for remark in self.result.remarks)


class Trial:
    """Drafts held against one checker, which keeps its plans; texts that were seen are kept."""

    def __init__(self, checker: Checker) -> None:
        self._checker = checker
        self._seen: dict[str, PlanResult] = {}

    def of(self, plan: Plan, head: Iterable[str] = ()) -> Tried:
        """A draft as it stands."""
        text = written(plan, head=tuple(head))
        if text not in self._seen:
            self._seen[text] = self._checker.check_text(text)
        return Tried(plan, text, self._seen[text])

    def settled(self, draft: Plan, head: Iterable[str] = ()) -> Tried:
        """The draft with each value chosen that the checker has the least against."""
        plan, head = copied(draft), tuple(head)
        choices = [
            ("" if leaf.of_all else name, slot, leaf)
            for section in plan.values()
            for name, inside in (section.items() if isinstance(section, dict) else [("", section)])
            for slot, leaf in (
                [((section, name), inside)] if isinstance(inside, Choose) else slots(inside, Choose)
            )
        ]
        fills = list(slots(plan, Fill))
        for _, (group, key), leaf in choices:
            group[key] = Noted(leaf.values[0], leaf.why)
        for slot, fill in fills:
            _put(slot, fill, fill.first)
        _state_assumed(self.of(plan, head))
        tried = self._filled(plan, fills, head)
        for _ in range(_ROUNDS):
            for part, slot, leaf in choices:
                tried = self._chosen(tried, part, slot, leaf, fills, head)
            if tried.score == _CLEAN:
                break
        return tried

    def _chosen(
        self,
        tried: Tried,
        part: str,
        slot: Slot,
        leaf: Choose,
        fills: list[tuple[Slot, Fill]],
        head: tuple[str, ...],
    ) -> Tried:
        """The first value without a remark, or else the one with the fewest."""
        group, key = slot
        values = _nearest(tried, leaf)
        best, least = tried, values[0]
        for value in values:
            group[key] = Noted(value, leaf.why)
            now = self._filled(tried.plan, fills, head)
            if now.rank(part) < best.rank(part) or value == values[0]:
                best, least = now, value
            if not now.against(part):
                break
        if leaf.else_open and best.against(part):
            group[key] = Noted(None, leaf.else_open.format(_size(least)))
            without = self._filled(tried.plan, fills, head)
            if without.score < best.score:
                return without
        group[key] = Noted(least, leaf.why)
        return self._filled(tried.plan, fills, head)

    def _filled(self, plan: Plan, fills: list[tuple[Slot, Fill]], head: tuple[str, ...]) -> Tried:
        """The draft with its lengths found: two trials, and the straight line between them."""
        tried = self.of(plan, head)
        for slot, fill in fills:
            first = _put(slot, fill, fill.first)
            off = _off(self.of(plan, head))
            further = _put(slot, fill, fill.first * 1.25 + 2)
            then = _off(self.of(plan, head))
            found = first
            if off is not None and then is not None and then != off:
                found = max(1.0, first - off * (further - first) / (then - off))
            _put(slot, fill, found)
            tried = self.of(plan, head)
        return tried


def _size(value: Any) -> str:
    """A size, of a group of one field the size in it."""
    return str(next(iter(value.values())) if isinstance(value, dict) else value)


def _nearest(tried: Tried, leaf: Choose) -> Sequence[Any]:
    """The values to try, the likeliest first."""
    ask = tried.result.ask
    if not leaf.near or ask is None:
        return leaf.values
    try:
        wanted = ask.get(leaf.near).middle
    except Missing:
        return leaf.values
    return sorted(leaf.values, key=lambda value: abs(units.size(_size(value)).value - wanted))[
        :_FEW
    ]


def _state_assumed(tried: Tried) -> None:
    """Write what the length of the piece rests on and the checker assumes, to be measured."""
    ask = tried.result.ask
    try:
        length = ask.get("piece.length") if ask is not None else None
    except Missing:
        return
    for leaf in assumed_in(length) if length is not None else ():
        part, *path, field = leaf.name.split(".")
        inside = tried.plan["parts"][part]
        inside = inside.value if isinstance(inside, Noted) else inside
        for name in path:
            inside = inside.setdefault(name, {})
        low, high = (units.show(round(end, 1), "mm") for end in leaf.likely)
        note = f"usual, {low.removesuffix(' mm')} to {high}: measure yours"
        inside[field] = Noted(units.show(round(leaf.middle, 1), "mm"), note)


def _put(slot: Slot, fill: Fill, value: float) -> float:
    """Write a value, in whole beads or mm; what was written."""
    group, key = slot
    whole = max(1, round(value))
    long = units.show(whole, fill.unit, None if fill.unit.startswith("in") else 1)
    group[key] = Noted(whole if fill.counted else f"{long}{fill.give}", fill.why)
    return whole


def _off(tried: Tried) -> float | None:
    """By how much the piece is longer than the plan asks, mm; None if it does not say."""
    ask = tried.result.ask
    if ask is None or ask.plan.goal is None:
        return None
    goal = ask.plan.goal
    what = "inside" if goal.field == "inside" else "length"
    try:
        return float(ask.get(f"piece.{what}").middle - goal.middle)
    except Missing:
        return None
