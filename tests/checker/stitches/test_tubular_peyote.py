"""Tubular peyote: the formulas against a built ring, and the quantities of a part."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.stitches import tubular_peyote as peyote

sizes = st.floats(0.8, 4.5)


@given(sizes, st.integers(3, 40).map(lambda half: 2 * half), sizes)
def test_outside_and_inside_by_building_the_polygon(pitch: float, ring: int, bead: float) -> None:
    """Lay the columns' middles on the sides of a regular polygon and measure across flats."""
    circumradius = pitch / (2 * math.sin(math.pi / ring))
    corners = [
        (
            circumradius * math.cos(2 * math.pi * k / ring),
            circumradius * math.sin(2 * math.pi * k / ring),
        )
        for k in range(ring)
    ]
    assert math.dist(corners[0], corners[1]) == pytest.approx(pitch)
    middle = ((corners[0][0] + corners[1][0]) / 2, (corners[0][1] + corners[1][1]) / 2)
    across = 2 * math.hypot(*middle)
    assert peyote.outside(pitch, ring, bead) == pytest.approx(across + bead)
    assert peyote.inside(pitch, ring, bead) == pytest.approx(max(0.0, across - bead))


def test_below_six_columns_there_is_no_bore() -> None:
    assert peyote.inside(10.0, 4, 1.0) == 0.0
    assert peyote.inside(10.0, 6, 1.0) > 0.0


def test_the_printed_hoop_of_50() -> None:
    """A ring of 50 in 11/0 and 15/0 beads makes a hoop of about 22 mm.

    `Boot camp: peyote hoops`, copy seen. The columns are 15/0 wide; the 11/0 stand outermost.
    """
    assert peyote.outside(peyote.pitch(1.25, 1.05), 50, 2.1) == pytest.approx(22, rel=0.06)


def test_many_columns_tend_to_the_round_form() -> None:
    """For many columns the polygon is a circle: outside = N x pitch / pi + d."""
    assert peyote.outside(1.5, 400, 2.1) == pytest.approx(400 * 1.5 / math.pi + 2.1, rel=1e-4)


@given(st.integers(3, 20), st.integers(1, 60))
def test_beads_by_weaving_round_by_round(half: int, rounds: int) -> None:
    """Weave: the ring is two rounds, each later round puts one bead on every other column."""
    ring = 2 * half
    woven = ring if rounds >= 2 else half
    for _ in range(max(0, rounds - 2)):
        woven += len(range(0, ring, 2))
    assert rounds * ring / 2 == woven


PLAN = """\
plan: 1
title: Rope
piece: necklace
beads:
  seed: {type: round, size: 8/0, make: Japanese}
parts:
  rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: seed, length: 30 cm}
run: [rope]
"""


def quantities(installed: Host, old: str = "", new: str = "") -> dict[str, float]:
    result = Checker(installed, quantities=True).check_text(PLAN.replace(old, new) if old else PLAN)
    assert result.readable and not result.count("error")
    return {name: value.middle for name, value in result.quantities.items()}


def test_quantities_of_a_rope(installed: Host) -> None:
    found = quantities(installed)
    assert {name: round(value, 2) for name, value in found.items()} == {
        "rope.outside": 9.79,
        "rope.inside": 3.79,
        "rope.length": 300.0,
        "rope.rise": 1.5,
        "rope.rounds": 200.0,
        "rope.beads": 1000.0,
        "rope.mass": 28.57,
        "rope.thread": 1000 * (2 * 2.1 + 0.49 * 3.0) + 200 * (2.1 + 0.25 * 3.0),
        "rope.along": 300.0,
        "piece.length": 300.0,
        "piece.inside": 269.26,
        "piece.mass": 28.57,
    }


def test_a_pattern_may_count_beads_a_round(installed: Host) -> None:
    assert quantities(installed, "around: 10", "each_round: 5") == quantities(installed)


def test_rounds_give_the_length_they_came_from(installed: Host) -> None:
    assert quantities(installed, "length: 30 cm", "rounds: 200")["rope.length"] == pytest.approx(
        300
    )


def test_a_measured_swatch_beats_the_model(installed: Host) -> None:
    found = quantities(installed, "length: 30 cm", "length: 30 cm, measured: {outside: 9.5 mm}")
    assert found["rope.outside"] == 9.5
