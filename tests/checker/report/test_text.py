"""The report for people: whole pages at set widths, piped, in a real terminal, without colour."""

from __future__ import annotations

import os
import pty
import re
import select
import subprocess
import sys
from pathlib import Path

import pytest
from rich.cells import cell_len

from running import ROOT, Pinned, Run

pytestmark = pytest.mark.slow

PAGES = sorted((Path(__file__).parent / "pages").glob("*.txt"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_page(page: Path, run: Run, pinned: Pinned) -> None:
    """The first line of a stored page is the command and its width."""
    head, _, _ = page.read_text(encoding="utf-8").partition("\n")
    width, *arguments = head.removeprefix("# ").split()
    pinned(page, f"{head}\n{run(*arguments, COLUMNS=width).out}")


def test_there_are_pages() -> None:
    assert {page.stem for page in PAGES} == {
        "class_60", "class_80", "class_120", "right_80", "shape_80", "workings_80", "rules_80",
        "rule_60", "supplies_60", "supplies_80", "supplies_120", "cuts_60", "cuts_80", "cuts_120",
        "sizes_60", "sizes_80", "sizes_120", "tables_60", "brief_60", "supplies_class_80",
    }  # fmt: skip


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_line_but_a_path_is_wider_than_the_page(width: int, run: Run) -> None:
    out = run("check", "sample_plans", "--workings", COLUMNS=str(width)).out
    for line in out.splitlines():
        assert len(line) <= width or "sample_plans/" in line, line
        assert line == line.rstrip()


@pytest.mark.parametrize("width", [40, 60, 80])
def test_lines_of_wide_signs_keep_to_the_page(width: int, run: Run, tmp_path: Path) -> None:
    """Signs of East Asian scripts take two columns each, by the standard's annex 11."""
    plan = tmp_path / "a.yaml"
    wide = (
        "縄: {kind: strand, stitch: strung, beads: 真珠, length: 40 cmm} # 夜の灯台が見える海辺の町"
    )
    plan.write_text(
        "plan: 1\ntitle: 灯火\npiece: necklace\nbeads: {真珠: 8/0 round Japanese}\n"
        f"parts:\n  {wide}\nrun: [縄]\n",
        encoding="utf-8",
    )
    lines = run("check", "a.yaml", cwd=tmp_path, COLUMNS=str(width)).out.splitlines()
    [quoted] = [at for at, line in enumerate(lines) if "you wrote" in line]
    assert all(cell_len(line) <= width for line in lines)
    begins, marks = lines[quoted].partition("40 cmm")[0], lines[quoted + 1]
    assert cell_len(begins) == len(marks) - len("40 cmm") == marks.index("^")


def test_paths_are_never_wrapped(run: Run) -> None:
    out = run("check", "sample_plans/class", COLUMNS="40").out
    for place in ("orla_signal_necklace.yaml:26:49", "piran_rope_bracelet.yaml:40:5"):
        assert f"sample_plans/class/{place}" in out


def in_terminal(
    columns: int, plans: str = "tests/plans/lantern_collar.yaml", **environment: str
) -> str:
    """What the command shows in a terminal of that width."""
    leader, follower = pty.openpty()
    subprocess.run(["stty", "cols", str(columns)], stdin=follower, check=True)
    ours = {name: os.environ[name] for name in ("PATH", "PYTHONPATH") if name in os.environ}
    process = subprocess.Popen(
        [
            sys.executable,
            "-m",
            "wellstrung",
            "check",
            plans,
        ],
        stdin=follower,
        stdout=follower,
        stderr=follower,
        cwd=ROOT,
        env={**ours, "TERM": "xterm", "PYTHONUTF8": "1", **environment},
    )
    os.close(follower)
    shown = b""
    while select.select([leader], [], [], 30)[0]:
        try:
            read = os.read(leader, 65536)
        except OSError:  # the other end is closed
            break
        if not read:
            break
        shown += read
    process.wait()
    os.close(leader)
    return shown.decode().replace("\r\n", "\n")


def test_a_terminal_gets_colour_and_its_own_width() -> None:
    shown = in_terminal(60)
    assert "\x1b[" in shown
    bare = re.sub(r"\x1b\[[0-9;]*m", "", shown)
    assert all(len(line) <= 60 or ".yaml" in line for line in bare.splitlines())
    assert "1. ERROR: " in bare and "[cap-bore]" in bare


@pytest.mark.parametrize(("columns", "first"), [(60, False), (120, True)])
def test_a_terminal_ends_with_the_table_of_a_folder(columns: int, first: bool) -> None:
    shown = re.sub(r"\x1b\[[0-9;]*m", "", in_terminal(columns, "sample_plans/class"))
    table = shown.rpartition("\nwho ")[2].splitlines()
    assert "outcome" in table[0] and ("fix first" in table[0]) is first
    assert table[2].startswith("Kerra ") and table[-1] == "15 plans: 21 errors, 9 warnings"
    assert all(len(line) <= columns for line in table)


@pytest.mark.parametrize("environment", [{"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_a_terminal_that_wants_no_colour_gets_none(environment: dict[str, str]) -> None:
    assert "\x1b[" not in in_terminal(80, **environment)


def test_a_pipe_gets_no_colour(run: Run) -> None:
    assert "\x1b[" not in run("check", "sample_plans/class").out


def test_a_terminal_without_unicode_gets_ascii(run: Run) -> None:
    out = run(
        "check", "sample_plans", "--workings", PYTHONUTF8="0", PYTHONIOENCODING="ascii", LC_ALL="C"
    ).out
    assert out.isascii() and "+/-" in out and "| CAUTION" in out
    assert "0.5 ug/cm2" in out and "Ostergard" in out and not re.search(r"(?<!force)\?", out)


def test_names_that_look_like_markup_are_printed_as_they_are(
    run: Run, tmp_path: Path, collar: str
) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text(
        collar.replace("title: Test collar", 'title: "[bold]x[/bold] :ring: [/y]"'),
        encoding="utf-8",
    )
    assert "[bold]x[/bold] :ring: [/y], necklace" in run("check", plan).out


def test_a_reader_that_stops_early_breaks_nothing() -> None:
    done = subprocess.run(
        f"{sys.executable} -m wellstrung check sample_plans --workings | head -n 1",
        shell=True,
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.stderr == ""
