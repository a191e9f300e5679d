"""Values from practice: common practice, no source.

An even tubular peyote rope from a ring of 12 round 11/0 beads (6 a round) goes into caps sold as
8 mm, not into 6 mm, and rattles in 11 mm; 16 1/2 in of it takes more than one 17 g tube of beads
and less than two; a 12 mm jump ring of 18 AWG goes round it and a pendant loop, one of 12 AWG does
not; 5-minute epoxy dries in minutes and needs 24 h.
"""

from __future__ import annotations

import pytest

from wellstrung import tables
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.reading import parser

PLAN = """\
plan: 1
title: Practice
piece: necklace
beads:
  seed: {type: round, size: 11/0, make: Japanese}
parts:
  rope: {kind: woven rope, stitch: tubular peyote, around: 12, beads: seed, length: 16 1/2 in}
  cap: {kind: end cap, bore: 8 mm}
  ring: {kind: jump ring, outside: 12 mm, wire: 18 AWG, closing: open}
  charm: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
  glue: {kind: adhesive, type: two-part epoxy}
run: [cap, rope, cap]
hung:
  - {part: charm, from: rope, by: ring}
work:
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: wait, time: 24 h}
"""


def result(old: str = "", new: str = "") -> PlanResult:
    from wellstrung.plugins import host

    assert old in PLAN
    return Checker(host.load(), quantities=True).check_text(PLAN.replace(old, new) if old else PLAN)


def told(found: PlanResult, rule: str) -> list[tuple[str, str]]:
    return [(remark.level, remark.says) for remark in found.remarks if remark.rule == rule]


def test_a_cap_sold_as_8_mm_gives_no_error() -> None:
    assert told(result(), "cap-bore") == []


def test_a_cap_of_6_mm_is_an_error() -> None:
    assert told(result("bore: 8 mm", "bore: 6 mm"), "cap-bore") == [
        (
            "error",
            "the bore of cap `cap` (6 mm) is too tight for the rope `rope` (7.78 mm, likely"
            " 7.22..8.34 mm outside)",
        )
    ]


def test_a_cap_of_11_mm_is_too_loose() -> None:
    ((level, says),) = told(result("bore: 8 mm", "bore: 11 mm"), "cap-bore")
    assert level == "warning"
    assert says.startswith("the bore of cap `cap` (11 mm) is too loose for the rope `rope`")


def test_16_and_a_half_inches_take_more_than_one_17_g_tube_and_less_than_two() -> None:
    mass = result().quantities["rope.mass"]
    assert mass.likely.low > 17 and mass.likely.high < 34


@pytest.mark.parametrize(("wire", "levels"), [("18 AWG", []), ("12 AWG", ["error"])])
def test_a_12_mm_ring_goes_round_the_rope_and_a_loop_when_its_wire_is_thin(
    wire: str, levels: list[str]
) -> None:
    found = result("wire: 18 AWG", f"wire: {wire}")
    assert [level for level, _ in told(found, "ring-room")] == levels


def test_5_minute_epoxy_dries_in_minutes_and_needs_24_hours() -> None:
    row = tables.load("adhesives").row("two-part epoxy")
    assert row.cell("usable").value == 5
    assert row.cell("full_cure").value == 24 * 60
    assert told(result(), "cure-time") == []
    ((level, says),) = told(result("time: 24 h", "time: 30 min"), "cure-time")
    assert (level, "needs 24 h to cure fully" in says) == ("error", True)


def test_the_plan_of_this_test_is_read_whole() -> None:
    assert parser.read_text(PLAN, "practice.yaml").faults == ()
