"""Flat herringbone: against beads laid one by one, and the quantities of a part."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat_herringbone as herringbone

HERRINGBONE = "beads: seed, stitch: flat herringbone"
sizes = st.floats(0.8, 4.5)


@given(st.integers(1, 20), st.integers(1, 10), st.integers(0, 3), sizes, sizes)
def test_beads_and_width_by_laying_them(
    rows: int, pairs: int, between: int, length: float, outside: float
) -> None:
    count, wide = 0, 0.0
    for row in range(rows):
        wide = 0.0
        for pair in range(pairs):
            count, wide = count + 2, wide + 2 * outside
            if pair < pairs - 1:
                count += between if row else 0
                wide += between * length
    assert herringbone.beads(rows, 2 * pairs, between) == count
    assert herringbone.width(2 * pairs, outside, 1.0, between, length) == pytest.approx(wide)


def test_a_band_is_half_of_a_tube_laid_flat(installed: Host) -> None:
    """The rows of a tube of as many stacks rise alike and take as many beads."""
    flat = bands.middles(installed, f"{HERRINGBONE}, across: 8, rows: 101")
    assert flat["beads"] == 808
    assert flat["width"] == pytest.approx(8 * 2.1)
    assert flat["length"] == pytest.approx(101 * 1.45)
    assert flat["thread"] == pytest.approx(
        100 * 8 * (2 * 1.45 + 0.8 * 2.1) + 8 * (3 * 1.45 + 2 * 2.1) + 100 * 1.05
    )


def test_beads_between_widen_it_and_keep_its_rows_apart(installed: Host) -> None:
    plain = bands.middles(installed, f"{HERRINGBONE}, across: 6, rows: 41")
    wide = bands.middles(installed, f"{HERRINGBONE}, across: 6, between: 1, rows: 41")
    assert wide["beads"] == plain["beads"] + 40 * 2
    assert wide["width"] == pytest.approx(plain["width"] + 2 * 1.45 * 1.05)
    assert wide["rise"] == pytest.approx(2.1)
    assert wide["thread"] == pytest.approx(plain["thread"] + 40 * 2 * 1.45)


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 7, rows: 9",
            [
                "`band` is 7 across, and herringbone adds beads in pairs: write `across: 6` or"
                " `across: 8`"
            ],
        ),
        (
            "across: 1, rows: 9",
            ["`band` is 1 across, too narrow for flat herringbone: write `across: 2` or more"],
        ),
        (
            "across: 2, between: 1, rows: 9",
            [
                "`band` is one pair across, so no bead lies between two: write `across: 4` or more,"
                " or take `between` out"
            ],
        ),
        (
            "each_row: [4, 6, 8]",
            ["`band` has `each_row`, which flat herringbone does not use: take it out"],
        ),
        ("across: 4, between: 2, rows: 9", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{HERRINGBONE}, {band}") == says


@pytest.mark.parametrize("said", ["ndebele", "herringbone", "flat ndebele", "herringbone stitch"])
def test_words_of_the_trade(installed: Host, said: str) -> None:
    assert bands.refused(installed, f"beads: seed, stitch: {said}, across: 6, rows: 9") == []
