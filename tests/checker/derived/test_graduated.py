"""A graduated fringe: a drop that lists a count for each place along an edge."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.quantity.value import Quantity

CHECKER = Checker(host.load(), quantities=True)
PLAN = """plan: 1
title: Fringe
piece: brooch
beads:
  kelp: {type: round, size: 8/0, make: Japanese}
  sand: {type: round, size: 11/0, make: Japanese}
parts:
  panel: {kind: woven band, stitch: brick, beads: kelp, across: 5, rows: 4}
  leg: {kind: bead drop, beads: kelp, count: COUNT, turn: sand}
run: [panel]
hung:
  - {part: leg, from: {part: panel, eyes: last edge}, by: thread}
"""
ONE_BY_ONE = (3, 5, 7, 5, 3)


def worked_out(count: object) -> dict[str, Quantity]:
    result = CHECKER.check_text(PLAN.replace("COUNT", str(count)))
    assert not result.failures
    assert "fringe-count" not in {remark.rule for remark in result.remarks}
    return dict(result.quantities)


@pytest.mark.parametrize("what", ["beads", "mass", "thread"])
def test_five_times_the_mean_is_the_sum_of_the_drops(what: str) -> None:
    fringe = worked_out("{mirror: [3, 5, 7]}")[f"leg.{what}"].middle
    drops = [worked_out(f"[{n}, {n}, {n}, {n}, {n}]")[f"leg.{what}"].middle for n in ONE_BY_ONE]
    assert 5 * fringe == pytest.approx(sum(drops))


def test_it_is_as_long_as_its_longest_drop() -> None:
    assert worked_out([3, 5, 7, 5, 3])["leg.length"].middle == pytest.approx(
        worked_out([7, 7, 7, 7, 7])["leg.length"].middle
    )


def test_a_mirrored_list_is_the_whole_list() -> None:
    mirrored, listed = worked_out("{mirror: [3, 5, 7]}"), worked_out(list(ONE_BY_ONE))
    for what in ("beads", "mass", "thread", "length"):
        assert mirrored[f"leg.{what}"].middle == listed[f"leg.{what}"].middle


def test_the_whole_fringe_is_in_the_mass_of_the_piece() -> None:
    found = worked_out("{mirror: [3, 5, 7]}")
    whole = found["panel.mass"].middle + 5 * found["leg.mass"].middle
    assert found["piece.mass"].middle == pytest.approx(whole)


def test_the_beads_of_a_fringe_are_those_counted_by_hand() -> None:
    text = PLAN.replace("COUNT", "{mirror: [3, 5, 7]}")
    text += "supplies: [{bead: sand, count: 5}, {bead: kelp, count: 43}]\n"  # 20 + 23
    assert "beads-enough" not in {remark.rule for remark in CHECKER.check_text(text).remarks}
    short = CHECKER.check_text(text.replace("count: 43", "count: 42")).remarks
    assert "beads-enough" in {remark.rule for remark in short}
