"""No suggestion crosses an alloy, and a metal that no table has keeps its cautions."""

from __future__ import annotations

import pytest

from running import ROOT
from wellstrung import tables
from wellstrung.common.wording import slip_of
from wellstrung.judging.checker import Checker

METALS = tables.load("metals").rows
RIGHT = {
    "sterlng silver": "sterling silver", "stirling silver": "sterling silver",
    "fine silvr": "fine silver", "cooper": "copper",
    "brss": "brass", "red bras": "red brass", "aluminum": "aluminium", "titanum": "titanium",
    "niobum": "niobium", "pewtr": "pewter", "stainles steel": "stainless steel",
}  # fmt: skip
#: words that name no alloy of the tables, or a finish, and would be wrong as any other
NONE = (
    "german silver", "tibetan silver", "alpaca", "silver", "silver tone", "silver plated", "gold",
    "gold tone", "rose gold", "rolled gold", "gunmetal", "antique brass", "plated copper",
    "antique silver", "bronze tone", "raw metal", "hypoallergenic", "nickel", "nickel safe",
    "steel", "iron", "tin", "lead", "mystery metal", "argentium", "platinum", "electrum",
    "sterling", "stainless", "surgical", "zinc",
)  # fmt: skip


@pytest.mark.parametrize(("word", "metal"), RIGHT.items())
def test_a_slip_is_answered_with_the_right_metal(word: str, metal: str) -> None:
    assert slip_of(word, METALS) == metal


@pytest.mark.parametrize("word", NONE)
def test_a_metal_of_no_table_is_never_answered_with_another(word: str) -> None:
    assert slip_of(word, METALS) is None


@pytest.mark.parametrize("metal", ["nickel silver", "german silver", "base metal", "rose gold"])
def test_what_may_hold_nickel_says_so(metal: str, checker: Checker) -> None:
    plan = (ROOT / "sample_plans" / "ebb_line_three_strand.yaml").read_text(encoding="utf-8")
    old = "ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open, metal: brass"
    assert plan.count(old) == 1
    result = checker.check_text(plan.replace(old, old.replace("brass", metal)))
    [caution] = [one for one in result.remarks if one.rule == "nickel-contact"]
    assert f"`ring` ({metal})" in caution.says
