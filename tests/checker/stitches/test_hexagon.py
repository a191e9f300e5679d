"""Hexagon weave against a comb of which every side is laid, with beads that touch."""

from __future__ import annotations

import math

import pytest

import bands
from wellstrung.plugins.host import Host
from wellstrung.stitches import hexagon

#: a spot of a comb: along and across
Spot = tuple[float, float]


def sides_of(rows: int, across: int, side: float) -> set[tuple[Spot, Spot]]:
    """Every side of a comb once, by its two ends."""
    half, found = math.sqrt(3) / 2 * side, set()
    for row in range(rows):
        for unit in range(across):
            x, y = 1.5 * side * row, half * (2 * unit + row % 2)
            corners = [
                (round(x + side * math.cos(turn), 6), round(y + side * math.sin(turn), 6))
                for turn in (math.radians(60 * corner) for corner in range(6))
            ]
            for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
                found.add((min(start, end), max(start, end)))
    return found


@pytest.mark.parametrize(("rows", "across"), [(1, 1), (1, 4), (2, 1), (5, 3), (6, 2), (9, 1)])
def test_beads_are_the_sides_of_a_comb(rows: int, across: int) -> None:
    assert hexagon.beads(rows, across) == len(sides_of(rows, across, 1.0))


def test_a_comb_laid_side_by_side(installed: Host) -> None:
    found = bands.middles(installed, "beads: seed, stitch: hexagon stitch, across: 3, rows: 10")
    length, outside = 1.45, 2.1
    assert found["side"] == pytest.approx(math.sqrt(length**2 + outside**2 / 3) * 1.02)
    middles = [
        ((x1 + x2) / 2, (y1 + y2) / 2, math.atan2(y2 - y1, x2 - x1))
        for (x1, y1), (x2, y2) in sides_of(10, 3, found["side"])
    ]
    # how far an oval that lies aslant reaches along the work, and across it
    along = [math.hypot(length * math.cos(a), outside * math.sin(a)) / 2 for _, _, a in middles]
    across = [math.hypot(length * math.sin(a), outside * math.cos(a)) / 2 for _, _, a in middles]
    xs = [(x, reach) for (x, _, _), reach in zip(middles, along, strict=True)]
    ys = [(y, reach) for (_, y, _), reach in zip(middles, across, strict=True)]
    long = max(x + r for x, r in xs) - min(x - r for x, r in xs)
    assert found["length"] == pytest.approx(long)
    assert found["width"] == pytest.approx(max(y + r for y, r in ys) - min(y - r for y, r in ys))
    assert found["beads"] == len(middles)
    told = f"beads: seed, stitch: hexagon weave, across: 3, length: {found['length']} mm"
    assert bands.middles(installed, told)["rows"] == pytest.approx(10)


def test_three_ovals_touch_at_a_corner() -> None:
    """No point of an oval lies beyond the line between two sides, and one lies on it."""
    length, outside, side = 1.45, 2.1, hexagon.side(1.45, 2.1, 1.0)
    beyond = [
        (side / 2 + length / 2 * math.cos(t)) * math.sin(math.pi / 3)
        + outside / 2 * math.sin(t) * math.cos(math.pi / 3)
        for t in (math.radians(n / 4) for n in range(1440))
    ]
    assert min(beyond) == pytest.approx(0, abs=1e-4)


def test_thread_of_a_unit(installed: Host) -> None:
    """Round its six beads and on through three, with a corner after each; three more a row."""
    found = bands.middles(installed, "beads: seed, stitch: hexagon weave, across: 4, rows: 5")
    assert found["thread"] == pytest.approx((20 * 9 + 5 * 3) * (0.61 * 1.45 + 0.39 * found["side"]))


@pytest.mark.parametrize(
    ("band", "says"),
    [
        ("rows: 5", "`band` does not say how many go across: write `across: 12`"),
        (
            "across: 3, loop: 6, rows: 5",
            "`band` has `loop`, which hexagon weave does not use: take it out",
        ),
        (
            "across: 3, each_row: -1, rows: 3",
            "`band` has `each_row`, which hexagon weave does not use: take it out",
        ),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: str) -> None:
    assert says in bands.refused(installed, f"beads: seed, stitch: hexagon weave, {band}")
