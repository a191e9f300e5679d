"""Trade tables: every value has a grade and its sources, and no figure changes unseen."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from wellstrung import tables
from wellstrung.common import units

NAMES = tables.names()
DATA = Path(tables.__file__).parent / "data"
NEEDS_NO_SOURCE = {"from memory", "common practice"}
IN_A_CELL = {"value", "tolerance", "low", "high", "unit", "grade", "sources", "note"}
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
    "/0",
    "%",
    "°C",
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
        ("beads", "round 8/0 Japan", "round 8/0 Japanese"),
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
        diameter = float(row.name.split()[0]) * units.INCH
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


#: every figure: table, row, column: value (its range) unit
FIGURES = """
adhesives, two-part epoxy, usable: 5 min
adhesives, two-part epoxy, handling: 60 (30..120) min
adhesives, two-part epoxy, full_cure: 1440 min
adhesives, two-part epoxy, full_cure_slow: 4320 min
adhesives, two-part epoxy, mixing: 1.5 (1..2) min
adhesives, two-part epoxy, degrees_to_double: 10 °C
adhesives, two-part epoxy, stated_at: 25 °C
adhesives, two-part epoxy, stalls_below: 13 °C
adhesives, two-part epoxy, gap_least: 0.05 mm
adhesives, two-part epoxy, gap_best: 0.125 (0.05..0.2) mm
adhesives, cyanoacrylate, usable: 0.5 (0.1..1) min
adhesives, cyanoacrylate, handling: 5 (1..10) min
adhesives, cyanoacrylate, full_cure: 1440 min
adhesives, cyanoacrylate, gap_best: 0.05 (0..0.05) mm
adhesives, cyanoacrylate, gap_most: 0.2 mm
adhesives, UV resin, usable: 60 min
adhesives, UV resin, handling: 5 min
adhesives, UV resin, full_cure: 1440 min
adhesives, UV resin, gap_best: 0.1 (0..0.1) mm
adhesives, UV resin, glove_thin: 30 min
adhesives, UV resin, glove_middle: 240 min
adhesives, UV resin, glove_thick: 480 min
adhesives, contact cement, usable: 30 (15..120) min
adhesives, contact cement, handling: 60 (15..120) min
adhesives, contact cement, full_cure: 1440 min
adhesives, contact cement, full_cure_slow: 4320 min
anklets, woman, ankle: 228.6 (203.2..254) mm
anklets, man, ankle: 254 (228.6..279.4) mm
anklets, snug, ease: 19.05 (12.7..25.4) mm
anklets, comfortable, ease: 31.75 (25.4..38.1) mm
anklets, loose, ease: 57.15 (50.8..63.5) mm
anklets, sold, length: 254 (203.2..304.8) mm
anklets, sold with an extender, length: 241.3 (203.2..279.4) mm
anklets, usual, ease: 25.4 mm
anklets, usual, length: 247.65 (241.3..254) mm
bead_packing, Czech hank, strands: 12 (6..12)
bead_packing, Czech hank, strand: 330.2 (304.8..355.6) mm
bead_packing, mass of pressed beads, count: 1200
bead_packing, bead weighed by its volume, glass: 0.85
bead_packing, bead weighed by its volume, least: 0.7
bead_packing, bead weighed by its volume, most: 1.4
bead_strands, round 4 mm, per_inch: 6.25
bead_strands, round 4 mm, per_16_inches: 100.5 (100..101)
bead_strands, round 6 mm, per_inch: 4.2
bead_strands, round 6 mm, per_16_inches: 66.5 (66..67)
bead_strands, round 8 mm, per_inch: 3.13
bead_strands, round 8 mm, per_16_inches: 50
bead_strands, round 10 mm, per_inch: 2.5
bead_strands, round 10 mm, per_16_inches: 40.5 (40..41)
beading_wires, 0.010 in, diameter: 0.25 mm
beading_wires, 0.010 in, breaking: 22.24 (15.57..28.91) N
beading_wires, 0.010 in, pair: 0.51 mm
beading_wires, 0.010 in, tube: 1 mm
beading_wires, 0.012 in, diameter: 0.3 mm
beading_wires, 0.012 in, breaking: 31.14 (21.8..40.48) N
beading_wires, 0.012 in, pair: 0.61 mm
beading_wires, 0.012 in, tube: 1 mm
beading_wires, 0.014 in, diameter: 0.36 mm
beading_wires, 0.014 in, breaking: 44.48 (31.14..57.82) N
beading_wires, 0.014 in, pair: 0.71 mm
beading_wires, 0.014 in, tube: 2 mm
beading_wires, 0.015 in, diameter: 0.38 mm
beading_wires, 0.015 in, breaking: 88.96 (62.27..115.65) N
beading_wires, 0.015 in, pair: 0.76 mm
beading_wires, 0.015 in, tube: 2 mm
beading_wires, 0.015 in, crimp_inside: 1 mm
beading_wires, 0.018 in, diameter: 0.46 mm
beading_wires, 0.018 in, breaking: 115.65 (86.74..144.56) N
beading_wires, 0.018 in, pair: 0.91 mm
beading_wires, 0.018 in, crimp_inside: 1 mm
beading_wires, 0.019 in, diameter: 0.48 mm
beading_wires, 0.019 in, breaking: 115.65 (92.52..138.78) N
beading_wires, 0.019 in, pair: 0.97 mm
beading_wires, 0.019 in, tube: 3 mm
beading_wires, 0.019 in, crimp_inside: 1.4 (1.3..1.5) mm
beading_wires, 0.020 in, diameter: 0.51 mm
beading_wires, 0.020 in, breaking: 133.45 (93.42..173.48) N
beading_wires, 0.020 in, pair: 1.02 mm
beading_wires, 0.020 in, crimp_inside: 1.4 (1.3..1.5) mm
beading_wires, 0.024 in, diameter: 0.61 mm
beading_wires, 0.024 in, breaking: 177.93 N
beading_wires, 0.024 in, pair: 1.22 mm
beading_wires, 0.024 in, tube: 3 mm
beading_wires, 0.024 in, crimp_inside: 1.4 (1.3..1.5) mm
beading_wires, 0.036 in, diameter: 0.91 mm
beading_wires, 0.036 in, breaking: 400.34 (260.22..540.46) N
beading_wires, 0.036 in, pair: 1.83 mm
beading_wires, 0.036 in, crimp_inside: 2 mm
beads, round 15/0 Japanese, outside: 1.5 (1.4..1.6) mm
beads, round 15/0 Japanese, length: 1.1 (1.02..1.18) mm
beads, round 15/0 Japanese, per_inch: 23 (21.5..24.5)
beads, round 15/0 Japanese, hole: 0.6 (0.5..0.7) mm
beads, round 15/0 Japanese, per_gram: 265 (238.5..291.5)
beads, round 11/0 Japanese, outside: 2.1 (1.95..2.25) mm
beads, round 11/0 Japanese, length: 1.45 (1.33..1.57) mm
beads, round 11/0 Japanese, per_inch: 17.5 (16..19)
beads, round 11/0 Japanese, hole: 0.8 (0.7..0.9) mm
beads, round 11/0 Japanese, per_gram: 110 (99..121)
beads, round 8/0 Japanese, outside: 3 (2.8..3.2) mm
beads, round 8/0 Japanese, length: 2.1 (1.92..2.28) mm
beads, round 8/0 Japanese, per_inch: 12 (11..13)
beads, round 8/0 Japanese, hole: 1.05 (0.95..1.15) mm
beads, round 8/0 Japanese, per_gram: 35 (30.8..39.2)
beads, round 6/0 Japanese, outside: 4 (3.7..4.3) mm
beads, round 6/0 Japanese, length: 2.6 (2.35..2.85) mm
beads, round 6/0 Japanese, per_inch: 10 (9..11)
beads, round 6/0 Japanese, hole: 1.45 (1.2..1.7) mm
beads, round 6/0 Japanese, per_gram: 15 (13.2..16.8)
beads, round 15/0 Czech, outside: 1.5 (1.4..1.6) mm
beads, round 15/0 Czech, length: 1.1 (1.02..1.18) mm
beads, round 15/0 Czech, per_inch: 23 (21.5..24.5)
beads, round 15/0 Czech, hole: 0.45 (0.4..0.5) mm
beads, round 15/0 Czech, hole_least: 0.4 mm
beads, round 15/0 Czech, per_gram: 280 (238..322)
beads, round 13/0 Czech, outside: 1.65 (1.5..1.8) mm
beads, round 13/0 Czech, length: 1.04 (0.98..1.1) mm
beads, round 13/0 Czech, per_inch: 24.5 (23..26)
beads, round 13/0 Czech, hole: 0.5 (0.4..0.6) mm
beads, round 13/0 Czech, hole_transparent: 0.5 mm
beads, round 13/0 Czech, hole_opaque: 0.4 mm
beads, round 13/0 Czech, per_gram: 290 (246.5..333.5)
beads, round 12/0 Czech, outside: 1.9 (1.8..2) mm
beads, round 12/0 Czech, length: 1.15 (1.07..1.23) mm
beads, round 12/0 Czech, per_inch: 22 (20.5..23.5)
beads, round 11/0 Czech, outside: 2.05 (1.85..2.25) mm
beads, round 11/0 Czech, length: 1.45 (1.33..1.57) mm
beads, round 11/0 Czech, per_inch: 17.5 (16..19)
beads, round 11/0 Czech, hole: 0.7 (0.6..0.8) mm
beads, round 11/0 Czech, hole_transparent: 0.7 mm
beads, round 11/0 Czech, hole_opaque: 0.6 mm
beads, round 11/0 Czech, per_gram: 125 (112.5..137.5)
beads, round 10/0 Czech, outside: 2.3 (2.15..2.45) mm
beads, round 10/0 Czech, length: 1.6 (1.45..1.75) mm
beads, round 10/0 Czech, per_inch: 15.5 (14..17)
beads, round 10/0 Czech, hole: 0.8 (0.7..0.9) mm
beads, round 10/0 Czech, hole_transparent: 0.8 mm
beads, round 10/0 Czech, hole_opaque: 0.7 mm
beads, round 10/0 Czech, per_gram: 90 (81..99)
beads, round 8/0 Czech, outside: 2.9 (2.65..3.15) mm
beads, round 8/0 Czech, length: 2.1 (1.92..2.28) mm
beads, round 8/0 Czech, per_inch: 12 (11..13)
beads, round 8/0 Czech, hole: 0.9 (0.8..1) mm
beads, round 8/0 Czech, hole_transparent: 0.9 mm
beads, round 8/0 Czech, hole_opaque: 0.8 mm
beads, round 8/0 Czech, per_gram: 41 (36.08..45.92)
beads, round 6/0 Czech, outside: 4 (3.7..4.3) mm
beads, round 6/0 Czech, length: 2.6 (2.35..2.85) mm
beads, round 6/0 Czech, per_inch: 10 (9..11)
beads, round 6/0 Czech, hole: 1.1 (1..1.2) mm
beads, round 6/0 Czech, hole_transparent: 1.1 mm
beads, round 6/0 Czech, hole_opaque: 1 mm
beads, round 6/0 Czech, per_gram: 14 (12.32..15.68)
beads, cylinder 15/0, outside: 1.3 (1.2..1.4) mm
beads, cylinder 15/0, length: 1.1 (1..1.2) mm
beads, cylinder 15/0, per_inch: 23 (21..25)
beads, cylinder 15/0, hole: 0.65 (0.55..0.75) mm
beads, cylinder 15/0, per_gram: 365 (310.25..419.75)
beads, cylinder 11/0, outside: 1.6 (1.55..1.65) mm
beads, cylinder 11/0, length: 1.3 (1.25..1.35) mm
beads, cylinder 11/0, per_inch: 19.5
beads, cylinder 11/0, hole: 0.8 (0.7..0.9) mm
beads, cylinder 11/0, per_gram: 200 (184..216)
beads, cylinder 10/0, outside: 2.2 (2.1..2.3) mm
beads, cylinder 10/0, length: 1.7 (1.6..1.8) mm
beads, cylinder 10/0, per_inch: 15 (14..16)
beads, cylinder 10/0, hole: 1 (0.9..1.1) mm
beads, cylinder 10/0, per_gram: 95 (76..114)
beads, cylinder 8/0, outside: 3 (2.8..3.2) mm
beads, cylinder 8/0, length: 2.6 (2.4..2.8) mm
beads, cylinder 8/0, per_inch: 9.8 (8.8..10.8)
beads, cylinder 8/0, hole: 1.3 (1.1..1.5) mm
beads, cylinder 8/0, per_gram: 31 (24.8..37.2)
bracelet_eases, tight, ease: 0 (-6.35..6.35) mm
bracelet_eases, snug, ease: 9.525 (3.175..15.875) mm
bracelet_eases, snug, seen: 9.525 (5..12.7) mm
bracelet_eases, comfort, ease: 19.05 (12.7..25.4) mm
bracelet_eases, comfort, seen: 19.05 (6.35..25.4) mm
bracelet_eases, loose, ease: 31.75 (25.4..38.1) mm
bracelet_eases, loose, seen: 31.75 (15..31.75) mm
bracelet_eases, wrist 6 to 7 in, wrist: 165.1 (152.4..177.8) mm
bracelet_eases, wrist 6 to 7 in, bracelet: 177.8 (165.1..190.5) mm
bracelet_eases, wrist 7 to 7.5 in, wrist: 184.15 (177.8..190.5) mm
bracelet_eases, wrist 7 to 7.5 in, bracelet: 196.85 (190.5..203.2) mm
bracelet_eases, wrist 7.5 to 8 in, wrist: 196.85 (190.5..203.2) mm
bracelet_eases, wrist 7.5 to 8 in, bracelet: 209.55 (203.2..215.9) mm
bracelet_eases, petite wrist, wrist: 165.1 mm
bracelet_eases, average wrist, wrist: 177.8 mm
bracelet_eases, largest wrist, wrist: 203.2 mm
bracelet_eases, thick beads, times_thickness: 3.14 (3..3.14)
bracelet_eases, plain chain, added: 10 mm
bracelet_eases, up to 8 beads, added: 20 mm
bracelet_eases, beads all round, added: 30 mm
bracelet_eases, beads over 15 mm, added: 40 mm
bracelet_eases, worn, ease_least: 3.175 mm
bracelet_eases, worn, ease_most: 50.8 mm
caps, plain cord in a cap, room: 0.15 (0.1..0.2) mm
caps, leather 2 mm, bore: 2.35 (2.2..2.5) mm
caps, cord 1 mm, bore: 1.35 (1.2..1.5) mm
caps, bare braid just under 4 mm, bore: 3 mm
caps, bare braid just under 5 mm, bore: 4 mm
caps, bare braid in a cap, room: -0.35 (-1..0.3) mm
caps, cap over beads, room: 0.5 (-0.5..1.5) mm
caps, nub, length: 12.5 (10..20) mm
caps, nub, depth_share: 0.8
caps, nub of 16 strands, printed example, outside: 1.5 mm
caps, nub of 16 strands, printed example, bore: 10 mm
caps, nub of 16 strands, printed example, length: 35 mm
caps, end cap, bore: 4 (2..12) mm
caps, end cap, depth: 8 (6..10) mm
caps, end cap, eye: 2 (1.5..2.5) mm
caps, bead cap, narrow, room: 0 (-1..1) mm
caps, bead cap, open, outside: 3 (2..4) mm
caps, bead cap, open, bead: 10 (8..12) mm
caps, wire through a bead cap, gauge: 22 AWG
caps, cone, wide: 9 (6..12) mm
caps, cone, narrow: 2 (1.5..2.5) mm
caps, cone, length: 14 (8..20) mm
caps, cone, gauge: 22 AWG
caps, cone, wire_length: 63.5 (50.8..76.2) mm
caps, bead tip, cup: 3.5 (3..4) mm
caps, bead tip, hole: 1 (0.7..1.3) mm
caps, bead tip, eye: 1.75 (1.5..2) mm
chains, cable 2 mm, outside: 2 mm
chains, cable 2 mm, wire: 0.45 mm
chains, cable 2 mm, inside: 1.1 mm
chains, cable 2.5 x 2 mm, length: 2.5 mm
chains, cable 2.5 x 2 mm, width: 2 mm
chains, cable 2.5 x 2 mm, wire: 0.5 mm
chains, cable 2.5 x 2 mm, inside_length: 1.5 mm
chains, cable 2.5 x 2 mm, inside_width: 1 mm
chains, cable 3 x 2.5 mm, length: 3 mm
chains, cable 3 x 2.5 mm, width: 2.5 mm
chains, cable 3 x 2.5 mm, wire: 0.6 mm
chains, cable 3 x 2.5 mm, inside_length: 1.8 mm
chains, cable 3 x 2.5 mm, inside_width: 1.3 mm
chains, cable 4 x 3 mm, length: 4 mm
chains, cable 4 x 3 mm, width: 3 mm
chains, cable 4 x 3 mm, wire: 0.7 mm
chains, cable 4 x 3 mm, inside_length: 2.6 mm
chains, cable 4 x 3 mm, inside_width: 1.6 mm
chains, rolo 3 mm, outside: 3 mm
chains, rolo 3 mm, wire: 0.7 mm
chains, rolo 3 mm, inside: 1.6 mm
chains, curb 3 x 2 mm, length: 3 mm
chains, curb 3 x 2 mm, width: 2 mm
chains, curb 3 x 2 mm, wire: 0.6 mm
chains, curb 3 x 2 mm, inside_length: 1.6 mm
chains, curb 3 x 2 mm, inside_width: 0.8 mm
chains, pendant chain, width: 1.375 (0.75..2) mm
chains, chain for a ring of 20 AWG, width: 2 mm
clasps, toggle, bar_least: 3 mm
clasps, toggle, bar_short: 6 mm
clasps, toggle, bar_more: 8 mm
clasps, toggle, bar_share: 1.6
clasps, toggle, bar_share_most: 2.4
clasps, toggle, bar_more_by_hand: 10 mm
clasps, toggle, bead_room: 0.5 mm
clasps, toggle, links_beside: 3
clasps, toggle, bracelet_adds: 15 mm
clasps, toggle, printed example, ring_outside: 15 mm
clasps, toggle, printed example, wire: 2 mm
clasps, toggle, printed example, ring_inside: 11 mm
clasps, toggle, printed example, bar: 22 mm
clasps, large toggle, across: 21.5 (18..25) mm
clasps, lobster, length: 10 (8..18) mm
clasps, lobster, eye: 1.5 (1.2..2) mm
clasps, lobster, bracelet_adds: 12 mm
clasps, lobster, off_the_strand: 19.05 mm
clasps, spring ring, across: 7.5 (5..10) mm
clasps, magnetic, slides_at: 0.2 (0.15..0.25)
cords, silk 0, diameter: 0.3 mm
cords, silk 0, breaking: 13.5 (8.1..18.9) N
cords, silk 1, diameter: 0.35 (0.3..0.4) mm
cords, silk 1, breaking: 18.4 (11.04..25.76) N
cords, silk 2, diameter: 0.45 (0.4..0.5) mm
cords, silk 2, breaking: 30.4 (18.24..42.56) N
cords, silk 3, diameter: 0.5 (0.45..0.55) mm
cords, silk 3, breaking: 37.5 (22.5..52.5) N
cords, silk 4, diameter: 0.6 (0.55..0.65) mm
cords, silk 4, breaking: 54 (32.4..75.6) N
cords, silk 5, diameter: 0.65 (0.6..0.7) mm
cords, silk 5, breaking: 63.4 (38.04..88.76) N
cords, silk 6, diameter: 0.7 (0.65..0.75) mm
cords, silk 6, breaking: 73.5 (44.1..102.9) N
cords, silk 7, diameter: 0.75 (0.7..0.8) mm
cords, silk 7, breaking: 84.4 (50.64..118.16) N
cords, silk 8, diameter: 0.8 (0.75..0.85) mm
cords, silk 8, breaking: 96 (57.6..134.4) N
cords, silk 10, diameter: 0.9 (0.85..0.95) mm
cords, silk 10, breaking: 121.5 (72.9..170.1) N
cords, silk 12, diameter: 0.98 (0.93..1.03) mm
cords, silk 12, breaking: 144.1 (86.46..201.74) N
cords, silk 14, diameter: 1.02 (0.97..1.07) mm
cords, silk 14, breaking: 156.1 (93.66..218.54) N
cords, silk 16, diameter: 1.05 mm
cords, silk 16, breaking: 165.4 (99.24..231.56) N
cords, twisted nylon Tex 135, diameter: 0.4 mm
cords, twisted nylon Tex 135, tex: 135 tex
cords, twisted nylon Tex 210, diameter: 0.5 mm
cords, twisted nylon Tex 210, tex: 210 tex
cords, twisted nylon Tex 400, diameter: 0.9 mm
cords, twisted nylon Tex 400, tex: 400 tex
crimps, tube 1 x 1, inside: 0.75 (0.7..0.8) mm
crimps, tube 2 x 2, inside: 1.3 mm
crimps, tube 2 x 2 heavy wall, inside: 1 mm
crimps, tube 2 wide x 1 long, inside: 1.3 mm
crimps, tube 3 x 3, inside: 2.15 (2..2.3) mm
crimps, round 2 mm, inside: 1 mm
crimps, round 2.5 mm, inside: 1.3 mm
crimps, round 3 mm, inside: 1.6 mm
crimps, two wires in any crimp, room: 0.05 mm
crimps, two wires in any crimp, loosest: 3.5
crimps, closed by hand, held: 0.65 (0.4..0.9)
ear_wires, ear wire, gauge: 20 (20..22) AWG
ear_wires, ear wire, wire: 0.81 (0.64..0.81) mm
ear_wires, ear wire, wire_usual: 0.75 (0.6..0.9) mm
ear_wires, ear wire, wire_most: 1.02 mm
ear_wires, post, wire: 0.8 (0.8..1) mm
ear_wires, flat-back post, length: 7.15 (6.4..7.9) mm
ear_wires, friction post, length: 10.75 (10..11.5) mm
earring_weights, felt, mass: 5 g
earring_weights, light, mass: 8 g
earring_weights, heavy, mass: 10 g
earring_weights, too heavy, mass: 15 g
earring_weights, printed: touchy, and clip backs, mass: 9.35 (7.8..10.9) g
earring_weights, printed: touchy, and clip backs, clip: 15.6 g
earring_weights, printed: by classes, feather: 2.5 (1..4) g
earring_weights, printed: by classes, light: 6 (4..8) g
earring_weights, printed: by classes, medium: 9 (8..10) g
earring_weights, printed: a maker's limit, mass: 10 g
earring_weights, printed: a maker's limit, stud: 1.75 (1..2.5) g
earring_weights, printed: a maker's limit, medium: 4.75 (3.5..6) g
earring_weights, printed: range of advice, mass: 7.5 (5..10) g
earring_weights, printed: designers, mass: 14.2 g
earring_weights, printed: wearers, mass: 4 g
elastics, elastic 0.5 mm, diameter: 0.5 mm
elastics, elastic 0.5 mm, hole_least: 1 mm
elastics, elastic 0.7 mm, diameter: 0.7 mm
elastics, elastic 0.7 mm, hole_least: 1.4 mm
elastics, elastic 1 mm, diameter: 1 mm
elastics, elastic 1 mm, hole_least: 2 mm
jump_rings, clasp to fine chain, inside: 3.5 (3..4) mm
jump_rings, clasp to fine chain, wire: 0.9 (0.8..1) mm
jump_rings, charm to bracelet, inside: 5 (4..6) mm
jump_rings, charm to bracelet, wire: 0.9 (0.8..1) mm
jump_rings, pendant, inside: 6 (5..7) mm
jump_rings, pendant, wire: 1.1 (1..1.2) mm
jump_rings, heavy pendant, inside: 7 (6..8) mm
jump_rings, heavy pendant, wire: 1.4 (1.2..1.6) mm
jump_rings, most common, outside: 4 (4..5) mm
jump_rings, most common, gauge: 20 (18..22) AWG
jump_rings, stays closed unsoldered, gauge: 20 (18..21) AWG
jump_rings, stays closed unsoldered, wire: 0.8118 (0.7229..1.0237) mm
jump_rings, 4 mm outside, 20 AWG, inside: 2.4 (2.2..2.6) mm
jump_rings, 4 mm outside, 22 AWG, inside: 2.7 (2.5..2.9) mm
jump_rings, 5 mm outside, 18 AWG, inside: 3 (2.8..3.2) mm
jump_rings, 5 mm outside, 20 AWG, inside: 3.4 (3.2..3.6) mm
jump_rings, 6 mm outside, 18 AWG, inside: 4 (3.8..4.2) mm
jump_rings, 6 mm outside, 16 AWG, inside: 3.4 (3.2..3.6) mm
jump_rings, through a loop, room: 0.1 mm
jump_rings, two through a loop, room: 0.2 mm
knots, overhand, left: 0.45 (0.35..0.45)
knots, overhand, across: 2.6 (2.15..3)
knots, double overhand, across: 3.5 (3..4)
knots, reef, left: 0.45
knots, sheepshank, left: 0.45
knots, figure eight, left: 0.48
knots, bowline, left: 0.6
knots, anchor bend, left: 0.7
knots, timber hitch, left: 0.7
knots, clove hitch, left: 0.75
knots, two half hitches, left: 0.75
knots, clinch in monofilament, left: 0.8
knots, short splice, left: 0.9
knots, eye splice, left: 0.95
knots, any other knot, left: 0.5
knots, knotted suture, left: 0.61
materials, glass, density: 2.52 (2.49..2.53) g/cm3
materials, glass, tensile: 41 MPa
materials, glass, modulus: 73 (71..74) GPa
materials, lead crystal, density: 3.1 (3.02..5.9) g/cm3
materials, lead crystal, modulus: 60 GPa
materials, freshwater pearl, density: 2.68 g/cm3
materials, pearl, density: 2.71 (2.6..2.8) g/cm3
materials, aragonite, density: 2.93 g/cm3
materials, quartz, density: 2.65 (2.63..2.68) g/cm3
materials, quartz, modulus: 83.5 (70..97) GPa
materials, turquoise, density: 2.725 (2.6..2.85) g/cm3
materials, coral, density: 2.65 (2.6..2.7) g/cm3
materials, jet, density: 1.31 (1.3..1.32) g/cm3
materials, amber, density: 1.073 (1.05..1.096) g/cm3
materials, boxwood, density: 1.055 (0.95..1.16) g/cm3
materials, ebony, density: 1.22 (1.11..1.33) g/cm3
materials, East Indian rosewood, density: 0.9 g/cm3
materials, beech, density: 0.8 (0.7..0.9) g/cm3
materials, maple, density: 0.685 (0.62..0.75) g/cm3
materials, bamboo, density: 0.355 (0.31..0.4) g/cm3
materials, acrylic, density: 1.19 (1.15..1.19) g/cm3
materials, acrylic, tensile: 60.7 MPa
materials, acrylic, modulus: 3.24 GPa
metals, sterling silver, density: 10.36 (10.34..10.38) g/cm3
metals, sterling silver, yield_annealed: 124 MPa
metals, sterling silver, flow_half_hard: 310.7 MPa
metals, sterling silver, flow_hard: 402.2 MPa
metals, sterling silver, flow_spring: 457.8 MPa
metals, sterling silver, tensile_annealed: 283 (207..283) MPa
metals, sterling silver, tensile_half_hard: 386 MPa
metals, sterling silver, tensile_hard: 496 MPa
metals, sterling silver, tensile_spring: 552 MPa
metals, sterling silver, hardness_annealed: 71 HV
metals, sterling silver, hardness_half_hard: 95 HV
metals, sterling silver, hardness_hard: 123 HV
metals, sterling silver, hardness_spring: 140 HV
metals, sterling silver, modulus: 75 (71..83) GPa
metals, fine silver, density: 10.49 (10.47..10.51) g/cm3
metals, fine silver, yield_annealed: 54 MPa
metals, fine silver, tensile_annealed: 170 MPa
metals, fine silver, tensile_hard: 296 MPa
metals, fine silver, modulus: 79.5 (76..83) GPa
metals, copper, density: 8.915 (8.89..8.94) g/cm3
metals, copper, yield_annealed: 54 MPa
metals, copper, yield_half_hard: 176 MPa
metals, copper, yield_hard: 270 MPa
metals, copper, tensile_annealed: 224 MPa
metals, copper, tensile_half_hard: 263 MPa
metals, copper, tensile_hard: 314 MPa
metals, copper, modulus: 117 GPa
metals, brass, density: 8.53 (8.5..8.56) g/cm3
metals, brass, yield_annealed: 134 (110..158) MPa
metals, brass, yield_half_hard: 448 (350..448) MPa
metals, brass, yield_hard: 482 (482..495) MPa
metals, brass, yield_spring: 482 (482..595) MPa
metals, brass, tensile_annealed: 351 (310..420) MPa
metals, brass, tensile_half_hard: 597.5 (395..650) MPa
metals, brass, tensile_spring: 830 MPa
metals, brass, modulus: 110 (110..112) GPa
metals, red brass, density: 8.75 (8.73..8.77) g/cm3
metals, red brass, yield_annealed: 83 MPa
metals, red brass, yield_quarter_hard: 280 MPa
metals, red brass, yield_half_hard: 340 MPa
metals, red brass, yield_hard: 393 MPa
metals, red brass, tensile_annealed: 280 MPa
metals, red brass, tensile_quarter_hard: 340 MPa
metals, red brass, tensile_hard: 483 MPa
metals, red brass, modulus: 117 (110..117) GPa
metals, bronze, density: 8.8 (8.78..8.82) g/cm3
metals, bronze, yield_annealed: 85 (69..85) MPa
metals, bronze, yield_half_hard: 325 MPa
metals, bronze, yield_hard: 400 MPa
metals, bronze, yield_spring: 470 MPa
metals, bronze, tensile_annealed: 270 (250..290) MPa
metals, bronze, tensile_half_hard: 360 (325..395) MPa
metals, bronze, tensile_spring: 502.5 (475..530) MPa
metals, bronze, modulus: 117 GPa
metals, phosphor bronze, density: 8.86 (8.84..8.88) g/cm3
metals, phosphor bronze, yield_annealed: 165 MPa
metals, phosphor bronze, yield_half_hard: 395 (372.3..395) MPa
metals, phosphor bronze, yield_hard: 560 (551.6..560) MPa
metals, phosphor bronze, yield_spring: 690 (682.6..690) MPa
metals, phosphor bronze, tensile_annealed: 350 (315..385) MPa
metals, phosphor bronze, tensile_half_hard: 452.5 (400..505) MPa
metals, phosphor bronze, tensile_spring: 707.5 (655..760) MPa
metals, phosphor bronze, modulus: 110 GPa
metals, stainless steel, density: 7.99 (7.96..8.02) g/cm3
metals, stainless steel, yield_annealed: 190 (170..190) MPa
metals, stainless steel, yield_hard: 430 MPa
metals, stainless steel, tensile_annealed: 700 (485..800) MPa
metals, stainless steel, tensile_spring: 1750 (1300..2200) MPa
metals, stainless steel, modulus: 193 (187.5..193) GPa
metals, titanium, density: 4.51 (4.5..4.52) g/cm3
metals, titanium, yield_annealed: 340 (275..340) MPa
metals, titanium, tensile_annealed: 430 (345..430) MPa
metals, titanium, modulus: 105 (102..105) GPa
metals, niobium, density: 8.57 (8.56..8.58) g/cm3
metals, niobium, yield_annealed: 105 (82..207) MPa
metals, niobium, tensile_annealed: 195 MPa
metals, niobium, tensile_hard: 585 MPa
metals, niobium, modulus: 103 GPa
metals, aluminium, density: 2.68 (2.66..2.7) g/cm3
metals, aluminium, yield_annealed: 89.6 MPa
metals, aluminium, yield_quarter_hard: 193 MPa
metals, aluminium, tensile_annealed: 193 MPa
metals, aluminium, tensile_quarter_hard: 228 MPa
metals, aluminium, modulus: 70.3 GPa
metals, aluminium 1100, density: 2.71 g/cm3
metals, aluminium 1100, yield_annealed: 34 MPa
metals, aluminium 1100, yield_half_hard: 117 MPa
metals, aluminium 1100, tensile_annealed: 90 MPa
metals, aluminium 1100, tensile_half_hard: 124 MPa
metals, aluminium 1100, modulus: 69 GPa
metals, pewter, density: 7.3 (7.2..7.4) g/cm3
metals, pewter, tensile_hard: 52 (52..68) MPa
metals, pewter, modulus: 52 GPa
metals, 14k gold, density: 13.07 (12.37..13.77) g/cm3
metals, 14k gold, modulus: 79 GPa
metals, plated brass, density: 8.5 (8.3..8.7) g/cm3
metals, plated steel, density: 7.85 (7.65..8.05) g/cm3
metals, plated pewter, density: 7.3 (7.1..7.5) g/cm3
metals, gold-filled brass, density: 8.7 (8.4..9) g/cm3
necklace_lengths, collar, least: 304.8 mm
necklace_lengths, collar, nominal: 330.2 mm
necklace_lengths, collar, most: 355.6 mm
necklace_lengths, collar, seen_least: 304.8 mm
necklace_lengths, collar, seen_most: 355.6 mm
necklace_lengths, choker, least: 355.6 mm
necklace_lengths, choker, nominal: 381 mm
necklace_lengths, choker, most: 406.4 mm
necklace_lengths, choker, seen_least: 355.6 mm
necklace_lengths, choker, seen_most: 406.4 mm
necklace_lengths, princess, least: 431.8 mm
necklace_lengths, princess, nominal: 457.2 mm
necklace_lengths, princess, most: 482.6 mm
necklace_lengths, princess, seen_least: 406.4 mm
necklace_lengths, princess, seen_most: 482.6 mm
necklace_lengths, matinee, least: 508 mm
necklace_lengths, matinee, nominal: 558.8 mm
necklace_lengths, matinee, most: 609.6 mm
necklace_lengths, matinee, seen_least: 508 mm
necklace_lengths, matinee, seen_most: 609.6 mm
necklace_lengths, opera, least: 660.4 mm
necklace_lengths, opera, nominal: 762 mm
necklace_lengths, opera, most: 914.4 mm
necklace_lengths, opera, seen_least: 609.6 mm
necklace_lengths, opera, seen_most: 965.2 mm
necklace_lengths, rope, least: 914.4 mm
necklace_lengths, rope, nominal: 1143 mm
necklace_lengths, rope, seen_least: 762 mm
needle_choice, round 15/0, size: 12 (12..15)
needle_choice, round 11/0, size: 10 (10..11)
needle_choice, cylinder 11/0, size: 11 (11..12)
needles, beading 10, wire: 0.46 (0.42..0.5) mm
needles, beading 10, eye: 0.5 mm
needles, beading 10, length: 50.8 mm
needles, beading 11, wire: 0.41 (0.37..0.45) mm
needles, beading 11, eye: 0.45 mm
needles, beading 11, length: 50.8 mm
needles, beading 12, wire: 0.38 (0.34..0.42) mm
needles, beading 12, eye: 0.42 mm
needles, beading 12, length: 50.8 mm
needles, beading 13, wire: 0.33 (0.29..0.37) mm
needles, beading 13, eye: 0.37 mm
needles, beading 13, length: 50.8 mm
needles, beading 15, wire: 0.26 (0.23..0.29) mm
needles, beading 15, eye: 0.3 mm
needles, beading 15, length: 50.8 mm
needles, sharps 10, wire: 0.51 (0.47..0.55) mm
needles, sharps 10, eye: 0.55 mm
needles, sharps 12, wire: 0.43 (0.39..0.47) mm
needles, sharps 12, eye: 0.47 mm
needles, long stringing, wire: 0.5 (0.45..0.55) mm
needles, long stringing, length: 110 mm
needles, big-eye, wire: 0.425 (0.35..0.5) mm
needles, twisted fine, wire: 0.25 (0.2..0.3) mm
needles, twisted fine, eye: 0.5 mm
needles, twisted medium, wire: 0.36 (0.31..0.41) mm
needles, twisted medium, eye: 0.72 mm
needles, twisted heavy, wire: 0.5 (0.45..0.55) mm
needles, twisted heavy, eye: 1 mm
other_beads, bugle 1, length: 3 mm
other_beads, bugle 2, outside: 1.9 (1.8..2) mm
other_beads, bugle 2, length: 6 (5.5..6.5) mm
other_beads, bugle 2, hole: 0.7 (0.6..0.8) mm
other_beads, bugle 3, outside: 1.9 (1.8..2) mm
other_beads, bugle 3, length: 9 (8.5..9.5) mm
other_beads, bugle 3, hole: 0.7 (0.6..0.8) mm
other_beads, bugle 5, outside: 1.9 (1.8..2) mm
other_beads, bugle 5, length: 12 (11.5..12.5) mm
other_beads, bugle 5, hole: 0.7 (0.6..0.8) mm
other_beads, glass cube 3 mm, outside: 3 (2.8..3.2) mm
other_beads, glass cube 3 mm, hole: 1 (0.8..1.2) mm
other_beads, glass cube 3 mm, per_gram: 22 (17.6..26.4)
other_beads, glass cube 4 mm, outside: 4 (3.8..4.2) mm
other_beads, glass cube 4 mm, hole: 1.3 (1..1.6) mm
other_beads, glass cube 4 mm, per_gram: 10 (8..12)
other_beads, two-hole tile, length: 5 (4.9..5.1) mm
other_beads, two-hole tile, width: 5 (4.9..5.1) mm
other_beads, two-hole tile, thickness: 1.9 (1.8..2) mm
other_beads, two-hole tile, hole: 0.8 (0.7..0.9) mm
other_beads, two-hole tile, hole_spacing: 2.4 (2.3..2.5) mm
other_beads, crystal bicone 3 mm, hole: 0.8 (0.7..0.9) mm
other_beads, crystal bicone 4 mm, hole: 0.9 (0.8..1) mm
other_beads, crystal bicone 6 mm, hole: 1.1 (0.95..1.25) mm
other_beads, fire-polished round 4 mm, hole: 0.9 (0.75..1.05) mm
other_beads, pressed round 4 mm, hole: 0.9 (0.75..1.05) mm
other_beads, round stone 4 mm, outside: 4 (3.5..4.5) mm
other_beads, round stone 4 mm, hole: 0.8 (0.6..1) mm
other_beads, round stone 6 mm, outside: 6 (5.5..6.5) mm
other_beads, round stone 6 mm, hole: 0.8 (0.6..1) mm
other_beads, round stone 8 mm, outside: 8 (7.5..8.5) mm
other_beads, round stone 8 mm, hole: 0.95 (0.8..1.1) mm
other_beads, round stone 10 mm, outside: 10 (9.5..10.5) mm
other_beads, round stone 10 mm, hole: 0.95 (0.8..1.1) mm
other_beads, freshwater pearl 4 mm, hole: 0.6 (0.5..0.7) mm
other_beads, large-hole bead, outside: 13 (10..16) mm
other_beads, large-hole bead, hole: 4 (3..5) mm
other_beads, acrylic bead, hole: 2.59 (1.29..4) mm
stitch_facts, braid on 8 warps, finished length per strung length of a warp, figure: 2
stitch_facts, braid on 8 warps of small pressed beads, beads per warp and inch, figure: 4.7
stitch_facts, braided bracelet, beads on a cord, figure: 37.5 (35..40)
stitch_facts, plain braid of 8 cords, cord per finished length, figure: 3
stitch_facts, cord in a beaded braid, part of the hole, figure: 0.5833 (0.5..0.6667)
stitch_facts, crocheted rope, strung length per finished length and bead around, figure: 1
stitch_facts, crocheted rope, beads to string beyond that, figure: 100 mm
stitch_facts, crocheted rope, 6 around, size like 11/0, beads per inch, figure: 100
stitch_facts, crocheted rope of 11/0, beads per inch, figure: 48
stitch_facts, crocheted rope, strung for one tube, figure: 1828.8 mm
stitch_facts, spiral rope of 11/0, stitches per inch, figure: 16
stitch_facts, spiral rope, passes through a core bead, figure: 4
stitch_facts, spiral rope, passes in a close variant, figure: 5
stitch_facts, herringbone rope, beads to start with, figure: 9 (6..12)
stitch_facts, twisted herringbone bracelet of 8 in, 11/0 triangles, figure: 25 g
stitch_facts, twisted herringbone necklace of 18 in, 11/0 triangles, figure: 60 g
stitch_facts, herringbone necklace of rope length, 11/0, figure: 45 g
stitch_facts, peyote tube of 4 6/0 and 8 8/0 in the ring, inside, figure: 5.4 mm
stitch_facts, odd peyote tube, beads of 6/0 around, figure: 7
stitch_facts, peyote hoop of 50 10/0 cylinders and 11/0, across, figure: 32 mm
stitch_facts, peyote hoop of 50 11/0 and 15/0, across, figure: 22 mm
stitch_facts, square stitch bracelet of 8 1/2 in, 3 mm cubes, figure: 12 g
stitch_facts, square stitch bracelet, 3 mm cubes in a gram, figure: 16.7
stitch_facts, brick stitch row of 11 beads of 10/0 or 11/0, figure: 25 mm
stitch_facts, loom, threads to the inch for 11/0 cylinders, figure: 18
stitch_facts, loom, warps for 9 beads across, figure: 10
stitch_facts, cubic right-angle weave, beads for each cube, figure: 8
stitch_facts, crochet hook for 11/0, figure: 0.75 mm
stitch_facts, crochet hook for 8/0, figure: 1.125 (1..1.25) mm
stitch_facts, working length of thread, figure: 1600 (1400..1800) mm
stitch_facts, longest working length of thread, figure: 2743.2 mm
stitch_facts, tail, figure: 175 (150..200) mm
stitch_facts, tail that sews a clasp, figure: 279.4 (254..304.8) mm
stitch_facts, shortest tail, figure: 101.6 mm
stitch_facts, spare Japanese beads, figure: 10 %
stitch_facts, spare Czech beads, figure: 15 %
stitch_facts, spare cylinder beads, figure: 5 %
stitch_facts, passes of a smallest bead, figure: 5
stitch_facts, thread packed in a hole, per thread, figure: 1.3
stitch_facts, strength left at a knot or a sharp bead, figure: 0.5
stitch_facts, beading wire, passes through an end bead, figure: 2
stitch_facts, beading wire beyond a strand of 16 in, figure: 254 mm
thread_letters, A, number: 1
thread_letters, B, number: 1.5
thread_letters, C, number: 2
thread_letters, D, number: 3
thread_letters, E, number: 4
thread_letters, F, number: 5
thread_letters, FF, number: 8
threads, nylon OO, diameter: 0.1 (0.07..0.13) mm
threads, nylon OO, breaking: 6.67 N
threads, nylon O, diameter: 0.13 (0.1..0.16) mm
threads, nylon O, breaking: 8.9 N
threads, nylon A, diameter: 0.16 (0.13..0.19) mm
threads, nylon A, breaking: 13.34 N
threads, nylon B, diameter: 0.2 (0.17..0.23) mm
threads, nylon B, breaking: 17.79 N
threads, nylon B, suits: 11 /0
threads, nylon D, diameter: 0.28 (0.24..0.32) mm
threads, nylon D, breaking: 26.69 N
threads, nylon D, passes: 3
threads, nylon E, diameter: 0.33 (0.29..0.37) mm
threads, nylon E, breaking: 35.59 N
threads, nylon F, diameter: 0.37 (0.32..0.42) mm
threads, nylon F, breaking: 48.93 N
threads, nylon FF, diameter: 0.43 (0.38..0.48) mm
threads, nylon FF, breaking: 71.17 N
threads, fused 4 lb, diameter: 0.13 (0.1..0.16) mm
threads, fused 4 lb, breaking: 17.79 N
threads, fused 6 lb, diameter: 0.15 (0.12..0.18) mm
threads, fused 6 lb, breaking: 26.69 N
threads, fused 6 lb, suits: 11 (8..15) /0
threads, fused 8 lb, diameter: 0.18 (0.15..0.21) mm
threads, fused 8 lb, breaking: 35.59 N
threads, fused 8 lb, suits: 8 (6..11) /0
threads, fused 10 lb, diameter: 0.2 (0.17..0.23) mm
threads, fused 10 lb, breaking: 44.48 N
threads, fused 10 lb, suits: 8 (6..8) /0
threads, braided 8 lb, diameter: 0.13 (0.11..0.15) mm
threads, braided 8 lb, breaking: 35.59 N
threads, braided 10 lb, diameter: 0.15 (0.13..0.17) mm
threads, braided 10 lb, breaking: 44.48 N
threads, braided 15 lb, diameter: 0.18 (0.16..0.2) mm
threads, braided 15 lb, breaking: 66.72 N
threads, braided 20 lb, diameter: 0.22 (0.2..0.24) mm
threads, braided 20 lb, breaking: 88.96 N
threads, monofilament 4 lb, diameter: 0.2 (0.18..0.22) mm
threads, monofilament 4 lb, breaking: 17.79 N
threads, monofilament 6 lb, diameter: 0.23 (0.21..0.25) mm
threads, monofilament 6 lb, breaking: 26.69 N
threads, monofilament 8 lb, diameter: 0.26 (0.24..0.28) mm
threads, monofilament 8 lb, breaking: 35.59 N
threads, monofilament 10 lb, diameter: 0.29 (0.26..0.32) mm
threads, monofilament 10 lb, breaking: 44.48 N
threads, monofilament 12 lb, diameter: 0.33 (0.31..0.35) mm
threads, monofilament 12 lb, breaking: 53.38 N
threads, monofilament 15 lb, diameter: 0.39 (0.37..0.41) mm
threads, monofilament 15 lb, breaking: 66.72 N
threads, monofilament 20 lb, diameter: 0.43 (0.4..0.46) mm
threads, monofilament 20 lb, breaking: 88.96 N
threads, bonded nylon 46, diameter: 0.2 mm
threads, bonded nylon 46, breaking: 31.14 N
threads, bonded nylon 46, tex: 60 tex
threads, bonded nylon 69, diameter: 0.29 mm
threads, bonded nylon 69, breaking: 48.93 N
threads, bonded nylon 69, tex: 90 (70..90) tex
wire_gauges, 10 AWG, diameter: 2.5882 mm
wire_gauges, 10 AWG, area: 5.2612 mm2
wire_gauges, 11 AWG, diameter: 2.3048 mm
wire_gauges, 11 AWG, area: 4.1723 mm2
wire_gauges, 12 AWG, diameter: 2.0525 mm
wire_gauges, 12 AWG, area: 3.3088 mm2
wire_gauges, 13 AWG, diameter: 1.8278 mm
wire_gauges, 13 AWG, area: 2.624 mm2
wire_gauges, 14 AWG, diameter: 1.6277 mm
wire_gauges, 14 AWG, area: 2.0809 mm2
wire_gauges, 14 AWG, printed: 1.629 (1.628..1.63) mm
wire_gauges, 15 AWG, diameter: 1.4495 mm
wire_gauges, 15 AWG, area: 1.6502 mm2
wire_gauges, 16 AWG, diameter: 1.2908 mm
wire_gauges, 16 AWG, area: 1.3087 mm2
wire_gauges, 16 AWG, printed: 1.295 (1.29..1.3) mm
wire_gauges, 17 AWG, diameter: 1.1495 mm
wire_gauges, 17 AWG, area: 1.0378 mm2
wire_gauges, 18 AWG, diameter: 1.0237 mm
wire_gauges, 18 AWG, area: 0.823 mm2
wire_gauges, 18 AWG, printed: 1.02 mm
wire_gauges, 19 AWG, diameter: 0.9116 mm
wire_gauges, 19 AWG, area: 0.6527 mm2
wire_gauges, 19 AWG, printed: 0.913 (0.912..0.914) mm
wire_gauges, 20 AWG, diameter: 0.8118 mm
wire_gauges, 20 AWG, area: 0.5176 mm2
wire_gauges, 20 AWG, printed: 0.81 mm
wire_gauges, 21 AWG, diameter: 0.7229 mm
wire_gauges, 21 AWG, area: 0.4105 mm2
wire_gauges, 21 AWG, printed: 0.7305 (0.724..0.737) mm
wire_gauges, 22 AWG, diameter: 0.6438 mm
wire_gauges, 22 AWG, area: 0.3255 mm2
wire_gauges, 22 AWG, printed: 0.639 (0.635..0.643) mm
wire_gauges, 23 AWG, diameter: 0.5733 mm
wire_gauges, 23 AWG, area: 0.2582 mm2
wire_gauges, 24 AWG, diameter: 0.5106 mm
wire_gauges, 24 AWG, area: 0.2047 mm2
wire_gauges, 24 AWG, printed: 0.5095 (0.508..0.511) mm
wire_gauges, 25 AWG, diameter: 0.4547 mm
wire_gauges, 25 AWG, area: 0.1624 mm2
wire_gauges, 26 AWG, diameter: 0.4049 mm
wire_gauges, 26 AWG, area: 0.1288 mm2
wire_gauges, 26 AWG, printed: 0.405 (0.404..0.406) mm
wire_gauges, 27 AWG, diameter: 0.3606 mm
wire_gauges, 27 AWG, area: 0.1021 mm2
wire_gauges, 28 AWG, diameter: 0.3211 mm
wire_gauges, 28 AWG, area: 0.081 mm2
wire_gauges, 29 AWG, diameter: 0.2859 mm
wire_gauges, 29 AWG, area: 0.0642 mm2
wire_gauges, 30 AWG, diameter: 0.2546 mm
wire_gauges, 30 AWG, area: 0.0509 mm2
wire_gauges, 31 AWG, diameter: 0.2268 mm
wire_gauges, 31 AWG, area: 0.0404 mm2
wire_gauges, 32 AWG, diameter: 0.2019 mm
wire_gauges, 32 AWG, area: 0.032 mm2
wire_gauges, 10 SWG, diameter: 3.251 mm
wire_gauges, 11 SWG, diameter: 2.946 mm
wire_gauges, 12 SWG, diameter: 2.642 mm
wire_gauges, 13 SWG, diameter: 2.337 mm
wire_gauges, 14 SWG, diameter: 2.032 mm
wire_gauges, 15 SWG, diameter: 1.829 mm
wire_gauges, 16 SWG, diameter: 1.626 mm
wire_gauges, 17 SWG, diameter: 1.422 mm
wire_gauges, 18 SWG, diameter: 1.219 mm
wire_gauges, 18 SWG, printed: 1.22 mm
wire_gauges, 19 SWG, diameter: 1.016 mm
wire_gauges, 20 SWG, diameter: 0.914 mm
wire_gauges, 21 SWG, diameter: 0.813 mm
wire_gauges, 22 SWG, diameter: 0.711 mm
wire_gauges, 23 SWG, diameter: 0.61 mm
wire_gauges, 24 SWG, diameter: 0.559 mm
wire_gauges, 25 SWG, diameter: 0.508 mm
wire_gauges, 26 SWG, diameter: 0.457 mm
wire_gauges, 27 SWG, diameter: 0.417 mm
wire_gauges, 28 SWG, diameter: 0.376 mm
wire_gauges, 29 SWG, diameter: 0.345 mm
wire_gauges, 30 SWG, diameter: 0.315 mm
"""


def test_no_figure_changes_unseen() -> None:
    found = []
    for name in NAMES:
        for row, column, cell in cells(name):
            text = f"{name}, {row}, {column}: {cell.value:.10g}"
            if (cell.low, cell.high) != (cell.value, cell.value):
                text += f" ({cell.low:.10g}..{cell.high:.10g})"
            found.append(f"{text} {cell.unit}".rstrip())
    assert found == FIGURES.strip().splitlines()
