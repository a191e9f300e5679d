"""The quantities of a plan as rows that name each other, so that each working is written once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import formula_of, notes_of, number

#: what stands in a row, in this order; a value that does not vary has no ranges
COLUMNS = ("middle", "unit", "line", "likely", "worst")
_FIGURES = 5

Row = list[Any]


class Rows:
    """Rows by name; a name that is only another one for a quantity has that name for a row.

    The second quantity of a name has a number behind it: `room taken#2`.
    """

    def __init__(self, offered: Mapping[str, Quantity]) -> None:
        self.rows: dict[str, Row | str] = {}
        self._sources: dict[str, int] = {}
        self._offered = offered
        self._named: dict[int, str] = {}
        self._of: dict[tuple[str, str], str] = {}
        for name, quantity in offered.items():
            taken = self.name(quantity)
            if taken != name:
                self.rows[name] = taken

    def name(self, quantity: Quantity) -> str:
        """The name of the row of a quantity, which is written if it is not there yet."""
        if id(quantity) not in self._named:
            row = self._row(quantity)
            known = quantity.name, repr(row)
            if known not in self._of:
                self._of[known] = self._free(quantity)
                self.rows[self._of[known]] = row
            self._named[id(quantity)] = self._of[known]
        return self._named[id(quantity)]

    @property
    def sources(self) -> list[str]:
        """The sources of all rows, which name them by number, from 1."""
        return list(self._sources)

    def margin(self, quantity: Quantity | None) -> dict[str, Any]:
        """The row of a margin, which nothing else names; of a quantity that has one, its name.

        `margin_name` is what it is called, if that is not its formula.
        """
        if quantity is None:
            return {}
        row = self._row(quantity)
        if quantity.function is None or (quantity.name, repr(row)) in self._of:
            return {"margin": self.name(quantity)}
        args = quantity.args
        if quantity.name == formula_of(quantity, lambda key: args[key].name):
            return {"margin": row}
        return {"margin": row, "margin_name": quantity.name}

    def _free(self, quantity: Quantity) -> str:
        name, count = quantity.name, 1
        while name in self.rows or self._offered.get(name, quantity) is not quantity:
            count += 1
            name = f"{quantity.name}#{count}"
        return name

    def _row(self, quantity: Quantity) -> Row:
        row: Row = [figure(quantity.middle), quantity.unit, self._line(quantity)]
        if not quantity.causes:
            return row
        widest = quantity.worst  # first: the likely range asks for less where it is known
        likely = [*map(figure, quantity.likely)]
        worst = likely if widest == quantity.likely else [*map(figure, widest)]
        return [*row, likely] if likely == worst else [*row, likely, worst]

    def _line(self, quantity: Quantity) -> str:
        """The formula, what it comes from in braces; of what is given, why it varies."""
        if quantity.function is None:
            notes = notes_of(quantity)
            return "; ".join([*notes[:-1], self._source(notes[-1])] if quantity.source else notes)
        args = quantity.args
        line = f"= {formula_of(quantity, lambda key: self._mention(args[key]))}"
        return f"{line}   {self._source(quantity.source)}" if quantity.source else line

    def _source(self, source: str) -> str:
        return f"[{self._sources.setdefault(source, len(self._sources) + 1)}]"

    def _mention(self, quantity: Quantity) -> str:
        """A name in braces; a bare constant, which has no line, stands there with its value."""
        if quantity.function is None and not notes_of(quantity):
            return f"{{{quantity.name}={number(quantity.middle)}}}"
        return f"{{{self.name(quantity)}}}"


def figure(value: float) -> float:
    """A number with at least five figures, and as many as it takes to print the same.

    >>> figure(460.0719), figure(133047.2), figure(5.0)
    (460.07, 133047, 5)
    """
    printed = number(value)
    for digits in range(_FIGURES, 18):
        short = float(f"{value:.{digits}g}")
        if short == value or number(short) == printed:
            break
    return int(short) if short.is_integer() else short
