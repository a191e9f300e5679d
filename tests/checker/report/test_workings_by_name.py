"""The JSON report writes each working once: the whole of it follows from the names in it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from generated.plans import seeded
from reports import report
from running import ROOT, SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.quantity import working as in_words
from wellstrung.report.json import plan_entry

PLANS = [SHARED / "slack_tide_collar.yaml", *sorted(SAMPLES.rglob("*.yaml"))]
MOST_BYTES = 40_000

Rebuild = Callable[..., list[str]]


@pytest.fixture(scope="module")
def rebuild() -> Rebuild:
    """The function that the page on the report shows to its readers."""
    page = (ROOT / "schemas" / "REPORT.md").read_text(encoding="utf-8")
    (code,) = re.findall(r"^```python\n(.*?)^```$", page, flags=re.M | re.S)
    shown: dict[str, Any] = {}
    exec(code, shown)
    found: Rebuild = shown["working"]
    return found


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_workings_follow_from_the_names(path: Path, rebuild: Rebuild, installed: Host) -> None:
    follow(Checker(installed, quantities=True).check_file(path), rebuild)


def test_those_of_any_plan_do(rebuild: Rebuild, installed: Host) -> None:
    checker = Checker(installed, quantities=True)
    for text in seeded(25):
        follow(checker.check_text(text), rebuild)


def follow(result: PlanResult, rebuild: Rebuild) -> None:
    """Each working that is rebuilt from the report is the one that the text report prints."""
    (plan,) = report(result)["plans"]
    assert set(result.quantities) <= set(plan["quantities"])
    for name, quantity in result.quantities.items():
        assert rebuild(plan, name) == in_words.working(quantity), name
    for kept, told in zip(result.held, plan["held"], strict=True):
        assert ("margin" in told) == (kept.margin is not None)
        if kept.margin is not None:
            assert rebuild_margin(rebuild, plan, told) == in_words.working(kept.margin)
    for remark, told in zip(result.remarks, plan["remarks"], strict=True):
        of_margin = rebuild_margin(rebuild, plan, told) if "margin" in told else []
        assert [*told["working"], *of_margin] == list(remark.working)


def rebuild_margin(rebuild: Rebuild, plan: Mapping[str, Any], told: Mapping[str, Any]) -> list[str]:
    return rebuild(plan, told["margin"], told.get("margin_name", ""))


@pytest.mark.parametrize(
    "path", [SHARED / "slack_tide_collar.yaml", SAMPLES / "quay_lamp_necklace.yaml"]
)
def test_a_report_of_one_plan_is_short(path: Path, installed: Host) -> None:
    result = Checker(installed, quantities=True).check_file(path)
    assert len(plan_entry(result).encode()) < MOST_BYTES
