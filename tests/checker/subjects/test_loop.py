"""A run that closes on itself: its last place meets its first."""

from __future__ import annotations

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host

CHECKER = Checker(host.load(), quantities=True)
PLAN = """plan: 1
title: Ring of rings
piece: bracelet
parts:
  bar: {kind: connector, length: 3 cm, eyes: {count: 2, hole: 1.2 mm, wire: 1 mm}, metal: brass}
  thin: {kind: jump ring, outside: 6 mm, wire: 20 AWG, closing: open, metal: brass}
  thick: {kind: jump ring, outside: 8 mm, wire: 1.5 mm, closing: open, metal: brass}
run: [thick, bar, thin]
"""
LOOP = PLAN.replace("run:", "run_is: loop\nrun:")


def remarked(text: str, rule: str) -> list[tuple[str, ...]]:
    return [remark.parts for remark in CHECKER.check_text(text).remarks if remark.rule == rule]


def test_a_ring_at_the_start_of_a_loop_meets_the_eye_at_its_end() -> None:
    text = PLAN.replace("[thick, bar, thin]", "[thick, thin, bar]")
    loop = LOOP.replace("[thick, bar, thin]", "[thick, thin, bar]")
    assert remarked(text, "ring-through-eye") == []
    assert remarked(loop, "ring-through-eye") == [("thick", "bar")]


def test_a_loop_is_as_long_as_its_places_together() -> None:
    open_, loop = (CHECKER.check_text(text).quantities["piece.length"] for text in (PLAN, LOOP))
    assert open_.middle == loop.middle


def test_a_loop_of_one_place_meets_nothing() -> None:
    result = CHECKER.check_text(LOOP.replace("[thick, bar, thin]", "[bar]"))
    assert not result.failures and not [r for r in result.remarks if r.level == "error"]
