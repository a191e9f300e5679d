"""The report for people: readable at 60 columns, piped, and without colour."""

from __future__ import annotations

from collections.abc import Iterable
from io import StringIO

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from wellstrung.common.places import Place
from wellstrung.judging.result import PlanResult, Remark, Result, Unjudged
from wellstrung.quantity.working import described
from wellstrung.report import Options

#: Levels are told by word; colour only repeats it.
STYLES = {"error": "bold red", "warning": "bold yellow", "caution": "bold cyan"}
OUTCOMES = {
    "makeable": "bold green",
    "makeable with warnings": "bold yellow",
    "not makeable": "bold red",
    "unreadable": "bold red",
}
_INDENT = 3


def write(result: Result, options: Options) -> str:
    """The whole result as text."""
    page = Page(options)
    if len(result.plans) > 1:
        _table(page, result)
    for plan in sorted(result.plans, key=severity, reverse=True):
        if len(result.plans) == 1 or plan.remarks:
            _plan(page, plan, options)
    _failures(page, result)
    return page.text()


def severity(plan: PlanResult) -> tuple[bool, int, int, int]:
    """For sorting plans, the worst highest."""
    return (
        not plan.readable,
        plan.count("error"),
        plan.count("warning"),
        plan.count("caution"),
    )


class Page:
    """A page of a set width that collects what is printed on it."""

    def __init__(self, options: Options) -> None:
        self._out = StringIO()
        self.ascii_only = options.ascii_only
        self.console = Console(
            file=self._out,
            width=options.width,
            color_system="standard" if options.colour else None,
            force_terminal=options.colour,
            markup=False,
            highlight=False,
            emoji=False,
            legacy_windows=False,
            _environ={},
        )

    def line(self, text: str | Text = "", indent: int = 0, style: str = "") -> None:
        """A paragraph, wrapped and indented; a blank line without text."""
        if not text:
            self.console.print()
            return
        body = text if isinstance(text, Text) else Text(text, style=style)
        self.console.print(Padding(body, (0, 0, 0, indent), expand=False))

    def path(self, text: str, indent: int = 0, style: str = "") -> None:
        """A line that is never wrapped, so that a terminal can follow it."""
        self.console.print(Text(" " * indent + text, style=style), soft_wrap=True)

    def pair(self, name: str, text: str, indent: int, style: str = "", gap: int = 11) -> None:
        """A short name and what belongs to it, hanging."""
        if not text:
            return
        room = max(20, self.console.width - indent - gap)
        lines = Text(text).wrap(self.console, room)
        for number, line in enumerate(lines):
            line.rstrip()
            head = Text(name.ljust(gap) if number == 0 else " " * gap, style=style)
            self.console.print(Text(" " * indent) + head + line, soft_wrap=True)

    def text(self) -> str:
        """All that was printed, without blanks at the ends of lines."""
        lines = [line.rstrip() for line in self._out.getvalue().rstrip().splitlines()]
        return "\n".join(lines)


def where(place: Place) -> str:
    """A place as `file:line:column`."""
    return f"{place.file}:{place.line}:{place.column}"


def counted(number: int, word: str) -> str:
    """A count with its word.

    >>> counted(1, "error"), counted(0, "warning")
    ('1 error', '0 warnings')
    """
    return f"{number} {word}{'' if number == 1 else 's'}"


def _plan(page: Page, plan: PlanResult, options: Options) -> None:
    if plan.title:
        page.line(Text(plan.title, style="bold").append(f", {plan.piece}", style="not bold"))
    page.path(plan.file)
    counts = [counted(plan.count(level), level) for level in ("error", "warning") if plan.readable]
    outcome = Text(plan.outcome.upper(), style=OUTCOMES[plan.outcome])
    if counts:
        outcome.append(f"  {', '.join(counts)}", style="not bold default")
    page.line(outcome)
    if plan.bench:
        page.path(f"bench: {plan.bench}")
    page.line()
    texts = {**plan.beside, plan.file: plan.text}
    lines = {file: text.splitlines() for file, text in texts.items()}
    for number, remark in enumerate(plan.numbered, 1):
        _remark(page, number, remark, lines.get(remark.place.file, []), options)
    for remark in plan.remarks:
        if remark.level == "caution":
            _caution(page, remark)
    _closing(page, plan, options)


def _remark(page: Page, number: int, remark: Remark, lines: list[str], options: Options) -> None:
    head = Text(f"{number}. ").append(remark.level.upper(), style=STYLES[remark.level])
    head.append(f" {remark.rule}")
    if remark.accepted is not None:
        head.append(" (accepted)")
    page.line(head)
    page.line(remark.says, _INDENT)
    page.path(f"at         {where(remark.place)}", _INDENT, "dim")
    if 0 < remark.place.line <= len(lines):
        written = lines[remark.place.line - 1].strip()
        room = page.console.width - _INDENT - 11
        page.pair(
            "you wrote", written if len(written) <= room else f"{written[: room - 3]}...", _INDENT
        )
    page.pair("you have", remark.found, _INDENT)
    page.pair("you need", remark.needed, _INDENT)
    page.pair("do this", remark.remedy, _INDENT, "bold")
    for place in remark.also:
        page.path(f"see also   {where(place)}", _INDENT, "dim")
    if remark.affects:
        page.pair("touches", ", ".join(remark.affects) + " as well", _INDENT)
    if remark.accepted is not None:
        page.pair("because", remark.accepted, _INDENT)
    if options.workings:
        _workings(page, remark.working, remark.sources)
    page.line()


def _workings(page: Page, working: Iterable[str], sources: Iterable[str]) -> None:
    page.line("working", _INDENT, "bold")
    for step in working:
        page.line(step, _INDENT + 2)
    for source in sources:
        page.line(f"source: {source}", _INDENT + 2, "dim")


def _caution(page: Page, remark: Remark) -> None:
    bar = "|" if page.ascii_only else "┃"
    room = max(20, page.console.width - 4)
    for number, line in enumerate(Text(f"CAUTION {remark.says}").wrap(page.console, room)):
        line.rstrip()
        if number == 0:
            line.stylize(STYLES["caution"], 0, len("CAUTION"))
        page.console.print(Text(f"{bar} ", style=STYLES["caution"]) + line, soft_wrap=True)
    page.line()


def _closing(page: Page, plan: PlanResult, options: Options) -> None:
    if not plan.held and not plan.unjudged:
        if plan.readable and plan.remarks:
            page.line("the fits are not checked until the shape of the plan is right")
            page.line()
        return
    page.line(f"{counted(len(plan.held), 'check')} held, {len(plan.unjudged)} not judged")
    if options.workings:
        for kept in plan.held:
            spare = f": {described(kept.margin)} to spare" if kept.margin else ""
            page.line(f"held: {kept.rule} ({', '.join(kept.parts) or 'piece'}){spare}", _INDENT)
    for missing, entries in _by_what_they_want(plan):
        rules = " and ".join(dict.fromkeys(entry.rule for entry in entries))
        parts = ", ".join(dict.fromkeys(part for entry in entries for part in entry.parts))
        wants = "wants" if len(entries) == 1 else "want"
        page.line(f"not judged: {rules} ({parts or 'piece'}) {wants} {missing}", _INDENT)
    page.line()


def _by_what_they_want(plan: PlanResult) -> Iterable[tuple[str, list[Unjudged]]]:
    """What could not be judged, by the field that would let it be: one line for each to fill in."""
    found: dict[str, list[Unjudged]] = {}
    for entry in plan.unjudged:
        found.setdefault(" and ".join(entry.missing), []).append(entry)
    return found.items()


def _table(page: Page, result: Result) -> None:
    from rich import box
    from rich.table import Table

    table = Table(box=box.ASCII2 if page.ascii_only else box.SIMPLE, pad_edge=False)
    table.add_column("plan", ratio=1)
    table.add_column("outcome")
    table.add_column("err", justify="right")
    table.add_column("warn", justify="right")
    table.add_column("mend first", no_wrap=True)
    for plan in sorted(result.plans, key=severity, reverse=True):
        first = plan.fix_first
        table.add_row(
            Text(plan.title or plan.file),
            Text(plan.outcome, style=OUTCOMES[plan.outcome]),
            str(plan.count("error")),
            str(plan.count("warning")),
            Text(f"{first.rule}\nline {first.place.line}" if first else ""),
        )
    page.console.print(table)
    totals = ", ".join(
        counted(result.count(level), level) for level in ("error", "warning", "caution")
    )
    page.line(f"{counted(len(result.plans), 'plan')}: {totals}")
    for bench in dict.fromkeys(plan.bench for plan in result.plans if plan.bench):
        page.path(f"bench: {bench}")
    page.line()


def _failures(page: Page, result: Result) -> None:
    for failure in result.failures:
        page.line(failure.says, style="bold red")
