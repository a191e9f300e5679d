"""Outlines of what hangs, and which pieces hang where along a row of eyes."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.derived.of_plan import Quantities
from wellstrung.derived.outline import outline, side_by_side
from wellstrung.judging.checker import Checker
from wellstrung.model.build import build
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.reading.parser import read_text
from wellstrung.subjects.find import find
from wellstrung.subjects.hung import HungOnEyes, evenly

PLAN = """\
plan: 1
title: Edge
piece: earrings
beads:
  sky: {type: other, outside: 2 mm, length: 1.5 mm, hole: 0.8 mm, per_gram: 100}
  drip: {type: other, outside: 4 mm, length: 5 mm, hole: 0.9 mm, per_gram: 12}
parts:
  panel: {kind: woven band, stitch: brick, across: 9, beads: sky, rows: 8}
  plain: {kind: bead drop, beads: sky, count: 3, turn: drip}
  long: {kind: bead drop, beads: [sky, sky, drip]}
  graded: {kind: bead drop, beads: sky, count: {mirror: [2, 4, 6]}, turn: drip}
run: [panel]
hung:
"""


def built(lines: Sequence[str], checker: Checker) -> Plan:
    text = PLAN + "".join(
        f"  - {{part: {line}, from: {{part: panel, eyes: first edge}}, by: thread}}\n"
        for line in lines
    )
    host = checker.installed
    plan, faults = build(read_text(text, "edge.yaml"), host.kinds, host.stitches, checker.bench)
    assert plan is not None, faults
    return plan


def order(lines: Sequence[str], checker: Checker) -> dict[int, str]:
    (fringe,) = (one for one in find(built(lines, checker)) if isinstance(one, HungOnEyes))
    return {eye: f"{line.part.name} {n}" for eye, (line, n) in fringe.in_order.items()}


@pytest.mark.parametrize(
    ("lines", "hung"),
    [
        (["plain, times: 3"], {1: "plain 0", 5: "plain 1", 9: "plain 2"}),
        (["plain, times: 1"], {5: "plain 0"}),
        (
            ["long, at: [9, 1]", "plain, times: 2"],
            {1: "long 1", 2: "plain 0", 3: "plain 1", 9: "long 0"},
        ),
        (["plain, times: 4"], {n: f"plain {n - 1}" for n in range(1, 5)}),
        (["plain, times: 2", "long, times: 1"], {1: "plain 0", 5: "plain 1", 9: "long 0"}),
    ],
)
def test_what_hangs_where(lines: list[str], hung: dict[int, str], checker: Checker) -> None:
    assert order(lines, checker) == hung


@given(hung=st.integers(1, 60), eyes=st.integers(1, 60))
def test_an_even_fringe_is_even(hung: int, eyes: int) -> None:
    on = evenly(hung, eyes)
    assert set(on) <= set(range(1, eyes + 1))
    if len(on) == hung:
        # what is left over at either side differs by a bead at most
        assert abs((on[0] - 1) - (eyes - on[-1])) <= max(on.step - 1, 0)


def test_a_leg_is_as_wide_as_its_beads_at_their_heights(checker: Checker) -> None:
    ask = Quantities(built(["long"], checker))
    slabs = outline(ask.plan.parts["long"], 0, ask)
    assert [(one.top, one.foot, one.width.middle) for one in slabs] == [
        (0, 1.5, 2), (1.5, 3, 2), (3, 8, 4),
    ]  # fmt: skip


def test_a_turn_bead_hangs_with_its_hole_across(checker: Checker) -> None:
    ask = Quantities(built(["plain"], checker))
    foot = outline(ask.plan.parts["plain"], 0, ask)[-1]
    assert (foot.top, foot.foot, foot.width.middle) == (4.5, 8.5, 5)


def test_each_drop_of_a_graduated_fringe_has_its_own_outline(checker: Checker) -> None:
    ask = Quantities(built(["graded"], checker))
    drops = [len(outline(ask.plan.parts["graded"], n, ask)) for n in range(5)]
    assert drops == [3, 5, 7, 5, 3]


def test_two_meet_where_both_are_wide(checker: Checker) -> None:
    ask = Quantities(built(["graded"], checker))
    graded, long = ask.plan.parts["graded"], ask.plan.parts["long"]
    near, far = outline(graded, 0, ask), outline(graded, 2, ask)
    wide = side_by_side(near, outline(long, 0, ask))
    beside = side_by_side(near, far)
    assert wide is not None and wide.middle == pytest.approx(5 / 2 + 4 / 2)
    assert beside is not None and beside.middle == pytest.approx(5 / 2 + 2 / 2)
    assert side_by_side(near[:1], far[-1:]) is None


def test_installed_plan_names_as_many_eyes_as_hang(installed: Host) -> None:
    line = "part: long, from: {part: panel, eyes: first edge}, by: thread, at: [1, 2], times: 3"
    text = f"{PLAN}  - {{{line}}}\n"
    (remark,) = Checker(installed).check_text(text).remarks
    assert remark.says == (
        "`at` names 2 eyes for `long`, and 3 hang: write `times: 2`, or leave `times` out"
    )
    assert (remark.place.line, remark.place.column) == (14, 88)
