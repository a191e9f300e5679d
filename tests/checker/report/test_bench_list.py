"""The list of settings: every one with its default, its reason and the rules that ask for it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace

from running import ROOT, SAMPLES, Pinned, Run
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.checker import Checker
from wellstrung.judging.judge import Judge
from wellstrung.judging.taught import SETTINGS
from wellstrung.model import build
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading.settings import ALLOWANCES, PACES, RATES, Bench, Setting
from wellstrung.report import bench_list
from wellstrung.rulebook import Rule
from wellstrung.short_forms import spelled_out
from wellstrung.subjects.find import find
from wellstrung.testing.cases import cases, judged
from wellstrung_schemas import load

USED = Path(bench_list.__file__).parent / "settings_used.json"
GROUPS = ("allowances", "limits", "rates", "paces")
#: the tolerance of the length that a plan asks for, by the piece
OF_GOALS = {f"{piece} length" for piece in load("plan")["properties"]["piece"]["enum"]}
OF_GOALS = {*OF_GOALS, "woven cuff length", "other length"} & ALLOWANCES.keys()


class Recorded(dict[str, Setting]):
    """Settings that keep the names they were asked for."""

    def __init__(self, settings: Mapping[str, Setting]) -> None:
        super().__init__(settings)
        self.asked: set[str] = set()

    def __getitem__(self, name: str) -> Setting:
        self.asked.add(name)
        return super().__getitem__(name)

    def get(self, name: str, default: Any = None) -> Any:
        self.asked.add(name)
        return super().get(name, default)


class Watched(Plan, frozen=True, eq=False, dict=True):
    """A plan that keeps whether the length it asks for was looked at."""

    def __getattribute__(self, name: str) -> Any:
        if name == "goal":
            super().__getattribute__("__dict__")["goal was asked for"] = True
        return super().__getattribute__(name)

    @property
    def in_inches(self) -> bool:
        goal = super().__getattribute__("goal")
        return goal is not None and goal.unit.startswith("in")


def asked_by(rule: Rule, text: str, bench: Bench, host: Host) -> dict[str, set[str]]:
    """The settings that a rule asks for on a plan, by group."""
    read = parser.read_text(text, "plan.yaml")
    if read.tree is None:
        return {}
    read, _ = spelled_out(read)
    mine = replace(bench, **{group: Recorded(getattr(bench, group)) for group in GROUPS})
    plan, _ = build.build(read, host.kinds, host.stitches, mine)
    if plan is None:
        return {}
    plan = Watched(*(getattr(plan, name) for name in plan.__struct_fields__))
    for group in GROUPS:
        getattr(mine, group).asked.clear()
    judge = Judge(host, plan, Quantities(plan, host.quantities))
    for subject in find(plan):
        if type(subject) is rule.subject:
            judge.judge(rule, subject)
    found: dict[str, set[str]] = {group: {*getattr(mine, group).asked} for group in GROUPS}
    if "goal was asked for" in vars(plan):
        found["allowances"] |= OF_GOALS
    return found


def plans(checker: Checker) -> Iterator[tuple[Rule, str, Bench]]:
    """Every rule on the plans of its cases, and on the samples where those lack a setting.

    But for `bench-limit`, which asks for whatever a bench sets a limit to.
    """
    for file in sorted((ROOT / "tests" / "rules").glob("*/*.yaml")):
        for case in cases(file) if file.parent.name != "bench" else ():
            yield checker.installed.rules[case.rule], case.text, judged(case, checker).bench
    for name in ("finished-length", "class-time"):
        for file in sorted(
            [*SAMPLES.glob("*.yaml"), *(ROOT / "tests" / "ordinary").glob("*.yaml")]
        ):
            yield checker.installed.rules[name], file.read_text("utf-8"), checker.bench


@pytest.mark.slow
def test_who_uses_each_setting(installed: Host, checker: Checker, pinned: Pinned) -> None:
    """What the list says of its users is what rules ask for, over all their cases."""
    found: dict[str, dict[str, set[str]]] = {group: {} for group in GROUPS}
    for rule, text, bench in plans(checker):
        for group, names in asked_by(rule, text, bench, installed).items():
            for name in names & getattr(checker.bench, group).keys():
                called = "any" if group in ("rates", "paces") else name
                found[group].setdefault(called, set()).add(rule.name)
    listed = {
        group: {name: ", ".join(sorted(rules)) for name, rules in sorted(names.items())}
        for group, names in found.items()
    }
    pinned(USED, json.dumps(listed, indent=1) + "\n")


def test_every_setting_is_listed_with_its_reason_and_users(installed: Host) -> None:
    settings = [*bench_list.listed(installed, None, {})]
    by_group = {group: {one.name for one in settings if one.group == group} for group in GROUPS}
    assert by_group["allowances"] == ALLOWANCES.keys()
    assert by_group["limits"] == installed.limits.keys()
    assert by_group["rates"] == RATES.keys() | installed.stitches.keys()
    assert by_group["paces"] == PACES.keys()
    assert by_group.keys() < {one.group for one in settings} >= {"pricing"}
    for one in (one for one in settings if one.group != "pricing"):  # which no check uses
        known = {"swatches"} if one.name in SETTINGS else installed.rules.keys()
        assert one.used_by and set(one.used_by) <= known, one.name
        assert one.group == "budget" or one.default.reason, one.name


def test_a_limit_names_every_rule_that_declares_it(installed: Host) -> None:
    settings = {(one.group, one.name): one for one in bench_list.listed(installed, None, {})}
    for rule in installed.rules.values():
        for limit in rule.limits:
            assert rule.name in settings["limits", limit.name].used_by


BENCH = """\
bench: 1
allowances: {ring size: 0.1 mm}
limits: {cap loose: 2 mm, between sessions: 2 days}
prices: {kelp: 4 EUR per 10 g}
budget: 40 EUR
"""


@pytest.fixture
def folder(tmp_path: Path, collar: str) -> Path:
    (tmp_path / "class").mkdir()
    (tmp_path / "class" / "plan.yaml").write_text(collar, encoding="utf-8")
    (tmp_path / "bench.yaml").write_text(BENCH, encoding="utf-8")
    return tmp_path


def test_the_defaults(run: Run, tmp_path: Path) -> None:
    ran = run("bench", cwd=tmp_path, COLUMNS="100")
    assert ran.code == 0 and "set" not in ran.out.splitlines()[0]
    assert (
        "  cap loose  1.5 mm\n"
        "    why      trade table `caps`, cap over beads, -0.5..+1.5 mm: from memory\n"
        "    used by  cap-bore, round-count\n"
    ) in ran.out
    assert "  between sessions  7 days\n" in ran.out
    assert "    others   0.05 to 0.2: makers differ, common practice, no source\n" in ran.out


@pytest.mark.parametrize("named", ["class/plan.yaml", "bench.yaml", "class", "."])
def test_what_a_bench_sets_is_marked_with_its_line(named: str, run: Run, folder: Path) -> None:
    out = run("bench", named, cwd=folder, COLUMNS="100").out
    assert out.splitlines()[0] == "bench: bench.yaml, which sets 5 of these"
    for line in (
        "ring size  0.1 mm, instead of 0.2 mm (bench.yaml:2)",
        "cap loose  2 mm, instead of 1.5 mm (bench.yaml:3)",
        "between sessions  2 days, instead of 7 days (bench.yaml:3)",
        "kelp  4 EUR per 10 g (bench.yaml:4)",
        "budget  40 EUR (bench.yaml:5)",
    ):
        assert f"  {line}\n" in f"{out}\n"


def test_a_plan_names_what_may_have_a_price(run: Run, folder: Path) -> None:
    out = run("bench", "class/plan.yaml", cwd=folder).out
    assert "  bar chain  none\n" in out and "  toggle  none\n" in out


def test_as_json(run: Run, folder: Path) -> None:
    found = json.loads(run("bench", "class/plan.yaml", "--as", "json", cwd=folder).out)
    assert found["bench"] == "bench.yaml"
    by_name = {one["name"]: one for one in found["settings"]}
    assert by_name["cap loose"] == {
        "group": "limits",
        "name": "cap loose",
        "default": 1.5,
        "unit": "mm",
        "reason": "trade table `caps`, cap over beads, -0.5..+1.5 mm: from memory",
        "choice": None,
        "used_by": ["cap-bore", "round-count"],
        "set": "2 mm",
        "place": {"file": "bench.yaml", "line": 3, "column": 10, "end_line": 3, "end_column": 19},
    }
    assert by_name["cap tight"]["set"] is None and by_name["cap tight"]["place"] is None
    assert by_name["toggle"]["group"] == "prices" and by_name["toggle"]["default"] is None


@pytest.mark.parametrize(
    ("named", "says"),
    [
        ("none.yaml", "`none.yaml` is not there: name a plan, a bench file or a folder"),
        ("bad.yaml", "there is no limit called `cap lose`: write `cap loose`"),
    ],
)
def test_a_file_that_cannot_be_used(named: str, says: str, run: Run, folder: Path) -> None:
    (folder / "bad.yaml").write_text("bench: 1\nlimits: {cap lose: 2 mm}\n", encoding="utf-8")
    ran = run("bench", named, cwd=folder)
    assert ran.code == 2 and says in ran.err and "Traceback" not in ran.err
