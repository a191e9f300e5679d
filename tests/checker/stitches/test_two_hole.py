"""Bands of two-hole beads: strung on two lines, and in peyote."""

from __future__ import annotations

import pytest

import bands
from wellstrung.plugins.host import Host

STRUNG = "beads: tile, stitch: two-hole strung"


def test_a_band_on_two_lines(installed: Host) -> None:
    """Tiles of 5 x 5 mm: a bead a row, as wide as a tile, two passes of its length each."""
    plan = bands.PLAN.replace("size: 5 mm", "size: 5 x 5 mm")
    found = bands.middles(installed, f"{STRUNG}, across: 1, rows: 36", plan)
    assert found["beads"] == 36
    assert found["width"] == pytest.approx(5)
    assert found["length"] == pytest.approx(35 * 5.05 + 5)
    assert found["thread"] == pytest.approx(36 * 10 * 1.01)  # as long as the work, twice
    assert found["thickness"] == pytest.approx(0.4 * 5)
    assert found["length"] == pytest.approx(7 * 25.4, rel=0.05)  # 36 of them are about 7 in


def test_peyote_of_two_hole_beads_runs_on_straight_threads(installed: Host) -> None:
    plan = bands.PLAN.replace("size: 5 mm", "size: 5 x 2.5 mm")
    found = bands.middles(installed, "beads: tile, stitch: flat peyote, across: 8, rows: 60", plan)
    assert found["beads"] == 240
    assert found["width"] == pytest.approx(8 * 2.5 * 1.05, rel=0.01)
    assert found["rise"] == pytest.approx(2.5)
    assert found["thread"] == pytest.approx(240 * 5)
    assert found["thickness"] < 3


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 3, rows: 9",
            [
                "`band` is 3 across, and two lines carry one bead across: write `across: 1`, or"
                " `stitch: flat peyote`"
            ],
        ),
        ("across: 1, rows: 9", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{STRUNG}, {band}") == says


def test_beads_with_one_hole_are_refused(installed: Host) -> None:
    said = "beads: cube, stitch: two-hole strung, across: 1, rows: 9"
    assert bands.refused(installed, said) == []  # of another type nobody knows
    assert bands.refused(installed, said.replace("cube", "seed")) == [
        "`seed` has one hole, and `band` is strung on two lines: take two-hole beads, or write"
        " `stitch: ladder`"
    ]
