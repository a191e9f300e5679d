"""`start` as a command: at a real terminal, piped, with answers from a file."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from running import ROOT, Run
from terminal import CTRL_C, CTRL_D, Terminal, at_terminal

pytestmark = pytest.mark.slow

ANSWERS = ROOT / "tests" / "checker" / "start" / "answers"
#: the end of what is shown where a line is asked for
PROMPT = re.compile(r"(?:\n|\] |enter |over it )> $")


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    with at_terminal("start", "--out", "plan.yaml", cwd=tmp_path) as opened:
        opened.until(PROMPT)
        yield opened


def says(terminal: Terminal, line: str, then: str | re.Pattern[str] = PROMPT) -> str:
    """Type a line, and what is shown after it."""
    terminal.type(f"{line}\n")
    terminal.until(line)
    return terminal.until(then)


def test_back_a_wrong_answer_and_a_correction(terminal: Terminal, tmp_path: Path) -> None:
    assert "write `bracelet`" in says(terminal, "braclet")
    assert "For whom" in says(terminal, "bracelet")
    assert "What are you making" in says(terminal, "back")
    assert "this is the first question" in says(terminal, "back")
    assert "For whom" in says(terminal, "cuff")
    assert "does not say how old" in says(terminal, "Zoltan the great")
    says(terminal, "adult")
    assert "a draft can be written after 5 answers" in says(terminal, "write")
    says(terminal, "nothing")
    says(terminal, "165 mm")
    says(terminal, "18 cm")
    assert "[flat peyote]" in says(terminal, "woven")
    assert "wide" in says(terminal, "peyote")
    listed = says(terminal, "answers")
    assert "2 wearer" in listed and "adult" in listed
    assert "How far round is the wrist" in says(terminal, "4")
    says(terminal, "17 cm")
    shown = says(terminal, "write")
    assert "makeable" in shown
    says(terminal, "", "wellstrung check plan.yaml")
    assert terminal.end() == 0
    text = (tmp_path / "plan.yaml").read_text(encoding="utf-8")
    assert "wearer: {age: adult, wrist: 17 cm}" in text and "stitch: flat peyote" in text


def test_not_known_everywhere_still_makes_a_plan(
    terminal: Terminal, tmp_path: Path, run: Run
) -> None:
    says(terminal, "necklace")
    shown = ""
    while "[take all]" not in shown:
        shown = says(terminal, "don't know")
    says(terminal, "")
    says(terminal, "don't know")
    says(terminal, "don't know")
    says(terminal, "", "wellstrung check plan.yaml")
    assert terminal.end() == 0
    ran = run("check", "plan.yaml", "--strict", cwd=tmp_path)
    assert ran.code == 0, ran.out
    text = (tmp_path / "plan.yaml").read_text(encoding="utf-8")
    assert "you did not know: this is usual" in text and "# neck: measure it" in text


@pytest.mark.parametrize("key", [CTRL_C, CTRL_D], ids=["ctrl-C", "end of input"])
def test_stopping_leaves_nothing(key: str, terminal: Terminal, tmp_path: Path) -> None:
    says(terminal, "necklace")
    terminal.type(key)
    assert terminal.end() == 2 and "nothing was written" in terminal.shown
    assert list(tmp_path.iterdir()) == []


def test_it_asks_before_it_writes_over_a_file(terminal: Terminal, tmp_path: Path) -> None:
    mine = tmp_path / "plan.yaml"
    mine.write_text("plan: 1\n", encoding="utf-8")
    says(terminal, "pendant")
    for _ in range(4):
        says(terminal, "")
    says(terminal, "write")
    assert "is there already" in says(terminal, "")
    terminal.type(CTRL_C)
    assert terminal.end() == 2
    assert mine.read_text(encoding="utf-8") == "plan: 1\n"


def piped(answers: str, cwd: Path, columns: int) -> subprocess.CompletedProcess[str]:
    around = {**os.environ, "COLUMNS": str(columns), "PYTHONUTF8": "1"}
    return subprocess.run(
        [sys.executable, "-m", "wellstrung", "start"],
        cwd=cwd, env=around, input=answers, capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip


@pytest.mark.parametrize("columns", [60, 120])
def test_piped_it_keeps_to_the_width_and_to_plain_signs(columns: int, tmp_path: Path) -> None:
    given = "earrings\nadult\nnothing\nwoven\n9\n\n\n\n\n\n\n\nShore\n\n"
    ran = piped(given, tmp_path, columns)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    assert [line for line in ran.stdout.splitlines() if len(line) > columns] == []
    assert "\x1b" not in ran.stdout
    assert "> `top`: 14.4 mm wide" in ran.stdout and "error" not in ran.stdout
    assert (tmp_path / "shore.yaml").is_file()


def test_input_that_ends_leaves_nothing(tmp_path: Path) -> None:
    ran = piped("necklace\nadult\n", tmp_path, 80)
    assert ran.returncode == 2 and "nothing was written" in ran.stderr
    assert list(tmp_path.iterdir()) == []


def test_no_drawer_is_taken_since_a_new_plan_takes_nothing_from_one(run: Run) -> None:
    ran = run("start", "--drawer", "drawer.yaml")
    assert ran.code == 2 and "unrecognized arguments: --drawer" in ran.err


def test_answers_from_a_file_never_write_over_another(run: Run, tmp_path: Path) -> None:
    answers, out = ANSWERS / "pendant.yaml", tmp_path / "plan.yaml"
    assert run("start", "--answers", answers, "--out", out).code == 0
    before = out.read_text(encoding="utf-8")
    ran = run("start", "--answers", answers, "--out", out)
    assert ran.code == 2 and "is there already" in ran.err
    assert run("start", "--answers", answers, "--out", out, "--force").code == 0
    assert out.read_text(encoding="utf-8") == before
    assert [path.name for path in tmp_path.iterdir()] == ["plan.yaml"]


@pytest.mark.parametrize(
    ("answers", "says"),
    [
        (
            "piece: necklase",
            "1:8 piece: `necklase` is not among the answers here: write `necklace`",
        ),
        ("wearer: adult", "1:1 piece: this one is needed: write necklace, bracelet, anklet"),
        ("piece: pendant\nneck: 36 cm", "2:1 there is no question `neck`"),
        ("piece: pendant\nlegs: 9", "2:1 `legs` is not asked with these answers"),
        (
            "piece: bracelet\nmeasure: 16",
            "2:10 measure: a length needs a unit: write `16 mm` or `16 cm`",
        ),
        ("piece: [necklace", "1:"),
        ("piece: pendant\nmore: price\nbudget: lots", "3:9 budget: `lots` is not"),
        ("", "1:1 the file is empty: write answers such as `piece: necklace`"),
    ],
)
def test_a_slip_in_a_file_of_answers_is_named(
    answers: str, says: str, run: Run, tmp_path: Path
) -> None:
    file = tmp_path / "answers.yaml"
    file.write_text(answers, encoding="utf-8")
    ran = run("start", "--answers", file, "--out", tmp_path / "plan.yaml")
    assert ran.code == 2 and says in ran.err
    assert not (tmp_path / "plan.yaml").exists()
