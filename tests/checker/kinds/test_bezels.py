"""Bezels round stones that are not round: their rings, their sizes and how they are drawn."""

from __future__ import annotations

import math

import pytest

from pages import keeper, looks, parsed
from wellstrung.derived.taken import of_plan
from wellstrung.drawing.piece import drawings
from wellstrung.judging.result import PlanResult

PLAN = """
plan: 1
title: Harbour window
piece: pendant
beads:
  brass: {{type: cylinder, size: 11/0}}
  spray: {{type: round, size: 15/0, make: Japanese}}
parts:
  frame: {{kind: bezel, stitch: tubular peyote, around: {around},
    beads: [spray, brass, {row}, brass, spray],
    {more}stone: {{{stone}, edge: 1 mm}}}}
run: [frame]
"""


#: the side of a unit of right-angle weave, of ovals that touch
UNIT = math.hypot(1.3, 1.6)
#: a pass of its beads, with the corner to the next
PASS = 0.61 * 1.3 + 0.39 * 1.02 * UNIT


def of(stone: str, around: int = 40, row: str = "brass", more: str = "") -> PlanResult:
    result = keeper().check_text(PLAN.format(stone=stone, around=around, row=row, more=more))
    assert not result.failures and result.quantities, result.remarks
    return result


def middle(result: PlanResult, what: str) -> float:
    return result.quantities[f"frame.{what}"].middle


def test_a_ring_goes_round_an_oval_as_round_a_circle_with_the_same_way_round() -> None:
    oval = of("outside: 18 mm, width: 13 mm")
    girth = middle(oval, "perimeter") / math.pi
    circle = of(f"outside: {girth} mm")
    for what in ("around_least", "around_most", "around_behind"):
        assert middle(oval, what) == pytest.approx(middle(circle, what), rel=1e-6)
    # three of 15/0 and 17 of 11/0, twice (`Peyote Oval Bezels`, excerpt seen; its size is not)
    assert middle(oval, "around_least") < 40 < middle(oval, "around_most")


def test_it_stands_out_as_far_all_round() -> None:
    oval = of("outside: 18 mm, width: 13 mm")
    beyond = middle(oval, "outside") - 18
    assert middle(oval, "width") - 13 == pytest.approx(beyond)
    assert beyond == pytest.approx(2 * 1.6, abs=0.3)
    circle = of("outside: 14 mm", 36)
    assert middle(circle, "outside") == middle(circle, "width") == middle(circle, "ring.outside")


def test_the_ring_of_print_goes_round_a_square_stone() -> None:
    """Four times 5 of 11/0 and 4 of 15/0 round a square of 12 mm with a pointed back."""
    mixed = "[brass, brass, brass, brass, brass, spray, spray, spray, spray]"
    square = of("shape: square, outside: 12 mm, corner: 2 mm, back: pointed", 36, mixed)
    assert middle(square, "girdle.length") == pytest.approx((2 * 1.3 + (5 * 1.3 + 4 * 1.1) / 9) / 3)
    assert middle(square, "around_behind") < 36 < middle(square, "around_most")


@pytest.mark.parametrize("shape", ["oval", "square", "pear"])
def test_its_middle_round_is_drawn_about_its_outline(shape: str) -> None:
    result = of(f"shape: {shape}, outside: 18 mm, width: 14 mm", 40, "[brass, spray]")
    tree = parsed(drawings(result)[-1].svg)
    assert len(looks(tree, "b0")) + len(looks(tree, "b1")) >= 18


def on_base(stitch: str, rows: int, around: int = 36) -> PlanResult:
    base = f"base: {{stitch: {stitch}, beads: brass, rows: {rows}}}"
    return of("outside: 14 mm, mass: 2 g", around, more=f"{base}, ")


@pytest.mark.parametrize(
    ("stitch", "rows", "beads", "tall", "column", "thread"),
    [
        # a bead of each round for each unit: its side and its bottom, and the top edge; a needle
        # goes round each unit and on through two beads
        ("right-angle weave", 1, 18 * 3, 1.02 * UNIT + 0.8, UNIT / 2, 18 * 6 * PASS),
        ("right-angle weave", 2, 18 * 5, 2.04 * UNIT + 0.8, UNIT / 2, 18 * 12 * PASS),
        ("ladder", 1, 36, 1.3 + 0.8, 1.6, 36 * (3 * 1.3 + 2 * 1.6)),
        ("ladder", 2, 72, 2.6 + 0.8, 1.6, 36 * (6 * 1.3 + 2 * 1.6)),
        ("square", 3, 108, 3 * 1.3 + 0.8, 1.6, 108 * (3 * 1.3 + 1.5 * 1.6)),
    ],
)  # fmt: skip
def test_rounds_grow_from_a_base(
    stitch: str, rows: int, beads: int, tall: float, column: float, thread: float
) -> None:
    plain, based = of("outside: 14 mm, mass: 2 g", 36), on_base(stitch, rows)
    assert middle(based, "base.beads") == beads
    assert middle(based, "length") - middle(plain, "length") == pytest.approx(tall)
    assert middle(based, "mass") - middle(plain, "mass") == pytest.approx(beads / 200, rel=0.06)
    assert middle(based, "thread") - middle(plain, "thread") == pytest.approx(thread)
    # as many as go round the stone and half a bead beyond it
    least, most = middle(based, "around_least"), middle(based, "around_most")
    assert least < math.pi * 15.6 / (column * 1.05) < most


def test_a_base_takes_its_beads() -> None:
    ask = on_base("square", 2).ask
    assert ask is not None
    beads = {thing.name: thing.need for thing in of_plan(ask)}
    # 18 a round: spray in two of its rounds, brass in three, and the base
    assert beads["spray"].middle == 36 and beads["brass"].middle == 54 + 72  # type: ignore[union-attr]
