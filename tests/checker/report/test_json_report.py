"""The JSON report against its published schema, and the figures in it against the checker's."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from reports import report
from running import ROOT, SAMPLES, SHARED, Run
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Result, Summary
from wellstrung.judging.summary import summary
from wellstrung.plugins.host import Host
from wellstrung.report import text as written
from wellstrung.report.writer import Options
from wellstrung.testing.cases import changed

VALIDATOR = Draft202012Validator(schemas.load("report"))


@pytest.mark.parametrize(
    "arguments",
    [
        ["sample_plans"],
        ["tests/plans/slack_tide_collar.yaml"],
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
    slips = [plan for plan in found["plans"] if plan["outcome"] == "not checked yet"]
    assert found["totals"]["not_checked"] == len(slips)
    assert ran.code == (1 if found["totals"]["errors"] or slips else 0)


def test_quantities_name_what_they_come_from(installed: Host) -> None:
    checker = Checker(installed, quantities=True)
    result = checker.check_file(SHARED / "slack_tide_collar.yaml")
    assert result.failures == ()
    (plan,) = report(result)["plans"]
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
    rows = {
        name: dict(zip(plan["columns"], row, strict=False))
        for name, row in plan["quantities"].items()
        if not isinstance(row, str)
    }
    for name, row in rows.items():
        low, high = row.get("likely", (row["middle"], row["middle"]))
        worst = row.get("worst", (low, high))
        assert worst[0] <= low <= row["middle"] <= high <= worst[1], name
    length = rows["piece.length"]
    assert length["line"].startswith("= {toggle.a.along} + {3 x small.inside} + ")
    assert length["unit"] == "mm" and length["middle"] == pytest.approx(460.07, abs=0.01)
    assert rows["drop.links + drop.lost"]["middle"] == 7
    assert plan["quantities"]["bar chain.links_per_piece"] == "drop.links + drop.lost"


@pytest.mark.parametrize("form", ["json", "jsonl"])
def test_a_plan_is_written_before_those_after_the_next_are_checked(
    form: str, installed: Host, checker: Checker
) -> None:
    writer = installed.writers[form].by_plan
    assert writer is not None
    result, checked = checker.check_file(SHARED / "slack_tide_collar.yaml"), 0

    def plans() -> Iterator[tuple[str, Summary]]:
        nonlocal checked
        for checked in range(1, 21):  # noqa: B007 - counted for the test
            yield writer.each(result, Options()), summary(result)

    for pieces, _ in enumerate(writer.whole(plans(), Options()), 1):
        assert checked <= pieces + 1
    assert checked == 20


def test_json_lines_are_the_plans_of_the_report(run: Run) -> None:
    arguments = ("check", "sample_plans/class", "missing.yaml")
    ran = run(*arguments, "--as", "jsonl", PYTHONUTF8="0", PYTHONIOENCODING="ascii", LC_ALL="C")
    lines = ran.out.splitlines()
    whole = json.loads(run(*arguments, "--as", "json").out)
    assert [json.loads(line) for line in lines] == whole["plans"]
    assert len(lines) == len(whole["plans"]) > 10


def test_every_sample_fits_the_schema(installed: Host) -> None:
    checker = Checker(installed, quantities=True)
    for path in [*SAMPLES.rglob("*.yaml"), *SHARED.glob("*.yaml")]:
        VALIDATOR.validate(report(checker.check_file(path)))


ACCEPTED = """\
accept:
  - {rule: cap-bore, part: cap, because: "tried on the class samples"}
"""


def test_an_accepted_warning_counts_nowhere(checker: Checker, whole_collar: str) -> None:
    loose = whole_collar.replace(
        "bore: 10 mm, depth: 7 mm, outside: 11.5", "bore: 11.4 mm, depth: 7 mm, outside: 13"
    )
    assert checker.check_text(loose).outcome == "makeable with warnings"
    result = checker.check_text(loose + ACCEPTED)
    (plan,) = report(result)["plans"]
    told = [r for r in plan["remarks"] if r["rule"] == "cap-bore"]
    assert [(r["level"], r["accepted"]) for r in told] == [
        ("warning", "tried on the class samples")
    ]
    assert plan["outcome"] == "makeable" and report(result)["totals"]["warnings"] == 0


def test_the_report_of_a_broken_file_is_whole(checker: Checker, tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text("a: [", encoding="utf-8")
    VALIDATOR.validate(report(checker.check_file(path)))


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
    ] == [("error", ("end", "toggle", "cap"), "inside 2.63 mm or more")]


def test_the_masses_of_the_sample_add_up_by_hand(installed: Host) -> None:
    """Rope 79.4/1.5 rounds..., two caps, seven small rings in the run, toggle, and what hangs."""
    checker = Checker(installed, quantities=True)
    found = {
        name: value.middle
        for name, value in checker.check_file(SHARED / "slack_tide_collar.yaml").quantities.items()
    }
    rope = 397 / 1.5 * 5 / 35  # rounds of half a bead's width, five beads each, 35 to the gram
    assert found["rope.mass"] == pytest.approx(rope)
    drop = (3 * 3.4 + 3 * 10.4 + 1.6) * 22 / 1000  # links' insides and two walls, 22 g a metre
    assert found["drop.mass"] == pytest.approx(drop)
    assert found["drop.along"] == pytest.approx(3 * 3.4 + 3 * 10.4)
    in_run = 5 + 2 * 2.1 + rope + (3 + 4) * found["small.mass"]
    hung = 9 + 2 * found["carrier.mass"] + 7 * (drop + found["small.mass"])
    assert found["piece.mass"] == pytest.approx(in_run + hung)


def test_two_rings_in_the_eye_of_a_cap_lie_side_by_side(checker: Checker, collar: str) -> None:
    """A charm hung from the eye that the run's ring holds already."""
    charm = "  charm: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}\nrun:"
    hung = "hung:\n  - {part: charm, from: {part: cap, eyes: eye}, by: small}"
    plan = collar.replace("run:", charm, 1).replace("hung:", hung, 1)

    def told(text: str) -> list[str]:
        remarks = checker.check_text(text).remarks
        return [remark.says for remark in remarks if remark.rule == "ring-through-eye"]

    assert told(plan) == []
    assert told(
        plan.replace(
            "eye: {hole: 2.4 mm, wire: 1.2 mm}}\n  carrier",
            "eye: {hole: 1.9 mm, wire: 1.2 mm}}\n  carrier",
        )
    ) == [
        "the 2 wires of `small` (18 AWG) cannot pass the eye of `cap` (1.9 mm), which needs to"
        " be 2.14 mm, likely 2.1..2.18 mm"
    ]


def test_five_charms_of_one_eye_weigh_five_times(installed: Host, collar: str) -> None:
    charm = (
        "  charm: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}, mass: 2 g}\nrun:"
    )
    plan = f"{collar.split('hung:')[0]}hung:\n  - {{part: charm, from: rope, by: ring, times: 5}}\n"
    plan = plan.replace("run:", charm, 1).replace(
        "  glue:",
        "  ring: {kind: jump ring, outside: 14 mm, wire: 18 AWG, closing: open, mass: 1 g}"
        "\n  glue:",
    )
    only = plan.split("run:")[0] + "run: [rope]\nhung:" + plan.split("hung:")[1]
    quantities = Checker(installed, quantities=True).check_text(only).quantities
    assert quantities["piece.mass"].middle - quantities["rope.mass"].middle == pytest.approx(15)


def test_where_makers_differ_one_line_says_so(checker: Checker) -> None:
    """The choice of some holds: no remark, but a line in the text and a note in the JSON."""
    collar = (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")
    plan = changed(collar, {"piece: necklace\n": "piece: necklace\ncalled: matinee\n"})
    result = checker.check_text(plan)
    note = (
        "makers differ: shortest matinee 45.72..50.8 cm (makers move an edge by 2 in, common"
        " practice, no source)"
    )
    (told,) = report(result)["plans"]
    assert [kept["note"] for kept in told["held"] if "note" in kept] == [note]
    VALIDATOR.validate(report(result))
    lines = " ".join(written.write(Result((result,)), Options()).split())
    assert "passed: length-name (the piece): " in lines and f"to spare; {note}" in lines
