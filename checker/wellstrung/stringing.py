"""The line and the needle of a part: as the plan states them, or from the trade tables."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung import tables, units
from wellstrung.model import Part
from wellstrung.quantity import Cause, Quantity, Spread, leaf

_TABLES = ("threads", "cords", "elastics", "beading_wires")


def line(part: Part) -> Quantity:
    """Thickness of the thread, wire or elastic of a part, mm; raises Missing."""
    if part.has("thread", "outside"):
        return part.length("thread", "outside")
    for by in ("rating", "size"):
        if part.has("thread", "type") and part.has("thread", by):
            name = f"{part.text('thread', 'type')} {part.text('thread', by)}"
            for table in _TABLES:
                row = tables.load(table).rows.get(name)
                if row is not None:
                    return _leaf(part, "line", row, "diameter", "thread")
    raise part.missing("thread", "outside")


def needle(part: Part) -> Quantity:
    """Thickness of the needle that a part is worked with, mm; raises Missing."""
    kind, size = units.needle(part.text("needle"))
    row = tables.load("needles").rows.get(f"{kind} {size}")
    if row is None:
        raise part.missing("needle")
    return _leaf(part, "needle", row, "wire", "needle")


def _leaf(part: Part, what: str, row: tables.Row, column: str, field: str) -> Quantity:
    cell = row.cell(column)
    cure = f"measure ten turns of it round a pencil and write `{field}: {{outside: ...}}`"
    if field == "needle":
        cure = "measure your needle, or try it in the smallest hole of the lot"
    cause = Cause(f"thickness of {row.name}", f"`{part.name}`", f"{cure} in `{part.name}`")
    return leaf(
        f"{part.name}.{what}",
        cell.value,
        "mm",
        [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
        place=part.place_of(field),
        source=f"trade tables, {row.name}: {cell.grade}",
        grade=cell.grade,
    )


#: what every part that is strung or woven offers
STRINGING: dict[str, Callable[[Part], Quantity]] = {"line": line, "needle": needle}
