"""Lists as spreadsheets write them: what is read is what was written, each cell at its place."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.reading import tree
from wellstrung.reading.rfc_4180 import SEPARATORS, table

#: what a cell may hold: signs that matter to the reader, and all that a file may hold
CELLS = st.text(
    alphabet=st.sampled_from('a8é½"\n\r,;\t ')
    | st.characters(codec="utf-8", exclude_characters="\0"),
    max_size=12,
)
ROWS = st.lists(st.lists(CELLS, min_size=2, max_size=5), max_size=6)


def written(rows: list[list[str]], separator: str, line_end: str, quoting: int) -> str:
    """A list as the standard library writes it, below a heading that shows the separator."""
    stream = io.StringIO()
    # the library's own type names four constants
    writer = csv.writer(stream, delimiter=separator, lineterminator=line_end, quoting=quoting)  # type: ignore[arg-type]
    writer.writerows([["name", "kind", "hole"], *rows])
    return stream.getvalue()


@given(
    ROWS,
    st.sampled_from(SEPARATORS),
    st.sampled_from(["\r\n", "\n", "\r"]),
    st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
    st.booleans(),
)
def test_what_is_written_is_read_again(
    rows: list[list[str]], separator: str, line_end: str, quoting: int, ends: bool
) -> None:
    if line_end != "\r\n":  # the library quotes only the line end that it writes
        quoting = csv.QUOTE_ALL
    text = written(rows, separator, line_end, quoting)
    if not ends:  # a last row without a line end
        text = text.removesuffix(line_end)
    found = table(text, "stock.csv")
    assert not found.faults and found.separator == separator
    assert [[cell.text for cell in row] for row in found.rows[1:]] == rows


@given(ROWS, st.sampled_from(SEPARATORS))
def test_a_place_holds_its_cell(rows: list[list[str]], separator: str) -> None:
    text = written(rows, separator, "\r\n", csv.QUOTE_MINIMAL)
    for row in table(text, "stock.csv").rows:
        for cell in row:
            start, end = cell.place[1:3], cell.place[3:5]
            there = text[tree.offset(text, *start) : tree.offset(text, *end)]
            assert there in (cell.text, '"' + cell.text.replace('"', '""') + '"')


@given(st.text(alphabet=st.sampled_from('a8",;\t\r\n '), max_size=40))
def test_no_text_breaks_it(text: str) -> None:
    found = table(text, "stock.csv")
    assert all(fault.place.line <= 1 + len(tree.BREAK.findall(text)) for fault in found.faults)


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        ('name,hole\nring,1/2"\n', [["name", "hole"], ["ring", '1/2"']]),
        ("sep=;\nname;hole\nkelp;0,9", [[], ["name", "hole"], ["kelp", "0,9"]]),
        ("SEP=,\r\nname,hole", [[], ["name", "hole"]]),
        ("name,hole\n\n,\nkelp,", [["name", "hole"], [""], ["", ""], ["kelp", ""]]),
        ('"name, of yours";hole', [["name, of yours", "hole"]]),
        ("name", [["name"]]),
        ("", []),
    ],
)
def test_rows(text: str, rows: list[list[str]]) -> None:
    assert [[cell.text for cell in row] for row in table(text, "stock.csv").rows] == rows


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            'name,hole\nkelp,"0.9 mm\n',
            "2:6 a cell begins with a quotation mark here and has none at its end: close it",
        ),
        (
            'name,hole\n"kelp" green,1 mm\n',
            "2:7 text follows the closing quotation mark of a cell: put it inside the quotes",
        ),
    ],
)
def test_a_slip_in_quotes_is_told_at_its_place(text: str, says: str) -> None:
    (fault,) = table(text, "stock.csv").faults
    assert f"{fault.place.line}:{fault.place.column} {fault.says}" == says
