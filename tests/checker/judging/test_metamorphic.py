"""What must not matter does not: names of parts, units of length, order of keys."""

from __future__ import annotations

import re
from functools import cache
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generated.plans import seeded
from running import SAMPLES
from versions import mixed, plain_data, with_parts_renamed, written
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins import host
from wellstrung.reading import drawer

CHECKER = Checker(host.load())
#: where remedies are not looked at, none is tried
QUICK = Checker(CHECKER.installed, trials=0)
#: generated plans in the quick suite, and in all
FEW, MANY = 12, 30
PLANS = {path.stem: path.read_text(encoding="utf-8") for path in sorted(SAMPLES.rglob("*.yaml"))}
NAMES = [
    *PLANS,
    *(
        pytest.param(f"generated {number}", marks=[pytest.mark.slow] if number >= FEW else [])
        for number in range(MANY)
    ),
]
PLANS |= {f"generated {number}": text for number, text in enumerate(seeded(MANY))}


def answers(result: PlanResult) -> list[tuple[str, str]]:
    assert result.readable and not any(r.rule.startswith("plan-") for r in result.remarks)
    return sorted((remark.rule, remark.level) for remark in result.remarks)


def kept_rules(result: PlanResult) -> list[str]:
    return sorted(entry.rule for entry in result.held)


@cache
def as_written(name: str, checker: Checker) -> PlanResult:
    return checker.check_text(PLANS[name])


def data_of(name: str) -> dict[str, Any]:
    return plain_data(PLANS[name])


@pytest.mark.parametrize("name", NAMES)
def test_renaming_parts_changes_no_remark(name: str) -> None:
    data, _ = with_parts_renamed(data_of(name))
    before, after = as_written(name, QUICK), QUICK.check_text(written(data))
    assert answers(after) == answers(before) and kept_rules(after) == kept_rules(before)


@pytest.mark.parametrize("name", NAMES)
def test_parts_from_a_drawer_are_as_good_as_parts_of_the_plan(name: str) -> None:
    data = data_of(name)
    kept = {f"{part} of mine": fields for part, fields in data["parts"].items()}
    data["parts"] = {part: {"from": f"{part} of mine"} for part in data["parts"]}
    inside = drawer.read_text(written({"drawer": 1, "parts": kept}), "drawer.yaml")
    before = as_written(name, CHECKER)
    after = CHECKER.check_text(written(data), drawer=inside)
    assert answers(after) == answers(before) and kept_rules(after) == kept_rules(before)
    assert sorted(r.says for r in after.remarks) == sorted(r.says for r in before.remarks)
    if not name.startswith("generated"):  # which remedies are tried depends on where edits lie
        assert sorted(r.remedy for r in after.remarks) == sorted(r.remedy for r in before.remarks)
    assert set(after.unjudged) == set(before.unjudged)


def in_inches(text: str) -> str:
    """Every length in mm, alone or with its tolerance; what is in cm, or `5 x 16 mm`, stays."""

    def inches(mm: str) -> str:
        return f"{float(mm) / 25.4:.15f}".rstrip("0").rstrip(".")

    def turn(found: re.Match[str]) -> str:
        between, spread = found[2] or "", inches(found[3]) if found[3] else ""
        return f"{inches(found[1])}{between}{spread} in"

    return re.sub(
        r"(?<! x )\b(\d+(?:\.\d+)?)(?:( ?(?:±|\+/-|\.\.|-|to) ?)(\d+(?:\.\d+)?))? mm\b",
        turn,
        text,
    )


@pytest.mark.parametrize("name", NAMES)
def test_mm_or_inches_is_all_the_same(name: str) -> None:
    # a goal in cm keeps its tolerance in cm
    text = re.sub(r"cm ± (\d+) mm", lambda found: f"cm ± {int(found[1]) / 10:g} cm", PLANS[name])
    before, after = QUICK.check_text(text), QUICK.check_text(in_inches(text))
    assert answers(after) == answers(before) and kept_rules(after) == kept_rules(before)


@pytest.mark.parametrize("name", NAMES)
def test_windows_line_ends_are_all_the_same(name: str) -> None:
    before = as_written(name, CHECKER)
    after = CHECKER.check_text(PLANS[name].replace("\n", "\r\n"))
    assert kept_rules(after) == kept_rules(before)
    shown = ([(one.says, one.place, one.edits) for one in it.remarks] for it in (before, after))
    assert next(shown) == next(shown)


@pytest.mark.slow
@settings(max_examples=20)
@given(st.sampled_from(sorted(PLANS)), st.randoms(use_true_random=False))
def test_the_order_of_keys_does_not_matter(name: str, random: Random) -> None:
    before = as_written(name, QUICK)
    after = QUICK.check_text(written(mixed(data_of(name), random)))
    assert answers(after) == answers(before) and kept_rules(after) == kept_rules(before)
