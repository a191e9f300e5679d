"""Trade tables: reference data, each cell with its grade of evidence and its sources.

Grades: `several pages`, `one page`, `derived` (arithmetic from printed values), `from memory`,
`weak page`, `standard` and `common practice`. A value from memory or of a weak page never makes an
error alone.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from msgspec import Struct

from wellstrung.common.wording import nearest, same_as

_DATA = Path(__file__).parent / "data"
GRADES = (
    "several pages",
    "one page",
    "derived",
    "from memory",
    "weak page",
    "standard",
    "common practice",
)


class UnknownRow(KeyError):
    """There is no row of that name; `near` is the nearest one there is."""

    def __init__(self, table: str, name: str, near: str | None) -> None:
        super().__init__(name)
        self.table = table
        self.name = name
        self.near = near


class Cell(NamedTuple):
    """One value of a table, with its range, grade and sources."""

    value: float
    low: float
    high: float
    unit: str
    grade: str
    sources: tuple[str, ...]
    note: str


class Row(Struct, frozen=True):
    """One row: cells by column, and texts."""

    name: str
    cells: Mapping[str, Cell]
    texts: Mapping[str, str]

    def cell(self, column: str) -> Cell:
        """The value in a column; KeyError where the row has none."""
        return self.cells[column]

    def text(self, column: str) -> str:
        """The text in a column, empty where the row has none."""
        return self.texts.get(column, "")


class Table(Struct, frozen=True):
    """A table by name, with its rows and the titles of its sources."""

    name: str
    title: str
    rows: Mapping[str, Row]
    sources: Mapping[str, str]

    def row(self, name: str) -> Row:
        """The row of that name; raises UnknownRow with the nearest one."""
        if name not in self.rows:
            raise UnknownRow(self.name, name, nearest(name, self.rows))
        return self.rows[name]


def names() -> tuple[str, ...]:
    """The names of all tables."""
    return tuple(sorted(file.stem for file in _DATA.glob("*.json")))


@cache
def load(name: str) -> Table:
    """The table of that name; its data ship with the program and never change while it runs.

    >>> load("beads").row("round 8/0 Japanese").cell("outside")[:4]
    (3.0, 2.8, 3.2, 'mm')
    """
    data = json.loads((_DATA / f"{name}.json").read_text(encoding="utf-8"))
    rows = {entry["name"]: _row(entry) for entry in data["rows"]}
    return Table(data["table"], data["title"], rows, data["sources"])


def metal(name: str) -> Row:
    """The row of a metal; the row `unknown` for one that no table has, so its cautions are shown.

    >>> metal("brass").name, metal("german silver").name, metal("antique brass").name
    ('brass', 'nickel silver', 'unknown')
    """
    rows = load("metals").rows
    return rows.get(name) or rows[same_as(name, rows) or "unknown"]


def _row(entry: dict[str, Any]) -> Row:
    cells, texts = {}, {}
    for column, content in entry.items():
        if isinstance(content, dict):
            cells[column] = _cell(content)
        elif column != "name":
            texts[column] = content
    return Row(entry["name"], cells, texts)


def _cell(content: dict[str, Any]) -> Cell:
    value, by = content["value"], content.get("tolerance", 0.0)
    return Cell(
        value,
        content.get("low", round(value - by, 9)),
        content.get("high", round(value + by, 9)),
        content.get("unit", ""),
        content["grade"],
        tuple(content["sources"]),
        content.get("note", ""),
    )
