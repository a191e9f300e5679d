"""Woven work as drawn: as many beads as the plan counts, whatever the stitch."""

from __future__ import annotations

from typing import NamedTuple

import pytest

from pages import keeper, looks, parsed
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.woven import worked
from wellstrung.drawing.pen import Pen
from wellstrung.model.looks import Weave

PLAN = """
plan: 1
title: A stretch of work
piece: bracelet
beads:
  reed: {{type: round, size: 11/0, make: Japanese}}
  sand: {{type: round, size: 8/0, make: Japanese}}
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
    ],
    "odd tubular peyote": [Work(f"{ROPE}, around: 7, rounds: 20", 4 / 7)],
    "tubular herringbone": [Work(f"{ROPE}, around: 6, rounds: 12", 0.5)],
    "twisted herringbone": [Work(f"{ROPE}, around: 8, rounds: 12", 0.5)],
    "slip-stitch bead crochet": [Work(f"{ROPE}, around: 6, rounds: 12", 0.5)],
    # the face that is up of a rope of cubes: a bead across and two along of the eight of each
    "cubic right-angle weave": [Work(f"{ROPE}, rounds: 12", (3 * 12 + 1) / (8 * 12 + 4))],
    # the core is covered: of 20 stitches with 3 beads at the start, 22 beads
    "spiral rope": [
        Work(
            "kind: woven rope, core_bead: sand, outer: [reed, reed, reed], core_at_start: 3,"
            " rounds: 20",
            60 / 82,
        )
    ],
    "8-warp beaded braid": [
        Work("kind: braid, beads: reed, cord: {outside: 1 mm}, length: 24 mm", 0.5)
    ],
    "flat peyote": [
        Work(f"{BAND}, across: 8, rows: 10"),
        Work(f"{BAND}, across: 7, rows: 10"),
        Work(f"{BAND}, across: 8, bead_up: 2, rows: 10"),
        Work(f"{BAND}, across: 9, each_row: -1, rows: 5"),
    ],
    "brick": [
        Work(f"{BAND}, across: 9, rows: 8"),
        Work(f"{BAND}, across: 9, each_row: -1, rows: 8"),
        Work(f"{BAND}, across: 2, each_row: 1, rows: 5"),
    ],
    "ladder": [Work(f"{BAND}, across: 2, rows: 9"), Work(f"{BAND}, across: 1, rows: 4")],
    "square": [Work(f"{BAND}, across: 5, rows: 9")],
    "loom": [Work(f"{BAND}, across: 9, rows: 12")],
    "right-angle weave": [
        Work(f"{BAND}, across: 3, rows: 6"),
        Work(f"{BAND}, across: 4, each_row: -1, rows: 4"),
        Work(f"{BAND}, across: 2, each_row: 1, rows: 3"),
    ],
    "netting": [
        Work(f"{BAND}, across: 4, loop: 5, rows: 6"),
        Work(f"{BAND}, across: 3, loop: 3, rows: 2"),
    ],
}


def drawn(stitch: str, fields: str) -> tuple[int, float]:
    """How many beads are drawn of a part, and how many the plan counts."""
    result = keeper().check_text(PLAN.format(part=f"{{{fields}, stitch: {stitch}}}"))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    part, canvas = result.ask.plan.parts["work"], Canvas()
    length = result.ask.of(part, "length").middle
    worked(Pen(canvas), Sizes(result.ask), part, length)
    tree = parsed(canvas.svg("t", "a", "piece"))
    return len(looks(tree, "bead")), result.ask.of(part, "beads").middle


def test_every_stitch_that_weaves_beads_is_held_here() -> None:
    weaves = {
        name
        for name, stitch in keeper().installed.stitches.items()
        if isinstance(stitch.look, Weave)
    }
    assert weaves == set(WORKS)
    assert all(stitch.look is not None for stitch in keeper().installed.stitches.values())


@pytest.mark.parametrize(
    ("stitch", "work"), [(stitch, work) for stitch, works in WORKS.items() for work in works]
)
def test_as_many_beads_are_drawn_as_the_plan_counts(stitch: str, work: Work) -> None:
    seen, counted = drawn(stitch, work.fields)
    assert seen == pytest.approx(counted * work.seen, abs=1)


def test_brick_stitch_is_as_wide_as_it_is_counted() -> None:
    """Nine across and not ten, though straight edges step by half a bead."""
    seen, counted = drawn("brick", f"{BAND}, across: 9, rows: 8")
    assert (seen, counted) == (72, 72)
