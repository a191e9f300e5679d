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
from wellstrung.judging.renamed import renamed
from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.since import since
from wellstrung.model import build
from wellstrung.plugins.host import Host
from wellstrung.reading import bench as benches
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser
from wellstrung.reading.settings import Bench
from wellstrung.reading.tree import replaced
from wellstrung.report.since import facts, is_as_it_was
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


def test_remarks_of_one_rule_on_the_same_parts_go_by_their_words(collar: str) -> None:
    tight = keeper().check_text(changed(collar, {"bore: 10 mm": "bore: 8 mm"}))
    one = next(each for each in tight.numbered if each.rule == "cap-bore")
    first, second = (
        replace(one, says="the first end is 8 mm"),
        replace(one, says="the last is 7 mm"),
    )
    old = replace(tight, remarks=(first, second))
    found = since(old, replace(tight, remarks=(replace(second, says="the last is 6 mm"),)))
    assert [fate.remark for fate in found.mended] == [first]
    assert [fate.remark.says for fate in found.still] == ["the last is 6 mm"]
    found = since(replace(tight, remarks=(second,)), old)
    assert [fate.remark for fate in found.new] == [first]


def test_of_many_that_came_the_first_twelve_are_named() -> None:
    def rings(count: int) -> PlanResult:
        ring = "{kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}"
        parts = "".join(f"  ring {number}: {ring}\n" for number in range(count))
        run = ", ".join(f"ring {number}" for number in range(count))
        head = "plan: 1\ntitle: Rings\npiece: necklace\nparts:\n"
        return keeper().check_text(f"{head}{parts}run: [{run}]\n")

    told = dict(facts(since(rings(2), rings(17))))
    names = "; ".join(f"`ring {number}`" for number in range(2, 14))
    assert told["added"] == f"{names}; and 3 more"


def test_a_thousand_new_names_are_found_in_a_moment() -> None:
    """Near-linear in parts: each is looked for by its fields and its place, not among all."""
    plan = """
plan: 1
title: Long chain
piece: necklace
parts:
{parts}
run: [{run}]
"""

    def text(stem: str) -> str:
        names = [f"{stem} {number}" for number in range(1000)]
        lines = [f"  {name}: {{kind: jump ring, outside: 6 mm, wire: 18 AWG}}" for name in names]
        return plan.replace("{parts}", "\n".join(lines)).replace("{run}", ", ".join(names))

    plans, here = [], keeper().installed
    for stem in ("ring", "link"):
        read = parser.read_text(text(stem), "chain.yaml")
        built, faults = build.build(read, here.kinds, here.stitches, Bench())
        assert built is not None, faults
        plans.append(built)
    found = renamed(*plans)
    assert len(found) == 1000 and all(old[5:] == new[5:] for old, new in found.items())
