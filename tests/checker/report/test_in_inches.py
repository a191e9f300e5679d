"""A plan in inches: what is worn or cut is in eighths, parts are in mm."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from rulers import DECIMAL, TOO_FINE, in_inches
from running import SAMPLES
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import cutting, shopping
from wellstrung.plugins import host
from wellstrung.report import cuts_list, sizes_list, supplies_list
from wellstrung.report.writer import Options
from wellstrung.what_if import size_range

CHECKER = Checker(host.load(), quantities=True)
SIZED = Path(__file__).with_name("fills_the_rest.yaml")


def said(text: str) -> Iterator[str]:
    result = CHECKER.check_text(text)
    assert not any(remark.rule.startswith("plan-") for remark in result.remarks)
    for remark in result.remarks:
        yield from (remark.says, remark.found, remark.needed, remark.remedy)


@pytest.mark.parametrize("path", sorted(SAMPLES.rglob("*.yaml")), ids=lambda path: path.stem)
def test_a_sample_in_inches_reads_as_a_ruler_does(path: Path) -> None:
    for text in said(in_inches(path.read_text(encoding="utf-8"))):
        assert not DECIMAL.search(text), text
        assert not TOO_FINE.search(text), text


@pytest.mark.parametrize(
    ("size", "part"), [("bore: 1/4 in", "8.5 mm"), ("bore: 0.25 in", "8.5 mm")]
)
def test_a_cap_written_in_inches_is_answered_in_mm(size: str, part: str) -> None:
    text = (SAMPLES.parent / "tests" / "plans" / "lantern_collar.yaml").read_text(encoding="utf-8")
    (remark,) = (
        one
        for one in CHECKER.check_text(re.sub(r"bore: [\d.]+ mm", size, text, count=1)).remarks
        if one.rule == "cap-bore"
    )
    assert remark.found == size.removeprefix("bore: ")
    assert part in remark.remedy and " in " not in remark.needed.removeprefix("a bore of ")


def test_the_sizes_of_a_plan_in_inches_are_in_inches() -> None:
    result = CHECKER.check_text(in_inches(SIZED.read_text(encoding="utf-8")))
    text = sizes_list.write(size_range.over(result, host.load()), Options(120))
    assert re.search(r"^ *18 1/8 in .* \d+( \d/[248])? in ", text, re.MULTILINE), text


def test_what_is_cut_and_bought_by_length_for_a_plan_in_inches_is_in_inches() -> None:
    """And in yards where it is long; a length to buy is enough."""
    result = CHECKER.check_file(SAMPLES / "class" / "merryn_tideline_necklace.yaml")
    plans = understood([result])
    cuts = cuts_list.write([result], 1, cutting.listed(plans), Options(100))
    assert "from 6 in: 3 pieces" in cuts and "11/16 in left" in cuts
    lines = tuple(shopping.needed(plans, 1, on_hand=False))
    found = supplies_list.Supplies((result,), 1, lines, (), ())
    bought = supplies_list.write(found, Options(100))
    assert "5 1/4 in" in bought and "5 5/8 in (in one" in bought
    assert not re.search(r"\d c?m\b", cuts + bought)
