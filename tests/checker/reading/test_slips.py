"""Slips that beaders make: the whole answer to each, so that it can be read aloud.

An entry of `slips/*.yaml` changes words of `slips/base.yaml`, or of the collar of the rules' cases
(`plan: collar`), or is a `text` of its own, a `bench` or a `drawer`; `slips: 2` where it holds more
than one. With `--rewrite` the answers are written anew.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace

from running import ROOT, Pinned, entries, pinned_at
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.plugins.host import Host
from wellstrung.reading import bench, drawer, tree
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
    return changed(plan, slip.get("change", {}))


def checked(slip: Mapping[str, Any], checker: Checker) -> PlanResult:
    """The result of the plan, with its drawer if the slip is in that."""
    held = slip.get("drawer")
    return checker.check_text(plan_of(slip), drawer=held and drawer.read_text(held, "drawer.yaml"))


def answer(slip: Mapping[str, Any], checker: Checker) -> str:
    """The report on a plan, without its heading and the line that closes it; of a bench, a line."""
    if "bench" in slip:
        here = checker.installed
        _, faults = bench.read_text(slip["bench"], "bench.yaml", here.stitches, here.limits)
        return "\n".join(f"{one.place.line}:{one.place.column} {one.in_a_line}" for one in faults)
    shown = text.write(Result((checked(slip, checker),)), Options(width=96))
    shown = re.split("^NOT CHECKED YET.*\n(?:.+\n)*", shown, flags=re.M)[-1]
    return shown.removesuffix("nothing else is checked until these are right").strip()


def test_there_are_a_hundred_and_twenty() -> None:
    assert len(SLIPS) >= 120


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_answers(file: Path, checker: Checker, pinned: Pinned) -> None:
    """Each answer word for word, in its place in the file."""
    pinned_at(file, "answer", lambda slip: answer(slip, checker), pinned)


@pytest.fixture(scope="module")
def reader(installed: Host) -> Checker:
    """A checker without rules: what is read is no slip, and nothing is judged."""
    return Checker(replace(installed, rules={}))


@pytest.mark.parametrize("name", SLIPS)
def test_one_slip_has_one_message_and_its_edits_mend_it(
    name: str, reader: Checker, installed: Host
) -> None:
    slip = SLIPS[name]
    if "bench" in slip:
        assert len(answer(slip, Checker(installed)).splitlines()) == slip.get("slips", 1)
        return
    plan, result = plan_of(slip), checked(slip, reader)
    assert result.outcome == "not checked yet" and not result.held
    assert len(result.remarks) == slip.get("slips", 1), [one.says for one in result.remarks]
    for remark in result.remarks:
        assert remark.remedy or remark.needed
        if remark.edits and "drawer" not in slip:
            after = reader.check_text(
                tree.replaced(plan, [(edit.place, edit.new) for edit in remark.edits])
            )
            left = [(one.rule, one.says) for one in after.remarks]
            assert ("plan-shape", remark.says) not in left and "plan-file" not in dict(left)


@pytest.mark.parametrize("plan", PLANS)
def test_the_plans_that_are_changed_have_no_slip(plan: str, checker: Checker) -> None:
    assert checker.check_file(PLANS[plan]).readable
