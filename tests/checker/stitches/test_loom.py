"""Loom work: against beads and warps laid one by one, and the quantities of a part."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.plugins.host import Host
from wellstrung.stitches import loom

sizes = st.floats(0.8, 4.5)
LOOM = "beads: tube, stitch: loom"


@given(st.integers(1, 60), sizes, st.floats(0.05, 0.5))
def test_width_by_laying_warps_and_beads(columns: int, length: float, warp: float) -> None:
    assert loom.warps(9) == bands.printed("loom, warps for 9 beads across")
    at, warps = 0.0, 0
    for thing in "|o" * columns + "|":
        warps += thing == "|"
        at += warp if thing == "|" else length
    assert loom.warps(columns) == warps
    assert loom.width(columns, length, warp) == pytest.approx(at)


def test_the_printed_rod_of_18_to_the_inch() -> None:
    """A rod of 18 threads to the inch suits 11/0 cylinders, 1.3 mm long: a warp of 0.1 mm."""
    column = 25.4 / bands.printed("loom, threads to the inch for 11/0 cylinders")
    assert loom.width(101, 1.3, 0.1) - loom.width(100, 1.3, 0.1) == pytest.approx(column, rel=0.01)


def test_quantities_of_a_band(installed: Host) -> None:
    found = bands.middles(installed, f"{LOOM}, across: 12, rows: 100, warp: 0.2 mm")
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": 18.2,
        "thickness": 1.6,
        "outside": 1.6,
        "rise": 1.6,
        "length": 160.0,
        "rows": 100,
        "beads": 1200.0,
        "warps": 13,
        "mass": 6.0,
        "thread": 1200 * 2 * 1.5 + 13 * (160 + 550),
        "along": 160.0,
    }


def test_a_warp_not_said_is_a_cause(installed: Host) -> None:
    said = bands.found(installed, "beads: cube, stitch: loom, across: 9, rows: 20, warp: 0.2 mm")
    left = bands.found(installed, "beads: cube, stitch: loom, across: 9, rows: 20")
    assert said["band.width"].worst == pytest.approx((29.0, 29.0))
    assert left["band.width"].worst == pytest.approx((28.0, 30.0))
    assert [cause.cure for cause in left["band.width"].causes] == [
        "write the warp of `band`, as `warp: 0.2 mm`"
    ]


def test_shaped_work_is_warped_for_its_widest_row(installed: Host) -> None:
    found = bands.middles(installed, f"{LOOM}, across: 3, rows: 5, each_row: 2, warp: 0.2 mm")
    assert found["warps"] == 12
    assert found["beads"] == 3 + 5 + 7 + 9 + 11
    assert found["width"] == pytest.approx(loom.width(11, 1.3, 0.2))


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    found = bands.middles(installed, f"{LOOM}, across: 4, length: 16 cm")
    assert found["rows"] == pytest.approx(100)


def test_more_columns_more_of_everything(installed: Host) -> None:
    few, more = (
        bands.middles(installed, f"{LOOM}, across: {across}, length: 16 cm") for across in (8, 9)
    )
    for name in ("width", "beads", "warps", "mass", "thread"):
        assert few[name] < more[name], name


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 1, rows: 9",
            ["`band` is 1 across, too narrow for loom work: write `across: 2` or more"],
        ),
        (
            "across: 5, rows: 7, bead_up: 2",
            ["`band` has `bead_up`, which loom work does not use: take it out"],
        ),
        ("across: 2, rows: 3, warp: 0.15 mm", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{LOOM}, {band}") == says
