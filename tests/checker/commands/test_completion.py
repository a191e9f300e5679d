"""Completion in a real bash: commands, options, names and plan files."""

from __future__ import annotations

import shutil
import subprocess
from argparse import ArgumentParser
from pathlib import Path

import pytest
from msgspec.structs import replace

from wellstrung.commands.cli import main
from wellstrung.plugins import host
from wellstrung.plugins.command import Command
from wellstrung.plugins.host import Host

pytestmark = pytest.mark.skipif(shutil.which("bash") is None, reason="there is no bash here")


@pytest.fixture
def script(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    assert main(["completion", "bash"]) == 0
    file = tmp_path / "completion.sh"
    file.write_text(capsys.readouterr().out, encoding="utf-8")
    return file


def completed(script: Path, *words: str, folder: Path) -> set[str]:
    """What bash offers for the last of these words, as its own completion asks for it."""
    ask = (
        f'source "{script}"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_TYPE=9'
        "; function=$(complete -p wellstrung | sed 's/.*-F \\([^ ]*\\).*/\\1/')"
        '; "$function" wellstrung "${COMP_WORDS[COMP_CWORD]}"; printf "%s\\n" "${COMPREPLY[@]}"'
    )
    command = ["bash", "--norc", "-c", ask, "bash", "wellstrung", *words]
    ran = subprocess.run(command, capture_output=True, text=True, check=True, cwd=folder)
    return set(ran.stdout.split())


@pytest.mark.parametrize(
    ("words", "offers"),
    [
        (("sup",), {"supplies"}),
        (("supplies", "--mak"), {"--makers"}),
        (("supplies", "--as", "c"), {"csv"}),
        (("check", "--as", "sar"), {"sarif"}),
        (("rules", "cap-b"), {"cap-bond", "cap-bore"}),
        (("tables", "wire"), {"wire_gauges"}),
        (("schema", "d"), {"drawer"}),
        (("check", "p"), {"plan.yaml", "plans"}),
        (("check", "--bench", "b"), {"bench.txt"}),
    ],
)
def test_bash_completes(
    words: tuple[str, ...], offers: set[str], script: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "here"
    (folder / "plans").mkdir(parents=True)
    for name in ("plan.yaml", "page.html", "bench.txt"):
        (folder / name).touch()
    assert completed(script, *words, folder=folder) == offers


@pytest.mark.parametrize("shell", ["zsh", "fish", "tcsh"])
def test_other_shells_have_a_script(shell: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", shell]) == 0
    out = capsys.readouterr().out
    assert "cap-bore" in out
    assert "--makers" in out or "makers" in out


def test_the_commands_of_plugins_are_completed(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, installed: Host
) -> None:
    def options(parser: ArgumentParser) -> None:
        parser.add_argument("--tide", help="which tide")

    brought = Command("moor", "moors it", options, lambda options: 0)
    monkeypatch.setattr(host, "load", lambda *_: replace(installed, commands={"moor": brought}))
    assert main(["completion", "bash"]) == 0
    out = capsys.readouterr().out
    assert "_shtab_wellstrung_moor_option_strings=(-h --help --tide)" in out
