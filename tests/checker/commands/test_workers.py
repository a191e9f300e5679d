"""Plans checked by several processes: what is written is the same, and an end is a clean one."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from running import ROOT, SAMPLES, SHARED, Run
from wellstrung.commands import by_plan

#: more than the lots that two processes are given at once
MANY = 120


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Plans of a folder; in one of them a wire is too thick, and one cannot be read."""
    text = (SHARED / "slack_tide_collar.yaml").read_text("utf-8")
    texts = [text] * 20 + [text.replace("20 AWG", "10 AWG"), "plan: 1\ntitle: [\n"]
    for number, one in enumerate(texts):
        (tmp_path / f"{number:02}.yaml").write_text(one, "utf-8")
    return tmp_path


@pytest.mark.parametrize("form", ["text", "json", "jsonl"])
def test_the_same_is_written_by_any_number_of_processes(form: str, folder: Path, run: Run) -> None:
    where = [SAMPLES / "class", folder, Path("missing.yaml")]
    alone = run("check", *where, "--as", form)
    assert alone.code == 1
    assert run("check", *where, "--as", form, "--workers", "2") == alone


def test_what_is_noted_of_a_bench_and_a_drawer_is_noted_once(folder: Path, run: Run) -> None:
    (folder / "studio.yaml").write_text("bench: 1\n", "utf-8")
    (folder / "class").mkdir()
    (folder / "class" / "bench.yaml").write_text("bench: 1\nrates: [\n", "utf-8")
    (folder / "class" / "plan.yaml").write_text((folder / "00.yaml").read_text("utf-8"), "utf-8")
    alone = run("check", folder, "--workers", "1")
    assert alone.code == 2 and alone.err.count("studio.yaml") == 1
    assert run("check", folder, "--workers", "2") == alone


@pytest.mark.parametrize(
    ("plans", "asked", "processors", "count"),
    [
        (1, None, 8, 1),
        (30, None, 8, 1),
        (100, None, 8, 2),
        (1000, None, 8, 8),
        (1000, None, 1, 1),
        (1000, 1, 8, 1),
        (3, 2, 1, 2),
        (2, 5, 8, 2),
    ],
)
def test_a_handful_is_checked_by_this_process(
    plans: int, asked: int | None, processors: int, count: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(by_plan, "_processors", lambda: processors)
    files = [SHARED / "slack_tide_collar.yaml"] * plans
    assert by_plan.worth(files, asked) == count
    assert by_plan.worth([*files, Path("-")], asked) == 1


def test_a_process_that_ends_early_is_one_line(folder: Path, tmp_path: Path, run: Run) -> None:
    rule = tmp_path / "leaves.py"
    rule.write_text(
        textwrap.dedent(
            """
            import os
            from wellstrung.rulebook import Piece, Rule
            def check(piece, ask):
                os._exit(3)
            RULE = Rule(name="leaves", subject=Piece, check=check, title="leaves", family="fit",
                        level="error", why="it leaves", sources=("common practice",))
            """
        ),
        "utf-8",
    )
    ended = run("check", folder, "--rules", rule, "--workers", "2")
    assert ended.code == 2
    assert ended.err.splitlines()[-1].endswith("ended before it was done: take --workers 1")


@pytest.mark.skipif(sys.platform == "win32", reason="ctrl-C is sent in another way there")
def test_an_interrupt_ends_all_processes_with_one_line(tmp_path: Path) -> None:
    text = (SHARED / "slack_tide_collar.yaml").read_text("utf-8")
    for number in range(MANY):
        (tmp_path / f"{number}.yaml").write_text(text, "utf-8")
    command = [sys.executable, "-m", "wellstrung", "check", str(tmp_path)]
    with subprocess.Popen(
        [*command, "--as", "jsonl", "--workers", "2"],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
        encoding="utf-8",
        # where tests run in the background it is ignored
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    ) as run:
        assert run.stdout is not None and run.stdout.readline().startswith('{"file"')
        os.killpg(run.pid, signal.SIGINT)  # as a terminal does
        out, err = run.communicate()  # returns when no process has these open any more
    assert (run.returncode, err) == (2, "wellstrung: stopped before the end\n")
    assert out.count("\n") < MANY
