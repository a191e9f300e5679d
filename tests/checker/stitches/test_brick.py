"""Brick stitch: against beads laid one by one, and the quantities of a part."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.formulas.row_on_row import staggered
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat

sizes = st.floats(0.8, 4.5)
BRICK = "beads: seed, stitch: brick"


def laid(rows: int, across: int, change: int, length: float, outside: float) -> list[bands.Laid]:
    """Lay row on row: straight rows step half a bead aside and back, shaped ones are centred."""
    beads = []
    for row in range(rows):
        count = across + change * row
        left = -(count - 1) / 2 if change else 0.5 * (row % 2)
        beads += [((left + n) * outside, row * length, outside, length) for n in range(count)]
    return beads


@given(st.integers(1, 30), st.integers(2, 40), st.integers(-1, 1), sizes, sizes)
def test_beads_and_extent_by_laying_them(
    rows: int, across: int, change: int, length: float, outside: float
) -> None:
    rows = min(rows, across) if change < 0 else rows
    beads = laid(rows, across, change, length, outside)
    assert flat.shaped(rows, across, change) == len(beads)
    wide, long = bands.spans(beads)
    columns = staggered([across + change * row for row in range(rows)])
    assert flat.extent(outside, columns, outside) == pytest.approx(wide)
    assert flat.extent(length, rows, length) == pytest.approx(long)


def test_the_printed_row_of_11() -> None:
    """11 beads of size 10 or 11 are about 2.5 cm: between 11 of 11/0 and 11 of 10/0."""
    of_11, of_10 = (
        flat.extent(flat.side_by_side(bead, flat.USUAL), 11, bead) for bead in (2.1, 2.3)
    )
    assert of_11 < bands.printed("brick stitch row of 11 beads of 10/0 or 11/0") < of_10


def test_brick_is_peyote_turned(installed: Host) -> None:
    """The same beads, as many columns as the other has rows: width and length change places."""
    turned = bands.middles(installed, f"{BRICK}, across: 20, rows: 9")
    upright = bands.middles(installed, "beads: seed, stitch: flat peyote, across: 9, rows: 40")
    assert turned["beads"] == upright["beads"] == 180
    assert turned["length"] == pytest.approx(upright["width"])
    assert turned["width"] == pytest.approx(upright["length"])


def test_quantities_of_a_triangle(installed: Host) -> None:
    found = bands.middles(installed, f"{BRICK}, across: 11, rows: 11, each_row: -1")
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": 23.1,
        "thickness": 2.1,
        "outside": 2.1,
        "rise": 1.52,
        "length": 16.68,
        "rows": 11,
        "beads": 66.0,
        "mass": 0.6,
        "thread": 394.02,
        "along": 16.68,
    }


def test_a_shape_that_is_counted_row_by_row(installed: Host) -> None:
    """The rows say how wide it is, how long, and how many beads it takes."""
    ruled = bands.middles(installed, f"{BRICK}, across: 2, rows: 8, each_row: 1")
    assert bands.middles(installed, f"{BRICK}, each_row: [2, 3, 4, 5, 6, 7, 8, 9]") == ruled
    diamond = bands.middles(installed, f"{BRICK}, each_row: {{mirror: [2, 3, 4, 5]}}")
    assert (diamond["rows"], diamond["beads"]) == (7, 2 * (2 + 3 + 4) + 5)
    assert diamond["width"] == pytest.approx(5 * 2.1)
    hull = bands.middles(installed, f"{BRICK}, each_row: [4, 5, 5, 5, 2]")
    assert hull["width"] == pytest.approx(5.5 * 2.1)  # alike they lie half a bead aside


ON_A_HOOP = bands.PLAN.replace(
    "run:", "  hoop: {kind: jump ring, outside: 25 mm, wire: 1 mm, closing: soldered}\nrun:"
)


def test_a_row_on_a_hoop_goes_round_its_outside(installed: Host) -> None:
    """Beads that touch at the hoop itself, or half their length further out; thread half round."""
    band = f"{BRICK}, across: 24, rows: 3, each_row: -1, started_on: hoop"
    found = bands.found(installed, band, ON_A_HOOP)["band.room_for"]
    at_the_hoop, further_out = math.pi * 25 / 2.1, math.pi * (25 + 1.45) / 2.1
    assert found.middle == pytest.approx((at_the_hoop + further_out) / 2, rel=1e-3)
    thread = bands.middles(installed, band, ON_A_HOOP)["thread"]
    woven = 69 * (2 * 1.45 + 0.9 * 2.1) + 3 * (2 * 1.45 + 0.2 * 2.1)
    assert thread == pytest.approx(woven + 24 * math.pi / 2)
    ladder = bands.middles(installed, band.replace(", started_on: hoop", ""))["thread"]
    assert ladder == pytest.approx(woven + 24 * (1.45 + 1.1 * 2.1))


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    woven = bands.middles(installed, f"{BRICK}, across: 6, rows: 101")
    told = bands.middles(installed, f"{BRICK}, across: 6, length: {woven['length']} mm")
    assert told["rows"] == pytest.approx(101)
    assert told["width"] == woven["width"] == pytest.approx(6.5 * 2.1)


def test_tight_and_loose_bound_the_length(installed: Host) -> None:
    found = bands.found(installed, "beads: cube, stitch: brick, across: 4, rows: 21")
    assert found["band.length"].worst == pytest.approx((63.0, 69.0))
    assert found["band.width"].worst == pytest.approx((13.0, 14.0))


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 1, rows: 9",
            ["`band` is 1 across, too narrow for brick stitch: write `across: 2` or more"],
        ),
        (
            "across: 5, rows: 7, each_row: -2",
            [
                "`band` starts with 5 in a row and loses 2 each row, which leaves none before row"
                " 7: write `rows: 3` or fewer"
            ],
        ),
        (
            "across: 5, rows: 7, bead_up: 2",
            ["`band` has `bead_up`, which brick stitch does not use: take it out"],
        ),
        ("across: 5, rows: 3, each_row: -2", []),
        ("each_row: [1, 4, 7, 2, 2]", []),
        ("each_row: {mirror: [2, 3]}", []),
        (
            "each_row: [2, 3, 12]",
            [
                "row 3 of `band` has 12 and the row before it 3, and brick stitch adds 3 at most"
                " from row to row: put rows between them, as in `3, 6, 9, 12`"
            ],
        ),
        (
            "across: 2, rows: 4, each_row: 5",
            [
                "each row of `band` has 5 more than the one before, and brick stitch adds 3 at"
                " most: write `each_row: 3`"
            ],
        ),
        (
            "across: 3, rows: 3, each_row: [2, 3, 4]",
            [
                "`band` has `across`, and its `each_row` begins with 2 in a row: take `across` out",
                "`band` has `rows`, and its `each_row` counts 3 rows: take `rows` out",
            ],
        ),
        (
            "length: 3 cm, each_row: [2, 3, 4]",
            ["`band` has `length`, and its `each_row` counts its rows: take `length` out"],
        ),
        ("across: 1, rows: 4, each_row: 1", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{BRICK}, {band}") == says
