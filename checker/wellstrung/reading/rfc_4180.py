"""Lists that spreadsheets write: rows of cells, each cell at its place (RFC 4180).

A list may be separated by commas, or by semicolons or tabs, as spreadsheets write it where the
comma is the decimal point. An inch mark within a cell needs no quotes.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from typing import NamedTuple

from wellstrung.common.places import Fault, Place
from wellstrung.reading.tree import BREAK, line_starts

SEPARATORS = ",;\t"
#: the first line by which some spreadsheets name the separator
_NAMED = re.compile(r"sep=([,;\t])(?:\r\n|\n|\r|$)", re.IGNORECASE)
_QUOTED = re.compile(r'"[^"]*(?:""[^"]*)*"')


class Cell(NamedTuple):
    """What a cell holds, without its quotes, and where it stands, with them."""

    text: str
    place: Place


class Table(NamedTuple):
    """The rows of a list, and what its cells are separated by."""

    rows: list[list[Cell]]
    separator: str
    faults: list[Fault]


def table(text: str, file: str) -> Table:
    r"""The rows of a text; a slip in its quotes ends them with a fault.

    >>> [[cell.text for cell in row] for row in table('name,size\n"a, b",1/2"\n', "a.csv").rows]
    [['name', 'size'], ['a, b', '1/2"']]
    >>> table('name;size\nkelp;8/0', "a.csv").rows[1][1].place
    Place(file='a.csv', line=2, column=6, end_line=2, end_column=9)
    >>> table('name,size\n"kelp,8/0', "a.csv").faults[0].says
    'a cell begins with a quotation mark here and has none at its end: close it'
    """
    named = _NAMED.match(text)
    separator = named[1] if named else _separator(text)
    starts = line_starts(text)
    plain = re.compile(rf"[^{re.escape(separator)}\r\n]*")

    def place(start: int, end: int) -> Place:
        line, last = bisect_right(starts, start), bisect_right(starts, end)
        return Place(file, line, start - starts[line - 1] + 1, last, end - starts[last - 1] + 1)

    at, rows, row = (named.end() if named else 0), list[list[Cell]](), list[Cell]()
    if named:
        rows.append([])  # it is a row of the spreadsheet
    while at < len(text) or row:
        quoted = _QUOTED.match(text, at)
        found = quoted or plain.match(text, at)
        assert found is not None
        end = found.end()
        if quoted is None and found[0].startswith('"'):
            says = "a cell begins with a quotation mark here and has none at its end: close it"
            return Table(rows, separator, [Fault("plan-file", says, place(at, at + 1))])
        if quoted is not None and text[end : end + 1] not in ("", "\r", "\n", separator):
            says = "text follows the closing quotation mark of a cell: put it inside the quotes"
            return Table(rows, separator, [Fault("plan-file", says, place(end, end + 1))])
        words = found[0][1:-1].replace('""', '"') if quoted else found[0]
        row.append(Cell(words, place(at, end)))
        if text[end : end + 1] == separator:
            at = end + 1
            continue
        rows.append(row)
        row, line_end = [], BREAK.match(text, end)
        at = line_end.end() if line_end else end
    return Table(rows, separator, [])


def _separator(text: str) -> str:
    """The sign that stands most often in the first line with words, outside of quotes."""
    first = next((line for line in BREAK.split(_QUOTED.sub("", text)) if line.strip(" ")), "")
    return max(SEPARATORS, key=first.count)
