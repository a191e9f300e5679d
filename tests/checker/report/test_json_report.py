"""The JSON report against its published schema, and the figures in it against the checker's."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from running import SAMPLES, Run
from wellstrung.checking import Checker, Result
from wellstrung.host import Host
from wellstrung.report.json_report import report

VALIDATOR = Draft202012Validator(schemas.load("report"))


@pytest.mark.parametrize(
    "arguments",
    [
        ["sample_plans"],
        ["sample_plans/slack_tide_collar.yaml"],
        ["sample_plans/class", "missing.yaml"],
        ["README.md"],
    ],
)
def test_fits_its_schema(arguments: list[str], run: Run) -> None:
    ran = run("check", *arguments, "--as", "json")
    found = json.loads(ran.out)
    VALIDATOR.validate(found)
    remarks = [remark for plan in found["plans"] for remark in plan["remarks"]]
    for level in ("error", "warning", "caution"):
        assert found["totals"][f"{level}s"] == sum(r["level"] == level for r in remarks)
    assert ran.code == (1 if found["totals"]["errors"] else 0)


def test_quantities_carry_their_working(installed: Host) -> None:
    checker = Checker(installed, quantities=True)
    result = checker.check_file(SAMPLES / "slack_tide_collar.yaml")
    assert result.failures == ()
    (plan,) = report(Result((result,)))["plans"]
    assert set(plan["quantities"]) >= {
        "rope.outside",
        "rope.inside",
        "rope.rounds",
        "rope.beads",
        "rope.mass",
        "rope.thread",
        "bar chain.needed",
        "bar chain.links_per_piece",
        "piece.length",
        "piece.inside",
        "piece.mass",
    }
    for name, quantity in plan["quantities"].items():
        low, high = quantity["likely"]
        assert quantity["worst"][0] <= low <= quantity["middle"] <= high <= quantity["worst"][1], (
            name
        )
    length = plan["quantities"]["piece.length"]
    assert length["working"][-1].startswith("piece.length = toggle.a.along + 3 linked small + ")
    assert length["unit"] == "mm" and length["middle"] == pytest.approx(460.07, abs=0.01)
    assert plan["quantities"]["bar chain.links_per_piece"]["middle"] == 8


ACCEPTED = """\
accept:
  - {rule: cap-bore, part: cap, because: "tried on the class samples"}
"""


def test_an_accepted_warning_counts_nowhere(checker: Checker, collar: str) -> None:
    loose = collar.replace(
        "bore: 10 mm, depth: 7 mm, outside: 11.5", "bore: 11.4 mm, depth: 7 mm, outside: 13"
    )
    assert checker.check_text(loose).outcome == "makeable with warnings"
    result = checker.check_text(loose + ACCEPTED)
    (plan,) = report(Result((result,)))["plans"]
    told = [r for r in plan["remarks"] if r["rule"] == "cap-bore"]
    assert [(r["level"], r["accepted"]) for r in told] == [
        ("warning", "tried on the class samples")
    ]
    assert plan["outcome"] == "makeable" and report(Result((result,)))["totals"]["warnings"] == 0


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (
            "{rule: cap-bore, part: cap, because: why not}",
            ("warning", "nothing is left to accept of `cap-bore` here: take the line out"),
        ),
        (
            "{rule: cap-boar, because: why not}",
            ("error", "there is no rule called `cap-boar`: write `cap-bore`"),
        ),
    ],
)
def test_an_acceptance_that_fits_nothing_is_told(
    line: str, told: tuple[str, str], checker: Checker, collar: str
) -> None:
    result = checker.check_text(f"{collar}accept:\n  - {line}\n")
    assert [(r.level, r.says) for r in result.remarks if r.level != "caution"] == [told]


def test_an_error_cannot_be_accepted(checker: Checker, collar: str) -> None:
    tight = collar.replace("bore: 10 mm", "bore: 6 mm")
    result = checker.check_text(tight + ACCEPTED)
    assert result.outcome == "not makeable"
    assert [r.accepted for r in result.remarks if r.rule == "cap-bore"] == [None]


def test_the_report_of_a_broken_file_is_whole(checker: Checker, tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text("a: [", encoding="utf-8")
    VALIDATOR.validate(report(Result((checker.check_file(path),))))


def test_one_ring_too_small_at_both_ends_is_one_remark(checker: Checker, collar: str) -> None:
    """A ring at each end of the run, each holding an eye of the cap and one of the toggle."""
    plan = collar.replace("{part: small, linked: 3}", "end").replace(
        "{part: small, linked: 4}", "end"
    )
    end = "  end: {kind: jump ring, outside: 4 mm, wire: 16 AWG, closing: open}\n  small:"
    result = checker.check_text(plan.replace("  small:", end, 1))
    assert [
        (remark.level, remark.parts, remark.needed)
        for remark in result.remarks
        if remark.rule == "ring-room"
    ] == [("error", ("end", "toggle", "cap"), "inside 2.81 mm or more")]
