"""What commands write: all of a file or nothing, and never over what they read."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from running import ROOT, SHARED, Run
from wellstrung.commands.output import save
from wellstrung.commands.rewriting import rewrite
from wellstrung.plugins.error import HostError

GOOD = SHARED / "slack_tide_collar.yaml"


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.yaml"
    path.write_bytes(GOOD.read_bytes())
    return path


@pytest.mark.parametrize("force", [[], ["--force"]])
def test_no_page_is_written_over_what_was_read(force: list[str], run: Run, plan: Path) -> None:
    (plan.parent / "bench.yaml").write_text("bench: 1\n", encoding="utf-8")
    for read in ("plan.yaml", "bench.yaml"):
        before = (plan.parent / read).read_bytes()
        ran = run("sheet", "plan.yaml", "--out", read, *force, cwd=plan.parent)
        assert (ran.code, ran.out) == (2, "")
        says = "is one of the files that are read or written: give another --out"
        assert ran.err == f"wellstrung: {read} {says}\n"
        assert (plan.parent / read).read_bytes() == before


def test_only_a_page_of_ours_is_written_over_unasked(run: Run, plan: Path) -> None:
    page = plan.parent / "mine.html"
    page.write_text("the story of the piece", encoding="utf-8")
    ran = run("sheet", plan, "--out", page)
    assert ran.code == 2 and page.read_text(encoding="utf-8") == "the story of the piece"
    assert (
        ran.err == f"wellstrung: {page} is there already and is not a page of ours: take --force\n"
    )
    assert run("sheet", plan, "--out", page, "--force").code == 0
    assert run("sheet", plan, "--out", page).code == 0, "now it is ours"
    assert sorted(file.name for file in plan.parent.iterdir()) == ["mine.html", "plan.yaml"]


def test_a_folder_with_something_else_in_the_way_stays_as_it_was(run: Run, plan: Path) -> None:
    out = plan.parent / "pages"
    out.mkdir()
    (out / "index.html").write_text("my own", encoding="utf-8")
    ran = run("check", plan, "--as", "html", "--out", out)
    assert ran.code == 2 and [file.name for file in out.iterdir()] == ["index.html"]


def test_a_link_stays_and_what_it_leads_to_is_written(run: Run, plan: Path) -> None:
    page, link = plan.parent / "page.html", plan.parent / "link.html"
    link.symlink_to(page)
    assert run("sheet", plan, "--out", link).code == 0
    assert link.is_symlink() and page.read_text(encoding="utf-8").startswith("<!doctype html>")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no full disk to write to")
def test_a_full_disk_is_said_in_one_line(run: Run, plan: Path) -> None:
    ran = run("sheet", plan, "--out", "/dev/full")
    assert (ran.code, ran.err) == (
        2, "wellstrung: /dev/full cannot be written: No space left on device\n",
    )  # fmt: skip


def test_signs_that_hide_or_turn_text_show_as_their_numbers(run: Run, plan: Path) -> None:
    text = plan.read_text(encoding="utf-8").replace("Slack Tide", "Slack \u202eTide\u200b")
    plan.write_text(text, encoding="utf-8")
    assert "Slack <U+202E>Tide<U+200B> collar" in run("check", plan).out
    assert run("sheet", plan, "--out", plan.parent / "page.html").code == 0
    page = (plan.parent / "page.html").read_text(encoding="utf-8")
    assert "Slack &lt;U+202E&gt;Tide&lt;U+200B&gt; collar" in page
    assert "\u202e" not in page and "\u200b" not in page


def test_pieces_of_one_title_show_their_files(run: Run, plan: Path) -> None:
    (plan.parent / "second.yaml").write_bytes(plan.read_bytes())
    ran = run("check", "plan.yaml", "second.yaml", cwd=plan.parent, COLUMNS="120")
    assert "Slack Tide collar plan.yaml" in ran.out
    assert "Slack Tide collar second.yaml" in ran.out


def test_what_start_reads_is_not_written_over(run: Run, tmp_path: Path) -> None:
    answers = ROOT / "tests" / "checker" / "start" / "answers" / "elastic_bracelet.yaml"
    mine = tmp_path / "mine.yaml"
    mine.write_bytes(answers.read_bytes())
    ran = run("start", "--answers", mine, "--out", mine, "--force")
    assert ran.code == 2 and "is one of the files that are read" in ran.err
    assert mine.read_bytes() == answers.read_bytes()


def test_names_that_steer_a_terminal_are_spelt_out_and_their_files_kept(
    run: Run, plan: Path
) -> None:
    odd = plan.rename(plan.with_name("tide\x1b[31m\x07.yaml"))
    before = odd.read_bytes()
    for given in (odd, plan.parent):
        ran = run("sheet", given, "--out", odd, "--force")
        assert ran.code == 2 and "is one of the files that are read" in ran.err
        assert "\x1b" not in ran.err and "tide\\x1b[31m\\x07.yaml" in ran.err
        assert odd.read_bytes() == before
    ran = run("sheet", odd, cwd=plan.parent)
    assert ran.code == 0 and "\x1b" not in ran.out + ran.err


Break = Callable[[int], None]


def full(_: int) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def interrupted(_: int) -> None:
    raise KeyboardInterrupt


def at_call(number: int, of: Callable[..., object], breaks: Break) -> Callable[..., object]:
    """A function that breaks when it is called for the n-th time."""
    calls = iter(range(1, 100))

    def call(*arguments: object, **named: object) -> object:
        if next(calls) == number:
            breaks(number)
        return of(*arguments, **named)

    return call


def in_folder(folder: Path) -> Mapping[str, str]:
    return {path.name: path.read_text(encoding="utf-8") for path in folder.iterdir()}


@pytest.mark.parametrize("breaks", [full, interrupted])
@pytest.mark.parametrize("number", [1, 2])
def test_pages_are_written_all_or_none(
    number: int, breaks: Break, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "one.html").write_text("mine", encoding="utf-8")
    monkeypatch.setattr(os, "fsync", at_call(number, os.fsync, breaks))
    with pytest.raises((HostError, KeyboardInterrupt)) as raised:
        save({tmp_path / "one.html": "new", tmp_path / "two.html": "new"}, force=True)
    assert in_folder(tmp_path) == {"one.html": "mine"}
    assert str(raised.value).endswith(
        " cannot be written: No space left on device" * (breaks is full)
    )


@pytest.mark.parametrize("breaks", [full, interrupted])
@pytest.mark.parametrize("what", ["open", "replace"])
@pytest.mark.parametrize("number", range(1, 7))
def test_a_plan_and_its_drawer_are_mended_together_or_not_at_all(
    number: int, what: str, breaks: Break, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plan, drawer = tmp_path / "plan.yaml", tmp_path / "drawer.yaml"
    plan.write_text("bore: 8 mm", encoding="utf-8")
    drawer.write_text("hole: 1 mm", encoding="utf-8")
    before = in_folder(tmp_path)
    changes = {plan: ("bore: 8 mm", "bore: 9 mm"), drawer: ("hole: 1 mm", "hole: 2 mm")}
    with monkeypatch.context() as patched:
        patched.setattr(Path, what, at_call(number, getattr(Path, what), breaks))
        try:
            copies = rewrite(changes)
        except (HostError, KeyboardInterrupt) as error:
            assert breaks is interrupted or "No space left on device" in str(error)
            copies = {}
    after = in_folder(tmp_path)
    if copies:
        assert {after[copies[path].name] for path in changes} == {*before.values()}
        assert (after["plan.yaml"], after["drawer.yaml"]) == ("bore: 9 mm", "hole: 2 mm")
    else:
        assert after == before


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="no folder that nobody can write to")
def test_a_folder_that_takes_no_files_is_said_in_one_line(run: Run, plan: Path) -> None:
    ran = run("sheet", plan, "--out", "/proc/page.html")
    assert ran.code == 2 and ran.out == ""
    assert ran.err == "wellstrung: /proc/page.html cannot be written: No such file or directory\n"


#: what is run in a shell, and what its error stream says of it
UNHEARD = {
    "full": ("check {} >/dev/full", "the output cannot be written: No space left on device"),
    "full, a list": ("supplies {} --as csv >/dev/full", "the output cannot be written: No space"),
    "full, the version": ("--version >/dev/full", "the output cannot be written: No space left"),
    "full, the help": ("check --help >/dev/full", "the output cannot be written: No space left"),
    "closed": ("check {} >&-", "the output is closed: nothing can be shown"),
    "notes to a full disk": ("check {} --bench none.yaml 2>/dev/full", ""),
    "notes to a closed stream": ("check {} --bench none.yaml 2>&-", ""),
    "no folder": ("check {}", "no such file or directory"),
}


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no full disk to write to")
@pytest.mark.parametrize("how", UNHEARD)
def test_an_output_that_takes_nothing_is_said_in_one_line(how: str, plan: Path) -> None:
    line, says = UNHEARD[how]
    gone = "mkdir gone && cd gone && rmdir ../gone && " if how == "no folder" else ""
    done = subprocess.run(
        f"{gone}{sys.executable} -m wellstrung {line.format(plan.name)}",
        shell=True,
        cwd=plan.parent,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2 and done.stdout == ""
    assert says in done.stderr and done.stderr.count("\n") == bool(says)


@pytest.mark.slow
@pytest.mark.parametrize(
    "command", [("check",), ("check", "--as", "json"), ("sheet", "--out", "page.html")]
)
def test_an_interrupt_leaves_the_folder_as_it_was(command: tuple[str, ...], plan: Path) -> None:
    """Wherever it comes, while the plan is read, judged or written, it is one line and exit 2."""
    before = in_folder(plan.parent)
    for tenths in (10, 13, 16, 20, 26):
        running = subprocess.Popen(
            [sys.executable, "-m", "wellstrung", *command[:1], "plan.yaml", *command[1:]],
            cwd=plan.parent,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        try:
            running.wait(tenths / 10)
        except subprocess.TimeoutExpired:
            running.send_signal(signal.SIGINT)
        _, said = running.communicate()
        after = in_folder(plan.parent)
        if running.returncode == 0:
            assert "page.html" in after or command[0] == "check"
            (plan.parent / "page.html").unlink(missing_ok=True)
        else:
            assert running.returncode == 2 and after == before
            assert said in ("wellstrung: stopped before the end\n", "")
