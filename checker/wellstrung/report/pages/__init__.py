"""Pages to hand back: one sheet for a plan, and a page for a whole class with a sheet for each.

Jinja2 escapes whatever a plan says; drawings come from ElementTree, which escapes by itself. A page
holds its style and needs neither network nor script.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from importlib import resources
from pathlib import PurePath
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from wellstrung.common import units
from wellstrung.drawing import Figure, piece
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import HeldCheck, PlanResult, Result
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.report.pages import advice, both_units, extras, work_order
from wellstrung.report.pages.tables import Table

#: sizes that a table of parts tells, in this order, by the quantity's name
_SIZES = (
    "outside", "width", "inside", "length", "height", "thickness", "bore", "depth", "wire",
    "ring.inside", "bar.length", "first link.hole", "eye.hole", "top_eyes.hole",
    "bottom_eyes.hole",
)  # fmt: skip


#: time lines of so many plans fit on a page together
_ROWS = 14
#: what a safety text says of one plan alone
_STEP = re.compile(r" \(step \d+\)")


def sheet(result: PlanResult, checker: Checker | None = None) -> str:
    """The page of one plan; with a checker to try them by, the sizes that would also do."""
    remarks = advice.numbered(result)
    first = next((one for one in remarks if one.remark is result.fix_first), None)
    order = work_order.order_of(result)
    line = None
    if order is not None and order.steps:
        rows = [("maker", order, False), ("student", order, True)]
        line = work_order.time_line("The work on a time line", rows)
    return _page(
        "sheet.html",
        result=result,
        maker=_written(result, "maker"),
        first=first,
        on_first_page=remarks[: advice.FIRST_PAGE],
        further=remarks[advice.FIRST_PAGE :],
        by_number=sorted(remarks, key=lambda one: one.number),
        right=advice.right(result),
        measurements=advice.measurements(result),
        drawings=piece.drawings(result),
        sizes=_sizes(result),
        extras=extras.gathered(result, checker),
        order=order,
        time_line=line,
        cautions=_cautions([result]),
        cures=_cures(result),
        unjudged=_unjudged(result),
        held=_held(result),
    )


def folder(result: Result) -> dict[str, str]:
    """The pages of a folder of plans, by file name: `index.html` and one sheet for each plan."""
    names = _file_names(result)
    plans = sorted(
        zip(names, result.plans, strict=True),
        key=lambda one: (one[1].readable, -one[1].count("error"), -one[1].count("warning")),
    )
    orders = [(plan.title, work_order.order_of(plan)) for _, plan in plans]
    rows = [(title, order, True) for title, order in orders if order is not None and order.steps]
    index = _page(
        "class.html",
        result=result,
        rows=[(name, plan, _written(plan, "maker"), plan.fix_first) for name, plan in plans],
        time_lines=list(_time_lines(rows)),
        orders=rows,
        checkpoints=_checkpoints(result.plans),
        sizes=_come_to(result.plans),
        cautions=_cautions(result.plans),
    )
    return {"index.html": index, **{name: sheet(plan) for name, plan in plans}}


#: what a piece comes to as a whole: the quantity, the unit it is told in, and its figures
_WHOLE = {"piece.length": ("cm", 1), "piece.inside": ("cm", 1), "piece.mass": ("g", 1)}


def _come_to(plans: Sequence[PlanResult]) -> Table | None:
    """Length, way round inside and mass of each piece, with the likely range."""
    rows = []
    for plan in plans:
        found = [_whole(plan.quantities.get(name), *told) for name, told in _WHOLE.items()]
        if any(found):
            rows.append((plan.title, *found))
    columns = ("piece", "long, taut", "inside", "mass")
    return Table("What the pieces come to", columns, tuple(rows)) if rows else None


def _whole(found: Quantity | None, unit: str, figures: int) -> str:
    if found is None:
        return ""
    low, high = (units.show(end, unit, figures) for end in found.likely)
    return f"{units.show(found.middle, unit, figures)} ({low} to {high})"


def _time_lines(rows: Sequence[tuple[str, work_order.Order, bool]]) -> Iterator[Figure]:
    """The work of every plan, in figures that each fit on a page."""
    for start in range(0, len(rows), _ROWS):
        some = rows[start : start + _ROWS]
        last = start + len(some)
        title = "Plan by plan" if len(rows) <= _ROWS else f"Plans {start + 1} to {last}"
        yield work_order.time_line(title, list(some))


def _page(template: str, **values: Any) -> str:
    return _environment().get_template(template).render(style=Markup(_style()), **values)


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("wellstrung.report"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    environment.filters |= {
        "both_units": both_units.pieces,
        "plain": both_units.plain,
        "inches": both_units.inches,
        "number": number,
        "days": work_order.days,
        "spare": _spare,
        "svg": lambda figure: Markup(figure.svg),
        "capital": lambda text: text[:1].upper() + text[1:],
    }
    return environment


@cache
def _style() -> str:
    """The style of the pages and that of every kind of drawing."""
    folders = (
        resources.files("wellstrung.report") / "templates",
        resources.files("wellstrung.drawing"),
    )
    sheets = (
        entry
        for home in folders
        for entry in sorted(home.iterdir(), key=lambda entry: entry.name)
        if entry.name.endswith(".css")
    )
    return "\n".join(entry.read_text(encoding="utf-8") for entry in sheets)


def _spare(margin: Quantity) -> str:
    """What a check leaves, at its middle and at its likely least."""
    unit = margin.unit
    said = f"{number(margin.middle)} {unit} to spare"
    least = number(margin.likely.low)
    return said if least == number(margin.middle) else f"{said}, at least {least} {unit} likely"


def _written(result: PlanResult, field: str) -> str:
    """A field at the top of a plan, as written; empty where it is not."""
    node = result.ask.plan.written(field) if result.ask is not None else None
    return str(node.value) if node is not None else ""


def _sizes(result: PlanResult) -> list[tuple[str, str, list[tuple[str, str, Quantity]]]]:
    """Every part with the sizes that the drawings use: its name, its kind, and what it measures."""
    if result.ask is None:
        return []
    found = []
    for part in result.ask.plan.parts.values():
        names = ((what, f"{part.name}.{what}") for what in _SIZES)
        told = [
            (what.replace("_", " ").replace(".", " "), name, result.quantities[name])
            for what, name in names
            if name in result.quantities and not (what == "outside" and _is_flat(part))
        ]
        if told:
            found.append((part.name, part.kind.name, told))
    return found


def _is_flat(part: Part) -> bool:
    """A band's `outside` is what it stands off the body, which its thickness tells."""
    return part.kind.role is Role.BAND


def _held(result: PlanResult) -> list[tuple[str, list[HeldCheck]]]:
    """The checks that held, rule by rule."""
    found: dict[str, list[HeldCheck]] = {}
    for kept in result.held:
        found.setdefault(kept.rule, []).append(kept)
    return list(found.items())


def _cautions(plans: Sequence[PlanResult]) -> list[tuple[str, list[str]]]:
    """Every safety text once, with the plans that it is about; of several without their steps."""
    found: dict[str, dict[str, None]] = {}
    for plan in plans:
        for remark in plan.remarks:
            if remark.level == "caution":
                says = remark.says if len(plans) == 1 else _STEP.sub("", remark.says)
                found.setdefault(says, {})[plan.title or plan.file] = None
    return [(says, list(named)) for says, named in found.items()]


def _cures(result: PlanResult) -> list[tuple[str, Quantity]]:
    """Every adhesive of a plan with the time of its full cure, where that is known."""
    if result.ask is None:
        return []
    glues = (part for part in result.ask.plan.parts.values() if part.kind.role is Role.GLUE)
    cures = ((glue.name, result.quantities.get(f"{glue.name}.full_cure")) for glue in glues)
    return [(name, cure) for name, cure in cures if cure is not None]


def _checkpoints(plans: Sequence[PlanResult]) -> list[tuple[str, str, str]]:
    """What is measured on the way, plan by plan: the piece, what, and the sizes that pass."""
    return [
        (plan.title or plan.file, one.what, "; ".join(one.changes))
        for plan in plans
        for one in advice.measurements(plan)
        if one.changes
    ]


def _unjudged(result: PlanResult) -> list[tuple[str, str, str]]:
    """What could not be judged: the field that would let it be, the rules, the parts."""
    found: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for entry in result.unjudged:
        rules, parts = found.setdefault(" and ".join(entry.missing), ({}, {}))
        rules[entry.rule] = None
        parts |= dict.fromkeys(entry.parts)
    return [
        (missing, ", ".join(rules), ", ".join(parts) or "the piece")
        for missing, (rules, parts) in found.items()
    ]


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
