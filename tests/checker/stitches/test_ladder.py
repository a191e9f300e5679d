"""Ladder stitch: against rungs laid one by one, and the quantities of a part."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.formulas import thread
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat

sizes = st.floats(0.8, 4.5)
LADDER = "beads: seed, stitch: ladder"


@given(st.integers(1, 60), st.integers(1, 6), sizes, sizes)
def test_beads_and_extent_by_laying_rungs(
    rows: int, across: int, length: float, outside: float
) -> None:
    laid = [
        (n * length, rung * outside, length, outside) for rung in range(rows) for n in range(across)
    ]
    wide, long = bands.spans(laid)
    assert flat.shaped(rows, across, 0) == len(laid)
    assert flat.extent(length, across, length) == pytest.approx(wide)
    assert flat.extent(outside, rows, outside) == pytest.approx(long)


def test_thread_by_following_the_needle() -> None:
    """Rungs of three: three passes through each rung, a step to the next and a step back."""
    length, outside, rungs = 1.45, 2.1, 20
    path = 0.0
    for _ in range(rungs):
        for _ in range(3):
            path += 3 * length
        path += outside + outside
    assert 3 * rungs * thread.ladder(length, outside, 3) == pytest.approx(path)


def test_quantities_of_a_ladder(installed: Host) -> None:
    found = bands.middles(installed, f"{LADDER}, across: 2, rows: 80")
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": 2.97,
        "thickness": 2.1,
        "outside": 2.1,
        "rise": 2.1,
        "length": 168.0,
        "rows": 80,
        "beads": 160.0,
        "mass": 1.45,
        "thread": 1032.0,
        "along": 168.0,
    }


def test_one_bead_wide_is_as_wide_as_the_bead(installed: Host) -> None:
    found = bands.found(installed, "beads: cube, stitch: ladder, across: 1, rows: 11")
    assert found["band.width"].worst == pytest.approx((3.0, 3.0))
    assert found["band.length"].worst == pytest.approx((3 + 30 / 1.05, 3 + 30 * 1.10 / 1.05))


def test_rungs_that_grow(installed: Host) -> None:
    found = bands.middles(installed, "beads: cube, stitch: ladder, across: 1, rows: 4, each_row: 1")
    assert found["beads"] == 1 + 2 + 3 + 4
    assert found["width"] == pytest.approx(3 + 3 * 3.15)
    # every bead thrice, and two steps of a bead's outside for each of the four rungs
    assert found["thread"] == pytest.approx(10 * 3 * 3 + 4 * 2 * 3)


def test_length_gives_the_rungs_it_came_from(installed: Host) -> None:
    assert bands.middles(installed, f"{LADDER}, across: 1, length: 168 mm")[
        "rows"
    ] == pytest.approx(80)


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 2, rows: 9, bead_up: 2",
            ["`band` has `bead_up`, which ladder stitch does not use: take it out"],
        ),
        (
            "across: 4, rows: 5, each_row: -1",
            [
                "`band` starts with 4 in a row and loses 1 each row, which leaves none before row"
                " 5: write `rows: 4` or fewer"
            ],
        ),
        ("across: 1, rows: 5", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{LADDER}, {band}") == says
