"""Flat peyote: against beads laid one by one on the grid, and the quantities of a part."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.formulas import thread
from wellstrung.formulas.row_on_row import staggered
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat
from wellstrung.stitches import flat_peyote as peyote

sizes = st.floats(0.8, 4.5)
STRAIGHT = "beads: seed, stitch: flat peyote"


def laid(rows: int, across: int, pitch: float, rise: float, bead: float) -> list[bands.Laid]:
    """Lay row by row: odd rows on the even columns, even rows on the odd ones, half a bead up."""
    return [
        (column * pitch, row * rise, pitch, bead)
        for row in range(rows)
        for column in range(row % 2, across, 2)
    ]


@given(st.integers(2, 60), st.integers(2, 40))
def test_beads_by_laying_them(rows: int, across: int) -> None:
    counted = len(laid(rows, across, 1, 1, 1))
    assert math.ceil(peyote.beads(rows, across, 0)) == counted
    assert peyote.beads(rows, across, 0) == pytest.approx(counted, abs=0.5)


@given(st.integers(2, 40), st.integers(2, 20), sizes, sizes)
def test_extent_by_laying_them(rows: int, across: int, length: float, outside: float) -> None:
    """Beads that touch each other on all sides: width and length from edge to edge."""
    wide, long = bands.spans(laid(rows, across, length, outside / 2, outside))
    assert flat.extent(length, across, length) == pytest.approx(wide)
    assert flat.extent(outside / 2, rows, outside) == pytest.approx(long)


def row_on(row: list[int], change: int) -> list[int]:
    """The next row, a half column aside: in every gap, and beyond both edges where it grows."""
    inner = [column + 1 for column in row[:-1]]
    return inner if change < 0 else [row[0] - 1, *inner, row[-1] + 1]


@given(st.integers(1, 12), st.sampled_from([-1, 1]), st.integers(2, 20))
def test_a_shaped_band_by_laying_it(half: int, change: int, rows: int) -> None:
    across = 2 * half - 1
    rows = min(rows, half) if change < 0 else rows
    row, counts, columns = list(range(0, across, 2)), list[int](), set[int]()
    for _ in range(rows):
        counts.append(len(row))
        columns |= set(row)
        row = row_on(row, change)
    assert peyote.beads(rows, across, change) == sum(counts)
    assert 2 * staggered(counts) - 1 == max(columns) - min(columns) + 1


def test_two_drop_is_laid_in_pairs() -> None:
    """Pairs end to end: the same grid, a stitch for every two beads."""
    beads = [
        (2 * pair + side, row)
        for row in range(10)
        for pair in range(row % 2, 6, 2)
        for side in (0, 1)
    ]
    assert peyote.beads(10, 12, 0) == len(beads)
    steps = len(beads) / 2
    assert len(beads) * thread.peyote(1.4, 2.0, 2) == pytest.approx(
        len(beads) * 2 * 1.4 + steps * 0.49 * 2.0
    )


def test_an_odd_count_turns_without_a_bead_at_one_edge(installed: Host) -> None:
    odd = bands.middles(installed, f"{STRAIGHT}, across: 7, rows: 100")
    step, rows = 0.49 * 2.1, 100 * 0.4 * 2.1
    assert odd["thread"] == pytest.approx(350 * (2 * 1.45 + step) + 50 * (2 * 1.45 + 2.1) + rows)
    drop = bands.middles(installed, f"{STRAIGHT}, across: 9, rows: 100, drop: 3")
    woven = 450 * (2 * 1.45 + step / 3) + 50 * (6 * 1.45 + 2.1)
    assert drop["thread"] == pytest.approx(woven + rows)


def test_the_printed_hoop_of_50_lies_at_the_loose_end() -> None:
    """A hoop of 50 columns of 10/0 cylinders (1.7 mm long, 2.2 across) is about 32 mm outside."""
    column = (32 - 2.2) * math.pi / 50
    assert flat.end_to_end(1.7, flat.USUAL) < column
    assert column == pytest.approx(flat.end_to_end(1.7, flat.LOOSE), rel=0.01)


#: what hands take has its own tests
TIMES = {
    "piece.bench_time",
    "piece.student_time",
    "piece.finish_as_written",
    "piece.finish_earliest",
}


def test_quantities_of_a_band(installed: Host) -> None:
    found = bands.middles(installed, f"{STRAIGHT}, across: 12, rows: 151")
    sizes = {name: round(value, 2) for name, value in found.items() if name not in TIMES}
    assert sizes == {
        "width": 18.2,
        "thickness": 2.1,
        "outside": 2.1,
        "rise": 1.05,
        "length": 159.6,
        "rows": 151,
        "beads": 906.0,
        "mass": 8.24,
        "thread": 3686.51,
        "along": 159.6,
        "piece.length": 159.6,
        "piece.inside": 153.0,
        "piece.mass": 8.24,
    }


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    woven = bands.middles(installed, f"{STRAIGHT}, across: 12, rows: 151")
    told = bands.middles(installed, f"{STRAIGHT}, across: 12, length: 159.6 mm")
    assert told["rows"] == pytest.approx(151)
    assert {**told, "piece.length": 0} == pytest.approx({**woven, "piece.length": 0})


def test_shorter_than_a_bead_is_one_row(installed: Host) -> None:
    assert bands.middles(installed, f"{STRAIGHT}, across: 4, length: 1 mm")["rows"] == 1


def test_tight_and_loose_bound_the_width(installed: Host) -> None:
    """With the bead's own sizes known, the hand alone is left: 1.00 to 1.10 bead lengths."""
    width = bands.found(installed, "beads: cube, stitch: flat peyote, across: 11, rows: 40")[
        "band.width"
    ]
    assert width.worst == pytest.approx((33.0, 36.0))
    assert [cause.name for cause in width.causes] == ["thread tension"]


def test_more_beads_for_wider_and_longer(installed: Host) -> None:
    counts = [
        bands.middles(installed, f"{STRAIGHT}, across: {across}, length: {length} mm")["beads"]
        for across, length in ((8, 100), (8, 120), (9, 120), (10, 120))
    ]
    assert counts == sorted(set(counts))


def test_a_swatch_beats_the_model(installed: Host) -> None:
    measured = "measured: {width: 19 mm, thickness: 2 mm, length: 161 mm, mass: 9 g}"
    found = bands.middles(installed, f"{STRAIGHT}, across: 12, rows: 150, {measured}")
    assert [found[name] for name in ("width", "thickness", "length", "mass", "outside")] == [
        19, 2, 161, 9, 2,
    ]  # fmt: skip
    assert found["piece.inside"] == pytest.approx(161 - 2 * math.pi)


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 1, length: 3 cm",
            ["`band` is 1 across, too narrow for flat peyote: write `across: 2` or more"],
        ),
        (
            "across: 9, rows: 6, bead_up: 2",
            [
                "`band` is 9 beads across and takes 2 at a time: write `across: 8` or `across: 10`",
            ],
        ),
        (
            "across: 3, rows: 6, bead_up: 2",
            ["`band` is 3 across, too narrow for flat peyote: write `across: 4` or more"],
        ),
        (
            "across: 8, rows: 3, bead_up: 2, each_row: -1",
            [
                "`band` takes 2 beads at a time and is shaped by the bead: take `bead_up` or"
                " `each_row` out"
            ],
        ),
        (
            "across: 9, length: 3 cm, each_row: -1",
            [
                "`band` has `each_row`, so its rows must be counted: write `rows` instead of"
                " `length`"
            ],
        ),
        (
            "across: 9, rows: 6, each_row: -1",
            [
                "`band` starts with 5 in a row and loses 1 each row, which leaves none before row"
                " 6: write `rows: 5` or fewer"
            ],
        ),
        (
            "across: 9, rows: 6, loop: 5, warp: 0.2 mm",
            [
                "`band` has `loop`, which flat peyote does not use: take it out",
                "`band` has `warp`, which flat peyote does not use: take it out",
            ],
        ),
        ("across: 9, rows: 5, each_row: -1", []),
        ("each_row: {mirror: [2, 3, 4]}", []),
        (
            "each_row: [2, 3, 5]",
            [
                "row 3 of `band` has 5 and the row before it 3, and flat peyote adds 1 at most from"
                " row to row: put rows between them, as in `3, 4, 5`"
            ],
        ),
        ("across: 4, rows: 5, bead_up: 2", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{STRAIGHT}, {band}") == says


def test_a_rope_is_not_flat(installed: Host) -> None:
    assert bands.refused(installed, "beads: seed, stitch: tubular peyote, across: 8, rows: 6") == [
        "`tubular peyote` makes a woven rope, and `band` is a woven band: write `kind: woven rope`,"
        " or another stitch"
    ]
