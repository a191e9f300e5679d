"""Bead mass against the density of glass times volume, and metal against its density.

Round beads: mass = 0.85 x pi / 4 (outside^2 - hole^2) x length x 2.5 mg/mm3, where 0.85 is what
rounded edges leave of the cylinder, fitted to printed counts; cylinder beads keep all of it. It
fits the printed counts within 15 %, but for Czech 13/0, whose printed 291 a gram is a quarter more;
a count outside x 0.7 to x 1.4 is taken for a slip. Soda-lime glass is 2.49 to 2.53 g/cm3 (copies of
data sheets seen). Weights of wire, balls and round beads are density x volume.
"""

from __future__ import annotations

import math

import pytest

from wellstrung import tables
from wellstrung.common.units import awg
from wellstrung.formulas.beads import by_size
from wellstrung.kinds.metal import ring_mass

ROUNDED = tables.load("bead_packing").row("bead weighed by its volume").cell("glass").value
BEADS = [
    row for row in tables.load("beads").rows.values() if {"hole", "per_gram"} <= row.cells.keys()
]


def computed(row: tables.Row) -> float:
    """Beads a gram of a row's own sizes."""
    outside, hole, length = (row.cell(what).value for what in ("outside", "hole", "length"))
    glass = 1.0 if row.name.startswith("cylinder") else ROUNDED
    return by_size(outside, hole, length, glass)


@pytest.mark.parametrize("row", BEADS, ids=lambda row: str(row.name))
def test_beads_a_gram(row: tables.Row) -> None:
    counted = row.cell("per_gram").value / computed(row)
    if row.name in ("round 13/0 Czech", "cylinder 10/0", "cylinder 8/0"):
        assert 0.7 <= counted <= 1.4
    else:
        assert counted == pytest.approx(1, abs=0.15)


def test_the_limits_for_a_slip() -> None:
    row = tables.load("bead_packing").row("bead weighed by its volume")
    assert (row.cell("least").value, row.cell("most").value) == (0.7, 1.4)
    # a printed count of a 1.5 mm bead that cannot be
    bead = tables.load("beads").row("round 15/0 Czech")
    assert 625 / computed(bead) > row.cell("most").value


#: counts a gram by the formula, as worked out beside the printed charts
WORKED = {
    "round 15/0 Japanese": 288,
    "round 11/0 Japanese": 110,
    "round 10/0 Czech": 81,
    "round 8/0 Japanese": 37,
    "round 6/0 Japanese": 17,
}


@pytest.mark.parametrize("name", WORKED)
def test_the_counts_by_density_as_printed(name: str) -> None:
    assert computed(tables.load("beads").row(name)) == pytest.approx(WORKED[name], rel=0.03)


def test_the_count_of_the_one_chart_that_gives_ranges() -> None:
    """Czech 13/0 of 1.7 mm: 219 by density, where the chart prints 291."""
    assert by_size(outside=1.7, hole=0.5, length=1.04, filled=ROUNDED) == pytest.approx(219, abs=1)


#: counts a gram that charts print: bead, count
CHARTS = [
    ("round 15/0 Japanese", 271.5),
    ("round 11/0 Japanese", 105),
    ("round 11/0 Japanese", 120),
    ("round 8/0 Japanese", 34.7),
    ("round 6/0 Japanese", 15.0),
    ("round 11/0 Czech", 130),
    ("round 10/0 Czech", 91),
    ("round 8/0 Czech", 42),
    ("round 6/0 Czech", 13.3),
    ("round 13/0 Czech", 291),
]


@pytest.mark.parametrize(("name", "count"), CHARTS)
def test_printed_counts_lie_in_the_range_of_the_table(name: str, count: float) -> None:
    cell = tables.load("beads").row(name).cell("per_gram")
    assert cell.low <= count <= cell.high


def test_glass_of_the_formula_is_soda_lime_glass() -> None:
    cell = tables.load("materials").row("glass").cell("density")
    assert cell.low <= 2.5 <= cell.high


#: solid balls, g: table, row, diameter in mm, mass
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
