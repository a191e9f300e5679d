"""Tubular peyote with an odd ring: woven bead by bead as one spiral, then counted and measured."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import Point, across, checked, quantities, told
from wellstrung.plugins.host import Host

ROPE = "kind: woven rope, stitch: odd tubular peyote, around: 7, beads: seed"


def woven(ring: int, beads: int, pitch: float, bead: float) -> list[Point]:
    """Weave: each bead goes on the next column but one, half a bead above the lower neighbour.

    The columns stand on the sides of a polygon, so the middles lie half across its flats out.
    """
    out = pitch / math.tan(math.pi / ring) / 2
    height = [0.0 if column % 2 == 0 else bead / 2 for column in range(ring)]
    height[-1] = bead / 4  # the seam of the odd ring: the last column stands between its neighbours
    placed, column = ring, -1
    middles = [
        (out * math.cos(math.tau * k / ring), out * math.sin(math.tau * k / ring), height[k])
        for k in range(ring)
    ]
    while placed < beads:
        column = (column + 2) % ring
        height[column] += bead
        turn = math.tau * column / ring
        middles.append((out * math.cos(turn), out * math.sin(turn), height[column]))
        placed += 1
    return middles


@given(st.integers(2, 12).map(lambda half: 2 * half + 1), st.integers(2, 40))
def test_two_rounds_put_a_bead_on_every_column(ring: int, pairs: int) -> None:
    tube = woven(ring, ring * pairs, 1.5, 2.0)
    columns: dict[int, int] = {}
    for x, y, _ in tube:
        column = round(math.atan2(y, x) / math.tau * ring) % ring
        columns[column] = columns.get(column, 0) + 1
    assert set(columns.values()) == {pairs}  # rounds = 2 x pairs, beads = rounds x N / 2


def test_quantities(installed: Host) -> None:
    """200 rounds of half a bead: 7 columns of 100 beads each, 2 mm high."""
    tube = woven(7, 700, 1.5 * 1.05, 2.0)
    tall = max(z for _, _, z in tube) - min(z for _, _, z in tube)
    assert tall == pytest.approx(198 + 1, abs=1)  # middle to middle: a bead less than the tube
    assert quantities(installed, f"{ROPE}, rounds: 200") == {
        "outside": round(across(tube, 2.0), 2),
        "inside": round(across(tube, 2.0) - 4.0, 2),
        "length": 200.0,
        "rise": 1.0,
        "rounds": 200.0,
        "beads": 700.0,
        "mass": 7.0,
        "thread": 2786.0,
        "along": 200.0,
    }


def test_it_lies_between_its_even_neighbours(installed: Host) -> None:
    odd = checked(installed, f"{ROPE}, rounds: 200").quantities
    for around, sign in ((6, 1), (8, -1)):
        even = ROPE.replace("odd ", "").replace("around: 7", f"around: {around}")
        found = checked(installed, f"{even}, rounds: 200").quantities
        # thread is not among them: an odd ring is a spiral, whose rounds never step up
        for what in ("outside", "inside", "beads", "mass"):
            assert sign * odd[f"rope.{what}"].middle > sign * found[f"rope.{what}"].middle


def test_length_and_rounds_are_one_thing(installed: Host) -> None:
    assert quantities(installed, f"{ROPE}, length: 20 cm") == quantities(
        installed, f"{ROPE}, rounds: 200"
    )


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "around: 7",
            "around: 8",
            "`rope` has 8 beads around, and odd tubular peyote needs an odd ring: write"
            " `around: 7` or `around: 9`, or `stitch: tubular peyote`",
        ),
        (
            "around: 7",
            "around: 3",
            "`rope` has 3 beads around, too few to close a ring: write `around: 5` or more",
        ),
        (
            "around: 7",
            "each_round: 4",
            "`rope` counts 4 a round, a ring of 8, and odd tubular peyote needs an odd ring:"
            " write `around: 7`, or `stitch: tubular peyote`",
        ),
        (
            "around: 7, ",
            "",
            "`rope` does not say how many beads go around: write `around: 7`",
        ),
        (
            ", beads: seed",
            "",
            "`rope` does not say of which bead it is made: write `beads: reed`",
        ),
    ],
)
def test_refusals(old: str, new: str, says: str, installed: Host) -> None:
    assert told(installed, f"{ROPE.replace(old, new)}, rounds: 200") == [says]
