"""What stands above a plan's remarks, and above a list that is made of plans."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wellstrung.common.wording import some_of
from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.summary import Totals, summary
from wellstrung.report.checks import counts, outcomes
from wellstrung.report.styled import Text
from wellstrung.report.terminal import OUTCOMES, Page, counted

#: So many plans of a list are named, and the rest counted.
_NAMED = 20


def heading(page: Page, plan: PlanResult) -> None:
    """One plan by its title, maker and file, with its verdict."""
    if plan.title:
        by = f", by {plan.maker}" if plan.maker else ""
        page.line(Text(plan.title, style="bold").append(f", {plan.piece}{by}"))
    page.path(plan.file)
    page.line(verdict(plan))


def verdict(plan: PlanResult) -> Text:
    """The outcome of a plan in capitals, with what was counted."""
    outcome = Text(plan.outcome.upper(), style=OUTCOMES[plan.outcome])
    return outcome.append(counts(plan))


def head(page: Page, results: Sequence[PlanResult], makers: int = 1) -> None:
    """The plans by title and file, with what keeps one of them from being made or counted."""
    if len(results) > 1:
        _several(page, Result(tuple(results)), makers)
        return
    for result in results:
        title = Text(result.title or result.file, style="bold")
        if makers > 1:
            title.append(f", for {makers} makers")
        page.line(title)
        page.path(result.file)
        for applied in applies(result):
            page.path(applied)
        if result.ask is None:
            page.line(
                f"{result.outcome}{counts(result)}; left out here, `wellstrung check` says why",
                style=OUTCOMES["not checked yet"],
            )
        elif says := not_as_written(result, "`wellstrung check` says"):
            page.line(says, style=OUTCOMES["not makeable"])


def _several(page: Page, result: Result, makers: int) -> None:
    """Several plans in a few lines: how many, which of them are left out or not makeable."""
    plans = outcomes(Totals([summary(plan) for plan in result.plans]))
    page.line(Text(f"{plans}; for {makers} makers each" if makers > 1 else plans, style="bold"))
    left = [f"{result.called(plan)} ({plan.outcome})" for plan in result.plans if plan.ask is None]
    wrong = [result.known_by(one) for one in result.plans if one.ask and one.count("error")]
    groups = {
        "left out, `wellstrung check` says why": (left, "not checked yet"),
        "not makeable as written, `wellstrung check` says why": (wrong, "not makeable"),
    }
    for says, (names, outcome) in groups.items():
        if names:
            page.line(f"{says}: {some_of(names, _NAMED)}", style=OUTCOMES[outcome])
    for applied in dict.fromkeys(each for plan in result.plans for each in applies(plan)):
        page.path(applied)


def lacking(results: Sequence[PlanResult]) -> str:
    """Which plans a list lacks, and until when; empty where it lacks none."""
    every = Result(tuple(results))
    unread = [plan for plan in results if plan.ask is None]
    if not unread:
        return ""
    several, slips = len(unread) > 1, [plan.slips for plan in unread]
    until = "they can be read" if several else "it can be read"
    if all(slips):
        whose = "their" if several else "its"
        until = f"{whose} slip is mended" if slips == [1] else f"{whose} slips are mended"
    names = some_of([f"`{every.called(plan)}`" for plan in unread], _NAMED)
    return f"nothing can be listed for {names} until {until}"


def not_as_written(result: PlanResult, where: str) -> str:
    """That a piece cannot be made as its plan has it, and where it stands what to change."""
    if not result.count("error"):
        return ""
    errors = counted(result.count("error"), "error")
    return f"not makeable as written, {errors}: {where} what to change first"


def applies(result: PlanResult) -> list[str]:
    """The files beside a plan by which it was checked, each with what it is."""
    files = {"bench": result.bench, "drawer": result.drawer}
    found = [f"{what}: {file}" for what, file in files.items() if file]
    return [*found, *([f"swatches: {by_swatches(result)}"] if result.swatches else [])]


def by_swatches(result: PlanResult) -> str:
    """The swatches of its bench that a plan goes by, and what they narrow."""
    lines = some_of([str(place.line) for place, _ in result.swatches], _NAMED)
    what = dict.fromkeys(name for _, names in result.swatches for name in names)
    narrow = "line {} narrows" if len(result.swatches) == 1 else "lines {} narrow"
    return f"{narrow.format(lines)} {some_of([*what], _NAMED)}"


def as_data(results: Sequence[PlanResult]) -> list[dict[str, Any]]:
    """The same as plain data."""
    return [
        {
            "file": result.file,
            "title": result.title,
            "outcome": result.outcome,
            "bench": result.bench,
            "drawer": result.drawer,
            "counted": result.ask is not None,
        }
        for result in results
    ]
