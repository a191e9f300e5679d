"""The line and the needle of a part: as the plan states them, or from the trade tables.

Lengths in mm, the pull that breaks a line in N.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.wording import either, together
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

_TABLES = ("threads", "cords", "elastics", "beading_wires", "memory_wires")


def line(part: Part) -> Quantity:
    """Thickness of the thread, wire or elastic of a part, mm; raises Missing."""
    for of, path in _said(part, "outside"):
        return of.size(*path)
    rows = _rows(part)
    if part.thread.springs and not part.of_thread("size"):
        rows = [*of_type(types_of(part)[0])[:1]]  # of any coil it is as thick
    thick = None if rows else _sold_by_thickness(part)
    if thick is not None:
        return thick
    if not rows:
        raise _unknown(part, "outside", "measure ten turns of it round a pencil")
    cure = "measure ten turns of it round a pencil and write `thread: {outside: ...}`"
    return _leaf(part, "line", rows, "diameter", "thread", "thickness", cure)


def coil(part: Part) -> Quantity:
    """Across the inside of a coil of memory wire at rest, mm: as the plan or a table has it.

    Raises Missing.
    """
    if part.has("thread", "coil"):
        return part.size("thread", "coil")
    rows = [row for row in _rows(part) if "coil" in row.cells]
    if not rows:
        raise part.missing("thread", "coil")
    cure = "measure across a coil as it lies, and write `thread: {coil: ...}`"
    return _leaf(part, "coil", rows, "coil", "thread", "coil", cure)


def breaking(part: Part) -> Quantity:
    """Pull that breaks one line of a part, N: its rating, or the trade tables'; raises Missing."""
    for of, path in _said(part, "rating"):
        return of.force(*path)
    rows = [row for row in _rows(part) or _as_thick(part) if "breaking" in row.cells]
    if not rows:
        raise _unknown(part, "rating", "read what its spool says")
    cure = "read what its spool says and write `thread: {rating: ...}`"
    return _leaf(part, "breaking", rows, "breaking", "thread", "strength", cure)


def types_of(part: Part) -> tuple[str, ...]:
    """The types that the line of a part may be: several where shops call them all the same."""
    kind = part.of_thread("type")
    return tables.line_may_be(kind) or (kind,)


def _said(part: Part, field: str) -> list[tuple[Part, tuple[str, ...]]]:
    """Where a field of the line stands: in the part itself, or else in the spool that it names."""
    spool = part.part("thread", "spool")
    if part.has("thread", field):
        return [(part, ("thread", field))]
    return [(spool, (field,))] if spool is not None and spool.has(field) else []


def _rows(part: Part) -> list[tables.Row]:
    """The line's rows in the trade tables, by its rating or its size; all that it may be, or none.

    What is sold by its pull is found in kilograms too.
    """
    types = types_of(part)
    for by in ("rating", "size"):
        size = part.of_thread(by)
        found = [row for kind in types if (row := _row(kind, size))] if size else []
        if len(found) == len(types):
            return found
    return []


def _row(kind: str, size: str) -> tables.Row | None:
    sold = of_type(kind)
    row = next((row for row in sold if row.name == f"{kind} {size}"), None)
    try:
        pull = units.force(size).value
    except units.UnitFault:
        return row
    rated = (one for one in sold if one.name.endswith(" lb"))
    return row or next((one for one in rated if _near(one.cell("breaking").value, pull)), None)


def _near(printed: float, other: float) -> bool:
    """Whether two figures are one, rounded in another unit: 3.6 kg is printed beside 8 lb."""
    return abs(printed - other) < 0.02 * printed


@cache
def of_type(kind: str) -> tuple[tables.Row, ...]:
    """The rows of a type of line, finest first, as their tables list them."""
    every = (row for table in _TABLES for row in tables.load(table).rows.values())
    return tuple(row for row in every if row.name.startswith(f"{kind} "))


def _sold_by_thickness(part: Part) -> Quantity | None:
    """The size of a line where that is how thick it is (`0.38 mm`), its own or its spool's."""
    for of, path in _said(part, "size"):
        try:
            return of.size(*path)
        except units.UnitFault:
            return None  # a size of its own kind, such as `D`
    return None


def _as_thick(part: Part) -> list[tables.Row]:
    """The rows of a line that is sold by its thickness, to a hundredth of a millimetre."""
    thick = next((of.size(*path) for of, path in _said(part, "outside")), _sold_by_thickness(part))
    if thick is None:
        return []
    sold = [row for kind in types_of(part) for row in of_type(kind)]
    return [row for row in sold if row.cell("diameter").value == round(thick.middle, 2)]


def _unknown(part: Part, field: str, otherwise: str) -> Missing:
    """What a line lacks whose size no table has: the sizes nearest, and what to measure."""
    size, missing = (
        part.of_thread("rating") or part.of_thread("size"),
        part.missing("thread", field),
    )
    types = types_of(part)
    if not size or _rows(part) or not of_type(types[0]):
        return missing
    if len(types) > 1:
        return Missing(f"{missing.field}, or which it is: {either(f'`{kind}`' for kind in types)}")
    return Missing(
        f"{missing.field} ({_has(f'{types[0]} {size}', of_type(types[0]))}: {otherwise})"
    )


def _has(name: str, sold: Sequence[tables.Row]) -> str:
    """What the tables have instead of a size: the next on both sides, or all of its system."""
    number = _number(name)
    alike = [row.name for row in sold if (_number(row.name) is None) == (number is None)]
    below = [each for each in alike if number is not None and (_number(each) or 0.0) < number]
    near = [*below[-1:], *alike[len(below) :][:1]] if number is not None and alike else alike
    has = together(f"`{each}`" for each in near or [row.name for row in sold])
    return f"the tables have {has}, not `{name}`"


def _number(name: str) -> float | None:
    found = re.search(r"\d+(?:\.\d+)?", name)
    return float(found[0]) if found else None


def needle(part: Part) -> Quantity:
    """Thickness of the needle that a part is worked with, mm; raises Missing."""
    told = part.text("needle")
    if part.without_needle:
        raise part.missing("needle")
    known = tables.load("needles").rows
    rows = [row for name, row in known.items() if name == told or name.startswith(f"{told} ")]
    if not rows:
        same = [row for row in known.values() if row.name.split()[0] == told.split()[0]]
        has = _has(told, same or [*known.values()])
        raise Missing(f"`needle` of `{part.name}` ({has}: measure yours)")
    cure = "measure your needle, or try it in the smallest hole of the lot"
    if len(rows) > 1:
        cure = f"write its size, as in `{rows[0].name}`, or measure it"
    return _leaf(part, "needle", rows, "wire", "needle", "thickness", cure)


def _bought(part: Part) -> str:
    """What tells its line from another of one type and size: its spool, or else its colour."""
    spool = part.part("thread", "spool")
    colour = part.of_thread("colour")
    return f"`{spool.name}`" if spool is not None else f"`{colour}`" if colour else ""


def _leaf(
    part: Part,
    what: str,
    rows: Sequence[tables.Row],
    column: str,
    field: str,
    varies: str,
    cure: str,
) -> Quantity:
    """A cell of the tables, or all that several rows allow.

    `varies` says what of the line does, `cure` what can be done.
    """
    cells, names = [row.cell(column) for row in rows], " or ".join(row.name for row in rows)
    low, high = min(cell.low for cell in cells), max(cell.high for cell in cells)
    value = cells[0].value if len(cells) == 1 else round((low + high) / 2, 3)
    grade = next((cell.grade for cell in cells if cell.grade in _WEAK), cells[0].grade)
    if len(rows) > 1 and field == "thread":
        types = either(f"`{kind}`" for kind in types_of(part))
        cure = f"write which it is, {types}, or {cure}"
    # one thread, however many parts it is in; a needle is each part's own
    scope = _bought(part) if field == "thread" else f"`{part.name}`"
    cause = Cause(f"{varies} of {names}", scope, f"{cure} in `{part.name}`")
    return leaf(
        f"{part.name}.{what}",
        value,
        cells[0].unit,
        [Spread(cause, value - low, high - value)],
        place=part.place_of(field),
        source=f"trade tables, {names}: {grade}",
        grade=grade,
    )


#: grades that decide nothing alone: of several cells theirs counts
_WEAK = ("from memory", "weak page")

#: what every part that is strung or woven has
OF_PART: dict[str, Callable[[Part], Quantity]] = {
    "line": line,
    "coil": coil,
    "needle": needle,
    "breaking": breaking,
}
