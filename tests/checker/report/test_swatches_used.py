"""Reports name the swatches that a plan goes by; `bench` shows what they taught."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from running import SHARED
from wellstrung.commands.cli import main

Say = Callable[..., str]
FOLDER = SHARED / "swatches"


@pytest.fixture
def said(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Say:
    monkeypatch.chdir(FOLDER)
    monkeypatch.setenv("COLUMNS", "120")

    def say(*arguments: str) -> str:
        assert main([*arguments]) == 0
        return capsys.readouterr().out

    return say


def test_the_report_names_them(said: Say) -> None:
    text = said("check", "rope.yaml")
    assert "bench: bench.yaml\nswatches: lines 7, 8, 9, 10 and 11 narrow `kelp`, `rope`" in text


def test_the_workings_name_them(said: Say) -> None:
    report = json.loads(said("check", "rope.yaml", "--as", "json"))["plans"][0]
    assert [one["place"]["line"] for one in report["swatches"]] == [7, 8, 9, 10, 11]
    assert report["swatches"][0]["narrows"] == ["`kelp`", "`rope`"]
    assert report["swatches"][4]["narrows"] == ["the minutes"]
    text = json.dumps(report, ensure_ascii=False)
    assert "1.05 ± 0.05 before 3 swatches, bench.yaml:7, 8, 9; range fitted" in text
    assert "2.1 ± 0.18 mm before 4 swatches, bench.yaml:7, 8, 9, 10" in text


def test_a_student_goes_by_the_lot_of_the_bead_alone(said: Say) -> None:
    report = json.loads(said("check", "orla.yaml", "--as", "json"))["plans"][0]
    assert [one["narrows"] for one in report["swatches"][:4]] == [["`kelp`"]] * 4
    text = said("bench", "orla.yaml")
    assert (
        "in this plan they narrow `kelp` and the minutes; `Orla` makes it and the bench is that of"
        " `Tamsin`, so that the hand is left out"
    ) in " ".join(text.split())


def test_a_page_names_them(said: Say, tmp_path: Path) -> None:
    said("sheet", "rope.yaml", "--out", f"{tmp_path}/rope.html")
    page = (tmp_path / "rope.html").read_text(encoding="utf-8")
    assert "swatches: lines 7, 8, 9, 10 and 11 narrow" in page


def test_bench_shows_what_was_learnt(said: Say) -> None:
    text = said("bench", "rope.yaml")
    head, _, rest = text.partition("swatches: what they show of your hand and your beads")
    assert head == "bench: bench.yaml, which sets 0 of these\n\n"
    lines = rest.split("\n\n")[0].splitlines()
    assert lines[1].startswith("  8/0 bead length of kelp, lot 12  2.1 ± 0.18 mm -> 2.1")
    assert "    by       bench.yaml:7, 8, 9, 10" in lines
    assert any(
        "thread tension of tubular peyote (fused)  1.05 ± 0.05 -> 1.0" in one for one in lines
    )
    assert any("% from one day to another" in one for one in lines)
    assert any(one.startswith("  rate of tubular peyote  7 ± 2.8 beads/min -> 8") for one in lines)
    assert lines[-1] == "  in this plan they narrow `kelp`, `rope` and the minutes"
    found = json.loads(said("bench", "rope.yaml", "--as", "json"))["learnt"]
    assert found["doubts"] == []
    for cause in found["causes"]:
        before, after = cause["before"], cause["after"]
        assert after[2] - after[0] < before[2] - before[0], cause["name"]
