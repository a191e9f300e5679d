"""Netting: against loops hung one by one, and the quantities of a part."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat, netting

sizes = st.floats(0.8, 4.5)
loops = st.integers(1, 9).map(lambda half: 2 * half + 1)
NET = "beads: seed, stitch: netting"


def shared(rows: int, across: int) -> list[tuple[int, int]]:
    """Shared beads, as half meshes across and rows up: base on the even places, next on the odd."""
    return [
        (place, row)
        for row in range(rows + 1)
        for place in range(row % 2, 2 * across + 1 - row % 2, 2)
    ]


@given(st.integers(1, 30), st.integers(1, 12), loops)
def test_beads_by_hanging_loops(rows: int, across: int, loop: int) -> None:
    """Shared beads, and a leg of (loop - 1) / 2 from each to its neighbours in the row above."""
    places = shared(rows, across)
    legs = sum((place + side, row + 1) in set(places) for place, row in places for side in (-1, 1))
    counted = len(places) + legs * (loop - 1) // 2
    assert netting.beads(rows, across, loop) == pytest.approx(counted, abs=0.5)
    if rows % 2 == 0:
        assert netting.beads(rows, across, loop) == counted


@given(st.integers(1, 8), st.integers(1, 8), loops, sizes, st.floats(30, 60))
def test_extent_by_walking_a_row(
    rows: int, across: int, loop: int, length: float, slant: float
) -> None:
    """Walk the thread: half a shared bead across, the leg aslant, half a shared bead across."""
    x = y = 0.0
    for _ in range(2 * across):
        steps = [(90.0, length / 2), *[(slant, length)] * ((loop - 1) // 2), (90.0, length / 2)]
        x += sum(step * math.sin(math.radians(way)) for way, step in steps)
    for _ in range(rows):
        y += sum(length * math.cos(math.radians(slant)) for _ in range((loop - 1) // 2))
    assert netting.width(across, loop, length, slant) == pytest.approx(x + length)
    assert rows * netting.rise(loop, length, 0.0, slant) == pytest.approx(y)


@given(st.integers(1, 12), st.integers(2, 40), sizes, sizes)
def test_a_loop_of_one_bead_is_flat_peyote(
    across: int, rows: int, length: float, outside: float
) -> None:
    """Columns stand a bead apart and rise half a bead: peyote of twice the loops and one more."""
    columns = 2 * across + 1
    assert netting.width(across, 1, length, 45) == pytest.approx(
        flat.extent(flat.end_to_end(length, 1.0), columns, length)
    )
    assert netting.rise(1, length, outside, 45) == pytest.approx(outside / 2)
    # a net of so many rows has one more row of beads than peyote counts
    assert netting.beads(rows, across, 1) - (rows + 1) * columns / 2 == pytest.approx(0.5)


def test_thread_by_following_the_needle() -> None:
    """A row of four loops of seven: seven new beads, then the shared bead of the row before."""
    path = 0.0
    for _ in range(4):
        path += 7 * 1.45 + 1.45 + 0.5 * 2.1
    assert 4 * 7 * netting.thread_per_bead(1.45, 2.1, 7) == pytest.approx(path)


def test_quantities_of_a_net(installed: Host) -> None:
    found = bands.middles(installed, f"{NET}, across: 4, loop: 5, rows: 20")
    slope = math.sqrt(0.5)
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": round(8 * (1.45 + 2.9 * slope) + 1.45, 2),
        "thickness": 2.1,
        "outside": 2.1,
        "rise": round(2.9 * slope, 2),
        "length": round(20 * 2.9 * slope + 2.1, 2),
        "rows": 20,
        "beads": 415.0,
        "mass": round(415 / 110, 2),
        "thread": round(415 * (1.45 * 6 / 5 + 0.21), 2),
        "along": round(20 * 2.9 * slope + 2.1, 2),
    }


def test_wider_is_shorter(installed: Host) -> None:
    """One cause moves both: at its ends the net is narrow and long, or wide and short."""
    found = bands.found(installed, "beads: cube, stitch: netting, across: 2, loop: 7, rows: 10")
    wide, long = found["band.width"], found["band.length"]
    (cause,) = wide.causes
    assert cause.name == "spread of the net" and long.causes == (cause,)
    assert wide.at({cause: -1}) == pytest.approx(4 * (3 + 9 * 0.5) + 3)
    assert long.at({cause: -1}) == pytest.approx(10 * 9 * math.sqrt(0.75) + 3)
    assert wide.at({cause: 1}) == pytest.approx(4 * (3 + 9 * math.sqrt(0.75)) + 3)
    assert long.at({cause: 1}) == pytest.approx(10 * 9 * 0.5 + 3)


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    woven = bands.middles(installed, f"{NET}, across: 3, loop: 5, rows: 60")
    told = bands.middles(installed, f"{NET}, across: 3, loop: 5, length: {woven['length']} mm")
    assert told == pytest.approx(woven)


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 4, rows: 5",
            ["`band` does not say how many beads a loop has: write `loop: 5`"],
        ),
        (
            "across: 4, rows: 5, loop: 1",
            [
                "`band` has `loop: 1`, too few for netting: write `loop: 3` or more, or"
                " `stitch: flat peyote`"
            ],
        ),
        (
            "across: 4, rows: 5, loop: 6",
            [
                "`band` has `loop: 6`, and a loop shares the bead in its middle: write `loop: 5` or"
                " `loop: 7`"
            ],
        ),
        (
            "across: 4, rows: 3, each_row: -1, loop: 5",
            ["`band` has `each_row`, which netting does not use: take it out"],
        ),
        ("across: 1, rows: 3, loop: 3", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{NET}, {band}") == says
