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


#: grades of a value that never makes an error alone
WEAK = frozenset({"from memory", "weak page"})


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

    def at(self, column: str, size: float) -> Cell:
        """The value in a column for a size in mm; KeyError where the row has none.

        Between two sizes, as in `hole at 4 mm` and `hole at 6 mm`, it runs evenly (interpolated,
        not printed); beyond the first and the last it stays.

        >>> pearl = load("other_beads").row("glass pearl")
        >>> [pearl.at("hole", size).value for size in (4, 5, 20)]
        [0.8, 0.9, 1.1]
        """
        if column in self.cells:
            return self.cells[column]
        points = sorted(
            (float(name.removeprefix(f"{column} at ").removesuffix(" mm")), cell)
            for name, cell in self.cells.items()
            if name.startswith(f"{column} at ")
        )
        if not points:
            raise KeyError(column)
        below = [point for point in points if point[0] <= size] or points[:1]
        above = [point for point in points if point[0] >= size] or points[-1:]
        (first, low), (last, high) = below[-1], above[0]
        share = (size - first) / (last - first) if last > first else 0.0
        return _between(low, high, share) if share else low


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


#: tables of plugins, and rows that they add to ours: set once, when plugins are loaded
_BROUGHT: dict[str, Table] = {}


def names() -> tuple[str, ...]:
    """The names of all tables."""
    return tuple(sorted({*(file.stem for file in _DATA.glob("*.json")), *_BROUGHT}))


@cache
def load(name: str) -> Table:
    """The table of that name, with the rows that plugins add to it; it never changes in a run.

    >>> load("beads").row("round 8/0 Japanese").cell("outside")[:4]
    (3.0, 2.8, 3.2, 'mm')
    """
    brought, file = _BROUGHT.get(name), _DATA / f"{name}.json"
    if brought is None:
        return read(file)
    return _joined(read(file), brought) if file.is_file() else brought


def read(file: Path) -> Table:
    """A table of a JSON file in the layout of ours: for plugins, which may add rows to ours."""
    data = json.loads(file.read_text(encoding="utf-8"))
    rows = {entry["name"]: _row(entry) for entry in data["rows"]}
    return Table(data["table"], data["title"], rows, data["sources"])


def bring(tables: Mapping[str, Table]) -> None:
    """Take the tables of plugins; raises ValueError for a row that we have, and a cell unfit."""
    _BROUGHT.clear()
    load.cache_clear()
    for name, table in tables.items():
        for row in table.rows.values():
            for column, cell in row.cells.items():
                fits = cell.grade in GRADES and set(cell.sources) <= set(table.sources)
                if not (fits and cell.low <= cell.value <= cell.high):
                    says = "needs a grade that we know, sources of its table and a range round it"
                    raise ValueError(f"`{column}` of `{row.name}` in table `{name}` {says}")
        ours = _DATA / f"{name}.json"
        twice = set(table.rows) & set(read(ours).rows) if ours.is_file() else ()
        if twice:
            raise ValueError(f"table `{name}` has a row `{min(twice)}` already: rename yours")
    _BROUGHT.update(tables)


def _joined(ours: Table, brought: Table) -> Table:
    """Our table with rows more, whose sources keep their numbers under the plugin's title."""
    keys = {key: f"{brought.title}: {key}" for key in brought.sources}
    rows = {
        name: Row(name, {column: _of(cell, keys) for column, cell in row.cells.items()}, row.texts)
        for name, row in brought.rows.items()
    }
    sources = {**ours.sources, **{keys[key]: title for key, title in brought.sources.items()}}
    return Table(ours.name, ours.title, {**ours.rows, **rows}, sources)


def _of(cell: Cell, keys: Mapping[str, str]) -> Cell:
    return cell._replace(sources=tuple(keys[source] for source in cell.sources))


def metal(name: str) -> Row:
    """The row of a metal; the row `unknown` for one that no table has, so its cautions are shown.

    >>> metal("brass").name, metal("german silver").name, metal("antique brass").name
    ('brass', 'nickel silver', 'unknown')
    """
    rows = load("metals").rows
    return rows.get(name) or rows[same_as(name, rows) or "unknown"]


def line_may_be(word: str) -> tuple[str, ...]:
    """The types of line that a word may mean, where shops use it for several; else none.

    >>> line_may_be("braided"), line_may_be("fused")
    (('fused', 'gel-spun braided'), ())
    """
    row = load("line_types").rows.get(word)
    either = row.text("either") if row is not None else ""
    return tuple(either.split(", ")) if either else ()


def _between(low: Cell, high: Cell, share: float) -> Cell:
    """A value between two of a column, with the weaker grade of both."""
    value, least, most = (
        round(one + share * (other - one), 9) for one, other in zip(low[:3], high[:3], strict=True)
    )
    grade = max(low.grade, high.grade, key=lambda grade: grade in WEAK)
    sources = tuple(dict.fromkeys(low.sources + high.sources))
    return Cell(value, least, most, low.unit, grade, sources, low.note)


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
