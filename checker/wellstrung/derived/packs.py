"""What a pack holds: beads by weight, by count or on strands, thread on a spool or a card."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.common.packs import STRUNG
from wellstrung.model.item import Item
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, leaf, product, times
from wellstrung.quantity.assumed import ASSUMED
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity


def in_packs(bead: Item, line: Item, ask: Quantities) -> Quantity:
    """Beads in one line of supplies, by mass or by count."""
    packs = line.count("packs", default=1)
    if not weighed_or_strung(line):
        each = line.count("pack_of") if line.has("pack_of") else 0
        counted = line.count("count") if line.has("count") else 0
        if not each and not counted:
            raise line.missing("pack")
        return exact(f"{bead.name} counted", packs * each + counted)
    return times(in_one_pack(bead, line, ask), packs)


def weighed_or_strung(line: Item) -> bool:
    """Whether the beads of a line come by weight, or on strands; others are counted."""
    return line.has("pack") or (
        line.has("sold_as")
        and line.text("sold_as") in STRUNG
        and not (line.has("pack_of") or line.has("count"))
    )


def in_one_pack(bead: Item, line: Item, ask: Quantities) -> Quantity:
    """Beads in a pack that is sold by weight, or on strands."""
    if not line.has("pack"):
        return _on_strands(bead, line, ask)
    return product(f"{bead.name} in a pack", "", line.mass("pack"), ask.of(bead, "per_gram"))


def _on_strands(bead: Item, line: Item, ask: Quantities) -> Quantity:
    """Beads on the strands of a hank, a loop or a strand, which are full but for their ends."""
    sold = tables.load("bead_packing")
    row = sold.row("strand of beads" if line.text("sold_as") == "strand" else "Czech hank")
    strands = exact("strands", line.count("strands", default=1))
    if line.text("sold_as") == "hank" and not line.has("strands"):
        strands = _usual(line, row, "strands")
    return derived(
        f"{bead.name} in a pack",
        "",
        lambda strands, strand, filled, length: strands * strand * filled / length,
        strands=strands,
        strand=line.length("strand") if line.has("strand") else _usual(line, row, "strand"),
        filled=_usual(line, sold.row("strand of beads"), "filled"),
        length=ask.of(bead, "length"),
    )


def _usual(line: Item, row: tables.Row, column: str) -> Quantity:
    """What is usual of a pack that the line does not say."""
    cell = row.cell(column)
    cause = Cause(column, f"`{line.name}` as it is sold", f"count or measure one, write `{column}`")
    return leaf(
        f"{line.name}.{column}",
        cell.value,
        cell.unit,
        [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
        place=line.node.place,
        source=f"assumed, trade tables, {row.name}: {cell.grade}",
        grade=ASSUMED,
    )


def one_spool(spool: Part, line: Item) -> Quantity:
    """How long the thread of one spool or card is, as the line says, the thread, or what is usual.

    Raises Missing.
    """
    if line.has("length") or spool.has("length") or not line.has("sold_as"):
        return line.length("length") if line.has("length") else spool.length("length")
    row = tables.load("bead_packing").rows.get(f"{line.text('sold_as')} of {spool.type}")
    return _usual(line, row, "length") if row is not None else spool.length("length")
