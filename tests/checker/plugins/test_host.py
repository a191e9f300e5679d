"""Plugins: collected one by one with their owner, and never green with rules missing."""

from __future__ import annotations

import contextlib
import io
import sys
import types
from collections.abc import Callable
from functools import partial
from pathlib import Path
from random import Random
from typing import Any

import pytest
from msgspec.structs import replace

import wellstrung_rules
from running import ROOT, SHARED, Run
from wellstrung import builtin, tables
from wellstrung.commands.cli import main
from wellstrung.common.trade_words import TradeWord
from wellstrung.judging.checker import Checker
from wellstrung.model.parts import Kind
from wellstrung.plugins import host
from wellstrung.plugins.command import Command
from wellstrung.plugins.error import HostError
from wellstrung.plugins.hooks import hookimpl
from wellstrung.report import json
from wellstrung.rulebook import Answer, Ask, Held, Misfit, Piece, Rule
from wellstrung.tables import Cell, Row, Table


def a_rule(name: str, check: Callable[[Piece, Ask], Answer]) -> Rule:
    return Rule(
        name, "fit", Piece, check, title="t", why="w", sources=("common practice, no source",)
    )


def plugin(**hooks: Callable[[], object]) -> types.SimpleNamespace:
    return types.SimpleNamespace(
        **{name: hookimpl(specname=name)(function) for name, function in hooks.items()}
    )


def a_kind(name: str) -> Kind:
    height = {"$ref": "common.json#/$defs/length", "description": "How tall it is."}
    fields = {"kind": {"const": name, "description": "Ours."}, "height": height}
    return Kind(name, {"type": "object", "additionalProperties": False, "properties": fields})


_CORE = [("wellstrung: core", builtin), ("wellstrung: rules", wellstrung_rules)]


def held(piece: Piece, ask: Ask) -> Held:
    return Held()


def broken(piece: Piece, ask: Ask) -> Answer:
    raise ZeroDivisionError("a slip")


def test_the_built_in_rules_come_in_by_the_entry_point_of_everyone(installed: host.Host) -> None:
    assert set(installed.owners[name] for name in installed.rules) == {"wellstrung: rules"}
    rules = ROOT / "rules" / "wellstrung_rules"
    files = [file for file in rules.glob("*/*.py") if file.stem != "__init__"]
    assert set(installed.rules) == {file.stem.replace("_", "-") for file in files}


def test_two_owners_of_one_name_stop_the_run() -> None:
    one, two = (
        plugin(wellstrung_rules=lambda: [a_rule("same", held)]),
        plugin(wellstrung_rules=lambda: [a_rule("same", held)]),
    )
    with pytest.raises(HostError) as caught:
        host.assemble([("one", one), ("two", two)])
    assert str(caught.value) in (
        "`same` comes from both `one` and `two`: rename one of them",
        "`same` comes from both `two` and `one`: rename one of them",
    )


@pytest.mark.parametrize(
    ("hooks", "says"),
    [
        (
            {"wellstrung_ruels": lambda: []},
            "a plugin has a hook that nothing calls: unknown hook 'wellstrung_ruels'",
        ),
        ({"wellstrung_rules": lambda: 3}, "plugin `mine` must return a list from wellstrung_rules"),
        (
            {"wellstrung_rules": lambda: 1 / 0},
            "plugin `mine` fails in wellstrung_rules: ZeroDivisionError: division by zero",
        ),
        (
            {"wellstrung_rules": lambda: sys.exit(0)},
            "plugin `mine` fails in wellstrung_rules: SystemExit: 0",
        ),
        (
            {"wellstrung_rules": lambda: ["text"]},
            "plugin `mine` brings `'text'`, which is no Rule from wellstrung_rules",
        ),
        (
            {"wellstrung_rules": lambda: [replace(a_rule("tag", held), subject=int)]},
            "plugin `mine` brings the rule `tag`, whose subject <class 'int'> is none that a plan"
            " has from wellstrung_rules",
        ),
        (
            {"wellstrung_rules": lambda: [replace(a_rule("tag", held), level="fatal")]},
            "plugin `mine` brings the rule `tag` of level `fatal`: take one of error, warning,"
            " caution from wellstrung_rules",
        ),
    ],
)
def test_a_plugin_that_cannot_be_trusted_stops_the_run(
    hooks: dict[str, Callable[[], object]], says: str
) -> None:
    with pytest.raises(HostError) as caught:
        host.assemble([("mine", plugin(**hooks))])
    assert str(caught.value).startswith(says)


def test_a_plugin_for_another_version_stops_the_run() -> None:
    other = plugin(wellstrung_rules=lambda: [])
    other.WELLSTRUNG_PLUGIN = 2
    with pytest.raises(HostError) as caught:
        host.assemble([("mine", other)])
    assert str(caught.value) == (
        "plugin `mine` is written for version 2 of the hooks, and these are version 1:"
        " install one that fits"
    )


def test_the_order_of_plugins_never_matters(collar: str) -> None:
    """Whatever is loaded first, the same plan has the same report, and lists are in one order."""
    mine = [
        (name, plugin(wellstrung_rules=partial(list, [a_rule(name, held)])))
        for name in ("one", "two", "three")
    ]
    kinds = ("kinds", plugin(wellstrung_kinds=lambda: [a_kind("seal"), a_kind("anchor")]))
    brought = [*_CORE, *mine, kinds]
    reports = set()
    for seed in range(5):
        Random(seed).shuffle(brought)
        loaded = host.assemble(brought)
        checker = Checker(loaded, quantities=True)
        texts = (collar, collar.replace("end cap", "lid"))
        written = [json.plan_entry(checker.check_text(text)) for text in texts]
        reports.add((*written, *loaded.kinds, *loaded.stitches))
    assert len(reports) == 1


def a_table(name: str, row: str, low: float = 1.0, grade: str = "from memory") -> Table:
    cell = Cell(2.0, low, 3.0, "mm", grade, (), "")
    return Table(name, "ours", {row: Row(row, {"outside": cell}, {})}, {})


@pytest.mark.parametrize(
    ("table", "says"),
    [
        (
            a_table("caps", "cap of ours", grade="hearsay"),
            "`outside` of `cap of ours` in table `caps` needs a grade that we know, sources of its"
            " table and a range round it",
        ),
        (
            a_table("buoys", "buoy", low=2.5),
            "`outside` of `buoy` in table `buoys` needs a grade that we know, sources of its table"
            " and a range round it",
        ),
        (
            a_table("beads", "round 8/0 Japanese"),
            "table `beads` has a row `round 8/0 Japanese` already: rename yours",
        ),
    ],
)
def test_a_table_that_cannot_be_used_stops_the_run(table: Table, says: str) -> None:
    with pytest.raises(HostError) as caught:
        host.assemble([("mine", plugin(wellstrung_tables=lambda: [table]))])
    assert str(caught.value) == f"a table of a plugin cannot be used: {says}"


@pytest.mark.parametrize(
    ("word", "says"),
    [
        (
            TradeWord("calotte", "kind", "pendant"),
            "`calotte` has a meaning already as a word of `kind`",
        ),
        (
            TradeWord("bobber", "colour", "cork float"),
            "`bobber` stands at `colour`, which is no place of words",
        ),
    ],
)
def test_a_word_that_cannot_be_used_stops_the_run(word: TradeWord, says: str) -> None:
    with pytest.raises(HostError) as caught:
        host.assemble([("mine", plugin(wellstrung_words=lambda: [word]))])
    assert str(caught.value) == f"a word of a plugin cannot be used: {says}"


def test_rows_of_others_stand_beside_ours() -> None:
    host.assemble([("mine", plugin(wellstrung_tables=lambda: [a_table("beads", "sail bead")]))])
    try:
        assert tables.load("beads").row("sail bead").cell("outside").value == 2
        assert tables.load("beads").row("round 8/0 Japanese").cell("outside").value == 3
    finally:
        host.load()
    assert "sail bead" not in tables.load("beads").rows


def test_a_command_of_the_name_of_ours_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    mine = Command("check", "mine", lambda parser: None, lambda options: 0)
    loaded = host.assemble([("mine", plugin(wellstrung_commands=lambda: [mine]))])
    monkeypatch.setattr("wellstrung.plugins.entry_points.others", lambda group: True)
    monkeypatch.setattr("wellstrung.plugins.host.load", lambda: loaded)
    said = io.StringIO()
    with contextlib.redirect_stderr(said):
        assert main(["--help"]) == 2
    assert said.getvalue() == (
        "wellstrung: a plugin brings a command `check`, which is one of ours: rename it\n"
    )


def test_a_fragment_may_refer_to_our_values() -> None:
    loaded = host.assemble([("kinds", plugin(wellstrung_kinds=lambda: [a_kind("seal")]))])
    height: Any = loaded.kinds["seal"].fragment["properties"]
    assert height["height"]["$comment"] == "length" and "pattern" in height["height"]


def test_a_rule_that_breaks_is_named_and_the_others_still_judge(collar: str) -> None:
    mine = plugin(wellstrung_rules=lambda: [a_rule("whole-piece", held), a_rule("slips", broken)])
    result = Checker(host.assemble([("core", builtin), ("mine", mine)])).check_text(collar)
    assert [kept.rule for kept in result.held] == ["whole-piece"]
    (failure,) = result.failures
    line = broken.__code__.co_firstlineno + 1
    says = f"ZeroDivisionError: a slip (on piece; {__file__}:{line})"
    assert (failure.rule, failure.plugin, failure.message) == ("slips", "mine", says)
    assert failure.trace.endswith("ZeroDivisionError: a slip\n")
    assert result.outcome == "not fully checked"


@pytest.mark.parametrize(
    ("check", "says"),
    [
        (lambda piece, ask: sys.exit(0), "SystemExit: 0 (on piece; "),
        (lambda piece: Held(), "TypeError: "),
        (lambda piece, ask: "fine", "TypeError: a rule answers Held, Misfit, Caution or None"),
        (lambda piece, ask: iter(()), "TypeError: a rule answers Held, Misfit, Caution or None"),
        (
            lambda piece, ask: Misfit("no tag", piece, "", "", ()),
            "TypeError: `says` of a Misfit is a text, its `place` a Place",
        ),
    ],
)
def test_whatever_a_rule_does_its_plan_is_not_makeable(
    check: Callable[..., Answer], says: str, collar: str
) -> None:
    mine = plugin(wellstrung_rules=lambda: [a_rule("tag", check), a_rule("whole-piece", held)])
    result = Checker(host.assemble([("core", builtin), ("mine", mine)])).check_text(collar)
    assert [failure.message.startswith(says) for failure in result.failures] == [True]
    assert result.outcome == "not fully checked" and [kept.rule for kept in result.held]


OWN_RULE = """
from wellstrung.plugins.hooks import hookimpl
from wellstrung.report import json
from wellstrung.tables import Cell, Row, Table
from wellstrung.rulebook import Misfit, Piece, Remedy, Rule

def check(piece, ask):
    return Misfit(says="every piece of ours needs a tag", place=piece.place, found="no tag",
                  needed="a tag", remedies=(Remedy("tie one on"),), at_most="warning")

@hookimpl
def wellstrung_rules():
    return [Rule("shop-tag", "count", Piece, check, title="a tag", why="the shop asks",
                 sources=("common practice, no source",))]
"""


def test_a_file_named_on_the_command_line_brings_its_rules(run: Run, tmp_path: Path) -> None:
    rules = tmp_path / "ours.py"
    rules.write_text(OWN_RULE, encoding="utf-8")
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules)
    assert ran.code == 0
    assert (
        "1. WARNING: " in ran.out and "[shop-tag]" in ran.out and "do this    tie one on" in ran.out
    )
    assert (
        run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules, "--strict").code == 1
    )


@pytest.mark.parametrize(
    ("source", "says"),
    [
        ("1 / 0", "does not load: ZeroDivisionError: division by zero"),
        ("def broken(:", "does not load: SyntaxError"),
        ("import sys; sys.exit(0)", "does not load: SystemExit: 0"),
        ("x = 1", "brings no rule: end it with `RULE = Rule(...)`, or write a hook"),
    ],
)
def test_a_rule_file_that_does_not_load_ends_in_2(
    source: str, says: str, run: Run, tmp_path: Path
) -> None:
    rules = tmp_path / "ours.py"
    rules.write_text(source, encoding="utf-8")
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules)
    assert (ran.code, ran.out) == (2, "")
    assert f"wellstrung: `{rules}` {says}" in ran.err


def test_a_file_of_rules_that_is_not_there_is_named(run: Run) -> None:
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", "nofile.py")
    says = "wellstrung: `nofile.py` cannot be read: no such file or directory; name a `.py` file"
    assert (ran.code, ran.out, ran.err) == (2, "", f"{says} of rules\n")


def test_a_broken_rule_ends_in_2_and_still_reports(run: Run, tmp_path: Path) -> None:
    rules = tmp_path / "ours.py"
    rules.write_text(OWN_RULE.replace('found="no tag"', "found=1 / 0"), encoding="utf-8")
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules)
    assert ran.code == 2
    assert "NOT FULLY CHECKED" in ran.out and "internal error in rule `shop-tag` of" in ran.out
    assert "Traceback" not in ran.out + ran.err
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules, "--trace")
    assert ran.code == 2 and "Traceback" in ran.out and "found=1 / 0" in ran.out


@pytest.mark.parametrize(
    "source",
    [
        OWN_RULE.partition("@hookimpl")[0]
        + """RULE = Rule("shop-tag", "count", Piece, check, title="a tag", why="the shop asks",
            sources=("common practice, no source",))""",
        OWN_RULE.replace("def check", "@dataclass\nclass Tag:\n    size: int\n\ndef check").replace(
            "\nfrom", "\nfrom dataclasses import dataclass\nfrom", 1
        ),
    ],
    ids=["a file that ends with its rule", "a file with a dataclass"],
)
def test_other_shapes_of_a_rule_file(source: str, run: Run, tmp_path: Path) -> None:
    rules = tmp_path / "ours.py"
    rules.write_text(source, encoding="utf-8")
    ran = run("check", "tests/plans/slack_tide_collar.yaml", "--rules", rules)
    assert ran.code == 0 and "1. WARNING: " in ran.out and "[shop-tag]" in ran.out


def test_code_beside_a_plan_is_never_run(run: Run, tmp_path: Path) -> None:
    """Neither a module of a known name nor a plugin's metadata in the folder one stands in."""
    for module in ("wellstrung_rules", "yaml", "rich", "argparse", "beside"):
        (tmp_path / f"{module}.py").write_text("raise SystemExit('ran')", encoding="utf-8")
    plugin = tmp_path / "beside-1.0.dist-info"
    plugin.mkdir()
    (plugin / "entry_points.txt").write_text("[wellstrung]\nbeside = beside\n", encoding="utf-8")
    plan = tmp_path / "plan.yaml"
    plan.write_bytes((SHARED / "slack_tide_collar.yaml").read_bytes())
    ran = run("check", "plan.yaml", cwd=tmp_path)
    assert ran.code == 0 and "MAKEABLE" in ran.out and ran.err == ""


def test_a_stage_that_breaks_is_a_failure_and_never_green(
    installed: host.Host, collar: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def breaks(plan: object) -> None:
        raise IndexError("a slip")

    monkeypatch.setattr("wellstrung.judging.checker.find", breaks)
    result = Checker(installed).check_text(collar, "plan.yaml")
    assert result.outcome == "not checked yet"
    assert [failure.message for failure in result.failures] == ["IndexError: a slip (in plan.yaml)"]
