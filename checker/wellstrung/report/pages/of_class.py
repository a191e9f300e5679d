"""The page of a class: the teacher's leaf, and behind it the work, sizes and checkpoints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from wellstrung.judging.result import PlanResult, Result
from wellstrung.report.checks import outcomes
from wellstrung.report.pages import since, tables
from wellstrung.report.pages.faults_by_kind import kinds, shared
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.next_time import cures, to_measure
from wellstrung.report.pages.rendering import render
from wellstrung.report.pages.students import Student, students
from wellstrung.report.pages.time_line import Row, time_lines
from wellstrung.report.pages.to_bring import loans
from wellstrung.report.pages.tonight import evenings
from wellstrung.report.pages.work_order import order_of
from wellstrung.report.writer import Options


def class_page(result: Result, pages: Mapping[str, PlanResult], options: Options) -> str:
    """The page, with a link to the page of each plan by its file name."""
    everyone = students(pages)
    found = kinds(everyone)
    sizes = [(one, measurements(one.plan)) for one in everyone]
    orders = [(one.name, order_of(one.plan)) for one in everyone]
    rows = [Row(name, order, student=True) for name, order in orders if order and order.steps]
    return render(
        "class.html",
        result=result,
        large=options.large,
        full=options.full,
        since=since.of_class(result),
        outcomes=outcomes(result),
        kinds=found,
        shared=shared(found),
        evenings=evenings(everyone),
        loans=loans(everyone),
        measuring=to_measure(sizes),
        cures=cures(everyone),
        finished=[one.name for one in everyone if one.plan.outcome == "makeable"],
        cautions=_cautions(everyone, "says"),
        cares=_cautions(everyone, "fault"),
        time_lines=list(time_lines(rows)),
        orders=rows,
        checkpoints=[
            (one.name, size.what, "; ".join(size.changes))
            for one, measured in sizes
            for size in measured
            if size.changes
        ],
        sizes=tables.whole_sizes(result.plans),
    )


def _cautions(everyone: Sequence[Student], by: str) -> dict[str, list[str]]:
    """Every caution once, by its text or by what it is about, with the students that it is for."""
    found: dict[str, dict[str, None]] = {}
    for student in everyone:
        for remark in student.plan.cautions:
            found.setdefault(getattr(remark, by), {})[student.name] = None
    return {says: list(names) for says, names in found.items()}
