"""Findings as shops sell them: by a size, or by their name alone.

`{kind: clasp, type: lobster, size: 12 mm}` is all that a shop says of it. What the plan does not
state is assumed from the trade tables, as a range: for the size where it grows with it, or over all
that are sold where the plan says `size: usual`.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.model.item import node_at
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.assumed import ASSUMED
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree as reading

#: the unit of a cell that is so many times the size by which the finding is sold
TIMES_SIZE = "x size"


class Sold(Struct, frozen=True):
    """How a kind is sold: the trade table with its usual sizes, a row for each type.

    `rows` names the rows of those types whose row is not called like the type, and by an empty text
    that of all others where it is not called like the kind. `size_is` is the field that the size
    fills, by type, or by an empty text whatever the type; `usual` what a part is that says nothing
    else, and `usual_of` what one of a type is.
    """

    table: str
    rows: Mapping[str, str] = field(default_factory=dict)
    size_is: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    usual: Mapping[str, object] = field(default_factory=dict)
    usual_of: Mapping[str, Mapping[str, object]] = field(default_factory=dict)
    typed_by: str = "type"

    def row(self, kind: str, node: reading.Mapping) -> tables.Row | None:
        """The row of a part; None where the table has none."""
        rows, type_ = tables.load(self.table).rows, self._type(node)
        return rows.get(self.rows.get(type_, type_)) or rows.get(self.rows.get("", kind))

    def implied(self, node: reading.Mapping) -> Mapping[str, object]:
        """What a part is that says no more than its type and its size."""
        return self.usual_of.get(self._type(node), self.usual)

    def filled(self, node: reading.Mapping) -> tuple[str, ...]:
        """The field of a part that its size fills; empty where there is none."""
        return self.size_is.get(self._type(node), self.size_is.get("", ()))

    def _type(self, node: reading.Mapping) -> str:
        typed = node.entries.get(self.typed_by)
        return str(typed.node.value) if typed else ""


def as_sold(node: reading.Mapping, sold: Sold | None) -> reading.Mapping:
    """A part with the field that its size fills, and with what is usual of it."""
    size = node.entries.get("size")
    if sold is None or size is None:
        return node
    fields: dict[str, reading.Node] = {
        name: reading.implied_data(size.node, value) for name, value in sold.implied(node).items()
    }
    first, *deeper = sold.filled(node) or ("",)
    if first and size.node.value != units.USUAL and not _RINGS & node.entries.keys():
        fields[first] = size.node
        for name in reversed(deeper):
            fields[first] = reading.Spelled(size.node, {name: fields[first]})
    missing = {name: one for name, one in fields.items() if name not in node.entries}
    return reading.with_more(node, missing) if missing else node


#: the size of a ring, which the plan states itself
_RINGS = frozenset({"inside", "outside"})


def assumed(
    part: str, row: tables.Row, path: tuple[str, ...], node: reading.Mapping, place: Place
) -> Quantity | None:
    """What the trade tables have of a field that the plan does not state; None where nothing."""
    field_name = ".".join(path)
    cell = row.cells.get(field_name)
    if cell is None:
        return None
    what = field_name.replace("_", " ").replace(".", " ")
    nested = "{".join(f"{name}: " for name in path) + "..." + "}" * (len(path) - 1)
    verb = "weigh" if cell.unit == "g" else f"measure the {what} of"
    cause = Cause(what, f"`{part}`", f"{verb} `{part}` and write `{nested}`")
    times, low, high, unit, called, spreads = 1.0, 1.0, 1.0, cell.unit, row.name, []
    if unit == TIMES_SIZE:
        (times, low, high), unit = _size(row, node), "mm"
        size = node.entries["size"].node
        called = f"{called} {size.value}" if size.value != units.USUAL else called
        same = Cause("size", f"`{part}`", f"measure `{part}` and write its `size`")
        spreads.append(Spread(same, (times - low) * cell.value, (high - times) * cell.value))
    spreads.append(Spread(cause, (cell.value - cell.low) * low, (cell.high - cell.value) * high))
    return leaf(
        f"{part}.{field_name}",
        cell.value * times,
        unit,
        [spread for spread in spreads if spread.down or spread.up],
        place=place,
        source=f"assumed, trade tables, {called}: {cell.grade}",
        grade=ASSUMED,
    )


def _size(row: tables.Row, node: reading.Mapping) -> tuple[float, float, float]:
    """The size of a finding, mm, and its span: as written, by a size that goes with it, or any."""
    size = node.entries["size"].node
    if size.value != units.USUAL:
        parsed = units.length(size.value)
        return parsed.value, parsed.low, parsed.high
    for column, cell in row.cells.items():
        other = node_at(node, *column.split(".")) if cell.unit == TIMES_SIZE else None
        if other is not None:
            parsed = units.length(other.value)
            return parsed.value / cell.value, parsed.low / cell.high, parsed.high / cell.low
    usual = row.cell("size")
    return usual.value, usual.low, usual.high
