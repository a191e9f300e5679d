"""Woven work as drawn: as many beads as the plan counts, whatever the stitch."""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

import pytest

from pages import bounds, digest, keeper, looks, parsed
from running import Pinned
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.beads import FILLED, lay
from wellstrung.drawing.looks.faces import Laid, rows_of
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.woven import cloth_of, worked
from wellstrung.drawing.pen import Pen
from wellstrung.model.looks import Weave
from wellstrung.model.parts import Part

PLAN = """
plan: 1
title: A stretch of work
piece: bracelet
beads:
  reed: {{type: round, size: 11/0, make: Japanese}}
  sand: {{type: round, size: 8/0, make: Japanese}}
  tile: {{type: two-hole, size: 5 mm}}
parts:
  work: {part}
run: [work]
"""


class Work(NamedTuple):
    """A part, and which share of its beads is seen from the front."""

    fields: str
    seen: float = 1.0


BAND, ROPE = "kind: woven band, beads: reed", "kind: woven rope, beads: reed"
#: stretches of work in every stitch that weaves beads
WORKS = {
    "tubular peyote": [
        Work(f"{ROPE}, around: 12, rounds: 20", 0.5),
        Work(f"{ROPE}, each_round: 4, rounds: 7", 0.5),
        Work("kind: pouch, beads: reed, around: 40, rounds: 12", 0.5),
        Work(
            "kind: woven rope, beads: [reed, reed, sand, sand, reed, reed], one_for: each column,"
            " rounds: 40",
            0.5,
        ),
    ],
    "odd tubular peyote": [Work(f"{ROPE}, around: 7, rounds: 20", 4 / 7)],
    "tubular herringbone": [
        Work(f"{ROPE}, around: 6, rounds: 12", 0.5),
        Work("kind: woven rope, beads: [reed, sand, sand], one_for: each round, around: 6", 0.5),
    ],
    "twisted herringbone": [Work(f"{ROPE}, around: 8, rounds: 12", 0.5)],
    "tubular square": [Work(f"{ROPE}, around: 8, rounds: 12", 0.5)],
    "slip-stitch bead crochet": [Work(f"{ROPE}, around: 6, rounds: 12", 0.5)],
    # the face that is up of a rope of cubes: of the eight beads of each one across, two along, and
    # two end on
    "cubic right-angle weave": [Work(f"{ROPE}, rounds: 12", (5 * 12 + 3) / (8 * 12 + 4))],
    "spiral rope": [
        Work(
            "kind: woven rope, core_bead: sand, outer: [reed, reed, reed], core_at_start: 3,"
            " rounds: 20"
        )
    ],
    "flat spiral": [
        Work("kind: woven rope, core_bead: sand, outer: [reed, reed, reed], rounds: 20"),
    ],
    "Dutch spiral": [
        Work(
            "kind: woven rope, beads: [reed, sand, reed], outer: [reed, reed, reed], rounds: 20",
            0.5,
        )
    ],
    "Russian spiral": [
        Work("kind: woven rope, beads: [sand, reed, reed, reed], around: 3, rounds: 20", 0.5)
    ],
    "beaded braid": [
        Work("kind: braid, warps: 16, beads: reed, cord: {outside: 1 mm}, length: 36 mm", 0.5)
    ],
    "8-warp beaded braid": [
        Work("kind: braid, beads: reed, cord: {outside: 1 mm}, length: 24 mm", 0.5)
    ],
    "flat peyote": [
        Work(f"{BAND}, across: 8, rows: 10"),
        Work(f"{BAND}, across: 7, rows: 10"),
        Work(f"{BAND}, across: 8, bead_up: 2, rows: 10"),
        Work(f"{BAND}, across: 9, each_row: -1, rows: 5"),
        Work(f"{BAND}, each_row: {{mirror: [2, 3, 4]}}"),
    ],
    "flat herringbone": [
        Work(f"{BAND}, across: 8, rows: 9"),
        Work(f"{BAND}, across: 6, between: 2, rows: 9"),
    ],
    "brick": [
        Work(f"{BAND}, across: 9, rows: 8"),
        Work(f"{BAND}, across: 9, each_row: -1, rows: 8"),
        Work(f"{BAND}, across: 2, each_row: 1, rows: 5"),
        Work(f"{BAND}, each_row: [2, 3, 4, 4, 4, 2]"),
    ],
    "ladder": [Work(f"{BAND}, across: 2, rows: 9"), Work(f"{BAND}, across: 1, rows: 4")],
    "two-hole strung": [
        Work("kind: woven band, beads: tile, across: 1, rows: 9"),
    ],
    "square": [Work(f"{BAND}, across: 5, rows: 9"), Work(f"{BAND}, each_row: [5, 4, 6]")],
    "loom": [Work(f"{BAND}, across: 9, rows: 12")],
    "right-angle weave": [
        Work(f"{BAND}, across: 3, rows: 6"),
        Work(f"{BAND}, across: 4, each_row: -1, rows: 4"),
        Work(f"{BAND}, across: 2, each_row: 1, rows: 3"),
        Work(f"{BAND}, each_row: [1, 3, 2]"),
        Work(f"{BAND}, across: 2, sides: sand, rows: 4"),
        Work(
            "kind: woven band, beads: [reed, sand, reed, sand], one_for: each side, across: 2,"
            " rows: 5"
        ),
        Work("kind: woven band, beads: [reed, sand, sand], one_for: each unit, across: 1"),
        Work(f"{BAND}, across: 1, loop: 5, rows: 6"),
        Work(f"{BAND}, across: 2, loop: 6, rows: 5"),
    ],
    "hexagon weave": [
        Work(f"{BAND}, across: 3, rows: 6"),
        Work(f"{BAND}, across: 1, rows: 1"),
        Work(f"{BAND}, across: 1, rows: 5"),
    ],
    "netting": [
        Work(f"{BAND}, across: 4, loop: 5, rows: 6"),
        Work(f"{BAND}, across: 3, loop: 3, rows: 2"),
    ],
    "daisy chain": [
        Work(f"{BAND}, across: 1, loop: 8, rows: 9"),
        Work(f"{BAND}, across: 1, loop: 6, rows: 4"),
    ],
    "Saint Petersburg chain": [
        Work(f"{BAND}, across: 1, rows: 9", 54 / 56),
        Work(f"{BAND}, across: 2, rows: 9", 99 / 103),
    ],
    "ladder between cords": [
        Work(BAND + ", across: 1, rows: 9, cords: {outside: 2 mm}"),
        Work(BAND + ", across: 2, rows: 9, cords: {outside: 2 mm}"),
    ],
    "chevron chain": [
        Work(f"{BAND}, loop: 10, rows: 9"),
        Work(f"{BAND}, loop: 16, rows: 4"),
    ],
    "vertical netting": [Work(f"{BAND}, across: 3, loop: 7, rows: 8")],
    "tubular netting": [
        Work(f"{ROPE}, around: 3, loop: 5, rounds: 12", 0.5),
        Work(f"{ROPE}, around: 4, loop: 3, rounds: 15", 0.5),
    ],
}


class Drawn(NamedTuple):
    """A part as drawn: its sizes, its drawing, and its length."""

    sizes: Sizes
    part: Part
    tree: ElementTree.Element
    length: float

    @property
    def seen(self) -> int:
        """How many beads are drawn."""
        return len(looks(self.tree, "bead"))

    @property
    def counted(self) -> float:
        """How many the plan counts."""
        return self.sizes.ask.of(self.part, "beads").middle

    @property
    def rows(self) -> list[list[Laid]]:
        """Where its beads lie."""
        look = self.part.stitch.look if self.part.stitch is not None else None
        assert isinstance(look, Weave)
        cloth = cloth_of(self.sizes, self.part, look, 0.0, self.length)
        assert cloth is not None
        return list(rows_of(cloth))


def drawn(stitch: str, fields: str, start: float = 0.0, share: float = 1.0) -> Drawn:
    """A part from a share of its length on, and a share of it."""
    result = keeper().check_text(PLAN.format(part=f"{{{fields}, stitch: {stitch}}}"))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    part, canvas, sizes = result.ask.plan.parts["work"], Canvas(), Sizes(result.ask)
    length = result.ask.of(part, "length").middle
    worked(Pen(canvas), sizes, part, length * share, length * start)
    return Drawn(sizes, part, parsed(canvas.svg("t", "a", "piece")), length)


EVERY = [(stitch, work) for stitch, works in WORKS.items() for work in works]


def test_every_stitch_that_weaves_beads_is_held_here() -> None:
    weaves = {
        name
        for name, stitch in keeper().installed.stitches.items()
        if isinstance(stitch.look, Weave)
    }
    assert weaves == set(WORKS)
    assert all(stitch.look is not None for stitch in keeper().installed.stitches.values())


@pytest.mark.parametrize(("stitch", "work"), EVERY)
def test_as_many_beads_are_drawn_as_the_plan_counts(stitch: str, work: Work) -> None:
    whole = drawn(stitch, work.fields)
    assert whole.seen == pytest.approx(whole.counted * work.seen, abs=1)


def test_no_bead_moves_unseen(pinned: Pinned) -> None:
    """Look at the work that changed, and `pytest --rewrite` accepts it."""
    lines = [
        f"{stitch}, {work.fields}: {digest(drawn(stitch, work.fields).tree)}\n"
        for stitch, work in EVERY
    ]
    pinned(Path(__file__).with_name("faces.txt"), "".join(lines))


@pytest.mark.parametrize(("stitch", "work"), EVERY)
@pytest.mark.parametrize("start", [0.0, 0.25, 0.5])
def test_of_a_stretch_the_rows_that_lie_in_it_are_drawn(
    stitch: str, work: Work, start: float
) -> None:
    """What a break cuts off is left out, and a row or a loop that it cuts through."""
    half, whole = drawn(stitch, work.fields, start, 0.5), drawn(stitch, work.fields)
    inside = sum(
        start * whole.length <= one.along <= (start + 0.5) * whole.length
        for row in whole.rows
        for one in row
    )
    through = max(sum(len(row) for row in whole.rows[n : n + 2]) for n in range(len(whole.rows)))
    assert inside - 2 * through <= half.seen <= inside


@pytest.mark.parametrize(("stitch", "work"), EVERY)
def test_a_stretch_beyond_a_break_goes_on_with_the_beads_of_the_whole(
    stitch: str, work: Work
) -> None:
    """Of a repeat the same bead lies at each spot, wherever the stretch begins."""
    repeat = ["reed", "sand", "sand", "reed", "reed"]
    if stitch == "daisy chain":  # it repeats a daisy with its middle
        repeat = ["sand"] * int(work.fields.partition("loop: ")[2][0]) + ["reed"]
    fields = work.fields.replace("beads: reed", f"beads: [{', '.join(repeat)}]")
    half, whole = drawn(stitch, fields, 0.5, 0.5), drawn(stitch, fields)
    there = {spot(bead): bead.get("class") for bead in looks(whole.tree, "bead")}
    for bead in looks(half.tree, "bead"):
        x, y = spot(bead)
        near = [
            look for at, look in there.items() if math.dist(at, (x + whole.length / 2, y)) < 0.01
        ]
        assert bead.get("class") in near


def test_each_daisy_has_its_middle_among_its_petals() -> None:
    """Not the ninth bead of a mix that starts anywhere."""
    fields = f"{BAND.replace('beads: reed', 'beads: {sand: 8, reed: 1}')}, across: 1, loop: 8"
    colours = [
        bead.get("class") for bead in looks(drawn("daisy chain", f"{fields}, rows: 3").tree, "bead")
    ]
    petals, middles = set(colours[: 3 * 8]), set(colours[3 * 8 :])  # a middle lies over its ring
    assert len(petals) == len(middles) == 1 and petals != middles


def spot(bead: ElementTree.Element) -> tuple[float, float]:
    """The middle of a bead as drawn."""
    box = bounds(bead)
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2


def test_brick_stitch_is_as_wide_as_it_is_counted() -> None:
    """Nine across and not ten, though straight edges step by half a bead."""
    work = drawn("brick", f"{BAND}, across: 9, rows: 8")
    assert (work.seen, work.counted) == (72, 72)
    assert [len(row) for row in work.rows] == [9] * 8
    lefts = [row[0].across for row in work.rows]
    step = work.rows[0][1].across - work.rows[0][0].across
    assert [left - lefts[0] for left in lefts] == pytest.approx([0, step / 2] * 4)


def test_rows_that_are_listed_lie_half_a_bead_aside_or_in_columns() -> None:
    rows = drawn("brick", f"{BAND}, each_row: [3, 4, 4]").rows
    step = rows[0][1].across - rows[0][0].across
    lefts = [(row[0].across - rows[0][0].across) / step for row in rows]
    assert lefts == pytest.approx([0, -0.5, 0])


def turns(stitch: str, fields: str) -> list[list[float]]:
    """How the holes lie of each row's beads, degrees from along the work."""
    return [[round(math.degrees(one.turn), 3) for one in row] for row in drawn(stitch, fields).rows]


def test_holes_run_as_the_stitch_lays_them() -> None:
    assert {turn for row in turns("brick", f"{BAND}, across: 4, rows: 4") for turn in row} == {0}
    for stitch in ("flat peyote", "square", "loom", "ladder"):
        rows = turns(stitch, f"{BAND}, across: 4, rows: 4")
        assert {turn for row in rows for turn in row} == {90}, stitch


def test_the_pairs_of_herringbone_lean_to_each_other_and_twisted_all_one_way() -> None:
    plain = turns("tubular herringbone", f"{ROPE}, around: 8, rounds: 6")
    assert all(row == [18, -18, 18, -18] for row in plain)
    rows = drawn("twisted herringbone", f"{ROPE}, around: 8, rounds: 6").rows
    assert len({one.turn for row in rows for one in row}) == 1
    assert len({round(row[0].across, 3) for row in rows}) > 3  # the stacks wind round the tube


def test_rings_of_right_angle_weave_have_holes_that_turn() -> None:
    rows = turns("right-angle weave", f"{BAND}, across: 1, rows: 1")
    assert [turn for row in rows for turn in row] == [90, 0, 0, 90]
    cubes = drawn("cubic right-angle weave", f"{ROPE}, rounds: 3").rows
    assert [sum(one.end_on for one in row) for row in cubes] == [2, 2, 2, 2]


def test_the_legs_of_netting_meet_in_shared_beads() -> None:
    rows = drawn("netting", f"{BAND}, across: 2, loop: 5, rows: 2").rows
    shared = [[one for one in row if one.depth == 0] for row in rows]
    assert [len(row) for row in shared] == [3, 2, 3]
    legs = [[one for one in row if one.depth < 0] for row in rows]
    assert [len(row) for row in legs] == [0, 8, 8]
    assert sum(one.turn for one in legs[1]) == pytest.approx(0)


@pytest.mark.parametrize("loop", [3, 5, 9])
def test_the_beads_of_a_net_are_drawn_as_large_as_they_are(loop: int) -> None:
    """A leg leads straight from shared bead to shared bead, its beads no shorter and no thinner."""
    work = drawn("netting", f"{BAND}, across: 3, loop: {loop}, rows: 6")
    length, outside = work.sizes.bead("reed")
    for row in work.rows:
        for one in row:
            assert one.long >= FILLED * length and one.wide >= FILLED * outside
    tops = [one for one in work.rows[1] if one.shared]
    legs = [one for one in work.rows[1] if not one.shared]
    at = work.rows[0][0].along
    for leg in legs:
        ends = [leg.spot(way * 100, 0) for way in (-1, 1)]
        slope = (ends[1][1] - ends[0][1]) / (ends[1][0] - ends[0][0])
        across = leg.across + slope * (tops[0].along - leg.along)
        assert min(abs(across - top.across) for top in tops) < 1e-6
        base = leg.across - slope * (leg.along - at)
        assert min(abs(base - one.across) for one in work.rows[0]) < 1e-6


def test_what_lies_nearer_to_the_eye_is_drawn_over_the_rest() -> None:
    work = drawn("netting", f"{BAND}, across: 2, loop: 5, rows: 2")
    shared = {(one.along, one.across) for row in work.rows for one in row if one.depth == 0}
    last = [spot(bead) for bead in looks(work.tree, "bead")][-len(shared) :]
    assert all(min(math.dist(at, other) for other in shared) < 0.01 for at in last)


def test_a_bead_that_has_more_room_than_it_needs_is_drawn_no_larger_than_it_is() -> None:
    sizes = drawn("square", f"{BAND}, across: 5, rows: 9").sizes
    for as_seen, size in ((False, sizes.bead("reed")), (True, (9 * FILLED, 9 * FILLED))):
        canvas = Canvas()
        lay(Pen(canvas), sizes, "reed", Laid(0, 0, 9, 9), as_seen=as_seen)
        box = bounds(looks(parsed(canvas.svg("t", "a", "piece")), "bead")[0])
        assert (box.right - box.left, box.bottom - box.top) == pytest.approx(size, rel=1e-3)


def test_the_beads_of_a_tube_turn_away_from_its_middle() -> None:
    work = drawn("tubular peyote", f"{ROPE}, around: 24, rounds: 8")
    for row in work.rows:
        gaps = [other.across - one.across for one, other in pairwise(row)]
        middle = len(gaps) // 2
        assert gaps[0] < gaps[1] < gaps[middle] and gaps[-1] < gaps[-2] < gaps[middle]
        nearest = max(row, key=lambda one: one.depth)
        assert abs(nearest.across) == min(abs(one.across) for one in row)


def test_beads_of_crochet_lie_on_their_side_each_round_half_a_bead_aside() -> None:
    rows = drawn("slip-stitch bead crochet", f"{ROPE}, around: 6, rounds: 6").rows
    assert all(math.degrees(one.turn) > 45 for row in rows for one in row)
    assert rows[0][0].across == pytest.approx(rows[2][0].across)
    assert rows[0][0].across < rows[1][0].across < rows[0][1].across


def test_loops_of_a_spiral_rope_lie_round_its_core() -> None:
    fields = "kind: woven rope, core_bead: sand, outer: [reed, reed, reed], rounds: 20"
    work = drawn("spiral rope", fields)
    ask, part = work.sizes.ask, work.part
    core = [one for row in work.rows for one in row if one.core]
    assert len(core) == ask.of(part, "core_beads").middle
    assert {one.across for one in core} == {0}
    assert len(looks(work.tree, "b1")) == len(core), "the core is of sand, the second bead"
    assert [len([one for one in row if not one.core]) for row in work.rows] == [3] * 20
    sides = {one.across > 0 for row in work.rows for one in row if not one.core}
    assert sides == {True, False}


def test_thread_is_seen_where_the_stitch_shows_it() -> None:
    loom = drawn("loom", f"{BAND}, across: 9, rows: 4, warp: 0.25 mm")
    warps = [float(warp.get("height", "")) for warp in looks(loom.tree, "warp")]
    assert len(warps) == loom.sizes.ask.of(loom.part, "warps").middle
    assert warps == pytest.approx([0.25] * 10)
    for stitch in ("brick", "square", "ladder", "right-angle weave"):
        assert looks(drawn(stitch, f"{BAND}, across: 4, rows: 4").tree, "thread"), stitch
    assert looks(drawn("netting", f"{BAND}, across: 4, loop: 9, rows: 4").tree, "thread")


def test_beads_named_for_a_whole_loop_lie_in_their_places() -> None:
    """The shared bead in the middle; legs as long as their own beads are, from both sides alike."""
    fields = "kind: woven band, across: 2, loop: 5, rows: 2, beads: [reed, sand, sand, sand, reed]"
    work = drawn("netting", fields)
    reed, sand = work.sizes.bead("reed"), work.sizes.bead("sand")
    for one in (one for row in work.rows for one in row):
        assert (one.long, one.wide) == pytest.approx(reed if one.picked in (0, 4) else sand)
        assert one.shared == (one.picked == 2)
    at = {spot(bead): bead.get("class", "") for bead in looks(work.tree, "bead")}
    outer = [one for row in work.rows for one in row if one.picked in (0, 4)]
    for one in outer:
        near = min(at, key=lambda there: math.dist(there, (one.along, one.across)))
        assert " b0 " in f" {at[near]} "
