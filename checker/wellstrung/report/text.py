"""The report for people: readable at 60 columns, piped, and without colour."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from msgspec.structs import replace

from wellstrung.common.wording import in_steps, some_of, visible
from wellstrung.judging.result import PlanResult, Remark, Result, Summary
from wellstrung.judging.summary import Totals, summary
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import described
from wellstrung.report.checks import (
    answers,
    cut_line,
    in_view,
    open_checks,
    outcomes,
    says_all,
    severity,
    to_fix,
    together,
    totals,
)
from wellstrung.report.heading import applies, heading
from wellstrung.report.styled import Text, columns_of
from wellstrung.report.terminal import OUTCOMES, STYLES, Page, counted, where
from wellstrung.report.writer import Options
from wellstrung.rulebook.wording import about

_INDENT, _GAP = 3, 11
#: So many further places are shown, and the rest counted; the JSON report has them all.
_PLACES = 20
#: The most remarks, and the most open checks, that the report of one plan shows.
_SHOWN = 300
#: Of a plan in a folder so many open checks are shown, those first that most checks wait for.
_OPEN = 3
#: From so many columns on, the table of a folder shows what to fix first.
_WIDE = 100


def write(result: Result, options: Options) -> str:
    """The whole result as text."""
    options = replace(options, several=len(result.plans) > 1)
    if result.since:
        options = replace(options, compared=result)
    return "\n".join(whole([(each(one, options), summary(one)) for one in result.plans], options))


def each(plan: PlanResult, options: Options) -> str:
    """What there is to say of one plan; of one among several that is fine, nothing."""
    page = Page(options)
    shown = options.compared is None and (options.only is None or plan.file in options.only)
    if shown and options.brief:
        _brief(page, plan)
    elif shown and (not options.several or summary(plan).says_more):
        _plan(page, plan, options, alone=not options.several)
    return page.text()


def whole(plans: Iterable[tuple[str, Summary]], options: Options) -> Iterator[str]:
    """The report: of several plans how they stand, the worst first, and last a table of all.

    Of plans that were compared with earlier ones it is what changed since then.
    """
    written = list(plans)
    if options.compared is not None:
        from wellstrung.report import since  # most runs compare nothing

        yield since.write(options.compared, options)
        return
    written.sort(key=lambda one: severity(one[1]), reverse=True)
    found = Totals([plan for _, plan in written])
    shown = [one for one in found.plans if options.only is None or one.file in options.only]
    page = Page(options)
    if options.brief:
        yield from (text for text, _ in written if text)
        page.path(outcomes(found))
        if any(plan.cautions for plan in shown):
            page.path("there are cautions too: leave out --brief to read them")
    elif options.several:
        head = Page(options)
        head.line(outcomes(found))
        yield f"{head.text()}\n"
        _fine(page, found, [plan for plan in shown if not plan.says_more])
        _cautions(page, found, shown)
        _table(page, found)
    _failures(page, found, options)
    end = page.text()
    if not options.brief:
        texts = [text for text, _ in written if text]
        yield from (f"{text}\n" for text in texts[:-1])
        yield from [f"{texts[-1]}\n" if end else texts[-1]] if texts else ()
    if end:
        yield end


def _brief(page: Page, plan: PlanResult) -> None:
    """Each remark in a line that is never wrapped."""
    for one in plan.numbered:
        accepted = ", accepted" if one.accepted is not None else ""
        at = f"{one.place.file}:{one.place.line}"
        page.path(f"{at}: {one.level}{accepted}: {one.says} [{one.rule}]")


def _plan(page: Page, plan: PlanResult, options: Options, *, alone: bool) -> None:
    heading(page, plan)
    page.pair("fill in first", "; ".join(answers(plan)), 0, gap=15)
    for applied in applies(plan):
        page.path(applied)
    page.line()
    remarks = plan.numbered
    for number, remark in enumerate(remarks[:_SHOWN], 1):
        _remark(page, number, remark, plan, options)
    _count(page, plan, remarks[_SHOWN:])
    for remark in plan.cautions if alone else ():
        _caution(page, remark.says, in_steps(remark.steps) if remark.steps else "")
    _closing(page, plan, options, alone=alone)


def _remark(page: Page, number: int, remark: Remark, plan: PlanResult, options: Options) -> None:
    says = Text(f"{number}. ").append(remark.level.upper(), style=STYLES[remark.level])
    says.append(f"{', accepted' if remark.accepted is not None else ''}: {remark.problem}")
    if remark.level != "slip":  # the names of slips are for programs
        says.append(f" [{remark.rule}]", style="dim")
    page.hanging(says, _INDENT)
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
    if options.workings and remark.working:
        page.line("working", _INDENT, "bold")
        for step in remark.working:
            page.line(step, _INDENT + 2)
        for source in remark.sources:
            page.line(f"source: {source}", _INDENT + 2, "dim")
    page.line()


def _count(page: Page, plan: PlanResult, remarks: Sequence[Remark]) -> None:
    """The remarks that are not shown, counted by rule, and the command that lists them."""
    if not remarks:
        return
    by_rule = Counter(remark.rule for remark in remarks).most_common()
    each = ", ".join(f"{count} {rule}" for rule, count in by_rule)
    more = f"{len(remarks)} more remarks ({each})"
    page.path(f"{more}: `wellstrung check {plan.file} --brief` lists them")
    page.line()


def _you_wrote(page: Page, line: tuple[str, str, str]) -> None:
    """The line of a remark, what is meant in view and pointed at where it is not all of it."""
    room = max(20, page.width - _INDENT - _GAP)
    shown = [visible(piece.replace("\t", " ")) for piece in line]
    before, meant, after = in_view(shown[0], shown[1], shown[2], room)
    if not before + meant + after:
        return
    page.path(f"{'you wrote':{_GAP}}{before}{meant}{after}", _INDENT)
    if before.strip(" -") or after:
        page.path(" " * (_GAP + columns_of(before)) + "^" * max(1, columns_of(meant)), _INDENT)


def _caution(page: Page, says: str, at: str = "", whose: str = "") -> None:
    """A safety text beside a bar, with the steps and the plans that it is for."""
    bar = "|" if page.ascii_only else "┃"
    room = max(20, page.width - 4)
    head = Text("CAUTION", style=STYLES["caution"])
    head.append(f"{f' ({at})' if at else ''} {says}")
    for text in (head, Text(whose, style="dim")):
        for line in text.wrap(room) if text else ():
            page.put(Text(f"{bar} ", STYLES["caution"]) + line)
    page.line()


def _fine(page: Page, found: Totals, plans: Sequence[Summary]) -> None:
    """The plans of a folder that have nothing to fix, each in a line."""
    for plan in plans:
        checks = f"{counted(plan.passed, 'check')} passed, {plan.open} open"
        line = f"{found.called(plan)}: {plan.outcome}, {checks}"
        shown = f"{line}  {plan.file}"
        fits = plan.file not in line and columns_of(shown) <= page.width
        page.hanging(Text(shown if fits else line), _INDENT)
    if plans:
        page.line()


def _cautions(page: Page, found: Totals, plans: Sequence[Summary]) -> None:
    """The safety texts of a folder, each once, with the plans and the steps that it is for."""
    texts: dict[str, list[str]] = {}
    for plan in plans:
        for says, steps in plan.cautions:
            at = f" ({in_steps(steps)})" if steps else ""
            texts.setdefault(says, []).append(f"{found.known_by(plan)}{at}")
    for says, whose in texts.items():
        _caution(page, says, whose=f"for {some_of(whose, _PLACES)}")


def _closing(page: Page, plan: PlanResult, options: Options, *, alone: bool) -> None:
    """How many checks passed, and those that are open."""
    if not plan.held and not plan.unjudged:
        if plan.remarks and not plan.readable:
            page.line("nothing else is checked until these are right")
            page.line()
        return
    page.line(f"{counted(len(plan.held), 'check')} passed, {len(plan.unjudged)} open")
    for kept in plan.held:
        if options.workings or kept.note:
            spare = f": {_spare(kept.margin)} to spare" if kept.margin else ""
            note = f"; {kept.note}" if kept.note else ""
            line = Text(f"passed: {kept.rule} ({together(kept.parts)}){spare}{note}")
            page.hanging(line, 2 * _INDENT, _INDENT)
    waiting = open_checks(plan)
    shown = waiting[:_SHOWN]
    if not alone and len(waiting) > _OPEN:
        shown = sorted(waiting, key=lambda one: -len(one.rules))[:_OPEN]
    for check in shown:
        whose = f"{' and '.join(check.rules)}: {together(check.parts)}"
        says = Text(f"open: needs {check.missing}").append(f" [{whose}]", style="dim")
        page.hanging(says, 2 * _INDENT, _INDENT)
    if more := len(waiting) - len(shown):
        how = " --as json" if alone else ""
        page.path(f"open: {more} more, `wellstrung check {plan.file}{how}` lists them", _INDENT)
    page.line()


def _spare(margin: Quantity) -> str:
    return about(margin) if margin.unit == "N" else described(margin)


def _table(page: Page, found: Totals) -> None:
    """Every plan in a row: who made it, how it stands, how much there is to fix and what first."""
    named, wide = any(plan.maker for plan in found.plans), page.width >= _WIDE
    table = page.table()
    if named:
        table.add_column("who", max_width=16)
    table.add_column("piece", ratio=1)
    table.add_column("outcome", max_width=22 if wide else 15)
    table.add_column("to fix", max_width=18 if wide else 10)
    if wide:
        table.add_column("fix first", ratio=2)
    for plan in found.plans:
        row = [Text(plan.maker)] if named else []
        row += [Text(found.called(plan)), Text(plan.outcome, OUTCOMES[plan.outcome])]
        first = plan.fix_first
        says = f"line {first.place.line}: {first.remedy or first.problem}" if first else ""
        table.add_row(
            *row,
            Text(to_fix(plan) if wide else to_fix(plan).replace(", ", ",\n")),
            *([Text(says)] if wide else []),
        )
    page.draw(table)
    page.line()
    page.line(totals(found, "error", "warning"))
    for bench in dict.fromkeys(plan.bench for plan in found.plans if plan.bench):
        page.path(f"bench: {bench}")
    page.line()


def _failures(page: Page, found: Totals, options: Options) -> None:
    for failure in found.failures:
        page.line(failure.says, style="bold red")
        if options.trace:
            page.path(failure.trace.rstrip())
