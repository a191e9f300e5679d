"""The beads of the palette: sizes as the plan measures or states them, or from the trade tables."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from wellstrung import tables
from wellstrung.model.item import Bead
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

_MEASURE = "measure ten of `{bead}` together and write `measured: {{{what}: ...}}` in the palette"
_WEIGH = "weigh some of `{bead}`, count them, write `measured: {{{what}: ...}}` in the palette"


def _size(what: str, bead: Bead) -> Quantity:
    """A size in mm; raises Missing where neither plan nor table has it."""
    if bead.has("measured", what) or bead.has(what):
        return bead.length(what)
    return _from_table(what, "mm", bead)


def _per_gram(bead: Bead) -> Quantity:
    """How many weigh a gram."""
    node = bead.node_at("measured", "per_gram") or bead.node_at("per_gram")
    if node is None:
        return _from_table("per_gram", "", bead)
    value = float(node.value)
    return leaf(f"{bead.name}.per gram", value, "", place=node.place, spelling=str(node.value))


def _from_table(what: str, unit: str, bead: Bead) -> Quantity:
    if bead.own_sizes:
        raise bead.missing(what)
    row = tables.load("beads").row(bead.row)
    cell = row.cells.get(what)
    if cell is None:
        raise bead.missing("measured", what)
    words = what.replace("_", " ")
    cause = Cause(
        f"{bead.text('size')} bead {words}",
        f"`{bead.name}`",
        (_WEIGH if what == "per_gram" else _MEASURE).format(bead=bead.name, what=what),
    )
    return leaf(
        f"{bead.name}.{words}",
        cell.value,
        unit,
        [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
        place=bead.key.place,
        source=f"trade tables, beads, {row.name}: {cell.grade}",
        grade=cell.grade,
    )


OF_BEAD: dict[str, Callable[[Bead], Quantity]] = {
    "outside": partial(_size, "outside"),
    "length": partial(_size, "length"),
    "hole": partial(_size, "hole"),
    "per_gram": _per_gram,
}
