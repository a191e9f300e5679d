"""Adhesive, thread and needle: parts that work steps and woven parts use."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung import tables
from wellstrung.derive import Quantities
from wellstrung.model import Kind, Part, Role
from wellstrung.quantity import Cause, Quantity, Spread, leaf
from wellstrung_schemas import fragment


def _cure(what: str) -> Callable[[Part, Quantities], Quantity]:
    def cure(part: Part, ask: Quantities) -> Quantity:
        """As the plan states it, or from the trade tables by type of adhesive."""
        if part.has(what):
            return part.duration(what)
        row = tables.load("adhesives").row(part.text("type"))
        if what not in row.cells:
            raise part.missing(what)
        cell = row.cell(what)
        advice = f"read the pack of `{part.name}` and write `{what}: ...`"
        cause = Cause(f"{what.replace('_', ' ')} of {row.name}", f"`{part.name}`", advice)
        return leaf(
            f"{part.name}.{what.replace('_', ' ')}",
            cell.value,
            "min",
            [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
            place=part.place_of("type"),
            source=f"trade tables, adhesives, {row.name}: {cell.grade}",
            grade=cell.grade,
        )

    return cure


def _bridges(part: Part, ask: Quantities) -> Quantity:
    """The widest gap it fills with full strength: as the plan states it, or from the tables."""
    if part.has("bridges"):
        return part.length("bridges")
    row = tables.load("adhesives").row(part.text("type"))
    if "gap_most" not in row.cells:
        raise part.missing("bridges")
    cell = row.cell("gap_most")
    return leaf(
        f"{part.name}.bridges",
        cell.value,
        "mm",
        place=part.place_of("type"),
        source=f"trade tables, adhesives, {row.name}: {cell.grade}",
        grade=cell.grade,
    )


TOOLS: tuple[Kind, ...] = (
    Kind(
        "adhesive",
        fragment("adhesive"),
        Role.GLUE,
        quantities={
            **{name: _cure(name) for name in ("usable", "mixing", "handling", "full_cure")},
            "bridges": _bridges,
        },
    ),
    Kind("thread", fragment("thread")),
    Kind("needle", fragment("needle")),
)
