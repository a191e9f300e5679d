"""The SARIF log: against the schema that OASIS publishes, and against the result it is made of."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft4Validator
from msgspec.structs import replace

from running import ROOT, SAMPLES, SHARED, Run
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Failure, PlanResult, Result
from wellstrung.plugins.host import Host
from wellstrung.report.sarif import log, write
from wellstrung.report.writer import Options

SCHEMA = ROOT / "tests" / "standards" / "sarif-schema-2.1.0.json"
VALIDATOR = Draft4Validator(json.loads(SCHEMA.read_text(encoding="utf-8")))
BAD = SHARED / "lantern_collar.yaml"


def run_of(*plans: PlanResult, installed: Host | None = None) -> dict[str, Any]:
    """The one run of the log of these plans, which fits the schema."""
    whole = json.loads(write(Result(plans), Options(installed=installed)))
    VALIDATOR.validate(whole)
    (run,) = whole["runs"]
    assert isinstance(run, dict)
    return run


def results(run: dict[str, Any], kind: str = "fail") -> list[dict[str, Any]]:
    return [one for one in run["results"] if one.get("kind", "fail") == kind]


def test_every_sample_fits_the_schema(checker: Checker, installed: Host) -> None:
    plans = [checker.check_file(path) for path in sorted(SAMPLES.rglob("*.yaml"))]
    run = run_of(*plans, installed=installed)
    assert len(results(run)) == sum(len(plan.remarks) for plan in plans)
    assert len(results(run, "open")) == sum(len(plan.unjudged) for plan in plans)
    rules = run["tool"]["driver"]["rules"]
    for one in run["results"]:
        assert rules[one["ruleIndex"]]["id"] == one["ruleId"]
    assert run["invocations"][0]["executionSuccessful"]


def test_a_remark_names_its_lines_and_its_rule(checker: Checker, installed: Host) -> None:
    plan = checker.check_file(BAD)
    run = run_of(plan, installed=installed)
    levels = {"error": "error", "warning": "warning", "caution": "note"}
    for remark, one in zip(plan.remarks, results(run), strict=True):
        assert (one["ruleId"], one["level"]) == (remark.rule, levels[remark.level])
        assert one["message"]["text"].startswith(remark.says.replace("{", "{{")[:40])
        (location,) = one["locations"]
        region = location["physicalLocation"]["region"]
        assert tuple(region.values()) == remark.place[1:]
        also = [near["physicalLocation"]["region"] for near in one.get("relatedLocations", [])]
        assert [tuple(near.values()) for near in also] == [place[1:] for place in remark.also]
        rule = installed.rules[remark.rule]
        told = run["tool"]["driver"]["rules"][one["ruleIndex"]]
        assert told["shortDescription"]["text"].replace("{{", "{").replace("}}", "}") == rule.title
        assert all(
            source.replace("{", "{{")[:20] in told["help"]["text"] for source in rule.sources
        )


def test_a_fix_that_is_applied_removes_its_result(checker: Checker) -> None:
    plan = checker.check_file(BAD)
    tried = 0
    for remark, one in zip(plan.remarks, results(run_of(plan)), strict=True):
        assert ("fixes" in one) == bool(remark.edits)
        for fix in one.get("fixes", []):
            tried += 1
            again = checker.check_text(applied(plan.text, fix))
            assert remark.identity not in {
                (left.rule, left.parts) for left in again.remarks if left.level == remark.level
            }
    assert tried


def applied(text: str, fix: dict[str, Any]) -> str:
    """A text with the one file of a fix changed; the last stretch goes first."""
    (change,) = fix["artifactChanges"]
    starts = [0]
    for line in text.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    stretches = []
    for one in change["replacements"]:
        region = one["deletedRegion"]
        begin, end = (
            starts[region[f"{side}Line"] - 1] + region[f"{side}Column"] - 1
            for side in ("start", "end")
        )
        stretches.append((begin, end, one["insertedContent"]["text"]))
    for begin, end, new in sorted(stretches, reverse=True):
        text = text[:begin] + new + text[end:]
    return text


ACCEPTED = """\
accept:
  - {rule: cap-bore, part: cap, because: "tried on the class samples"}
"""


def test_an_accepted_remark_is_suppressed_with_its_reason(
    checker: Checker, whole_collar: str
) -> None:
    loose = whole_collar.replace(
        "bore: 10 mm, depth: 7 mm, outside: 11.5", "bore: 11.4 mm, depth: 7 mm, outside: 13"
    )
    run = run_of(checker.check_text(loose + ACCEPTED))
    suppressed = {one["ruleId"]: one["suppressions"] for one in results(run)}
    assert suppressed.pop("cap-bore") == [
        {"kind": "inSource", "status": "accepted", "justification": "tried on the class samples"}
    ]
    assert not any(suppressed.values())


def test_an_internal_error_is_a_notification(checker: Checker, installed: Host) -> None:
    failure = Failure("cap-bore", "a plugin", "ValueError: {slip} (on cap; caps.py:7)")
    plan = replace(checker.check_file(SHARED / "slack_tide_collar.yaml"), failures=(failure,) * 2)
    run = run_of(plan, installed=installed)
    (invocation,) = run["invocations"]
    assert not invocation["executionSuccessful"]
    (told,) = invocation["toolExecutionNotifications"]
    rules = run["tool"]["driver"]["rules"]
    assert rules[told["associatedRule"]["index"]]["id"] == "cap-bore"
    assert "{{slip}}" in told["message"]["text"] and told["level"] == "error"
    assert not invocation["toolConfigurationNotifications"]


def test_a_bench_that_cannot_be_used_is_one_of_configuration(run: Run, tmp_path: Path) -> None:
    for name in ("good", "bad"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "plan.yaml").write_bytes(BAD.read_bytes())
    (tmp_path / "bad" / "bench.yaml").write_text("bench: [", encoding="utf-8")
    ran = run("check", ".", "--as", "sarif", cwd=tmp_path)
    whole = json.loads(ran.out)
    VALIDATOR.validate(whole)
    (invocation,) = whole["runs"][0]["invocations"]
    (told,) = invocation["toolConfigurationNotifications"]
    (location,) = told["locations"]
    assert location["physicalLocation"]["artifactLocation"]["uri"] == "bad/plan.yaml"
    assert not invocation["toolExecutionNotifications"] and ran.code == 2
    assert not invocation["executionSuccessful"]


def test_a_file_that_is_no_plan_is_a_result(checker: Checker, tmp_path: Path) -> None:
    path = tmp_path / "a plan, naïve.yaml"
    path.write_text("plan: [", encoding="utf-8")
    run = run_of(checker.check_file(path), checker.check_file(tmp_path / "missing.yaml"))
    addresses = [
        one["locations"][0]["physicalLocation"]["artifactLocation"] for one in results(run)
    ]
    assert [one["ruleId"] for one in results(run)] == ["plan-file", "plan-file"]
    assert addresses[0] == {"uri": path.as_uri()} and "%20" in path.as_uri()


@pytest.mark.parametrize("where", ["plans/a b.yaml", "../plans/a.yaml"])
def test_an_address_is_below_the_folder_of_the_run_or_absolute(where: str) -> None:
    (artifact,) = log(Result((PlanResult(where),)), Options())["runs"][0]["artifacts"]
    if where.startswith(".."):
        assert artifact["location"]["uri"].startswith("file:///")
    else:
        assert artifact["location"] == {"uri": "plans/a%20b.yaml", "uriBaseId": "%SRCROOT%"}


def test_the_command_writes_one_whatever_the_terminal_shows(run: Run) -> None:
    ran = run("check", BAD, "--as", "sarif", PYTHONUTF8="0", PYTHONIOENCODING="ascii")
    whole = json.loads(ran.out)
    VALIDATOR.validate(whole)
    assert ran.code == 1 and "±" in json.dumps(whole, ensure_ascii=False)
    rules = whole["runs"][0]["tool"]["driver"]["rules"]
    assert all(rule["shortDescription"] and rule["fullDescription"] for rule in rules)
