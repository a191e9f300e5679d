"""What changed in plans since earlier ones, in words: short, for whoever reads a second version."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from wellstrung.common.wording import in_steps
from wellstrung.judging.result import PlanResult, Remark, Result
from wellstrung.judging.versions import Change, Fate, Since
from wellstrung.report.checks import severity
from wellstrung.report.heading import applies, heading
from wellstrung.report.styled import Text
from wellstrung.report.terminal import OUTCOMES, STYLES, Page, counted
from wellstrung.report.writer import Options

_INDENT = 3
#: so many values, names and parts with changes are shown, and the rest is counted
_MOST = 12
_ROWS = 30
#: the lists of what became of remarks, each with its heading
_LISTS = {
    "mended": "mended", "accepted": "accepted now", "unknown": "not known now", "new": "new",
    "still": "still there", "cautions": "new to take care of",
}  # fmt: skip
#: those of remarks that the later plan has: they are numbered, and show what to do
_THERE = frozenset({"new", "still"})


class Told(NamedTuple):
    """A remark in one line: its sentence, where it stands, and what is to be done about it.

    `number` is the one that a report of the plan gives it; 0 where it has none. `note` is what
    else there is to say of it; a slip has no name that a person would need.
    """

    number: int
    says: str
    where: str
    note: str
    remedy: str
    rule: str
    remark: Remark


def verdict(plan: PlanResult) -> str:
    """What became of a plan, in one line."""
    since = plan.since
    if since is None:
        return "there is no earlier version of it"
    if is_as_it_was(since):
        left = f": {counted(len(since.still), 'remark')} still there" if since.still else ""
        return f"nothing has changed{left}"
    if since.readable and not plan.readable:
        slips = counted(len(since.new), "slip")
        return f"{slips} to put right first: what was mended is not known yet"
    said = [f"{len(since.mended)} of {since.had} mended" if since.had else "nothing was to mend"]
    said += [f"{len(since.accepted)} accepted"] if since.accepted else []
    said += [f"{len(since.unknown)} not known now"] if since.unknown else []
    said += [f"{len(since.new)} {_new(since)}"] if since.new else []
    return ", ".join(said)


def is_as_it_was(since: Since) -> bool:
    """Whether nothing that a report shows has changed."""
    return not any(
        (
            since.mended, since.accepted, since.unknown, since.new, since.cautions,
            since.answered, since.opened, since.renamed, since.came, since.went, since.changed,
        )
    )  # fmt: skip


def _new(since: Since) -> str:
    """What a remark is called that the earlier plan had not: its slips may have hidden it."""
    return "new" if since.readable else "seen only now"


def lists(plan: PlanResult) -> Iterator[tuple[str, list[Told]]]:
    """What became of the remarks, a list with its heading for each end they came to."""
    since = plan.since
    numbers = {id(one): number for number, one in enumerate(plan.numbered, 1)}
    if since is None:
        fates = [Fate(one) for one in plan.numbered if one.counts]
        if fates:
            yield "to fix", [_told(fate, numbers) for fate in fates]
        return
    for name, called in _LISTS.items():
        found: tuple[Fate, ...] = getattr(since, name)
        if found and (plan.readable or name != "unknown"):
            title = _new(since) if name == "new" else called
            yield title, [_told(fate, numbers if name in _THERE else {}) for fate in found]


def _told(fate: Fate, numbers: Mapping[int, int]) -> Told:
    """A remark by its sentence; with its line and what to do where the later plan has it."""
    remark, note = fate
    number = numbers.get(id(remark), 0)
    places = [f"line {remark.place.line}"] if number else []
    places += [in_steps(remark.steps)] if remark.steps else []
    remedy, rule = remark.remedy if number else "", remark.rule if remark.level != "slip" else ""
    return Told(number, remark.problem, ", ".join(places), note, remedy, rule, remark)


def facts(since: Since) -> Iterator[tuple[str, str]]:
    """What else changed but sizes and amounts, each with its heading; of many the first."""
    if since.answered:
        yield "answered now", _some(_values(since.answered))
    if since.opened:
        yield "open now", _some(_values(since.opened))
    if since.renamed:
        yield "renamed", _some([f"`{old}` is `{new}` now" for old, new in since.renamed])
    if since.came:
        yield "added", _some([f"`{name}`" for name in since.came])
    if since.went:
        yield "taken out", _some([f"`{name}`" for name in since.went])


def _values(waited: Iterable[tuple[str, int]]) -> list[str]:
    return [f"{value} ({counted(number, 'check')})" for value, number in waited]


def _some(texts: Sequence[str]) -> str:
    more = [f"and {len(texts) - _MOST} more"] if len(texts) > _MOST else []
    return "; ".join([*texts[:_MOST], *more])


def changed(since: Since) -> tuple[dict[str, list[Change]], int]:
    """The sizes and amounts that changed, by what they are of; of many the first.

    Then how many more there are.
    """
    found: dict[str, list[Change]] = {}
    for change in since.changed:
        found.setdefault(change.of, []).append(change)
    return dict([*found.items()][:_ROWS]), max(len(found) - _ROWS, 0)


# --- for the terminal


def write(result: Result, options: Options) -> str:
    """The plans since their earlier versions, as text: of a folder the table last."""
    page = Page(options)
    plans = sorted(result.plans, key=severity, reverse=True)
    for plan in plans:
        as_it_was = plan.since is not None and is_as_it_was(plan.since) and not plan.since.notes
        if options.only is not None and plan.file not in options.only:
            continue
        if options.brief:
            page.path(f"{plan.file}: {verdict(plan)}")
        elif len(plans) == 1 or not as_it_was:
            _plan(page, plan, options)
    if len(plans) > 1:
        if not options.brief:
            _table(page, result, plans)
        page.line(totals(result))
        for plan in result.gone:
            page.line(f"gone: {', '.join(filter(None, (plan.title, plan.file)))}")
    for failure in result.failures:
        page.line(failure.says, style="bold red")
        if options.trace:
            page.path(failure.trace.rstrip())
    return page.text()


def _plan(page: Page, plan: PlanResult, options: Options) -> None:
    heading(page, plan)
    for applied in applies(plan):
        page.path(applied)
    page.line()
    since = plan.since
    if since is not None:
        page.path(f"since {since.file}, {since.outcome}")
    page.line(verdict(plan), style="bold")
    for note in since.notes if since is not None else ():
        page.line(note)
    page.line()
    for title, told in lists(plan):
        page.line(title, style="bold")
        for one in told:
            _remark(page, one, options)
        page.line()
    if since is not None:
        _rest(page, since)


def _remark(page: Page, one: Told, options: Options) -> None:
    mark = f"{one.number}." if one.number else "-"
    about = "; ".join(filter(None, (one.where, one.note)))
    said = f"{one.says} ({about})" if about else one.says
    said += f" [{one.rule}]" if one.rule else ""
    page.pair(mark, said, _INDENT, STYLES[one.remark.level], gap=4)
    page.pair("", f"do this: {one.remedy}" if one.remedy else "", _INDENT, gap=4)
    if options.workings and one.number:
        for step in one.remark.working:
            page.pair("", step, _INDENT, gap=6)


def _rest(page: Page, since: Since) -> None:
    for title, text in facts(since):
        page.pair(title, text, 0, gap=15)
    if any(facts(since)):
        page.line()
    rows, more = changed(since)
    if rows:
        page.line("changed", style="bold")
        gap = min(22, max(map(len, rows)) + 2)
        for of, changes in rows.items():
            said = "; ".join(f"{one.what} {one.before} -> {one.after}" for one in changes)
            page.pair(of, said, _INDENT, gap=gap)
        if more:
            page.line(f"and {more} more, which `--as json` lists", _INDENT)
        page.line()


def _table(page: Page, result: Result, plans: Sequence[PlanResult]) -> None:
    table = page.table()
    named = any(plan.maker for plan in plans)
    if named:
        table.add_column("who", max_width=16)
    table.add_column("piece", ratio=1)
    table.add_column("outcome", max_width=15)
    for name in ("mended", "new", "still"):
        table.add_column(name, justify="right", no_wrap=True)
    for plan in plans:
        since = plan.since
        cells = cells_of(since) if since is not None else ("new plan", "", "")
        who = [Text(plan.maker)] if named else []
        outcome = Text(plan.outcome, OUTCOMES[plan.outcome])
        table.add_row(*who, Text(result.called(plan)), outcome, *cells)
    page.draw(table)
    page.line()


def cells_of(since: Since) -> tuple[str, str, str]:
    """How many remarks were mended, are new, and are still there; empty for none."""
    mended = f"{len(since.mended)} of {since.had}" if since.had else ""
    new, still = (f"{len(some)}" if some else "" for some in (since.new, since.still))
    return mended, new, still


def totals(result: Result, earlier: str = "") -> str:
    """What became of all the plans together, since the `earlier` ones as they are to be called."""
    followed = [plan.since for plan in result.plans if plan.since is not None]
    mended, had = sum(len(one.mended) for one in followed), sum(one.had for one in followed)
    new, still = sum(len(one.new) for one in followed), sum(len(one.still) for one in followed)
    said = [f"{mended} of {had} mended, {new} new, {still} still there"]
    came = len(result.plans) - len(followed)
    said += [counted(came, "new plan")] if came else []
    said += [f"{counted(len(result.gone), 'plan')} gone"] if result.gone else []
    return (
        f"{counted(len(result.plans), 'plan')} since {earlier or result.since}: {'; '.join(said)}"
    )
