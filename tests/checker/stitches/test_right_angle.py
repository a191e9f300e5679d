"""Right-angle weave: against a net of beads laid side by side, and ovals that really touch."""

from __future__ import annotations

import math
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
from wellstrung.model.beads import bead_mix, bead_of_unit
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat
from wellstrung.stitches import right_angle as raw

sizes = st.floats(0.8, 4.5)
RAW = "beads: seed, stitch: right-angle weave"

#: a side of a unit: where it starts, and whether it stands upright
Side = tuple[int, int, bool]


def sides(rows: int, across: int, change: int) -> set[Side]:
    """Every side of every unit, each once: units stand on a grid, rows start at one edge."""
    found = set[Side]()
    for row in range(rows):
        for column in range(across + change * row):
            found |= {(column, row, False), (column, row + 1, False)}
            found |= {(column, row, True), (column + 1, row, True)}
    return found


@given(st.integers(1, 20), st.integers(1, 20), st.integers(-2, 3))
def test_beads_by_the_sides_of_units(rows: int, across: int, change: int) -> None:
    if change < 0:
        rows = min(rows, 1 + (across - 1) // -change)
    assert raw.beads(rows, across, change) == len(sides(rows, across, change))


@given(st.integers(1, 20), st.integers(1, 20), sizes, sizes)
def test_extent_by_laying_the_net(rows: int, across: int, pitch: float, outside: float) -> None:
    """Upright beads bound the width, lying ones the length; each reaches half its outside out."""
    wide, long = bands.spans(
        (x * pitch, (y + 0.5) * pitch, outside, 0.0)
        if upright
        else ((x + 0.5) * pitch, y * pitch, 0.0, outside)
        for x, y, upright in sides(rows, across, 0)
    )
    assert flat.extent(pitch, across + 1, outside) == pytest.approx(wide)
    assert rows * pitch + outside == pytest.approx(long)


def deepest(pitch: float, length: float, outside: float) -> float:
    """How far one oval on a side reaches into the next one's, round a corner: below 0 they gape.

    The lying bead's middle is half a pitch along the side, the upright one's half a pitch up it.
    """
    values = []
    for step in range(2000):
        angle = 2 * math.pi * step / 2000
        x = pitch / 2 + length / 2 * math.cos(angle)
        y = outside / 2 * math.sin(angle)
        values.append(1 - math.hypot(x / (outside / 2), (y - pitch / 2) / (length / 2)))
    return max(values)


@given(sizes, st.floats(0.5, 2.0))
def test_ovals_touch_at_the_pitch(length: float, ratio: float) -> None:
    outside = length / ratio
    touching = raw.pitch(length, outside, 1.0)
    assert deepest(touching, length, outside) == pytest.approx(0, abs=1e-3)
    assert deepest(touching * 0.97, length, outside) > 1e-3
    assert deepest(touching * 1.03, length, outside) < -1e-3


@pytest.mark.parametrize(
    ("length", "outside"), [(1.1, 1.5), (1.45, 2.1), (2.1, 3.0), (1.3, 1.6), (2.6, 3.0)]
)
def test_the_form_with_the_slant_radius_lies_within_the_hand(length: float, outside: float) -> None:
    """2 l d / sqrt(l^2 + d^2), ovals that meet on the slant, 1.00 to 1.15 times: one middle."""
    slant = 2 * length * outside / math.hypot(length, outside)
    tight, loose = raw.pitch(length, outside, 0.95), raw.pitch(length, outside, 1.10)
    assert tight < 1.075 * slant < loose


def test_quantities_of_a_band(installed: Host) -> None:
    found = bands.middles(installed, f"{RAW}, across: 5, rows: 60")
    unit = math.hypot(1.45, 2.1) * 1.02
    thread = 60 * (5 * 6 + 4) * (0.61 * 1.45 + 0.39 * unit)  # from row to row through four beads
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "width": round(5 * unit + 2.1, 2),
        "thickness": 2.1,
        "outside": 2.1,
        "rise": round(unit, 2),
        "length": round(60 * unit + 2.1, 2),
        "rows": 60,
        "beads": 5 * 61 + 60 * 6,
        "mass": round(665 / 110, 2),
        "thread": round(thread, 2),
        "along": round(60 * unit + 2.1, 2),
    }


def test_the_sides_may_be_of_another_bead(installed: Host) -> None:
    """Cubes of 3 mm along, 11/0 across: each way the ovals of both beads touch."""
    found = bands.middles(installed, f"{RAW}, sides: cube, across: 3, rows: 20")
    assert found["rise"] == pytest.approx(1.02 * math.hypot(3, 2.1))
    assert found["width"] == pytest.approx(3 * 1.02 * math.hypot(1.45, 3), rel=0.3)
    across, along = 21 * 3, 20 * 4
    assert found["beads"] == across + along
    plain = bands.middles(installed, f"{RAW}, across: 3, rows: 20")
    assert found["mass"] == pytest.approx(across / 110 + along / 16.7, rel=0.03)
    assert plain["rise"] < found["rise"]


def test_loops_of_five_take_four_new_beads_each(installed: Host) -> None:
    found = bands.middles(installed, f"{RAW}, loop: 5, across: 1, rows: 30")
    assert found["beads"] == 5 + 29 * 4
    assert found["rise"] == pytest.approx(1.02 * math.hypot(1.5 * 1.45, 2.1))
    corner = 0.39 * (1.02 * math.hypot(1.45, 2.1) - 1.45)
    assert found["thread"] == pytest.approx(30 * (7 * 1.45 + 6 * corner))  # two lie in one line


def test_two_needles_share_the_way_round_a_unit(installed: Host) -> None:
    """Each goes through its own side and through the bead in which both cross."""
    one = bands.middles(installed, f"{RAW}, across: 1, rows: 40")
    two = bands.middles(installed, f"{RAW}, needles: 2, across: 1, rows: 40")
    each = 0.61 * 1.45 + 0.39 * 1.02 * math.hypot(1.45, 2.1)
    assert one["thread"] == pytest.approx(40 * 6 * each)
    assert two["thread"] == pytest.approx(40 * 4 * each)
    assert one["beads"] == two["beads"] == 4 + 39 * 3


def test_tight_and_loose_bound_the_width(installed: Host) -> None:
    found = bands.found(installed, "beads: cube, stitch: right-angle weave, across: 4, rows: 9")
    side = math.hypot(3, 3)
    assert found["band.width"].worst == pytest.approx((4 * side * 0.95 + 3, 4 * side * 1.10 + 3))


def test_length_gives_the_rows_it_came_from(installed: Host) -> None:
    woven = bands.middles(installed, f"{RAW}, across: 3, rows: 60")
    told = bands.middles(installed, f"{RAW}, across: 3, length: {woven['length']} mm")
    assert told["rows"] == pytest.approx(60)
    assert told["beads"] == pytest.approx(woven["beads"])


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "across: 4, rows: 5, each_row: -1",
            [
                "`band` starts with 4 in a row and loses 1 each row, which leaves none before row"
                " 5: write `rows: 4` or fewer"
            ],
        ),
        (
            "across: 5, rows: 7, loop: 3",
            ["`band` has `loop: 3`, too few to share sides: write `loop: 4` or more"],
        ),
        (
            "across: 3, rows: 7, loop: 5",
            [
                "`band` has loops of 5, whose sides differ, so that they lie in one line: write"
                " `across: 1`, `loop: 4` or `loop: 6`"
            ],
        ),
        (
            "across: 3, rows: 3, loop: 6, each_row: 1",
            ["`band` is shaped by units of 4 beads: take `loop` or `each_row` out"],
        ),
        ("across: 1, rows: 30", []),
    ],
)
def test_what_it_refuses(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"{RAW}, {band}") == says


def listed(beads: str, each: str, rest: str) -> str:
    return f"stitch: right-angle weave, beads: [{beads}], one_for: each {each}, {rest}"


@pytest.mark.parametrize(("rows", "across"), [(1, 1), (7, 1), (6, 2), (5, 3), (4, 4)])
def test_each_unit_has_the_four_beads_of_its_sides(rows: int, across: int, installed: Host) -> None:
    """Walked over a net: every unit has one bead of each, and as many are taken in all."""
    four = ("seed", "tube", "tile", "cube")
    fields = listed(", ".join(four), "side", f"across: {across}, rows: {rows}")
    part = bands.part(installed, fields)
    laid: Counter[str] = Counter()
    for column, row, upright in sides(rows, across, 0):
        laid[bead_of_unit(part, row, column) if upright else bead_of_unit(part, row)] += 1
    for column in range(across):
        for row in range(rows):
            ring = [bead_of_unit(part, row), bead_of_unit(part, row + 1)]
            ring += [bead_of_unit(part, row, column), bead_of_unit(part, row, column + 1)]
            assert sorted(ring) == sorted(four)
    assert bead_mix(part) == laid


def test_sides_of_two_beads_are_the_same_said_otherwise(installed: Host) -> None:
    both = "across: 2, length: 15 cm"
    listed_ = bands.middles(installed, listed("seed, cube, seed, cube", "side", both))
    named = bands.middles(installed, f"{RAW}, sides: cube, {both}")
    for what in ("rise", "width", "length", "rows", "beads"):
        assert listed_[what] == pytest.approx(named[what])


def test_a_chain_whose_units_swell(installed: Host) -> None:
    """Four beads for the first unit, three for each after it; each as long as its own."""
    fields = listed("{repeat: 4, of: [seed]}, cube, cube", "unit", "across: 1")
    found = bands.middles(installed, fields)
    alone = {
        bead: bands.middles(installed, f"{RAW}, across: 1, rows: 10".replace("seed", bead))
        for bead in ("seed", "cube")
    }
    assert found["rows"] == 6 and found["beads"] == 19
    assert bead_mix(bands.part(installed, fields)) == {"seed": 13, "cube": 6}
    by_units = 4 * alone["seed"]["rise"] + 2 * alone["cube"]["rise"]
    assert 6 * found["rise"] == pytest.approx(by_units, rel=0.03)
    assert found["width"] == pytest.approx(alone["cube"]["width"])
    assert found["thickness"] == 3


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        (
            listed("seed, cube", "side", "across: 1, length: 5 cm"),
            "`band` lists 2 beads, one for each side, and a unit has four: write four, such as"
            " `beads: [sand, kelp, sand, kelp]`",
        ),
        (
            listed("seed, cube, seed, cube", "side", "across: 3, rows: 3, each_row: -1"),
            "`band` lists a bead for each side of units of four in straight rows, and has"
            " `each_row`: take `each_row` or `one_for` out",
        ),
        (
            listed("seed, cube, seed", "unit", "across: 1, rows: 2"),
            "`band` lists 3 beads, one for each unit, and has `rows: 2`: write `rows: 3`, or list a"
            " bead for each of its units",
        ),
        (
            f"{RAW}, one_for: each side, across: 1, length: 5 cm",
            "`band` has `one_for: each side` and no list of beads: write one for each side, such"
            " as `beads: [sand, sand, kelp, kelp]`",
        ),
        (
            "stitch: loom, beads: [seed, cube], one_for: each unit, across: 3, warp: 0.2 mm,"
            " rows: 2",
            "`band` has `one_for`, which loom work does not use: take it out",
        ),
    ],
)
def test_what_listed_units_cannot_be(fields: str, says: str, installed: Host) -> None:
    assert says in bands.refused(installed, fields)
