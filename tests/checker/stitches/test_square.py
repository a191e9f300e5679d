"""Square stitch: against beads laid one by one, and the quantities of a part."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung import tables
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat

sizes = st.floats(0.8, 4.5)
SQUARE = "beads: seed, stitch: square"


@given(st.integers(1, 40), st.integers(1, 20), st.integers(-2, 3), sizes, sizes)
def test_beads_and_extent_by_laying_them(
    rows: int, across: int, change: int, length: float, outside: float
) -> None:
    laid: list[bands.Laid] = []
    count = across
    for row in range(rows):
        if count < 1:
            rows = row
            break
        laid += [(column * length, row * outside, length, outside) for column in range(count)]
        count += change
    wide, long = bands.spans(laid)
    assert flat.shaped(rows, across, change) == len(laid)
    widest = max(across, across + change * (rows - 1))
    assert flat.extent(length, widest, length) == pytest.approx(wide)
    assert flat.extent(outside, rows, outside) == pytest.approx(long)


def test_the_printed_bracelet_of_cubes(installed: Host) -> None:
    """12 g of 3 mm cubes make more than 8 1/2 in: three across, and some left."""
    band = "beads: cube, stitch: square, across: 3, length: 8 1/2 in"
    beads = bands.middles(installed, band)["beads"]
    assert beads == pytest.approx(216, abs=0.5)
    grams = bands.printed("square stitch bracelet of 8 1/2 in, 3 mm cubes")
    per_gram = tables.load("other_beads").row("cube").cell("per_gram at 3 mm").value
    assert beads / per_gram == pytest.approx(grams, rel=0.1)


def test_quantities_of_a_band(installed: Host) -> None:
    found = bands.middles(installed, f"{SQUARE}, across: 10, rows: 76")
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": 15.15,
        "thickness": 2.1,
        "outside": 2.1,
        "rise": 2.1,
        "length": 159.6,
        "rows": 76,
        "beads": 760.0,
        "mass": 6.91,
        "thread": 760 * 7.5 + 76 * 1.05,
        "along": 159.6,
    }


def test_half_the_rows_of_peyote_and_as_many_beads(installed: Host) -> None:
    """Square and peyote of one width and length hold the same beads, but for the first half row."""
    square = bands.middles(installed, f"{SQUARE}, across: 10, length: 16 cm")
    peyote = bands.middles(installed, "beads: seed, stitch: flat peyote, across: 10, length: 16 cm")
    assert square["width"] == peyote["width"]
    assert square["beads"] - peyote["beads"] == pytest.approx(5)


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    assert bands.middles(installed, f"{SQUARE}, across: 4, length: 159.6 mm")[
        "rows"
    ] == pytest.approx(76)


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 1, rows: 9",
            ["`band` is 1 across, too narrow for square stitch: write `across: 2` or more"],
        ),
        (
            "across: 5, rows: 7, loop: 3",
            ["`band` has `loop`, which square stitch does not use: take it out"],
        ),
        ("across: 2, rows: 1", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{SQUARE}, {band}") == says
