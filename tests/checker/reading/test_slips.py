"""Slips that beaders make: the whole answer to each, so that it can be read aloud.

An entry of `slips/*.yaml` changes words of `slips/base.yaml`, or of the collar of the rules' cases
(`plan: collar`), or is a `text` of its own; `slips: 2` where it holds more than one. With
`--rewrite` the answers are written anew.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from running import ROOT, Pinned, entries, pinned_at
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.reading import tree
from wellstrung.report import text
from wellstrung.report.writer import Options
from wellstrung.testing.cases import changed

HERE = Path(__file__).parent / "slips"
FILES = sorted(file for file in HERE.glob("*.yaml") if file.stem != "base")
PLANS = {"base": HERE / "base.yaml", "collar": ROOT / "tests" / "rules" / "collar.yaml"}
SLIPS = {f"{file.stem}: {entry['slip']}": entry for file in FILES for entry in entries(file)}


def plan_of(slip: Mapping[str, Any]) -> str:
    """The plan with the slip in it."""
    if "text" in slip:
        return str(slip["text"])
    plan = PLANS[slip.get("plan", "base")].read_text(encoding="utf-8")
    return changed(plan, slip["change"])


def answer(result: PlanResult) -> str:
    """The report on a plan, without its heading and the line that closes it."""
    shown = text.write(Result((result,)), Options(width=96))
    shown = re.split("^NOT CHECKED YET.*\\n", shown, flags=re.M)[-1]
    return shown.removesuffix("nothing else is checked until these are right").strip()


def test_there_are_a_hundred_and_twenty() -> None:
    assert len(SLIPS) >= 120


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_answers(file: Path, checker: Checker, pinned: Pinned) -> None:
    """Each answer word for word, in its place in the file."""
    pinned_at(file, "answer", lambda slip: answer(checker.check_text(plan_of(slip))), pinned)


@pytest.mark.parametrize("name", SLIPS)
def test_one_slip_has_one_message_and_its_edits_mend_it(name: str, checker: Checker) -> None:
    slip = SLIPS[name]
    plan = plan_of(slip)
    result = checker.check_text(plan, "plan.yaml")
    assert result.outcome == "not checked yet" and not result.held
    assert len(result.remarks) == slip.get("slips", 1), [one.says for one in result.remarks]
    for remark in result.remarks:
        assert remark.remedy or remark.needed
        if remark.edits:
            after = checker.check_text(
                tree.replaced(plan, [(edit.place, edit.new) for edit in remark.edits])
            )
            left = [(one.rule, one.says) for one in after.remarks]
            assert ("plan-shape", remark.says) not in left and "plan-file" not in dict(left)


@pytest.mark.parametrize("plan", PLANS)
def test_the_plans_that_are_changed_have_no_slip(plan: str, checker: Checker) -> None:
    assert checker.check_file(PLANS[plan]).readable
