"""Trade tables: every value has a grade and its sources, and no figure changes unseen."""

from __future__ import annotations

import hashlib
import json
import math
import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from running import Pinned
from wellstrung import tables
from wellstrung.common import units
from wellstrung.model.sold import TIMES_SIZE

NAMES = tables.names()
DATA = Path(tables.__file__).parent / "data"
NEEDS_NO_SOURCE = {"from memory", "common practice"}
IN_A_CELL = {"value", "tolerance", "low", "high", "unit", "grade", "sources", "note"}
#: a site, a standard or a paper
TRACED = re.compile(r"\b[a-z0-9-]+\.[a-z]{2,}\b|\bdoi \S+|\b(ASTM|BS|CI|ISO) ?[A-Z]?\d+")
UNITS = {
    "",
    "mm",
    "mm2",
    "g",
    "N",
    "min",
    "g/cm3",
    "MPa",
    "GPa",
    "HV",
    "tex",
    "AWG",
    "x inside",
    "x outside",
    "x wire",
    "/0",
    "%",
    "°C",
    TIMES_SIZE,
}


def written(name: str) -> dict[str, Any]:
    """A table as its file has it."""
    data: dict[str, Any] = json.loads((DATA / f"{name}.json").read_text(encoding="utf-8"))
    return data


def cells(name: str) -> Iterator[tuple[str, str, tables.Cell]]:
    """Row, column and value of every value in a table."""
    for row in tables.load(name).rows.values():
        for column, cell in row.cells.items():
            yield row.name, column, cell


@pytest.mark.parametrize("name", NAMES)
def test_every_value_has_a_grade_and_its_sources(name: str) -> None:
    known = set(tables.load(name).sources)
    for row, column, cell in cells(name):
        where = f"{row}, {column}"
        told = bool(cell.sources) or cell.grade in NEEDS_NO_SOURCE
        # arithmetic that starts from no printed figure says what it is
        assert told or (cell.grade == "derived" and cell.note), where
        assert cell.grade in tables.GRADES, where
        assert set(cell.sources) <= known, where
        assert cell.low <= cell.value <= cell.high, where
        assert cell.unit in UNITS, where


@pytest.mark.parametrize("name", NAMES)
def test_every_source_is_used(name: str) -> None:
    used = {source for _, _, cell in cells(name) for source in cell.sources}
    assert used == set(tables.load(name).sources)


@pytest.mark.parametrize("name", NAMES)
def test_every_source_can_be_found_again(name: str) -> None:
    """By an address below a home page, a site that is searched by the title, or a number."""
    for key, source in tables.load(name).sources.items():
        address = re.search(r"https?://(\S+)", source)
        found = address[1].strip("/").count("/") if address else TRACED.search(source)
        assert found, f"{key}: {source}"


@pytest.mark.parametrize("name", NAMES)
def test_a_file_says_nothing_twice_and_nothing_that_is_not_read(name: str) -> None:
    data = written(name)
    rows = [row["name"] for row in data["rows"]]
    assert data.keys() == {"table", "title", "sources", "rows"}
    assert data["table"] == name
    assert len(rows) == len(set(rows))
    for row in data["rows"]:
        for column, content in row.items():
            assert isinstance(content, str) or content.keys() <= IN_A_CELL, f"{row}, {column}"
            if isinstance(content, dict):
                assert not ("tolerance" in content and "low" in content), f"{row}, {column}"


@pytest.mark.parametrize(
    ("table", "asked", "near"),
    [
        ("adhesives", "two part epoxy", "two-part epoxy"),
        ("beads", "round 8/0 Japanes", "round 8/0 Japanese"),
        ("beads", "cylindre 11/0", "cylinder 11/0"),
        ("needles", "beeding 11", "beading 11"),
        ("metals", "sterling", "sterling silver"),
        ("metals", "xyzzy", None),
    ],
)
def test_an_unknown_row_names_the_nearest(table: str, asked: str, near: str | None) -> None:
    with pytest.raises(tables.UnknownRow) as caught:
        tables.load(table).row(asked)
    assert (caught.value.table, caught.value.name, caught.value.near) == (table, asked, near)


def test_a_row_without_the_column() -> None:
    row = tables.load("beads").row("round 12/0 Czech")
    assert row.text("caution") == ""
    with pytest.raises(KeyError):
        row.cell("hole")


def test_only_the_table_that_is_asked_for_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    read: list[str] = []

    def noted(self: Path, encoding: str) -> str:
        read.append(self.name)
        return self.read_bytes().decode(encoding)

    tables.load.cache_clear()
    monkeypatch.setattr(Path, "read_text", noted)
    first, second = tables.load("metals"), tables.load("metals")
    assert (read, first is second) == (["metals.json"], True)


def test_beads_to_the_inch_agree_with_the_length() -> None:
    for row in tables.load("beads").rows.values():
        length = row.cell("length")
        assert length.low <= units.INCH / row.cell("per_inch").value <= length.high, row.name


def test_gauges_are_those_that_plans_are_read_with() -> None:
    for row in tables.load("wire_gauges").rows.values():
        number, system = row.name.split()
        diameter = {"AWG": units.awg, "SWG": units.swg}[system](int(number))
        assert row.cell("diameter").value == pytest.approx(diameter, abs=5e-4)
        if "area" in row.cells:
            area = math.pi / 4 * diameter**2
            assert row.cell("area").value == pytest.approx(area, abs=5e-5)
        if "printed" in row.cells:
            printed = row.cell("printed")
            assert printed.low - 0.005 <= diameter <= printed.high + 0.005, row.name


def test_beading_wires_are_named_by_their_diameter() -> None:
    for row in tables.load("beading_wires").rows.values():
        diameter = float(row.name.split()[-2]) * units.INCH
        assert row.cell("diameter").value == pytest.approx(diameter, abs=0.006)
        assert row.cell("pair").value == pytest.approx(2 * diameter, abs=0.006)


def test_jump_rings_named_by_outside_and_gauge() -> None:
    rows = tables.load("jump_rings").rows.values()
    named = [row for row in rows if row.name.endswith("AWG")]
    assert len(named) == 6
    for row in named:
        outside, _, _, gauge, _ = row.name.replace(",", "").split()
        inside = float(outside) - 2 * units.awg(int(gauge))
        assert row.cell("inside").value == pytest.approx(inside, abs=0.05)


def test_necklace_lengths_are_whole_inches() -> None:
    for row, column, cell in cells("necklace_lengths"):
        inches = float(cell.note.split(" in")[0])
        assert cell.value == pytest.approx(inches * units.INCH), f"{row}, {column}"


def test_necklaces_are_named_from_short_to_long() -> None:
    rows = list(tables.load("necklace_lengths").rows.values())
    nominal = [row.cell("nominal").value for row in rows]
    assert nominal == sorted(nominal)
    for shorter, longer in pairwise(rows):
        assert shorter.cell("most").value <= longer.cell("least").value, longer.name


def test_no_figure_changes_unseen(pinned: Pinned) -> None:
    """A digest a table: what changed is in the data's own diff, and `--rewrite` accepts it."""
    lines = []
    for name in NAMES:
        values = [(row, column, *cell) for row, column, cell in cells(name)]
        digest = hashlib.sha256(json.dumps(values).encode()).hexdigest()[:16]
        lines.append(f"{name}: {len(values)} figures, {digest}\n")
    pinned(Path(__file__).with_name("figures.txt"), "".join(lines))
