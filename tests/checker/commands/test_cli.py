"""The command line: what it prints on which stream, and the exit codes."""

from __future__ import annotations

import gc
import json
import subprocess
import sys
from pathlib import Path

import pytest

from running import ROOT, SAMPLES, SHARED, Run
from wellstrung import __main__
from wellstrung.commands import check
from wellstrung.commands.output import OK
from wellstrung.plugins import host

pytestmark = pytest.mark.slow

GOOD = "tests/plans/slack_tide_collar.yaml"
BAD = "tests/plans/lantern_collar.yaml"
FILLS = "tests/checker/report/fills_the_rest.yaml"


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (["check", GOOD], 0),
        (["check", GOOD, "--strict"], 0),
        (["check", BAD], 1),
        (["check", "sample_plans"], 1),
        (["check", "missing.yaml"], 1),
        (["check", "checker/wellstrung"], 2),
        (["check", GOOD, "--as", "jason"], 2),
        (["check", GOOD, "--rules", "missing.py"], 2),
        (["rules"], 0),
        (["rules", "cap-bore", "ring-room"], 0),
        (["rules", "cap-bor"], 2),
        (["tables"], 0),
        (["tables", "beads", "metals"], 0),
        (["tables", "bead"], 2),
        (["supplies", GOOD], 0),
        (["supplies", GOOD, "--as", "csv", "--nothing-on-hand"], 0),
        (["supplies", BAD], 1),
        (["supplies", "missing.yaml"], 1),
        (["supplies", GOOD, "--makers", "0"], 2),
        (["supplies", GOOD, "--makers", "a dozen"], 2),
        (["supplies", "checker/wellstrung"], 2),
        (["cuts", GOOD, "--makers", "12"], 0),
        (["cuts", "missing.yaml", "--as", "json"], 1),
        (["sizes", FILLS, "--as", "json"], 0),
        (["sizes", GOOD], 2),
        (["sizes", "sample_plans"], 2),
        (["sizes", "missing.yaml"], 2),
        (["sizes", FILLS, "--from", "40"], 2),
        (["check"], 2),
        ([], 2),
        (["--version"], 0),
    ],
)
def test_exit_code(arguments: list[str], code: int, run: Run) -> None:
    ran = run(*arguments)
    assert ran.code == code
    assert "Traceback" not in ran.out + ran.err
    assert bool(ran.err) == (code == 2)


@pytest.mark.parametrize(
    "arguments",
    [
        ["check", GOOD, BAD, "--workings"],
        ["check", BAD, "--as", "json"],
        ["supplies", GOOD],
        ["cuts", GOOD, "--as", "csv"],
        ["sizes", FILLS],
        ["rules", "cap-bore"],
        ["tables", "metals"],
        ["bench", GOOD],
        ["check", "--help"],
        ["check", GOOD, "--as", "jason"],
    ],
    ids=" ".join,
)
def test_a_process_of_its_own_says_the_same(arguments: list[str], run: Run, run_apart: Run) -> None:
    """Other tests run most commands within their own process, which has run many before."""
    assert run_apart(*arguments) == run(*arguments)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (
            ["check", "checker/wellstrung/stitches"],
            "wellstrung: there is no plan (a .yaml file that begins with `plan: 1`) here\n",
        ),
        (
            ["check", GOOD, "--as", "jason"],
            "wellstrung: there is no report called `jason`: write `json`\n",
        ),
        (
            ["sizes", "sample_plans/class"],
            "wellstrung: there are 15 plans here: name one\n",
        ),
        (
            ["sizes", GOOD],
            f"wellstrung: no part of {GOOD} fills the rest: write `length: fills the rest` for"
            " `length: 39.7 cm` of `rope` (line 20)\n",
        ),
        (
            ["rules", "cap-bor"],
            "wellstrung: there is no rule called `cap-bor`: write `cap-bore`\n",
        ),
    ],
)
def test_a_slip_on_the_command_line_is_told_in_one_sentence(
    arguments: list[str], says: str, run: Run
) -> None:
    assert run(*arguments).err == says


def test_strict_counts_warnings(run: Run, tmp_path: Path, collar: str) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text(collar.replace("times: 7", "times: 6"), encoding="utf-8")
    assert run("check", plan).code == 0
    assert run("check", plan, "--strict").code == 1


def test_a_file_named_twice_is_checked_once(run: Run) -> None:
    found = json.loads(run("check", GOOD, "sample_plans", GOOD, "--as", "json").out)
    files = [plan["file"] for plan in found["plans"]]
    assert len(files) == len(set(files)) == len(list(SAMPLES.rglob("*.yaml"))) + 1


def test_rules_as_json_name_owner_and_sources(run: Run) -> None:
    found = json.loads(run("rules", "--as", "json").out)
    assert {rule["name"] for rule in found} == set(host.load().rules)
    for rule in found:
        assert rule["owner"] == "wellstrung: rules" and rule["sources"] and rule["title"]
    (one,) = json.loads(run("rules", "cap-bore", "--as", "json").out)
    assert one["name"] == "cap-bore" and one["family"] == "fit"


def test_tables_as_json_carry_grade_and_sources(run: Run) -> None:
    found = json.loads(run("tables", "--as", "json").out)
    assert {"beads", "adhesives", "metals", "threads", "needles"} <= {t["name"] for t in found}
    for table in found:
        for row in table["rows"]:
            for value in row["values"].values():
                assert value["grade"] and set(value["sources"]) <= set(table["sources"])


def test_tables_say_where_a_value_comes_from(run: Run) -> None:
    out = run("tables", "beads").out
    assert "round 8/0 Japanese" in out and "outside: 3 mm (2.8..3.2); several pages [1]" in out
    assert "[1] Bead Sizes" in out


def test_near_namesakes_say_how_they_differ(run: Run) -> None:
    out = " ".join(run("rules").out.split())
    assert "(its wire in each hole is `ring-through-eye`)" in out
    assert "(what fits in it: `ring-room`)" in out
    assert "(where it is cut is `chain-cut`)" in out


def test_the_help_names_every_command(run: Run) -> None:
    out = run("--help").out
    assert all(
        command in out for command in ("check", "supplies", "cuts", "sizes", "rules", "tables")
    )


def test_a_table_for_a_spreadsheet_is_utf_8_whatever_the_terminal_shows(run: Run) -> None:
    plan = "sample_plans/ebb_line_three_strand.yaml"
    out = run("supplies", plan, "--as", "csv", PYTHONUTF8="0", PYTHONIOENCODING="ascii").out
    assert out.startswith("\ufeffbought,group,what") and "4 ± 0.1 mm bead" in out
    assert not run("supplies", GOOD, "--as", "csv").out.startswith("\ufeff")


def test_a_bench_named_for_a_list_is_the_one_that_prices_it(run: Run) -> None:
    bench = "tests/checker/report/bench_of_prices.yaml"
    out = run("supplies", GOOD, "--nothing-on-hand", "--bench", bench, "--as", "json").out
    assert {money["currency"] for money in json.loads(out)["bill"]} == {"EUR", "£"}


def test_garbage_is_looked_for_once_all_is_loaded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        sys, "argv", ["wellstrung", "check", str(SHARED / "slack_tide_collar.yaml")]
    )
    found: list[bool] = []

    def ended(*_: object, **__: object) -> int:
        found.append(gc.isenabled())
        return OK

    monkeypatch.setattr(check, "exit_code", ended)
    try:
        assert __main__.main() == OK
    finally:
        gc.enable()
        gc.unfreeze()
    assert found == [True]


def test_help_is_as_wide_as_it_may_be(run: Run) -> None:
    narrow, wide = (run("check", "--help", COLUMNS=width).out for width in ("60", "100"))
    assert max(map(len, narrow.splitlines())) <= 58
    assert 58 < max(map(len, wide.splitlines())) <= 98


#: what a check of a right plan on screen does without, by the module that each of them begins with
_NOT_NEEDED = (
    *("jinja2", "jsonschema", "rich", "shtab", "watchfiles", "multiprocessing"),
    *("wellstrung.commands.watching", "wellstrung.commands.workers", "wellstrung.drawing"),
    *("wellstrung.lists", "wellstrung.quantity.conditioning", "wellstrung.reading.bench"),
    *("wellstrung.reading.stock_list", "wellstrung.report.json", "wellstrung.report.pages"),
    *("wellstrung.start", "wellstrung.what_if"),
)


def test_a_check_of_a_right_plan_imports_nothing_that_it_does_without() -> None:
    code = (
        "import sys; from wellstrung.commands.cli import main;"
        " main(['check', 'tests/plans/slack_tide_collar.yaml']); print(*sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, encoding="utf-8", check=True
    )
    imported = done.stdout.splitlines()[-1].split()
    assert "wellstrung.report.text" in imported
    assert [
        one
        for one in imported
        if one.startswith(tuple(f"{name}." for name in _NOT_NEEDED)) or one in _NOT_NEEDED
    ] == []
