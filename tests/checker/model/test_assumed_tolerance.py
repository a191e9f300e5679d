"""A length that a plan asks for without a tolerance takes the bench's, and the report says so."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.reading.settings import ALLOWANCES, Bench

ASSUMED = "± 13 mm is assumed, the bench's allowance `necklace length`"


def test_the_check_that_passed_names_what_was_assumed(checker: Checker, collar: str) -> None:
    result = checker.check_text(collar.replace("46 cm ± 1 cm", "46 cm"))
    notes = {check.rule: check.note for check in result.held}
    assert notes["finished-length"] == ASSUMED


def test_the_remark_names_what_was_assumed(checker: Checker, collar: str) -> None:
    text = collar.replace("46 cm ± 1 cm", "50 cm")
    (remark,) = (one for one in checker.check_text(text).remarks if one.rule == "finished-length")
    assert remark.needed == "50 cm ± 13 mm" and remark.says.endswith(
        f"the plan asks for 50 cm ± 13 mm ({ASSUMED})"
    )


def test_a_bench_sets_it(installed: Host, collar: str) -> None:
    mine = {"necklace length": ALLOWANCES["necklace length"]._replace(value=1.0)}
    bench = Bench(allowances={**ALLOWANCES, **mine}, limits=installed.limits)
    checker = Checker(installed, bench=bench)
    result = checker.check_text(collar.replace("46 cm ± 1 cm", "45 cm"))
    assert "finished-length" in {one.rule for one in result.remarks}


@pytest.mark.parametrize(
    ("piece", "length", "called", "off"),
    [
        ("bracelet", "46 cm", "bracelet length", "± 6 mm"),
        ("lariat", "46 cm", "lariat length", "± 25 mm"),
        ("brooch", "46 cm", "other length", "± 3 mm"),
        ("brooch", "5 mm", "other length", "± 0.5 mm"),
        ("necklace", "18 in", "necklace length", "± 1/2 in"),
        ("bracelet", "7 1/4 in", "bracelet length", "± 1/4 in"),
    ],
)
def test_each_piece_has_its_own(
    installed: Host, collar: str, piece: str, length: str, called: str, off: str
) -> None:
    text = collar.replace("46 cm ± 1 cm", length).replace("piece: necklace", f"piece: {piece}")
    ask = Checker(installed, keep=True).check_text(text).ask
    assert ask is not None and ask.plan.goal is not None
    assert ask.plan.goal.assumed == f"{off} is assumed, the bench's allowance `{called}`"
    assert ask.plan.goal.text == f"{length} {off}"
