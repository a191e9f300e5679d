"""Plans and their checks as reports list them: the worst plan first, open checks by value."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from wellstrung.common import wording
from wellstrung.common.places import Place
from wellstrung.judging.result import Counted, PlanResult, Remark, Together
from wellstrung.report.styled import columns_of
from wellstrung.report.terminal import counted
from wellstrung.rulebook import Level

#: the outcomes of a plan that is mostly open
MOSTLY_OPEN = ("nothing wrong found", "no error found")
#: signs of one line of a plan that a report keeps: more than a page or a terminal shows
_LONG_LINE = 2_000


class OpenCheck(Struct, frozen=True):
    """The checks that are open for one value: their rules and their parts."""

    missing: str
    rules: tuple[str, ...]
    parts: tuple[str, ...]


def open_checks(plan: PlanResult) -> list[OpenCheck]:
    """The open checks of a plan, one entry for each value to fill in."""
    found: dict[str, list[tuple[str, tuple[str, ...]]]] = {}
    for entry in plan.unjudged:
        found.setdefault(wording.together(entry.missing), []).append((entry.rule, entry.parts))
    return [
        OpenCheck(
            missing,
            tuple(dict.fromkeys(rule for rule, _ in entries)),
            tuple(dict.fromkeys(part for _, parts in entries for part in parts)),
        )
        for missing, entries in found.items()
    ]


def counts(plan: Counted) -> str:
    """What follows the outcome in a heading: slips, or errors and warnings, and what is open."""
    if not plan.readable:
        return f": {counted(plan.slips, 'slip')}" if plan.slips else ""
    if plan.outcome not in MOSTLY_OPEN:
        found = [counted(plan.count(one), one) for one in ("error", "warning")]
        return "  " + ", ".join([*found, *(["length not checked"] if plan.length_waits else [])])
    warned = [counted(plan.count("warning"), "warning")] if plan.count("warning") else []
    return ", ".join(["", *warned, f"{counted(plan.open, 'check')} open"])


def totals(result: Together, *levels: Level) -> str:
    """How many plans there are, how many of them are not checked yet, and what the others have."""
    plans = [counted(len(result.plans), "plan")]
    plans += [f"{result.not_checked} not checked yet"] if result.not_checked else []
    found = ", ".join(
        counted(result.count(level), level) for level in levels or ("error", "warning", "caution")
    )
    return f"{', '.join(plans)}: {found}"


def outcomes(result: Together) -> str:
    """How many plans there are, and how many of them have each outcome, the worst first."""
    plans = sorted(result.plans, key=severity, reverse=True)
    found = Counter(plan.outcome for plan in plans)
    each = ", ".join(f"{number} {outcome}" for outcome, number in found.items())
    return f"{counted(len(plans), 'plan')}: {each}"


def to_fix(plan: Counted) -> str:
    """What a plan has to fix, counted; where it is mostly open, what there is to settle."""
    if not plan.readable:
        return counted(plan.slips, "slip") if plan.slips else ""
    levels: tuple[Level, ...] = ("error", "warning")
    found = [counted(plan.count(one), one) for one in levels if plan.count(one)]
    found += [f"{plan.open} open"] if plan.mostly_open else []
    return ", ".join(found) or "nothing"


def answers(plan: PlanResult) -> list[str]:
    """The values to fill in first where a plan is mostly open, and what each would settle.

    Of another that may be made, what its length waits for.
    """
    if plan.outcome not in MOSTLY_OPEN:
        return [f"{plan.length_waits} (it closes the length)"] if plan.length_waits else []
    return [f"{value} ({counted(number, 'check')})" for value, number in plan.answer_first]


def says_all(remark: Remark) -> bool:
    """Whether the remedy of a slip shows what is needed, too."""
    return remark.level == "slip" and remark.needed.strip('`"') in remark.remedy


def line_at(plan: PlanResult, place: Place) -> str:
    """The line of the plan, or of its drawer, at a place; empty where there is none."""
    text = plan.text if place.file == plan.file else plan.beside.get(place.file, "")
    lines = _lines(text)
    return lines[place.line - 1].rstrip() if 0 < place.line <= len(lines) else ""


def cut_line(plan: PlanResult, place: Place) -> tuple[str, str, str]:
    """The line at a place: before what is meant, what is meant, and after it.

    Of a line of thousands of signs, which as many remarks may be about, each has what lies near.
    """
    line = line_at(plan, place)
    end = place.end_column - 1 if place.end_line == place.line else len(line)
    before, meant = line[: place.column - 1].lstrip(), line[place.column - 1 : end]
    return in_view(before, meant, line[end:], _LONG_LINE)


def in_view(before: str, meant: str, after: str, room: int) -> tuple[str, str, str]:
    """A line that is cut to so many columns around what is meant.

    >>> in_view("cap: {bore: ", "8", ", depth: 7 mm}", 40)
    ('cap: {bore: ', '8', ', depth: 7 mm}')
    >>> in_view("cap: {kind: end cap, bore: ", "8", ", depth: 7 mm, length: 15 mm}", 41)
    ('cap: {kind: end cap, bore: ', '8', ', depth: 7...')
    >>> in_view("cap: {kind: end cap, bore: 8 mm, depth: ", "7", ", length: 15 mm}", 40)
    ('...ap, bore: 8 mm, depth: ', '7', ', length: ...')
    >>> in_view("海辺の町: {bore: ", "8", ", note: 夜の灯台が見える}", 32)
    ('海辺の町: {bore: ', '8', ', note: 夜...')
    """
    wide = columns_of  # a Chinese sign takes two
    if wide(before) + wide(meant) + wide(after) <= room:
        return before, meant, after
    if wide(meant) > room // 2:
        meant = _cut(meant, room // 2)
    right = min(wide(after), max(room - wide(before) - wide(meant), room // 3))
    left = room - wide(meant) - right
    if wide(before) > left:
        before = f"...{_beginning(before[::-1], left - 3)[::-1]}"
    return before, meant, _cut(after, room - wide(before) - wide(meant))


def _cut(text: str, room: int) -> str:
    return text if columns_of(text) <= room else f"{_beginning(text, room - 3)}..."


def _beginning(text: str, room: int) -> str:
    """As much of a text as fits into so many columns."""
    if columns_of(text) == len(text):
        return text[: max(0, room)]
    taken = 0
    for at, sign in enumerate(text):
        taken += columns_of(sign)
        if taken > room:
            return text[:at]
    return text


@lru_cache(maxsize=2)  # a plan and its drawer: each remark asks for its line
def _lines(text: str) -> list[str]:
    return text.splitlines()


def together(parts: Iterable[str]) -> str:
    """The parts that a check is about.

    >>> together(["rope", "cap"]), together([])
    ('rope, cap', 'the piece')
    """
    return ", ".join(parts) or "the piece"


def severity(plan: Counted) -> tuple[bool, int, bool, int, bool, int]:
    """For sorting plans, the worst highest."""
    failed, errors = bool(plan.failures), plan.count("error")
    warnings, cautions = plan.count("warning"), plan.count("caution")
    return not plan.readable, errors, failed, warnings, plan.mostly_open, cautions
