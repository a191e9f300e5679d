"""The trade tables, for people and as JSON: every value with its range, grade and sources."""

from __future__ import annotations

import json

from wellstrung import tables
from wellstrung.common import units
from wellstrung.quantity.working import number
from wellstrung.report.styled import Text
from wellstrung.report.terminal import Page
from wellstrung.report.writer import Options


def write(names: list[str], options: Options) -> str:
    """The names and titles of all tables, or the named ones row by row."""
    page = Page(options)
    if not names:
        for name in tables.names():
            page.hanging(_head(tables.load(name)), 4)
    for name in names:
        _table(page, tables.load(name))
    return page.text()


def _table(page: Page, table: tables.Table) -> None:
    page.hanging(_head(table), 4)
    page.line()
    for row in table.rows.values():
        page.line(row.name, style="bold")
        for column, cell in row.cells.items():
            page.hanging(Text(f"{column.replace('_', ' ')}: {_described(cell)}"), 6, 2)
        for column, text in row.texts.items():
            page.hanging(Text(f"{column.replace('_', ' ')}: {text}"), 6, 2)
    if table.sources:
        page.line()
        page.line("sources", style="bold")
        for key, title in table.sources.items():
            page.hanging(Text(f"[{key}] {title}", whole=True), 6, 2)  # addresses stay whole
    page.line()


def _head(table: tables.Table) -> Text:
    return Text(table.name, style="bold").append(f"  {table.title}")


def _described(cell: tables.Cell) -> str:
    value = f"{number(cell.value)} {cell.unit}".rstrip()
    span = f"{number(cell.low)}..{number(cell.high)}"
    if cell.unit == "N":
        value = f"{units.hanging(cell.value)} hanging ({value})"
        span = f"{units.hanging(cell.low)} to {units.hanging(cell.high)}"
    if cell.low != cell.high:
        value += f" ({span})"
    sources = "".join(f" [{key}]" for key in cell.sources)
    return f"{value}; {cell.grade}{sources}" + (f"; {cell.note}" if cell.note else "")


def as_json(names: list[str]) -> str:
    """The same as JSON: a list of tables."""
    return json.dumps(
        [
            {
                "name": table.name,
                "title": table.title,
                "sources": dict(table.sources),
                "rows": [
                    {
                        "name": row.name,
                        "values": {column: cell._asdict() for column, cell in row.cells.items()},
                        "texts": dict(row.texts),
                    }
                    for row in table.rows.values()
                ],
            }
            for table in map(tables.load, names or tables.names())
        ],
        indent=2,
        ensure_ascii=False,
    )
