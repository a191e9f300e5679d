"""Cubic right-angle weave: against cubes built edge by edge, and the quantities of a rope."""

from __future__ import annotations

import math
from itertools import combinations, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.plugins.host import Host
from wellstrung.stitches import cubic_right_angle as craw

sizes = st.floats(0.8, 4.5)
ROPE = "beads: seed, stitch: cubic right-angle weave"
Corner = tuple[int, int, int]


def edges(cubes: int) -> set[tuple[Corner, Corner]]:
    """Every edge of a tower of cubes, shared edges once."""
    found = set[tuple[Corner, Corner]]()
    for level in range(cubes):
        corners = sorted(product((0, 1), (0, 1), (level, level + 1)))
        found |= {pair for pair in combinations(corners, 2) if math.dist(*pair) == 1}
    return found


@given(st.integers(1, 60))
def test_beads_by_the_edges_of_cubes(cubes: int) -> None:
    assert craw.beads(cubes) == len(edges(cubes))


def test_eight_beads_a_cube_as_printed() -> None:
    """Three, two, two and one for the four sides of a cube."""
    eight = bands.printed("cubic right-angle weave, beads for each cube")
    assert craw.beads(8) - craw.beads(7) == eight == 3 + 2 + 2 + 1


@given(sizes, sizes)
def test_sizes_by_the_upright_beads(pitch: float, outside: float) -> None:
    """Stand the four upright beads of a cube and measure over corners, over faces, and between."""
    middles = list(product((0.0, pitch), repeat=2))
    radius = outside / 2
    slant = max(math.dist(a, b) for a, b in combinations(middles, 2)) + 2 * radius
    assert craw.outside(pitch, outside) == pytest.approx(slant)
    over = max(x for x, _ in middles) + radius - (min(x for x, _ in middles) - radius)
    assert craw.thickness(pitch, outside) == pytest.approx(over)
    between = (pitch - radius) - radius
    assert craw.inside(pitch, outside) == pytest.approx(max(0.0, between))


def rope(installed: Host, fields: str) -> dict[str, float]:
    plan = bands.PLAN.replace("kind: woven band, BAND", f"kind: woven rope, {ROPE}, {fields}")
    return bands.middles(installed, "", plan)


def test_quantities_of_a_rope(installed: Host) -> None:
    found = rope(installed, "around: 4, rounds: 150")
    unit = math.hypot(1.45, 2.1) * 1.02
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "outside": round(unit * math.sqrt(2) + 2.1, 2),
        "thickness": round(unit + 2.1, 2),
        "inside": round(unit - 2.1, 2),
        "rise": round(unit, 2),
        "length": round(150 * unit, 2),
        "rounds": 150,
        "beads": 1204,
        "mass": round(1204 / 110, 2),
        "thread": round(1204 * 25 / 8 * (1.45 + 0.39 * (unit - 1.45)), 2),
        "along": round(150 * unit, 2),
    }


def test_it_lies_on_a_face(installed: Host) -> None:
    """The way round inside loses pi times the face, not the corners."""
    found = rope(installed, "around: 4, rounds: 150")
    assert found["piece.length"] - found["piece.inside"] == pytest.approx(
        math.pi * found["thickness"]
    )


def test_length_gives_the_cubes_it_came_from(installed: Host) -> None:
    woven = rope(installed, "around: 4, rounds: 150")
    told = rope(installed, f"each_round: 8, length: {woven['length']} mm")
    assert told == pytest.approx(woven)


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        (
            "around: 6, length: 20 cm",
            [
                "`band` has `around: 6`, and cubic right-angle weave starts with a ring of 4 and"
                " adds 8 for each cube: write `around: 4`"
            ],
        ),
        (
            "each_round: 4, length: 20 cm",
            [
                "`band` has `each_round: 4`, and cubic right-angle weave starts with a ring of 4"
                " and adds 8 for each cube: write `each_round: 8`"
            ],
        ),
        ("around: 4, length: 20 cm", []),
    ],
)
def test_what_it_refuses(installed: Host, fields: str, says: list[str]) -> None:
    plan = bands.PLAN.replace("kind: woven band, BAND", f"kind: woven rope, {ROPE}, {fields}")
    assert bands.refused(installed, "", plan) == says
