"""Pages to hand back: one sheet for a plan, and a page for a whole class with a sheet for each.

Checked plans in, HTML out. A page holds its style and needs neither network nor script.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import PurePath
from typing import Any

from wellstrung.drawing import Figure, piece
from wellstrung.drawing.sections import sections
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result, understood
from wellstrung.lists import cutting
from wellstrung.report.checks import open_checks, severity
from wellstrung.report.heading import by_swatches
from wellstrung.report.pages import listings, since, tables
from wellstrung.report.pages.cut_bars import cut_bars
from wellstrung.report.pages.front import front, lines_behind
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.of_class import class_page
from wellstrung.report.pages.remarks import numbered, right
from wellstrung.report.pages.rendering import render
from wellstrung.report.pages.tables import Table
from wellstrung.report.pages.time_line import Row, time_line
from wellstrung.report.pages.work_order import order_of
from wellstrung.report.writer import Options

PLAIN = Options()
#: a leaf shows so many fits
FITS = 4
#: and a full sheet so many others
MOST_FITS = 8


def sheet(result: PlanResult, checker: Checker | None = None, options: Options = PLAIN) -> str:
    """The leaf of one plan; where the options ask for it, with the workings behind it.

    With a checker to try them by, the sizes that would also work stand among the workings.
    """
    remarks, praised, measured = numbered(result), right(result), measurements(result)
    earlier = since.last_time(result)
    order = order_of(result)
    line = None
    if order is not None and order.steps:
        rows = [Row("maker", order, student=False), Row("student", order, student=True)]
        line = time_line("The work on a time line", rows)
    cuts = cutting.listed(understood([result]))
    cares, waiting = listings.cautions(result), open_checks(result)
    fits = sections(result)
    first = _alike(fit for fit in fits if fit.remarks)[:FITS]
    bought = list(tables.supplies(result, checker if options.full else None))
    lengths = list(tables.lengths(cuts.lengths))
    behind = lines_behind(first, order, [*bought[:1], *lengths], cares, waiting)
    besides = earlier.lines if earlier is not None else 0
    face = front(
        result, remarks, praised, measured, large=options.large, besides=besides, behind=behind
    )
    return render(
        "sheet.html",
        result=result,
        file=PurePath(result.file).name,
        about=_about(result),
        version=listings.written(result, "version"),
        large=options.large,
        full=options.full,
        front=face,
        since=earlier,
        by_number=sorted(remarks, key=lambda one: one.number),
        right=praised,
        measurements=measured,
        fits=first,
        order=order,
        care={step: [c for c in cares if step in c.steps] for c in cares for step in c.steps},
        time_line=line,
        supplies=bought[:1],
        cut_bars=[bar for chain in cuts.chains for bar in cut_bars(chain)],
        lengths=lengths,
        cautions=cares,
        cures=listings.cures(result),
        open=waiting,
        **(_behind(result, [*first, *face.drawings], fits, bought[1:]) if options.full else {}),
    )


def _behind(
    result: PlanResult, shown: Sequence[Figure], fits: Sequence[Figure], more: Sequence[Table]
) -> dict[str, Any]:
    """What only a full sheet has: all sizes, the figures not shown, and the checks that passed."""
    titles = {figure.title for figure in shown}
    drawn = [*piece.drawings(result), *filter(None, [piece.worn(result)])]
    return {
        "drawings": [one for one in drawn if one.title not in titles],
        "sizes": listings.sizes(result),
        "other_fits": [fit for fit in fits if fit.title not in titles][:MOST_FITS],
        "more_supplies": more,
        "passed": listings.passed(result),
    }


def _about(result: PlanResult) -> str:
    """The line below the title, which every printed page repeats."""
    maker, version = (listings.written(result, field) for field in ("maker", "version"))
    said = [
        result.piece,
        f"by {maker}" if maker else "",
        f"version {version}" if version else "",
        PurePath(result.file).name,
        f"bench: {PurePath(result.bench).name}" if result.bench else "",
        f"swatches: {by_swatches(result)}" if result.swatches else "",
    ]
    return " · ".join(filter(None, said))


def _alike(fits: Iterable[Figure]) -> list[Figure]:
    """Figures that show the same remarks as one, the first."""
    return list({fit.remarks: fit for fit in reversed([*fits])}.values())[::-1]


def folder(
    result: Result, checker: Checker | None = None, options: Options = PLAIN
) -> dict[str, str]:
    """The pages of a folder of plans, by file name: `index.html` and one sheet for each plan."""
    sheets = {name: sheet(plan, checker, options) for name, plan in _by_name(result).items()}
    return {"index.html": index(result, options), **sheets}


def index(result: Result, options: Options = PLAIN) -> str:
    """The first page of a folder of plans alone; its links name a sheet for each plan."""
    return class_page(result, _by_name(result), options)


def _by_name(result: Result) -> dict[str, PlanResult]:
    """The plans by the names of their sheets, those with the most to fix first."""
    names = zip(_file_names(result), result.plans, strict=True)
    return dict(sorted(names, key=lambda one: severity(one[1]), reverse=True))


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
