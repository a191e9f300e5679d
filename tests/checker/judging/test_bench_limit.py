"""A limit of the bench's own in every report: accepted, in SARIF and JSON, on pages, in lists."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from running import Run

BENCH = """\
bench: 1
limits:
  cap.bore: {at most: 9 mm, because: the kit's caps}
  jump ring.outside: {at most: 15 mm, level: error, pieces: [bracelet]}
"""


@pytest.fixture
def folder(tmp_path: Path, whole_collar: str) -> Path:
    (tmp_path / "bench.yaml").write_text(BENCH, encoding="utf-8")
    (tmp_path / "plan.yaml").write_text(whole_collar, encoding="utf-8")
    return tmp_path


def test_it_is_a_warning_that_names_the_line_of_the_bench(run: Run, folder: Path) -> None:
    ran = run("check", "plan.yaml", cwd=folder)
    assert ran.code == 0
    said = " ".join(ran.out.split())
    assert "WARNING: `cap.bore` (10 mm) is more than your bench allows (at most 9 mm): the" in said
    assert "[bench-limit] at plan.yaml" in said
    assert "see also   bench.yaml:3:3\n" in ran.out


def test_it_is_an_error_where_the_bench_says_so_and_for_its_pieces_alone(
    run: Run, folder: Path
) -> None:
    assert "carrier.outside" not in run("check", "plan.yaml", cwd=folder).out
    (folder / "bench.yaml").write_text(BENCH.replace("bracelet", "necklace"), "utf-8")
    ran = run("check", "plan.yaml", cwd=folder)
    assert ran.code == 1 and "ERROR: `carrier.outside` (16 mm)" in ran.out


def test_a_word_of_the_trade_is_a_name_where_there_is_one(run: Run, folder: Path) -> None:
    """`medallion` means a pendant; a part of that name is meant alone."""
    limits = "bench: 1\nlimits: {medallion.height: at least 50 mm}\n"
    (folder / "bench.yaml").write_text(limits, encoding="utf-8")
    text = (folder / "plan.yaml").read_text("utf-8")
    text = text.replace("frame: {kind: pendant,", "frame: {kind: pendant, height: 30 mm,")
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    assert "`frame.height` (30 mm) is less" in run("check", "plan.yaml", cwd=folder).out
    named = text.replace("  glue:", "  medallion: {kind: pendant, height: 20 mm}\n  glue:")
    (folder / "plan.yaml").write_text(named, encoding="utf-8")
    out = run("check", "plan.yaml", cwd=folder).out
    assert "`medallion.height` (20 mm) is less" in out and "`frame.height`" not in out


def test_it_is_accepted_as_any_warning(run: Run, folder: Path, whole_collar: str) -> None:
    line = "accept: [{rule: bench-limit, part: cap, because: one size up is in stock}]\n"
    (folder / "plan.yaml").write_text(whole_collar + line, encoding="utf-8")
    (plan,) = json.loads(run("check", "plan.yaml", "--as", "json", cwd=folder).out)["plans"]
    (remark,) = [one for one in plan["remarks"] if one["rule"] == "bench-limit"]
    assert remark["accepted"] == "one size up is in stock"
    assert plan["outcome"] == "makeable"


def test_reports_for_machines_and_pages_have_it(run: Run, folder: Path) -> None:
    (plan,) = json.loads(run("check", "plan.yaml", "--as", "json", cwd=folder).out)["plans"]
    (remark,) = [one for one in plan["remarks"] if one["rule"] == "bench-limit"]
    assert (remark["found"], remark["needed"]) == ("10 mm", "at most 9 mm")
    assert [place["file"] for place in remark["also"]] == ["bench.yaml"]
    log = json.loads(run("check", "plan.yaml", "--as", "sarif", cwd=folder).out)
    assert "bench-limit" in {one["ruleId"] for one in log["runs"][0]["results"]}
    ran = run("check", "plan.yaml", "--as", "html", "--out", "pages", cwd=folder)
    assert ran.code == 0
    assert any("bench-limit" in page.read_text("utf-8") for page in folder.glob("pages/*.html"))


def test_lists_of_rules_and_settings_have_it(run: Run, folder: Path) -> None:
    assert "bench-limit  error" in run("rules", "bench-limit").out
    out = run("bench", "plan.yaml", cwd=folder).out
    assert "  cap.bore  at most 9 mm, for `cap` (bench.yaml:3)\n    used by  bench-limit\n" in out
    assert "  jump ring.outside  at most 15 mm, for nothing in this plan (bench.yaml:4)\n" in out
    out = run("bench", "bench.yaml", cwd=folder).out
    assert "  cap.bore  at most 9 mm (bench.yaml:3)\n" in out
    found = json.loads(run("bench", "--as", "json", cwd=folder).out)
    assert found["quantities"]["piece"]["mass"] == "g"
    assert found["quantities"]["end cap"]["bore"] == "mm"
