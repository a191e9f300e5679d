"""What changed since an earlier version: whole texts, and what must not count as a change."""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path
from random import Random
from typing import Any

import pytest
import yaml
from msgspec.structs import replace

from pages import checked, keeper
from running import SAMPLES, SHARED, Pinned, entries, pinned_at
from versions import mixed, plain_data, with_parts_renamed, written
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.since import since
from wellstrung.plugins.host import Host
from wellstrung.reading import bench as benches
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser
from wellstrung.reading.tree import replaced
from wellstrung.report.since import is_as_it_was
from wellstrung.report.text import write
from wellstrung.report.writer import Options
from wellstrung.testing.cases import changed

CASES = Path(__file__).parent / "since" / "cases.yaml"
PLANS = sorted((*SAMPLES.rglob("*.yaml"), *SHARED.glob("*.yaml")))


def shown(old: PlanResult, new: PlanResult, width: int = 80) -> str:
    result = Result((replace(new, since=since(old, new)),), since=old.file)
    return write(result, Options(width=width))


def checker_of(case: dict[str, Any], installed: Host) -> Checker:
    if "bench" not in case:
        return keeper()
    text = yaml.safe_dump({"bench": 1, **case["bench"]})
    known = installed.stitches, installed.limits, installed.measures
    read = benches.read_text(text, "bench.yaml", *known)
    assert read[0] is not None
    return Checker(installed, bench=read[0], quantities=True)


def test_whole_texts(installed: Host, collar: str, pinned: Pinned) -> None:
    def answer(case: dict[str, Any]) -> str:
        checker = checker_of(case, installed)
        old = changed(collar, case.get("old", {}))
        new = changed(old, case.get("new", {}))
        for name, other in case.get("rename", {}).items():
            new = re.sub(rf"\b{name}\b", other, new)
        results = checker.check_text(old, "old.yaml"), checker.check_text(new, "new.yaml")
        return shown(*results, case.get("width", 80))

    pinned_at(CASES, "says", answer, pinned)
    names = [case["case"] for case in entries(CASES)]
    assert len(names) == len({*names})


# --- what is no change


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_a_plan_since_itself_has_not_changed(path: Path) -> None:
    result = checked(path)
    found = since(result, result)
    assert is_as_it_was(found) and not found.notes
    assert len(found.still) == found.had == sum(one.counts for one in result.numbered)


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_other_names_and_another_order_show_as_names_alone(path: Path) -> None:
    old = checked(path)
    data, names = with_parts_renamed(plain_data(old.text))
    beside = drawers.named_by(parser.read(path), path.parent, keeper().installed.fragments)
    text = written(mixed(data, Random(path.stem)))
    found = since(old, keeper().check_text(text, path.name, beside))
    assert dict(found.renamed) == names
    assert is_as_it_was(replace(found, renamed=()))
    assert len(found.still) == found.had


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_an_edit_of_the_checker_mends_its_remark(path: Path) -> None:
    old = checked(path)
    for remark in old.numbered:
        edits = [(edit.place, edit.new) for edit in remark.edits]
        if not remark.counts or not edits or any(place.file != old.file for place, _ in edits):
            continue
        new = keeper().check_text(replaced(old.text, edits), path.name)
        found = since(old, new)
        assert remark in [fate.remark for fate in found.mended], remark.says
        assert not found.new, found.new


#: changes to the collar: right, wrong in several ways, open, and not to be read
EDITS: list[dict[str, str]] = [
    {},
    {"bore: 10 mm": "bore: 8 mm"},
    {"depth: 7 mm, ": ""},
    {"hole: 1.6 mm": "hole: 0.8 mm"},
    {"39.7 cm": "30 cm", "times: 7": "times: 6"},
    {"bore: 10 mm": "bore: 8"},
    {"plan: 1": "- plan"},
]


def test_each_remark_has_one_fate(collar: str) -> None:
    results = [keeper().check_text(changed(collar, each), "plan.yaml") for each in EDITS]
    for old, new in product(results, results):
        found = since(old, new)
        left = [fate.remark for fate in (*found.mended, *found.accepted, *found.unknown)]
        there = [fate.remark for fate in (*found.new, *found.still)]
        had = [one for one in old.numbered if one.counts]
        has = [one for one in new.numbered if one.counts]
        assert found.had == len(had)
        assert all(one in had for one in left) and all(one in there for one in has)
        assert all(one in has or one in had for one in there)
        for one in had:
            assert one in left or one.rule in {each.rule for each in there}
