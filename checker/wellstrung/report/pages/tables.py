"""Tables for pages: supplies, lengths to cut, and the pieces of a class as a whole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.derived.amounts import VOLUME
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.lists.bags import Bag
from wellstrung.lists.cutting import Lengths
from wellstrung.lists.line import SupplyLine
from wellstrung.quantity.value import Quantity
from wellstrung.report import cuts_list, supplies_list
from wellstrung.report.heading import not_as_written
from wellstrung.what_if import other_sizes
from wellstrung.what_if.unfit import to_buy

#: a piece as a whole: the quantity and the unit it is shown in
_WHOLE = {"piece.length": "cm", "piece.inside": "cm", "piece.mass": "g"}


class Table(Struct, frozen=True):
    """A table for a page: its caption, its columns, its rows, and notes below it.

    `decides` is the column that a reader looks for, counted from 0; it is set in bold. `below` has
    for each row what stands below its first cell.
    """

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    decides: int | None = None
    below: tuple[str, ...] = ()


def supplies(result: PlanResult, checker: Checker | None = None) -> Iterator[Table]:
    """What to buy and to weigh out; with a checker to try them by, the sizes that also work."""
    plans = understood([result])
    lines = [line for line in to_buy([result], on_hand=True) if not line.missing]
    if lines:
        shown = 5 if any(line.price is not None for line in lines) else 4
        columns = ("what", "need", "have", "buy", "price")[:shown]
        rows = tuple(_row(line)[:shown] for line in lines)
        notes = tuple(f"in all {money}" for money in shopping.bill(lines))
        first = not_as_written(result, "the remarks say")
        if first:
            notes = (first, *notes)
        amiss = tuple(". ".join(line.amiss) for line in lines)
        caption = "what the piece takes, and what is still to buy"
        yield Table(caption, columns, rows, notes, below=amiss)
    if checker is not None:
        sizes = other_sizes.found(result, checker, {line.name for line in lines})
        also = tuple((one.part, one.says) for one in sizes.found if one.works)
        if also:
            caption = "sizes that would also work, each changed alone"
            notes = (sizes.note,) if sizes.stopped else ()
            yield Table(caption, ("part", "size"), also, notes, decides=1)
    for kit in shopping.kits(plans):
        if kit.beads:
            rows = tuple((f"{bag.letter} {bag.name}", bag.measured) for bag in kit.beads)
            yield Table("bags for one maker", ("bag", "measure out"), rows)


def to_take(result: PlanResult) -> Iterator[Table]:
    """What lies on the table before the work begins: everything that the piece takes, in no packs.

    Beads lie there as their bag has them.
    """
    lines = [line for line in to_buy([result], on_hand=False) if not line.missing]
    if lines:
        kits = shopping.kits(understood([result]))
        bags = {("beads", bag.name): bag for kit in kits for bag in kit.beads}
        rows = tuple(_ready(line, bags.get((line.group, line.name))) for line in lines)
        amiss = tuple(". ".join(line.amiss) for line in lines)
        caption = "what the piece takes, spare beads included"
        yield Table(caption, ("what", "how much"), rows, below=amiss)


def _ready(line: SupplyLine, bag: Bag | None) -> tuple[str, str]:
    """What it is, with the letter of its bag, and how much of it lies ready."""
    called = _called(line) + (f" [{bag.letter}]" if bag is not None else "")
    if bag is not None and not line.amiss:
        return called, bag.measured
    if line.unit == VOLUME and not line.amiss:
        more = f" ({', '.join(line.notes)})" if line.notes else ""
        return called, supplies_list.shown(line.short, line) + more
    return called, supplies_list.buying(replace(line, pack=None))


def _row(line: SupplyLine) -> tuple[str, ...]:
    """What it is, what is needed, with what is added as spare, and what is had, bought and paid."""
    need, spare, *rest = supplies_list.cells(line)
    return _called(line), f"{need} + {spare}" if spare else need, *rest


def _called(line: SupplyLine) -> str:
    return f"{line.name}: {line.describes}" if line.describes else line.name


def lengths(found: Sequence[Lengths]) -> Iterator[Table]:
    """The pieces that are cut by their length; no table where there are none."""
    if found:
        columns = ("for", "what", "pieces", "each", "when", "how")
        rows = tuple(cuts_list.length_cells(one) for one in found)
        yield Table("thread, wire, cord and core, by the length", columns, rows)


def whole_sizes(plans: Sequence[PlanResult]) -> Table | None:
    """Length, way round inside and mass of each piece, with the likely range."""
    rows = []
    for plan in plans:
        inches = plan.ask is not None and plan.ask.plan.in_inches
        cells = [
            _whole(plan.quantities.get(name), "in" if inches and unit == "cm" else unit)
            for name, unit in _WHOLE.items()
        ]
        if any(cells):
            rows.append((plan.title, *cells))
    columns = ("piece", "long, taut", "inside", "mass")
    return Table("How large the pieces will be", columns, tuple(rows)) if rows else None


def _whole(found: Quantity | None, unit: str) -> str:
    if found is None:
        return ""
    low, high = (units.show(end, unit, 1) for end in found.likely)
    return f"{units.show(found.middle, unit, 1)} ({low} to {high})"
