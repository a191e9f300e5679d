"""The figures of one bead agree with each other: its count a gram, its length, its glass.

Worked out here, not printed. Round beads: mass = 0.85 x pi / 4 (outside^2 - hole^2) x length x 2.5
mg/mm3, where 0.85 is what rounded edges leave of the cylinder, fitted to printed counts; cylinder
beads keep all of it, cubes are cubes less their hole.
"""

from __future__ import annotations

import math

import pytest

from wellstrung import tables
from wellstrung.common.units import awg
from wellstrung.formulas.beads import by_size
from wellstrung.judging.checker import Checker
from wellstrung.kinds.metal import ring_mass

GLASS = 2.5  # g/cm3
PACKED = tables.load("bead_packing").row("bead weighed by its volume")
ROWS = tables.load("beads").rows.values()
WEIGHED = [row for row in ROWS if {"hole", "per_gram"} <= row.cells.keys()]
PLAN = """\
plan: 1
title: One bead
piece: bracelet
beads: {{seed: {{{bead}, hole: {hole} mm}}}}
parts: {{rope: {{kind: strand, stitch: strung, beads: seed, length: 18 cm}}}}
run: [rope]
"""


def computed(row: tables.Row) -> float:
    """Beads a gram of a row's own sizes."""
    outside, hole, length = (row.cell(what).value for what in ("outside", "hole", "length"))
    glass = 1.0 if row.name.startswith("cylinder") else PACKED.cell("glass").value
    return by_size(outside, hole, length, glass)


@pytest.mark.parametrize("row", WEIGHED, ids=lambda row: str(row.name))
def test_the_range_of_a_count_takes_in_the_glass_of_its_sizes(row: tables.Row) -> None:
    cell = row.cell("per_gram")
    assert cell.low <= computed(row) * 1.01 and computed(row) * 0.99 <= cell.high


@pytest.mark.parametrize("row", WEIGHED, ids=lambda row: str(row.name))
def test_no_bead_of_the_table_is_taken_for_a_slip(row: tables.Row, checker: Checker) -> None:
    """A plan that repeats the table's own hole gets no remark of its weight."""
    form, size, *make = row.name.split()
    bead = ", ".join([f"type: {form}, size: {size}", *(f"make: {name}" for name in make)])
    found = checker.check_text(PLAN.format(bead=bead, hole=row.cell("hole").value))
    assert found.readable and "bead-weight" in {check.rule for check in found.held}
    assert "bead-weight" not in {remark.rule for remark in found.remarks}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row.name))
def test_length_and_beads_to_the_inch_are_one_figure(row: tables.Row) -> None:
    assert row.cell("length").value * row.cell("per_inch").value == pytest.approx(25.4, rel=0.012)


@pytest.mark.parametrize("side", [3, 4])
def test_cubes(side: int) -> None:
    row = tables.load("other_beads").row("cube")
    volume = side**3 - math.pi / 4 * row.at("hole", side).value ** 2 * side
    assert row.cell(f"per_gram at {side} mm").value == pytest.approx(
        1000 / (GLASS * volume), rel=0.04
    )


def test_the_limits_for_a_slip() -> None:
    assert (PACKED.cell("least").value, PACKED.cell("most").value) == (0.7, 1.4)
    # a printed count of a 1.5 mm bead that cannot be
    bead = tables.load("beads").row("round 15/0 Czech")
    assert 625 / computed(bead) > PACKED.cell("most").value


@pytest.mark.parametrize("table", ["threads", "cords"])
def test_no_nylon_is_thinner_than_solid_nylon_of_its_mass(table: str) -> None:
    """Solid nylon of 1.14 g/cm3: 35.68 x sqrt(tex / density) micrometres, worked out here."""
    for row in tables.load(table).rows.values():
        if "tex" in row.cells:
            diameter, tex = row.cell("diameter"), row.cell("tex")
            for end, mass in ((diameter.value, tex.value), (diameter.low, tex.low)):
                assert end >= 0.98 * 0.03568 * math.sqrt(mass / 1.14), row.name


#: solid balls, g, by density and volume: table, row, diameter in mm, mass
BALLS = [
    ("materials", "glass", 6, 0.285),
    ("materials", "quartz", 8, 0.710),
    ("metals", "sterling silver", 4, 0.347),
]


@pytest.mark.parametrize(("table", "name", "diameter", "grams"), BALLS)
def test_a_solid_ball(table: str, name: str, diameter: float, grams: float) -> None:
    density = tables.load(table).row(name).cell("density").value
    assert math.pi / 6 * diameter**3 * density / 1000 == pytest.approx(grams, abs=5e-4)


@pytest.mark.parametrize(("metal", "grams"), [("sterling silver", 5.362), ("copper", 4.612)])
def test_a_metre_of_wire_wound_into_one_ring(metal: str, grams: float) -> None:
    """A ring whose middle line is a metre long weighs what a metre of its wire weighs."""
    wire = awg(20)
    inside = 1000 / math.pi - wire
    density = tables.load("metals").row(metal).cell("density").value
    assert ring_mass(inside, wire, density) == pytest.approx(grams, rel=1e-3)
