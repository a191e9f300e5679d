"""Beads woven round a core: what they measure, and what they are where they are strung."""

from __future__ import annotations

import math

import pytest

from pages import keeper
from wellstrung.derived.taken import of_plan
from wellstrung.formulas import covered, nets
from wellstrung.judging.result import PlanResult
from wellstrung.subjects.counts import how_many

PLAN = """
plan: 1
title: Mooring post
piece: necklace
beads:
  brass: {type: cylinder, size: 11/0}
  pearl: 6 mm glass pearl
  post: {type: beaded bead, woven: ball}
parts:
  ball: {kind: beaded bead, stitch: tubular peyote, around: 28, beads: brass,
    core: {outside: 10 mm, hole: 2 mm, mass: 0.4 g}}
  strand: {kind: strand, stitch: strung, beads: [pearl, post, pearl], repeats: 9}
run: [strand]
"""


def of(*changes: tuple[str, str]) -> PlanResult:
    text = PLAN
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return keeper().check_text(text)


def middle(result: PlanResult, what: str) -> float:
    return result.quantities[what].middle


def test_a_ball_is_covered_as_its_middle_lines_are_long() -> None:
    """Against a sum over many thin rounds from hole to hole."""
    core, bead, hole, steps = 10.0, 1.6, 2.0, 20_000
    r, least = (core + bead) / 2, (hole + bead) / 2
    first = math.asin(least / r)
    turn = (math.pi - 2 * first) / steps
    rings = [2 * math.pi * r * math.sin(first + (n + 0.5) * turn) for n in range(steps)]
    assert covered.ball_way(core, bead, hole) == pytest.approx(r * turn * steps)
    assert covered.ball_area(core, bead, hole) == pytest.approx(sum(rings) * r * turn, rel=1e-6)


def test_a_tube_is_its_side_two_rims_and_two_ends() -> None:
    core, length, bead, hole, steps = 8.0, 20.0, 2.0, 2.0, 20_000
    turn = math.pi / 2 / steps
    rim = sum(
        2 * math.pi * (core / 2 + bead / 2 * math.sin((n + 0.5) * turn)) * bead / 2 * turn
        for n in range(steps)
    )
    end = math.pi * ((core / 2) ** 2 - ((hole + bead) / 2) ** 2)
    whole = math.pi * (core + bead) * length + 2 * (rim + end)
    assert covered.tube_area(core, length, bead, hole) == pytest.approx(whole, rel=1e-6)


def test_a_long_tube_takes_as_many_beads_as_a_rope() -> None:
    long = of(("outside: 10 mm", "length: 400 mm, outside: 10 mm"), ("around: 28", "around: 30"))
    rope = 400 / middle(long, "ball.rise") * 15
    assert middle(long, "ball.beads") == pytest.approx(rope, rel=0.1)


def test_what_is_strung_is_as_large_and_as_heavy_as_it_was_woven() -> None:
    result = of()
    assert middle(result, "ball.outside") == pytest.approx(10 + 2 * 1.6)
    longer = middle(of(("pearl, post, pearl", "pearl, post, post, pearl")), "strand.length")
    assert longer - middle(result, "strand.length") == pytest.approx(
        9 * middle(result, "ball.length"), rel=0.02
    )
    heavier = middle(result, "strand.mass") - middle(of(("post, pearl]", "pearl]")), "strand.mass")
    assert heavier == pytest.approx(9 * middle(result, "ball.mass"), rel=0.02)


def test_each_takes_its_beads_and_a_core_and_none_is_bought() -> None:
    result = of()
    ask = result.ask
    assert ask is not None
    plan = ask.plan
    assert how_many(plan, plan.parts["ball"]) == 9
    taken = {thing.name: thing.need for thing in of_plan(ask)}
    assert "post" not in taken
    assert taken["core of ball"].middle == 9  # type: ignore[union-attr]
    each = middle(result, "ball.beads")
    assert taken["brass"].middle == pytest.approx(9 * each)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("repeats: 9", "length: 20 cm"), "write `count` or `repeats` in place of its `length`"),
        (("beads: brass", "beads: post"), "`post` is a beaded bead, and `ball` is woven"),
        (("woven: ball", "woven: strand"), "`woven` takes a beaded bead"),
    ],
)
def test_what_cannot_be_strung_or_counted_is_refused(change: tuple[str, str], says: str) -> None:
    assert any(says in slip.says for slip in of(change).remarks)


NET = (
    ("type: cylinder", "type: round, make: Japanese"),
    ("tubular peyote, around: 28", "tubular netting, around: 12, loop: 5"),
    ("10 mm", "20 mm"),
)


def test_a_net_is_spread_by_its_ball_and_narrows_to_the_holes() -> None:
    """Against a sum over thin zones; where its meshes close, the faces of beads cover what is left.

    No published figure was found for the beads of a netted ball.
    """
    result = of(*NET)
    across, side, length, outside, steps = 22.1, middle(result, "ball.side"), 1.45, 2.1, 20_000
    opened = middle(result, "ball.opened")
    assert opened * side == pytest.approx(across * math.tan(math.pi / 24))
    shut = nets.closed(side, 5, length, outside)
    end = middle(result, "ball.way") / across
    beads, turn = 12.0, end / steps
    for n in range(steps):
        wide = opened * math.cos((n + 0.5) * turn)
        if wide > shut:  # a loop a round at every point
            beads += 2 * 60 * turn * across / 2 / (side * math.sqrt(1 - wide**2))
        else:
            zone = math.pi * across * math.cos((n + 0.5) * turn) * turn * across
            beads += zone * nets.FULL / (length * outside)
    assert middle(result, "ball.beads") == pytest.approx(beads, rel=0.01)
    assert nets.FULL * middle(result, "ball.area") / (length * outside) > beads


@pytest.mark.parametrize(("points", "says"), [(6, "does not close round"), (15, "gapes round")])
def test_a_net_with_too_few_or_too_many_points(points: int, says: str) -> None:
    [remark] = [
        one
        for one in of(*NET, ("around: 12", f"around: {points}")).remarks
        if one.rule == "bezel-count"
    ]
    assert says in remark.says
    assert remark.level == "error"


def test_fewer_points_are_spread_wider() -> None:
    few, many = of(*NET, ("around: 12", "around: 9")), of(*NET)
    assert middle(few, "ball.opened") > middle(many, "ball.opened")
    assert middle(few, "ball.beads") < middle(many, "ball.beads")


def test_a_core_that_nobody_weighed_leaves_checks_open() -> None:
    result = of((", mass: 0.4 g", ""), ("repeats: 9", "repeats: 9, thread: flexible wire 0.38 mm"))
    assert not result.failures, result.failures
    open_fields = [field for check in result.unjudged for field in check.missing]
    assert any("core.mass" in field for field in open_fields), open_fields
