"""The sample plans: right ones give nothing, student plans give just what is stored beside this."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from running import SAMPLES, Pinned
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult

RIGHT = sorted(SAMPLES.glob("*.yaml"))
CLASS = sorted((SAMPLES / "class").glob("*.yaml"))
STORED = Path(__file__).parent / "stored"


def shortened(result: PlanResult) -> list[dict[str, Any]]:
    return [
        {
            "rule": remark.rule,
            "level": remark.level,
            "at": f"{remark.place.line}:{remark.place.column}",
            "says": remark.says,
            "remedy": remark.remedy,
        }
        for remark in result.remarks
        if remark.level != "caution"
    ]


@pytest.mark.parametrize("path", RIGHT, ids=lambda path: path.stem)
def test_a_right_sample_gives_no_error_no_warning_and_leaves_nothing_unjudged(
    path: Path, checker: Checker
) -> None:
    result = checker.check_file(path)
    assert shortened(result) == []
    assert result.outcome == "makeable" and result.unjudged == () and len(result.held) >= 10


@pytest.mark.parametrize("path", CLASS, ids=lambda path: path.stem)
def test_a_student_plan_gives_the_stored_result(
    path: Path, checker: Checker, pinned: Pinned
) -> None:
    found = shortened(checker.check_file(path))
    assert 1 <= len(found) <= 2, "one or two honest mistakes each"
    text = yaml.safe_dump(found, sort_keys=False, allow_unicode=True, width=100)
    pinned(STORED / f"{path.stem}.yaml", text)


def test_no_check_goes_missing(checker: Checker, pinned: Pinned) -> None:
    """How much each sample has held and left open: a subject that is lost fails nothing else."""
    results = [checker.check_file(path) for path in (*RIGHT, *CLASS)]
    counts = [
        f"{path.stem}: {{held: {len(result.held)}, unjudged: {len(result.unjudged)}}}\n"
        for path, result in zip((*RIGHT, *CLASS), results, strict=True)
    ]
    pinned(Path(__file__).parent / "checks_made.yaml", "".join(counts))


def test_every_stored_result_has_its_plan() -> None:
    assert {path.stem for path in STORED.glob("*.yaml")} == {path.stem for path in CLASS}


def test_there_are_samples() -> None:
    assert len(RIGHT) >= 6 and len(CLASS) >= 8
