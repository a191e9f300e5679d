"""The report for people: readable at 60 columns, piped, and without colour."""

from __future__ import annotations

from rich.cells import cell_len
from rich.text import Text

from wellstrung.common.wording import in_steps, visible
from wellstrung.judging.result import PlanResult, Remark, Result
from wellstrung.quantity.working import described
from wellstrung.report.checks import (
    answers,
    counts,
    cut_line,
    in_view,
    open_checks,
    says_all,
    severity,
    together,
    totals,
)
from wellstrung.report.heading import applies, heading
from wellstrung.report.terminal import OUTCOMES, STYLES, Page, counted, where
from wellstrung.report.writer import Options

_INDENT, _GAP = 3, 11
#: So many further places are shown, and the rest counted; the JSON report has them all.
_PLACES = 20


def write(result: Result, options: Options) -> str:
    """The whole result as text."""
    page = Page(options)
    if len(result.plans) > 1:
        _table(page, result)
    for plan in sorted(result.plans, key=severity, reverse=True):
        if options.only is not None and plan.file not in options.only:
            continue
        if len(result.plans) == 1 or plan.remarks or plan.failures or plan.mostly_open:
            _plan(page, plan, options)
    _failures(page, result, options)
    return page.text()


def _plan(page: Page, plan: PlanResult, options: Options) -> None:
    heading(page, plan)
    page.pair("fill in first", "; ".join(answers(plan)), 0, gap=15)
    for applied in applies(plan):
        page.path(applied)
    page.line()
    for number, remark in enumerate(plan.numbered, 1):
        _remark(page, number, remark, plan, options)
    for remark in plan.remarks:
        if remark.level == "caution":
            _caution(page, remark)
    _closing(page, plan, options)


def _remark(page: Page, number: int, remark: Remark, plan: PlanResult, options: Options) -> None:
    head = Text(f"{number}. ").append(remark.level.upper(), style=STYLES[remark.level])
    head.append(f" {remark.rule}")
    if remark.accepted is not None:
        head.append(" (accepted)")
    page.line(head)
    page.line(remark.problem, _INDENT)
    page.path(f"at         {where(remark.place)}", _INDENT, "dim")
    _you_wrote(page, cut_line(plan, remark.place))
    if remark.level != "slip":  # the line shows it
        page.pair("you have", remark.found, _INDENT)
    if not says_all(remark):
        page.pair("you need", remark.needed, _INDENT)
    page.pair("do this", remark.remedy, _INDENT, "bold")
    for place in remark.also[:_PLACES]:
        page.path(f"see also   {where(place)}", _INDENT, "dim")
    if (more := len(remark.also) - _PLACES) > 0:
        page.line(f"see also   {more} more", _INDENT, "dim")
    if remark.affects:
        page.pair("affects", f"also {', '.join(remark.affects)}", _INDENT)
    if remark.accepted is not None:
        page.pair("because", remark.accepted, _INDENT)
    if options.workings:
        page.line("working", _INDENT, "bold")
        for step in remark.working:
            page.line(step, _INDENT + 2)
        for source in remark.sources:
            page.line(f"source: {source}", _INDENT + 2, "dim")
    page.line()


def _you_wrote(page: Page, line: tuple[str, str, str]) -> None:
    """The line of a remark, what is meant in view and pointed at where it is not all of it."""
    room = max(20, page.console.width - _INDENT - _GAP)
    shown = [visible(piece.replace("\t", " ")) for piece in line]
    before, meant, after = in_view(shown[0], shown[1], shown[2], room)
    if not before + meant + after:
        return
    page.path(f"{'you wrote':{_GAP}}{before}{meant}{after}", _INDENT)
    if before.strip(" -") or after:
        page.path(" " * (_GAP + cell_len(before)) + "^" * max(1, cell_len(meant)), _INDENT)


def _caution(page: Page, remark: Remark) -> None:
    bar = "|" if page.ascii_only else "┃"
    room = max(20, page.console.width - 4)
    at = f" ({in_steps(remark.steps)})" if remark.steps else ""
    for number, line in enumerate(Text(f"CAUTION{at} {remark.says}").wrap(page.console, room)):
        line.rstrip()
        if number == 0:
            line.stylize(STYLES["caution"], 0, len("CAUTION"))
        page.console.print(Text(f"{bar} ", style=STYLES["caution"]) + line, soft_wrap=True)
    page.line()


def _closing(page: Page, plan: PlanResult, options: Options) -> None:
    """How many checks passed, and those that are open."""
    if not plan.held and not plan.unjudged:
        if plan.remarks and not plan.readable:
            page.line("nothing else is checked until these are right")
            page.line()
        return
    page.line(f"{counted(len(plan.held), 'check')} passed, {len(plan.unjudged)} open")
    for kept in plan.held:
        if options.workings or kept.note:
            spare = f": {described(kept.margin)} to spare" if kept.margin else ""
            note = f"; {kept.note}" if kept.note else ""
            page.line(f"passed: {kept.rule} ({together(kept.parts)}){spare}{note}", _INDENT)
    for check in open_checks(plan):
        needs = "need" if len(check.rules) > 1 else "needs"
        rules = " and ".join(check.rules)
        page.line(f"open: {rules} ({together(check.parts)}) {needs} {check.missing}", _INDENT)
    page.line()


def _table(page: Page, result: Result) -> None:
    table = page.table()
    table.add_column("plan", ratio=1)
    table.add_column("outcome")
    table.add_column("err", justify="right")
    table.add_column("warn", justify="right")
    table.add_column("fix first", no_wrap=True)
    for plan in sorted(result.plans, key=severity, reverse=True):
        first = plan.fix_first
        table.add_row(
            Text(result.called(plan)),
            Text(plan.outcome, OUTCOMES[plan.outcome]).append(
                "" if plan.readable else counts(plan)
            ),
            str(plan.count("error")) if plan.readable else "",
            str(plan.count("warning")) if plan.readable else "",
            Text(f"{first.rule}\nline {first.place.line}" if first else ""),
        )
    page.console.print(table)
    page.line(totals(result))
    for bench in dict.fromkeys(plan.bench for plan in result.plans if plan.bench):
        page.path(f"bench: {bench}")
    page.line()


def _failures(page: Page, result: Result, options: Options) -> None:
    for failure in result.failures:
        page.line(failure.says, style="bold red")
        if options.trace:
            page.path(failure.trace.rstrip())
