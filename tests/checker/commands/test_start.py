"""`start` as a command: at a real terminal, piped, with answers from a file."""

from __future__ import annotations

import os
import pty
import re
import select
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from running import ROOT, Run

pytestmark = pytest.mark.slow

ANSWERS = ROOT / "tests" / "checker" / "start" / "answers"
#: how long a slow machine may take for one answer, seconds
PATIENCE = 60
#: the end of what is shown where a line is asked for
PROMPT = r"(?:^|\n|\] |enter |over it )> $"


class Terminal:
    """The command at a pseudo-terminal of its own."""

    def __init__(self, *arguments: str, cwd: Path, columns: int = 80) -> None:
        self.pid, self._leader = pty.fork()
        if not self.pid:
            os.chdir(cwd)
            signal.signal(signal.SIGINT, signal.SIG_DFL)  # what runs in the background ignores it
            around = {**os.environ, "TERM": "xterm", "COLUMNS": str(columns), "PYTHONUTF8": "1"}
            command = [sys.executable, "-m", "wellstrung", "start", *arguments]
            os.execve(sys.executable, command, around)
        self.shown = ""

    def until(self, pattern: str) -> str:
        """What is shown up to and with a pattern; fails if it never comes."""
        while not (found := re.search(pattern, self.shown)):
            ready, _, _ = select.select([self._leader], [], [], PATIENCE)
            try:
                read = os.read(self._leader, 65536) if ready else b""
            except OSError:  # the other end is closed
                read = b""
            assert read, f"no {pattern!r} in {self.shown}"
            self.shown += read.decode("utf-8", "replace").replace("\r\n", "\n")
        before, self.shown = self.shown[: found.end()], self.shown[found.end() :]
        return before

    def types(self, line: str, then: str = PROMPT) -> str:
        """Type a line, and wait for what is shown after it."""
        os.write(self._leader, f"{line}\n".encode())
        self.until(re.escape(line))
        return self.until(then)

    def stops(self, key: bytes) -> None:
        """Press a key until it stops: one may come while the line is only being set up."""
        for _ in range(PATIENCE // 5):
            os.write(self._leader, key)
            while select.select([self._leader], [], [], 5)[0]:
                self.shown += os.read(self._leader, 65536).decode("utf-8", "replace")
                if "nothing was written" in self.shown:
                    return
        raise AssertionError(self.shown)

    def ends(self) -> int:
        """Wait for the end; the exit code."""
        with suppress(AssertionError):
            self.until("\\Z.")
        _, status = os.waitpid(self.pid, 0)
        self.pid = 0
        return os.waitstatus_to_exitcode(status)

    def close(self) -> None:
        if self.pid:
            os.kill(self.pid, signal.SIGKILL)
            os.waitpid(self.pid, 0)
        os.close(self._leader)


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    opened = Terminal("--out", "plan.yaml", cwd=tmp_path)
    opened.until(PROMPT)
    yield opened
    opened.close()


def test_back_a_wrong_answer_and_a_correction(terminal: Terminal, tmp_path: Path) -> None:
    assert "write `bracelet`" in terminal.types("braclet")
    assert "For whom" in terminal.types("bracelet")
    assert "What are you making" in terminal.types("back")
    assert "this is the first question" in terminal.types("back")
    assert "For whom" in terminal.types("cuff")
    assert "does not say how old" in terminal.types("Zoltan the great")
    terminal.types("adult")
    assert "a draft can be written after 5 answers" in terminal.types("write")
    terminal.types("nothing")
    terminal.types("165 mm")
    terminal.types("18 cm")
    assert "[flat peyote]" in terminal.types("woven")
    assert "wide" in terminal.types("peyote")
    listed = terminal.types("answers")
    assert "2 wearer" in listed and "adult" in listed
    assert "How far round is the wrist" in terminal.types("4")
    terminal.types("17 cm")
    shown = terminal.types("write")
    assert "makeable" in shown
    terminal.types("", "wellstrung check plan.yaml")
    assert terminal.ends() == 0
    text = (tmp_path / "plan.yaml").read_text(encoding="utf-8")
    assert "wearer: {age: adult, wrist: 17 cm}" in text and "stitch: flat peyote" in text


def test_not_known_everywhere_still_makes_a_plan(
    terminal: Terminal, tmp_path: Path, run: Run
) -> None:
    terminal.types("necklace")
    shown = ""
    while "[take all]" not in shown:
        shown = terminal.types("don't know")
    terminal.types("")
    terminal.types("don't know")
    terminal.types("don't know")
    terminal.types("", "wellstrung check plan.yaml")
    assert terminal.ends() == 0
    ran = run("check", "plan.yaml", "--strict", cwd=tmp_path)
    assert ran.code == 0, ran.out
    text = (tmp_path / "plan.yaml").read_text(encoding="utf-8")
    assert "you did not know: this is usual" in text and "# neck: measure it" in text


@pytest.mark.parametrize("key", [b"\x03", b"\x04"], ids=["ctrl-C", "end of input"])
def test_stopping_leaves_nothing(key: bytes, terminal: Terminal, tmp_path: Path) -> None:
    terminal.types("necklace")
    terminal.stops(key)
    assert terminal.ends() == 2
    assert list(tmp_path.iterdir()) == []


def test_it_asks_before_it_writes_over_a_file(terminal: Terminal, tmp_path: Path) -> None:
    mine = tmp_path / "plan.yaml"
    mine.write_text("plan: 1\n", encoding="utf-8")
    terminal.types("pendant")
    for _ in range(4):
        terminal.types("")
    terminal.types("write")
    assert "is there already" in terminal.types("")
    terminal.stops(b"\x03")
    assert terminal.ends() == 2
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
