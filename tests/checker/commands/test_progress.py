"""The line that shows a person that the program is at work: at a terminal, and nowhere else."""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest

from running import SAMPLES, Run
from terminal import at_terminal
from wellstrung.commands import progress

CLASS = SAMPLES / "class"
COLOURS = re.compile(r"\x1b\[[0-9;]*m")


def seen(shown: str) -> str:
    """What is left on the screen: what follows a return stands over what was there."""
    lines = []
    for line in COLOURS.sub("", shown).split("\n"):
        left = ""
        for written in line.split("\r"):
            left = written + left[len(written) :]
        lines.append(left.rstrip())
    return "\n".join(lines).strip()


@pytest.mark.slow
def test_a_long_run_shows_how_far_it_is_and_leaves_nothing_behind(run: Run) -> None:
    with at_terminal("supplies", CLASS, cwd=CLASS) as terminal:
        terminal.end()
    assert re.search(r"\r(checking \d+ of 15|trying other sizes), \d+ s", terminal.shown)
    assert "checking" not in seen(terminal.shown) and "trying other" not in seen(terminal.shown)
    assert seen(terminal.shown).startswith("15 plans: 14 not makeable, 1 ")


@pytest.mark.slow
def test_a_page_of_one_plan_shows_it_too(tmp_path: Path) -> None:
    links = "".join(f"  c{n}: {{kind: connector, length: 9 mm}}\n" for n in range(3000))
    names = ", ".join(f"c{n}" for n in range(3000))
    plan = tmp_path / "long.yaml"
    head = "plan: 1\ntitle: A long chain\npiece: necklace\n"
    plan.write_text(f"{head}parts:\n{links}run: [{names}]\n", encoding="utf-8")
    with at_terminal("sheet", plan, "--out", tmp_path / "page.html", cwd=tmp_path) as terminal:
        terminal.end()
    assert re.search(r"\r(working|checking|drawing the page), \d+ s", terminal.shown)
    assert seen(terminal.shown) == f"wrote {tmp_path / 'page.html'}"


def test_a_pipe_gets_none_and_loads_nothing_for_it(run: Run) -> None:
    ran = run("supplies", CLASS / "orla_signal_necklace.yaml")
    assert ran.err == "" and "\r" not in ran.out
    assert not progress._watched()


def test_the_line_goes_before_anything_else_is_written(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    written: list[str] = []
    monkeypatch.setattr(progress, "_watched", lambda: True)
    monkeypatch.setattr(progress, "_AFTER", 0.0)
    monkeypatch.setattr(progress, "_EACH", 0.001)
    monkeypatch.setattr(progress._Line, "_write", _noted(written))
    with progress.at_work():
        progress.doing("checking cap.yaml")
        while len(written) < 2:
            time.sleep(0.001)
        with progress.quiet():
            assert written[-1] == ""
            before = len(written)
            time.sleep(0.02)
            assert len(written) == before
    assert written[-1] == "" and any(one.startswith("checking cap.yaml, ") for one in written)


def _noted(written: list[str]):  # type: ignore[no-untyped-def]
    def write(line: progress._Line, says: str) -> None:
        written.append(says)
        line._shown = says

    return write
