"""Braid on 8 warps: beads strung one by one, circles laid across it, and what it refuses."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import checked, quantities, told
from wellstrung import tables
from wellstrung.plugins.host import Host
from wellstrung.stitches import beaded_braid as braid

sizes = st.floats(0.8, 4.5)
ROPE = "kind: braid, stitch: 8-warp beaded braid, beads: seed, length: 30 cm"


@given(st.floats(50, 900), sizes)
def test_beads_strung_one_by_one(length: float, bead: float) -> None:
    """On every warp, beads until half the length is full: one bead more or less at its end."""
    count = 0
    for _ in range(8):
        full = 0.0
        while full < length / 2 - 1e-9:
            full += bead
            count += 1
    found = braid.beads(braid.strung(length), 8, bead)
    assert count - 8 <= found <= count + 1e-6


@given(sizes, st.floats(0.2, 1.5))
def test_outside_of_circles_laid_across(bead: float, cord: float) -> None:
    """Seven cords touch round an eighth; then a cord that crosses; then a bead at either end."""
    ring = cord / 2 / math.sin(math.pi / 7)  # where the middles of the seven lie
    cords = 2 * ring + cord
    assert 2 * ring * math.sin(math.pi / 7) == pytest.approx(cord)
    assert braid.outside(bead, cord) == pytest.approx(bead + cords + cord + bead)
    assert braid.outside(bead, cord, 0.9) < braid.outside(bead, cord) < braid.outside(bead, 1.6)


@pytest.mark.parametrize(
    ("size", "noted", "either_way"), [("11/0", 6.5, 0.7), ("8/0", 8.7, 0.8), ("6/0", 11.5, 1.2)]
)
def test_the_diameters_noted_from_memory(size: str, noted: float, either_way: float) -> None:
    row = tables.load("beads").row(f"round {size} Japanese")
    cord = 0.5833 * row.cell("hole").value
    found = braid.outside(row.cell("outside").value, cord)
    assert noted - either_way <= found <= noted + either_way


def test_quantities(installed: Host) -> None:
    cord = round(0.5833 * 0.8, 6)
    assert quantities(installed, ROPE) == {
        "outside": 6.01,
        "length": 300.0,
        "strung": 150.0,
        "beads": 800.0,
        "mass": 8.4,
        "cord": 900.0,
        "cord_in_all": 7200.0,
        "nub.outside": round(cord * (1 + 1 / math.sin(math.pi / 7)), 2),
        "along": 300.0,
    }


def test_sixteen_warps_carry_twice_the_beads_in_a_ring_of_eight(installed: Host) -> None:
    eight = quantities(installed, ROPE)
    many = quantities(installed, f"{ROPE.replace('8-warp beaded', 'beaded')}, warps: 16")
    for what in ("beads", "mass", "cord_in_all"):
        assert many[what] == 2 * eight[what]
    assert many["strung"] == eight["strung"] and many["cord"] == eight["cord"]
    apart = 2.0 / (2 * math.sin(math.pi / 8))  # the middles of eight beads that touch
    assert many["outside"] == round(2 * apart + 2.0, 2)
    assert many["nub.outside"] > eight["nub.outside"]


def test_a_beaded_braid_of_eight_is_the_one_on_eight_warps(installed: Host) -> None:
    beaded = ROPE.replace("8-warp beaded", "beaded")
    assert quantities(installed, beaded) == quantities(installed, ROPE)
    assert quantities(installed, f"{beaded}, warps: 8") == quantities(installed, ROPE)


def test_a_thick_cord_in_few_warps_decides_and_the_beads_in_many(installed: Host) -> None:
    beaded = f"{ROPE.replace('8-warp beaded', 'beaded')}, cord: {{outside: 1 mm}}, warps: 12"
    thick = 4.029602  # twelve circles in a circle, best known: Graham et al. 1998
    assert quantities(installed, beaded)["outside"] == pytest.approx(4 + thick + 1, abs=0.01)


def test_the_plan_s_own_cord_and_nub(installed: Host) -> None:
    found = quantities(
        installed, f"{ROPE}, cord: {{outside: 0.5 mm}}, nub: {{outside: 2.2 mm, length: 12 mm}}"
    )
    assert found["outside"] == round(4 + 0.5 * (2 + 1 / math.sin(math.pi / 7)), 2)
    assert (found["nub.outside"], found["nub.length"]) == (2.2, 12.0)


def test_what_was_measured_beats_the_model(installed: Host) -> None:
    found = quantities(installed, f"{ROPE}, measured: {{outside: 6.4 mm, mass: 9 g}}")
    assert (found["outside"], found["mass"]) == (6.4, 9.0)


def test_cord_is_a_value_from_memory(installed: Host) -> None:
    """A rule that judges by it says so, and makes no error alone."""
    cord = checked(installed, ROPE).quantities["rope.cord_in_all"]
    assert "from memory" in {leaf.grade for leaf in cord.leaves}
    assert cord.worst == pytest.approx((8 * 2.5 * 298, 8 * 3.5 * 302), rel=0.01)


@given(st.integers(30, 90), st.integers(30, 90))
def test_longer_takes_more(a: int, b: int) -> None:
    short, long = sorted((a, b))
    assert braid.strung(short) <= braid.strung(long)
    assert braid.beads(short, 8, 1.5) <= braid.beads(long, 8, 1.5)
    assert braid.beads(short, 8, 1.6) < braid.beads(short, 8, 1.5)


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            f"{ROPE}, warps: 16",
            "`rope` has 16 warps, and this braid has 8: write `warps: 8`, or"
            " `stitch: beaded braid`",
        ),
        (
            f"{ROPE.replace('8-warp beaded', 'beaded')}, warps: 14",
            "`rope` has 14 warps, and a round beaded braid takes them in fours, from 8 to 20: write"
            " `warps: 12` or `warps: 16`",
        ),
        (
            ROPE.replace("beads: seed, ", ""),
            "`rope` does not say of which bead it is made: write `beads: reed`",
        ),
        (
            ROPE.replace(", length: 30 cm", ""),
            "`rope` (a braid) lacks `length`: write `length: 42 cm`",
        ),
        (
            ROPE.replace("8-warp beaded braid", "tubular peyote"),
            "`tubular peyote` makes a woven rope, and `rope` is a braid: write"
            " `kind: woven rope`, or another stitch",
        ),
    ],
)
def test_refusals(rope: str, says: str, installed: Host) -> None:
    assert told(installed, rope) == [says]
