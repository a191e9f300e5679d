"""`check --watch`: what it shows at each save, and how it ends."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from running import Run
from terminal import CTRL_C, Terminal, at_terminal

READY = "ctrl-C ends it"
PASSED = "checks passed"


@pytest.fixture
def plan(tmp_path: Path, whole_collar: str) -> Path:
    path = tmp_path / "collar.yaml"
    path.write_text(whole_collar, encoding="utf-8")
    return path


def tight(plan: Path) -> str:
    return plan.read_text(encoding="utf-8").replace("bore: 10 mm", "bore: 8 mm")


def saved(plan: Path, text: str) -> None:
    """Save as many editors do: under another name first."""
    part = plan.with_name("collar.yaml.tmp123")
    part.write_text(text, encoding="utf-8")
    os.replace(part, plan)


def ended(terminal: Terminal) -> int:
    terminal.type(CTRL_C)
    code = terminal.end()
    assert "Traceback" not in terminal.shown
    return code


def test_each_save_is_checked_and_the_last_round_gives_the_exit(plan: Path) -> None:
    right = plan.read_text(encoding="utf-8")
    with at_terminal("check", "--watch", "collar.yaml", cwd=plan.parent) as terminal:
        assert "MAKEABLE" in terminal.until(READY)
        plan.write_text(tight(plan), encoding="utf-8")
        shown = terminal.until(PASSED)
        assert "\n== " in shown and "  collar.yaml\n" in shown and "[cap-bore]" in shown
        plan.write_text(right, encoding="utf-8")
        assert "NOT MAKEABLE" not in terminal.until(PASSED)
        plan.write_text(tight(plan), encoding="utf-8")
        terminal.until(PASSED)
        assert ended(terminal) == 1


def test_ctrl_c_after_a_plan_that_is_right_ends_with_0(plan: Path) -> None:
    with at_terminal("check", "--watch", "collar.yaml", cwd=plan.parent) as terminal:
        terminal.until(READY)
        assert ended(terminal) == 0


def test_a_save_by_another_name_and_a_plan_that_is_gone_for_a_moment(plan: Path) -> None:
    text = tight(plan)
    with at_terminal("check", "--watch", "collar.yaml", cwd=plan.parent) as terminal:
        terminal.until(READY)
        saved(plan, text)
        assert "[cap-bore]" in terminal.until(PASSED)
        plan.unlink()
        terminal.until("collar.yaml is not there any more: waiting for it")
        plan.write_text(text.replace("8 mm, depth", "7 mm, depth"), encoding="utf-8")
        assert "(7 mm)" in terminal.until(PASSED)
        assert ended(terminal) == 1


def test_what_is_saved_unchanged_is_not_shown_again(plan: Path) -> None:
    with at_terminal("check", "--watch", "collar.yaml", cwd=plan.parent) as terminal:
        terminal.until(READY)
        saved(plan, plan.read_text(encoding="utf-8"))
        (plan.parent / "second.yaml").write_bytes(plan.read_bytes())
        (plan.parent / "shopping.txt").write_text("beads", encoding="utf-8")
        saved(plan, tight(plan))
        assert terminal.until(PASSED).count("\n== ") == 1
        assert ended(terminal) == 1


def test_its_bench_and_its_drawer_are_watched_too(plan: Path) -> None:
    (cap,) = (
        line for line in plan.read_text(encoding="utf-8").splitlines() if line.startswith("  cap:")
    )
    drawer = plan.parent / "caps" / "drawer.yaml"
    drawer.parent.mkdir()
    drawer.write_text(f"drawer: 1\nparts:\n{cap}\n", encoding="utf-8")
    text = plan.read_text(encoding="utf-8").replace(cap, "  cap: {from: cap}")
    plan.write_text(
        text.replace("plan: 1", "plan: 1\ndrawer: caps/drawer.yaml", 1), encoding="utf-8"
    )
    with at_terminal("check", "--watch", "collar.yaml", cwd=plan.parent) as terminal:
        terminal.until(READY)
        drawer.write_text(tight(drawer), encoding="utf-8")
        assert "caps/drawer.yaml:3:" in terminal.until(PASSED)
        bench = plan.parent / "bench.yaml"
        bench.write_text("bench: 1\nlimits: {cap lose: 2 mm}\n", encoding="utf-8")
        assert "the bench file cannot be used" in terminal.until("cap loose")
        bench.write_text("bench: 1\nlimits: {cap loose: 2 mm}\n", encoding="utf-8")
        assert "bench: bench.yaml" in terminal.until(PASSED)
        assert ended(terminal) == 1


def test_of_a_folder_the_table_and_the_changed_plan_are_shown(plan: Path) -> None:
    second = plan.parent / "second.yaml"
    second.write_text(tight(plan), encoding="utf-8")
    with at_terminal("check", "--watch", ".", cwd=plan.parent) as terminal:
        terminal.until(READY)
        plan.write_text(
            plan.read_text(encoding="utf-8").replace("times: 7}", "times: 9}"), encoding="utf-8"
        )
        shown = terminal.until(PASSED)
        assert "2 plans: " in shown
        assert "[fringe-count]" in shown and "[cap-bore]" not in shown
        below = plan.parent / "class" / "third.yaml"
        below.parent.mkdir()
        below.write_bytes(second.read_bytes())
        assert "class/third.yaml" in terminal.until(PASSED)
        below.write_text(tight(below).replace("8 mm", "7 mm"), encoding="utf-8")
        assert "class/third.yaml:15" in terminal.until(PASSED)
        terminal.until("3 plans: ")
        below.unlink()
        assert "class" not in terminal.until("2 plans: ")
        assert ended(terminal) == 1


def test_other_forms_are_refused(run: Run, plan: Path) -> None:
    ran = run("check", "--watch", plan, "--as", "json")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == "wellstrung: `--watch` shows each round as text: leave out `--as json`\n"
