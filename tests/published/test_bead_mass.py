"""Bead mass against the density of glass times volume, and metal against its density.

Beads: mass = 0.85 x pi / 4 (outside^2 - hole^2) x length x 2.5 mg/mm3, derived; soda-lime glass is
2.5 g/cm3 (copies of data sheets seen). It fits printed charts within 15 %; a count outside x 0.7 to
x 1.4 is taken for a slip. Metal: 1 m of 20 AWG sterling is 5.362 g, of copper 4.612 g.
"""

from __future__ import annotations

import math

import pytest

from wellstrung import tables
from wellstrung.kinds.metal import ring_mass
from wellstrung.units import awg

BEADS = [
    row for row in tables.load("beads").rows.values() if {"hole", "per_gram"} <= row.cells.keys()
]


def by_density(outside: float, hole: float, length: float) -> float:
    """Beads a gram."""
    return 1000 / (0.85 * math.pi / 4 * (outside**2 - hole**2) * length * 2.5)


@pytest.mark.parametrize("row", BEADS, ids=lambda row: str(row.name))
def test_beads_a_gram(row: tables.Row) -> None:
    expected = by_density(*(row.cell(what).value for what in ("outside", "hole", "length")))
    assert 0.7 <= row.cell("per_gram").value / expected <= 1.4


PRINTED = {"15/0": 288, "11/0": 110, "8/0": 37, "6/0": 17}


@pytest.mark.parametrize("size", PRINTED)
def test_the_printed_counts_by_density(size: str) -> None:
    row = tables.load("beads").row(f"round {size} Japanese")
    expected = by_density(*(row.cell(what).value for what in ("outside", "hole", "length")))
    assert expected == pytest.approx(PRINTED[size], rel=0.03)


@pytest.mark.parametrize(("metal", "grams"), [("sterling silver", 5.362), ("copper", 4.612)])
def test_a_metre_of_wire_wound_into_one_ring(metal: str, grams: float) -> None:
    """A ring whose middle line is a metre long weighs what a metre of its wire weighs."""
    wire = awg(20)
    inside = 1000 / math.pi - wire
    density = tables.load("metals").row(metal).cell("density").value
    assert ring_mass(inside, wire, density) == pytest.approx(grams, rel=1e-3)
