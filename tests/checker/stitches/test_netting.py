"""Netting: against loops hung one by one, and the quantities of a part."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bands
import ropes
from wellstrung.formulas import nets, thread
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat

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
    assert nets.beads(rows, across, loop) == pytest.approx(counted, abs=0.5)
    if rows % 2 == 0:
        assert nets.beads(rows, across, loop) == counted


@given(loops, sizes, sizes, st.floats(1.0, 1.1), st.floats(0.0, 1.0))
def test_what_a_mesh_is_wide_and_tall(
    loop: int, length: float, outside: float, tension: float, share: float
) -> None:
    """A side keeps its length however it lies; it is the half loop, or longer where that jams."""
    side = nets.side(loop, length, outside, length, outside, tension)
    opened = nets.opened(share, nets.closed(side / tension, loop, length, outside))
    wide, tall = nets.across_mesh(side, opened), nets.along_mesh(side, opened)
    assert math.hypot(wide, tall) == pytest.approx(side)
    thin, thick = sorted((length, outside))
    legs = (loop - 1) / 2 * length
    assert legs + thin <= side / tension + 1e-9
    if 2 * wide * tall > 1.001 * loop * length * outside / nets.FULL:  # it is not jammed
        assert opened == pytest.approx(share) or side / tension <= legs + thick + 1e-9


@given(
    *(st.integers(1, 40), st.integers(1, 12), loops, sizes, sizes),
    st.floats(1.0, 1.1),
    st.floats(0.0, 1.0),
)
def test_beads_of_a_net_never_pass_what_fits(
    rows: int, across: int, loop: int, length: float, outside: float, tension: float, share: float
) -> None:
    """However it is laid, their faces cover less than the net, and solid peyote takes more."""
    side = nets.side(loop, length, outside, length, outside, tension)
    opened = nets.opened(share, nets.closed(side / tension, loop, length, outside))
    wide = nets.width(across, nets.across_mesh(side, opened), length)
    tall = rows * nets.along_mesh(side, opened) + outside
    beads = nets.beads(rows, across, loop)
    assert beads * length * outside < wide * tall
    columns = (wide - length) / flat.end_to_end(length, tension) + 1
    high = flat.side_by_side(outside, tension)
    assert beads < columns * ((tall - outside) / high + 1)


def test_a_net_of_large_loops_is_lighter_than_peyote(installed: Host) -> None:
    """18 in of 36 mm in 11/0: a band of solid peyote, as wide and as long, takes 5,430 beads."""
    net = bands.found(installed, f"{NET}, across: 5, loop: 5, length: 18 in")
    width = net["band.width"].middle
    assert width == pytest.approx(36.5, abs=1.0)
    peyote = bands.found(
        installed,
        f"beads: seed, stitch: flat peyote, across: {round(width / 1.5225)}, length: 18 in",
    )
    assert net["band.beads"].worst[1] < peyote["band.beads"].middle
    assert net["band.beads"].middle == pytest.approx(3413, abs=1)


def test_thread_by_following_the_needle() -> None:
    """A row of four loops of seven: seven new beads, then the shared bead of the row before."""
    path = 0.0
    for _ in range(4):
        path += 7 * 1.45 + 1.45 + 0.55 * 2.1
    assert 4 * 7 * thread.netting(1.45, 2.1, 7) == pytest.approx(path)


def test_quantities_of_a_net(installed: Host) -> None:
    found = bands.middles(installed, f"{NET}, across: 4, loop: 5, rows: 20")
    side = 1.05 * (2.9 + math.sqrt(2) * 1.45 * 2.1 / math.hypot(1.45, 2.1))
    half = side * math.sqrt(0.5)
    assert {
        name: round(value, 2) for name, value in found.items() if not name.startswith("piece")
    } == {
        "side": round(side, 2),
        "opened": 0.71,
        "width": round(8 * half + 1.45, 2),
        "thickness": 2.1,
        "outside": 2.1,
        "rise": round(half, 2),
        "length": round(20 * half + 2.1, 2),
        "rows": 20,
        "beads": 415.0,
        "mass": round(415 / 110, 2),
        "thread": round(415 * (1.45 * 6 / 5 + 0.231) + 20 * (2 * 1.45 + 0.6 * 2.1), 2),
        "along": round(20 * half + 2.1, 2),
    }


def test_wider_is_shorter(installed: Host) -> None:
    """One cause moves both: at its ends the net is narrow and long, or wide and short."""
    found = bands.found(installed, "beads: cube, stitch: netting, across: 2, loop: 7, rows: 10")
    wide, long = found["band.width"], found["band.length"]
    spread = next(cause for cause in wide.causes if cause.name == "spread of the net")
    assert spread in long.causes and spread in found["band.opened"].causes
    side = 1.05 * (9 + 3)
    for end, slant in ((-1, 35), (1, 55)):
        turn = math.radians(slant)
        assert wide.at({spread: end}) == pytest.approx(4 * side * math.sin(turn) + 3)
        assert long.at({spread: end}) == pytest.approx(10 * side * math.cos(turn) + 3)


def test_a_measured_width_says_how_far_it_is_opened(installed: Host) -> None:
    """Narrower than it would be laid square, it has fewer rows to the same length."""
    square = bands.middles(installed, f"{NET}, across: 4, loop: 5, length: 20 cm")
    drawn = bands.middles(
        installed, f"{NET}, across: 4, loop: 5, length: 20 cm, measured: {{width: 24 mm}}"
    )
    assert drawn["opened"] == pytest.approx((24 - 1.45) / 8 / square["side"], abs=1e-3)
    assert drawn["rise"] == pytest.approx(math.sqrt(square["side"] ** 2 - (22.55 / 8) ** 2))
    assert drawn["rows"] < square["rows"] and drawn["width"] == 24
    # what no net of such beads can be leaves it as wide, or as narrow, as they can lie
    for width in ("5 mm", "90 mm"):
        never = bands.middles(
            installed, f"{NET}, across: 4, loop: 5, length: 20 cm, measured: {{width: {width}}}"
        )
        assert 0.35 < never["opened"] < 0.95


def test_a_net_of_strands_hangs_long(installed: Host) -> None:
    """Woven from side to side the same meshes are drawn down, and two strands make a point."""
    found = bands.middles(
        installed, "beads: seed, stitch: vertical netting, across: 3, loop: 7, rows: 48"
    )
    side, turn = found["side"], math.radians(38)
    assert found["points"] == 24
    assert found["width"] == pytest.approx(6 * side * math.cos(turn) + 1.45)
    assert found["length"] == pytest.approx(48 * side * math.sin(turn) + 2.1)
    assert found["beads"] == nets.beads(48, 3, 7)
    deep = bands.middles(
        installed,
        "beads: seed, stitch: vertical netting, across: 3, loop: 7, rows: 48,"
        f" measured: {{width: {found['width']} mm}}",
    )
    assert deep["length"] == pytest.approx(found["length"])


def test_beads_named_for_a_whole_loop_lie_where_they_are_picked_up(installed: Host) -> None:
    """The bead in the middle of the list is shared: lace of two tubes in each loop."""
    long, short = (
        bands.middles(installed, f"stitch: netting, across: 2, loop: 5, rows: 6, beads: [{order}]")[
            "side"
        ]
        for order in ("seed, cube, seed, cube, seed", "seed, seed, cube, seed, cube")
    )
    aslant = math.sqrt(2) * 1.45 * 2.1 / math.hypot(1.45, 2.1)
    assert long == pytest.approx(1.05 * (1.45 + 3 + aslant))
    assert short == pytest.approx(1.05 * ((3 * 1.45 + 3) / 2 + 3))


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


@pytest.mark.parametrize("field", ["around", "each_round"])
def test_two_points_are_no_ring(installed: Host, field: str) -> None:
    rope = f"kind: woven rope, stitch: tubular netting, loop: 5, beads: seed, {field}: 2"
    assert ropes.told(installed, f"{rope}, length: 5 cm") == [
        f"`rope` has 2 points around, too few to close a ring: write `{field}: 3` or more"
    ]


@pytest.mark.parametrize(
    ("net", "shared"),
    [
        ("stitch: netting, across: 3, loop: 5, rows: 20", 4 + 20 * 3.5),
        ("stitch: vertical netting, across: 3, loop: 5, rows: 20", 4 + 20 * 3.5),
    ],
)
def test_a_bead_that_loops_share_is_counted_in_base_and_turns(
    installed: Host, net: str, shared: float
) -> None:
    """Crossings of the net are one bead, legs another: no share of all the beads gives that."""
    named = "beads: [seed, seed, cube, seed, seed]"
    result = Checker(installed, keep=True).check_text(bands.PLAN.replace("BAND", f"{net}, {named}"))
    assert result.ask is not None
    ask = result.ask
    needed = {name: ask.of(ask.plan.beads[name], "needed").middle for name in ("seed", "cube")}
    assert needed == {"seed": 20 * 3 * 4, "cube": shared}
    assert ask.get("band.beads").middle == sum(needed.values())
    mass = ask.get("band.mass").middle
    assert mass == pytest.approx(240 / 110 + shared / 16.7, rel=1e-3)
