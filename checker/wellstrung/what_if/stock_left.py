"""A stock list as it is when kits are packed: the list of a spreadsheet with what is left.

Cells are changed where they stand; an opened pack gets a row of its own above the full ones of its
lot. Nothing else of the list is touched.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.lists.stock import GRAMS, PIECES, Line, Stocked
from wellstrung.reading import rfc_4180, tree
from wellstrung.reading.rfc_4180 import Cell
from wellstrung.reading.stock_columns import Column, bare, column

#: the columns for how many packs there are, and for what one holds, by the unit of what is on hand
_NUMBERS = ("packs", "spools", "count")
_HOLDS = {GRAMS: "pack", PIECES: "pack", "mm": "on hand length", "ml": "volume"}


class NewStock(Struct, frozen=True):
    """The text of the list, and what of it has to be changed by hand."""

    text: str
    by_hand: tuple[str, ...]


def written(text: str, file: str, stock: Iterable[Stocked]) -> NewStock:
    """The list with what is left of each thing that it has on hand."""
    table = rfc_4180.table(text, file)
    head = next((row for row in table.rows if any(cell.text.strip() for cell in row)), [])
    columns = [column(cell, {}) for cell in head]
    comma = table.separator != "," and re.search(r"\d,\d", text) is not None
    edits: list[tuple[Place, str]] = []
    by_hand: dict[str, None] = {}
    for one in stock:
        for line in (line for line in one.lines if line.place.file == file):
            row = next((row for row in table.rows if row and _stands_at(row, line.place)), None)
            if line.left == line.had or row is None:
                continue
            found = _Row(columns, row, text, comma=comma).edits(line)
            if found is None:
                by_hand[f"{one.name}: {one.shown(line.left)} is left"] = None
            else:
                edits += found
    return NewStock(tree.replaced(text, edits), tuple(by_hand))


def _stands_at(row: Sequence[Cell], place: Place) -> bool:
    return row[0].place.line == place.line == row[-1].place.end_line


class _Row:
    """A row of a list, with what each of its columns is."""

    def __init__(
        self, columns: Sequence[Column], row: Sequence[Cell], text: str, *, comma: bool
    ) -> None:
        self._cells = {
            one.own: (one, cell) for one, cell in zip(columns, row, strict=False) if one.own
        }
        self._row, self._text, self._comma = row, text, comma

    def edits(self, line: Line) -> list[tuple[Place, str]] | None:
        """The changes for what is left of a line; None where its cells have no place for it."""
        if line.loose and not line.packs:
            return self._changed({"count": f"{line.left_loose:.0f}"})
        number = next((name for name in _NUMBERS if self._filled(name)), "")
        holds = _HOLDS[line.unit]
        if line.loose or (line.opened and holds not in self._cells):
            return None
        rests = [self._amount(holds, line, rest) for rest in line.opened]
        if None in rests or (len(rests) + bool(line.full) > 1 and not number):
            return None
        as_rests: list[dict[str, str]] = [
            {holds: str(rest)} | ({number: "1"} if number else {}) for rest in rests
        ]
        if line.full:
            own = {number: f"{line.full}"} if number else {}
        elif as_rests:
            own = as_rests.pop(0)
        else:
            own = {number: "0"} if number else {holds: ""}
        changed = self._changed(own)
        start = self._row[0].place
        above = Place(start.file, start.line, start.column, start.line, start.column)
        more = "".join(self._as_row(rest) for rest in as_rests)
        if changed is None:
            return None
        return [(above, more), *changed] if more else changed

    def _filled(self, name: str) -> bool:
        return name in self._cells and bool(self._cells[name][1].text.strip())

    def _changed(self, values: dict[str, str]) -> list[tuple[Place, str]] | None:
        if not values.keys() <= self._cells.keys():
            return None
        return [(self._cells[name][1].place, new) for name, new in values.items()]

    def _as_row(self, values: dict[str, str]) -> str:
        """A row like this one, with other values, and the line end of the list."""
        changed = {self._cells[name][1].place: new for name, new in values.items()}
        first, last = self._row[0].place, self._row[-1].place
        start = tree.offset(self._text, first.line, first.column)
        pieces, at = [], start
        for cell in self._row:
            begins = tree.offset(self._text, cell.place.line, cell.place.column)
            ends = tree.offset(self._text, cell.place.end_line, cell.place.end_column)
            pieces += [self._text[at:begins], changed.get(cell.place, self._text[begins:ends])]
            at = ends
        line_end = tree.BREAK.match(self._text, at)
        assert last.end_line == first.line
        return "".join(pieces) + (line_end[0] if line_end else "\n")

    def _amount(self, holds: str, line: Line, rest: float) -> str | None:
        """What is left in an opened pack, as its cell would say it."""
        if line.unit == PIECES:
            return f"{rest:.0f}"
        one, cell = self._cells[holds]
        unit = one.unit or line.spelled
        if bare(" ".join(cell.text.split())) and not one.unit:
            return None
        said = units.show(rest, unit, 1, "down")
        if one.unit:
            said = said.removesuffix(unit).strip()
        return said.replace(".", ",") if self._comma else said
