"""Beads of a list that is repeated over a count are counted as they are strung."""

from __future__ import annotations

import pytest

from wellstrung.derived import taken
from wellstrung.judging.checker import Checker
from wellstrung.lists.bags import bags
from wellstrung.plugins.host import Host

PLAN = """plan: 1
title: Fringe
piece: earrings
makes: 2
beads:
  kelp: 11/0 round Japanese
  sand: 11/0 round Japanese
  tide: 11/0 cylinder Japanese
  drop: 3.4 mm drop
  ball: {type: beaded bead, woven: core}
parts:
  line: 6 lb fused line
  panel: {kind: woven band, stitch: brick, beads: tide, across: 4, rows: 4, thread: line}
  part: PART
  core:
    {kind: beaded bead, stitch: tubular peyote, beads: tide, around: 12,
      core: {outside: 8 mm, hole: 2 mm}, thread: line}
run: [panel]
hung: [{part: part, from: {part: panel, eyes: last edge}, by: thread, times: 4}]
"""
LEG = "{kind: bead drop, beads: [kelp, sand, sand, sand], count: COUNT, thread: line}"
SHARES = LEG.replace("[kelp, sand, sand, sand]", "{kelp: 1, sand: 3}")
PIN = "{kind: wire link, type: head pin, beads: [kelp, sand, sand], count: 4, wire: 24 AWG}"
BALLS = LEG.replace("[kelp, sand, sand, sand]", "[ball, kelp]")
BAND = "{kind: woven band, stitch: square, beads: BEADS, across: 5, rows: 3, thread: line}"


@pytest.mark.parametrize(
    ("part", "kelp", "sand"),
    [
        (LEG.replace("COUNT", "5"), 16, 24),  # k s s s k
        (LEG.replace("COUNT", "[5, 4, 2, 1]"), 10, 14),  # 2 1 1 1 of twelve
        (LEG.replace("COUNT", "4"), 8, 24),
        (LEG.replace("COUNT", "5, turn: drop"), 16, 24),
        (SHARES.replace("COUNT", "5"), 10, 30),
    ],
)  # fmt: skip
def test_every_leg_begins_with_the_first_bead(
    part: str, kelp: int, sand: int, installed: Host
) -> None:
    found = needed(PLAN.replace("PART", part), installed)
    assert (found["kelp"], found["sand"]) == pytest.approx((kelp, sand))


@pytest.mark.parametrize(
    ("part", "kelp", "sand"),
    [
        ("{kind: strand, stitch: strung, beads: [kelp, sand, sand], count: 7, thread: line}", 3, 4),
        (PIN, 2, 2),
        (BAND.replace("BEADS", "[4 kelp, 4 sand]"), 8, 7),  # fifteen
        (BAND.replace("BEADS", "{kelp: 4, sand: 4}"), 7.5, 7.5),
    ],
)  # fmt: skip
def test_a_strand_a_pin_and_rows_are_counted_as_they_are_picked_up(
    part: str, kelp: float, sand: float, installed: Host
) -> None:
    text = PLAN.replace("PART", part).partition("run:")[0] + "run: [panel, part]\n"
    found = needed(text, installed)
    assert (found["kelp"], found["sand"]) == pytest.approx((2 * kelp, 2 * sand))


def test_the_bag_of_a_kit_holds_what_the_steps_string(installed: Host) -> None:
    text = PLAN.replace("PART", LEG.replace("COUNT", "5"))
    ask = Checker(installed, keep=True).check_text(text).ask
    assert ask is not None
    pieces = {bag.name: bag.pieces for bag in bags(ask)}
    assert (pieces["kelp"], pieces["sand"]) == (17, 26)  # 16 and 24, and a tenth over


def test_each_leg_of_a_tassel_strings_its_own_beaded_bead(installed: Host) -> None:
    tassel = "{kind: tassel, beads: [kelp, ball], count: 3, legs: 4, thread: line}"
    fringe = LEG.replace("[kelp, sand, sand, sand]", "[ball, kelp]").replace(
        "COUNT", "[3, 2, 1, 3]"
    )
    for part, balls in ((tassel, 4), (fringe, 2 + 1 + 1 + 2)):
        ask = Checker(installed, keep=True).check_text(PLAN.replace("PART", part)).ask
        assert ask is not None
        bought = {thing.name: thing.need for thing in taken.of_plan(ask)}
        assert getattr(bought["core of core"], "middle") == 2 * balls  # noqa: B009


def needed(text: str, installed: Host) -> dict[str, float]:
    result = Checker(installed, keep=True).check_text(text)
    assert result.ask is not None
    return {
        name: result.ask.of(result.ask.plan.beads[name], "needed").middle
        for name in ("kelp", "sand")
    }
