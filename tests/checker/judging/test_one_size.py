"""Remarks that ask for different sizes of one ring ask for one that serves them all, or say so."""

from __future__ import annotations

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.testing.following import written

SMALL = "small: {kind: jump ring, outside: 6 mm, wire: 18 AWG"
BOTTOM = "bottom_eyes: {count: 7, hole: 1.6 mm, wire: 1 mm}"


def about_small(result: PlanResult, *rules: str) -> list[Remark]:
    return [one for one in result.remarks if one.rule in rules and one.parts[0] == "small"]


def test_each_remark_on_a_ring_asks_for_the_size_that_all_of_them_need(
    checker: Checker, collar: str
) -> None:
    text = collar.replace(SMALL, SMALL.replace("6 mm", "4 mm"))
    found = about_small(checker.check_text(text), "ring-room")
    assert len(found) > 1
    assert len({one.needed for one in found}) > 1
    assert {edit.new for one in found for edit in one.edits} == {"5 mm"}
    for remark in found:
        assert "serves every remark about it" in remark.remedy
        changed = written(text, remark)
        assert changed is not None
        assert not about_small(checker.check_text(changed), "ring-room")


def test_a_wire_that_must_be_thicker_and_thinner_has_no_size(checker: Checker, collar: str) -> None:
    text = collar.replace(SMALL, SMALL.replace("18 AWG", "0.9 mm").replace("6 mm", "10 mm"))
    text = text.replace(BOTTOM, BOTTOM.replace("1.6 mm", "0.85 mm"))
    found = about_small(checker.check_text(text), "ring-gauge", "ring-through-eye")
    assert [one.rule for one in found] == ["ring-gauge", "ring-through-eye"]
    for remark in found:
        assert not remark.edits
        assert "no one size serves `ring-gauge` and `ring-through-eye`" in remark.remedy


def test_a_wire_with_bounds_on_both_sides_is_in_both(checker: Checker, collar: str) -> None:
    text = collar.replace(SMALL, SMALL.replace("18 AWG", "1.7 mm"))
    found = about_small(checker.check_text(text), "ring-gauge", "ring-through-eye")
    assert {one.rule for one in found} == {"ring-gauge", "ring-through-eye"}
    assert len({one.edits for one in found}) == 1 and found[0].edits
