"""Pages to hand back: one sheet for a plan, and a page for a whole class with a sheet for each.

Checked plans in, HTML out. A page holds its style and needs neither network nor script.
"""

from __future__ import annotations

from pathlib import PurePath

from wellstrung.drawing import piece
from wellstrung.drawing.sections import sections
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result, understood
from wellstrung.lists import cutting
from wellstrung.report import cuts_list
from wellstrung.report.checks import open_checks, severity
from wellstrung.report.pages import listings, tables
from wellstrung.report.pages.cut_bars import cut_bars
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.remarks import FIRST_PAGE, numbered, right
from wellstrung.report.pages.rendering import render
from wellstrung.report.pages.time_line import Row, time_line, time_lines
from wellstrung.report.pages.work_order import order_of

#: a sheet shows so many fits; those that fail come first
FITS = 8


def sheet(result: PlanResult, checker: Checker | None = None) -> str:
    """The page of one plan; with a checker to try them by, the sizes that would also work."""
    remarks = numbered(result)
    order = order_of(result)
    line = None
    if order is not None and order.steps:
        rows = [Row("maker", order, student=False), Row("student", order, student=True)]
        line = time_line("The work on a time line", rows)
    cuts = cutting.listed(understood([result]))
    return render(
        "sheet.html",
        result=result,
        maker=listings.written(result, "maker"),
        first=next((one for one in remarks if one.remark is result.fix_first), None),
        on_first_page=remarks[:FIRST_PAGE],
        further=remarks[FIRST_PAGE:],
        by_number=sorted(remarks, key=lambda one: one.number),
        right=right(result),
        measurements=measurements(result),
        drawings=piece.drawings(result),
        sizes=listings.sizes(result),
        fits=sections(result)[:FITS],
        supplies=list(tables.supplies(result, checker)),
        cut_bars=[bar for chain in cuts.chains for bar in cut_bars(chain)],
        lengths=list(tables.lengths(cuts.lengths)),
        order=order,
        care=listings.cautions_at(result),
        cut_care=cuts_list.cautions([result]) if cuts.chains or cuts.lengths else (),
        time_line=line,
        cautions=listings.cautions([result], but_at_steps=order is not None),
        cures=listings.cures(result),
        open=open_checks(result),
        passed=listings.passed(result),
    )


def folder(result: Result, checker: Checker | None = None) -> dict[str, str]:
    """The pages of a folder of plans, by file name: `index.html` and one sheet for each plan."""
    names = dict(zip(_file_names(result), result.plans, strict=True))
    plans = dict(sorted(names.items(), key=lambda one: severity(one[1]), reverse=True))
    orders = [(result.called(plan), order_of(plan)) for plan in plans.values()]
    rows = [Row(title, order, student=True) for title, order in orders if order and order.steps]
    index = render(
        "class.html",
        result=result,
        rows=[
            (name, plan, listings.written(plan, "maker"), plan.fix_first)
            for name, plan in plans.items()
        ],
        time_lines=list(time_lines(rows)),
        orders=rows,
        checkpoints=[
            (result.called(plan), one.what, "; ".join(one.changes))
            for plan in result.plans
            for one in measurements(plan)
            if one.changes
        ],
        sizes=tables.whole_sizes(result.plans),
        cautions=listings.cautions(result.plans),
    )
    return {"index.html": index, **{name: sheet(plan, checker) for name, plan in plans.items()}}


def _file_names(result: Result) -> list[str]:
    """A file name for the page of each plan, like that of the plan; no two the same."""
    taken = {"index.html"}
    names = []
    for plan in result.plans:
        stem = PurePath(plan.file).stem
        name, count = f"{stem}.html", 2
        while name.casefold() in taken:
            name, count = f"{stem}-{count}.html", count + 1
        taken.add(name.casefold())
        names.append(name)
    return names
