"""A finish is no metal, and a metal that no table has stops no plan: both keep their cautions."""

from __future__ import annotations

import pytest

from running import ROOT
from wellstrung.judging.checker import Checker


@pytest.mark.parametrize(
    "metal",
    [
        "nickel silver",
        "german silver",
        "base metal",
        "rose gold",
        "antique brass",
        "gunmetal",
        "moon metal",
    ],
)
def test_what_may_hold_nickel_says_so(metal: str, checker: Checker) -> None:
    plan = (ROOT / "sample_plans" / "ebb_line_three_strand.yaml").read_text(encoding="utf-8")
    old = "ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open, metal: brass"
    assert plan.count(old) == 1
    result = checker.check_text(plan.replace(old, old.replace("brass", metal)))
    [caution] = [one for one in result.remarks if one.rule == "nickel-contact"]
    assert f"`ring` ({metal}" in caution.says
