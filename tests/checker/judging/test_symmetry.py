"""A piece turned end for end, in a mirror, or in phrases is the same piece: the findings stay."""

from __future__ import annotations

import copy
import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from generated.plans import seeded
from running import SAMPLES
from turns import some
from wellstrung import tables
from wellstrung.common.wording import same_as
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins import host
from wellstrung.reading import parser
from wellstrung.testing.cases import cases

#: no remedy is compared, so none is tried
CHECKER = Checker(host.load(), trials=0)
RULES = Path(__file__).parents[2] / "rules"
FEW, MANY = 24, 40

Plan = dict[str, Any]


def other_end_first(data: Plan) -> None:
    """The run written from its other end; a piece of chain in it would begin with its other end."""
    kinds = {name: part.get("kind") for name, part in data["parts"].items() if "kind" in part}
    if not any(
        kinds.get(entry) == "chain piece" for entry in data["run"] if isinstance(entry, str)
    ):
        data["run"].reverse()


def strands_in_another_order(data: Plan) -> None:
    """Strands that lie side by side, all in the opposite order: another one is in front."""
    for entry in data["run"]:
        if isinstance(entry, dict):
            entry.get("strands", []).reverse()


def mirrored(data: Plan) -> None:
    """Fringes of listed counts from the right to the left."""
    for part in data["parts"].values():
        count = part.get("count") if isinstance(part, dict) else None
        if isinstance(count, list):
            count.reverse()


def hung_in_another_order(data: Plan) -> None:
    """What hangs, listed from the last to the first."""
    data.get("hung", []).reverse()


def threads_in_a_phrase(data: Plan) -> None:
    """Threads as a shop says them: `fused 8 lb, tail 20 cm` for a group of fields."""
    for part in data["parts"].values():
        thread = part.get("thread") if isinstance(part, dict) else None
        if not isinstance(thread, dict) or ("type" in thread) == ("spool" in thread):
            continue
        if "outside" in thread and _sold_by_thickness(str(thread.get("type"))):
            continue  # in a phrase that is its size
        line = [
            thread[key] for key in ("type", "spool", "size", "rating", "outside") if key in thread
        ]
        beside = [
            f"{key.replace('_', ' ')} {thread[key]}"
            for key in ("tail", "working_length", "coil")
            if key in thread
        ]
        beside += [f"{thread['turns']} turns"] if "turns" in thread else []
        between = ", " if "spool" in thread else " "
        part["thread"] = ", ".join([between.join(map(str, line)), *beside])


def _sold_by_thickness(type_: str) -> bool:
    row = tables.load("line_types").rows.get(same_as(type_, tables.load("line_types").rows) or "")
    return row is not None and bool({"mm", "inches"} & {*row.text("sold_by").split(", ")})


WAYS: dict[str, Callable[[Plan], None]] = {
    "other end first": other_end_first,
    "strands in another order": strands_in_another_order,
    "mirrored": mirrored,
    "hung in another order": hung_in_another_order,
    "threads in a phrase": threads_in_a_phrase,
}


def findings(result: PlanResult, alike: Sequence[str]) -> dict[str, Counter[Any]]:
    """What is said, passed and open, up to which of some parts alike is named, and where.

    Of several values that a check lacks it names the first, and of several joins that one step
    makes it names one.
    """

    def words(text: str) -> tuple[str, ...]:
        text = re.sub(r"(?<=\w)\.[ab]\b|\b(first|last) ", "", text)
        for name in alike:
            text = text.replace(f"`{name}`", "one of them")
        return tuple(sorted(re.findall(r"[\w./-]+", text)))

    return {
        "remarks": Counter((one.rule, one.level, words(one.says)) for one in result.remarks),
        "passed": Counter(one.rule for one in result.held),
        "open": Counter(one.rule for one in result.unjudged),
    }


@lru_cache(200)
def as_written(text: str) -> PlanResult:
    return CHECKER.check_text(text)


def same(text: str, way: str) -> str:
    """What changes when the plan is written in another way; empty where that is nothing."""
    tree = parser.read_text(text, "plan.yaml").tree
    if tree is None or not isinstance(tree.value, dict):
        return ""
    data = copy.deepcopy(tree.value)
    if not isinstance(data.get("run"), list):
        return ""
    WAYS[way](data)
    if data == tree.value:
        return ""
    before = as_written(text)
    if any(remark.rule.startswith("plan-") for remark in before.remarks):
        return ""
    turned = yaml.safe_dump(data, sort_keys=False, allow_unicode=True, default_flow_style=None)
    alike = [
        name
        for entry in data["run"]
        if isinstance(entry, dict)
        for name in entry.get("strands", [])
    ]
    first, second = findings(before, alike), findings(CHECKER.check_text(turned), alike)
    return "\n".join(
        f"{what}: {dict(first[what] - second[what])} became {dict(second[what] - first[what])}"
        for what in first
        if first[what] != second[what]
    )


@cache
def case_texts() -> list[tuple[str, str]]:
    return [
        (f"{path.name}: {case}", case.text)
        for path in sorted(RULES.rglob("*/*.yaml"))
        for case in cases(path)
    ]


def texts() -> Iterator[tuple[str, str]]:
    for path in sorted(SAMPLES.rglob("*.yaml")):
        yield path.name, path.read_text(encoding="utf-8")
    for number, text in enumerate(seeded(FEW)):
        yield f"generated {number}", text


@pytest.mark.parametrize("way", WAYS)
def test_the_same_piece_has_the_same_findings(way: str) -> None:
    changed = {name: found for name, text in texts() if (found := same(text, way))}
    assert not changed, "\n\n".join(f"{name}\n{found}" for name, found in changed.items())


@pytest.mark.slow
@pytest.mark.parametrize("way", WAYS)
def test_some_cases_and_many_plans_have_the_same_findings(way: str) -> None:
    every = [
        *some(case_texts(), 3 * len(WAYS), list(WAYS).index(way)),
        *((f"generated {n}", text) for n, text in enumerate(seeded(MANY)) if n >= FEW),
    ]
    changed = {name: found for name, text in every if (found := same(text, way))}
    assert not changed, "\n\n".join(f"{name}\n{found}" for name, found in changed.items())
