"""The line and the needle of a part: as the plan states them, or from the trade tables.

Lengths in mm, the pull that breaks a line in N.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.wording import same_as
from wellstrung.model.parts import Part
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

_TABLES = ("threads", "cords", "elastics", "beading_wires")


def line(part: Part) -> Quantity:
    """Thickness of the thread, wire or elastic of a part, mm; raises Missing."""
    if part.has("thread", "outside"):
        return part.size("thread", "outside")
    row = _row(part)
    thick = None if row else _sold_by_thickness(part)
    if thick is not None:
        return thick
    if row is None:
        raise part.missing("thread", "outside")
    cure = "measure ten turns of it round a pencil and write `thread: {outside: ...}`"
    return _leaf(part, "line", row, "diameter", "thread", "thickness", cure)


def breaking(part: Part) -> Quantity:
    """Pull that breaks one line of a part, N: its rating, or the trade tables'; raises Missing."""
    if part.has("thread", "rating"):
        return part.force("thread", "rating")
    spool = part.part("thread", "spool")
    if spool is not None and spool.has("rating"):
        return spool.force("rating")
    row = _row(part) or _flexible_wire(part)
    if row is None or "breaking" not in row.cells:
        raise part.missing("thread", "rating")
    cure = "read what its spool says and write `thread: {rating: ...}`"
    return _leaf(part, "breaking", row, "breaking", "thread", "strength", cure)


def _row(part: Part) -> tables.Row | None:
    """The line's row in the trade tables, by its type and its rating or size.

    Flexible wire is sold by its size alone.
    """
    for by in ("rating", "size"):
        kind, size = part.of_thread("type"), part.of_thread(by)
        kind = same_as(kind, part.threads) or kind
        size = re.sub(r"(?i)^(no\b\.?|number|size|#)\s*", "", size)  # `No. 4` on a card of silk
        if kind and size:
            name = size if part.thread.steel else f"{kind} {size}"
            for table in _TABLES:
                row = tables.load(table).rows.get(name)
                if row is not None:
                    return row
    return None


def _sold_by_thickness(part: Part) -> Quantity | None:
    """The size of a line where that is how thick it is (`0.38 mm`), its own or its spool's."""
    spool = part.part("thread", "spool")
    own = part.has("thread", "size")
    of, path = (part, ("thread", "size")) if own or spool is None else (spool, ("size",))
    try:
        return of.size(*path) if of.has(*path) else None
    except units.UnitFault:
        return None  # a size of its own kind, such as `D`


def _flexible_wire(part: Part) -> tables.Row | None:
    """The row of a flexible wire that is as thick, to a hundredth of a millimetre."""
    if not part.thread.steel or part.thread.springs:
        return None
    outside = ("thread", "outside")
    thick = part.size(*outside) if part.has(*outside) else _sold_by_thickness(part)
    if thick is None:
        return None
    rows = {row.cell("diameter").value: row for row in tables.load("beading_wires").rows.values()}
    return rows.get(round(thick.middle, 2))


def needle(part: Part) -> Quantity:
    """Thickness of the needle that a part is worked with, mm; raises Missing."""
    kind, size = units.needle(part.text("needle"))
    row = tables.load("needles").rows.get(f"{kind} {size}")
    if row is None:
        raise part.missing("needle")
    cure = "measure your needle, or try it in the smallest hole of the lot"
    return _leaf(part, "needle", row, "wire", "needle", "thickness", cure)


def _leaf(
    part: Part, what: str, row: tables.Row, column: str, field: str, varies: str, cure: str
) -> Quantity:
    """A cell of the tables; `varies` says what of the line does, `cure` what can be done."""
    cell = row.cell(column)
    cause = Cause(f"{varies} of {row.name}", f"`{part.name}`", f"{cure} in `{part.name}`")
    return leaf(
        f"{part.name}.{what}",
        cell.value,
        cell.unit,
        [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
        place=part.place_of(field),
        source=f"trade tables, {row.name}: {cell.grade}",
        grade=cell.grade,
    )


#: what every part that is strung or woven has
OF_PART: dict[str, Callable[[Part], Quantity]] = {
    "line": line,
    "needle": needle,
    "breaking": breaking,
}
