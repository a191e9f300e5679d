"""Exit codes: as the README and the help state them; and the hook that lives by them."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
import yaml

from running import ROOT, SHARED, Run
from wellstrung.commands import cli
from wellstrung.commands.parser import EXIT_CODES, parser

RIGHT = SHARED / "slack_tide_collar.yaml"
WRONG = SHARED / "lantern_collar.yaml"
BREAKS = """\
from wellstrung.rulebook import Rule
from wellstrung.rulebook.plan import Piece


def check(piece, ask):
    raise ZeroDivisionError("a slip")


RULE = Rule("breaks", "fit", Piece, check, title="breaks", why="it breaks", sources=("none",))
"""


@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif"])
@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (("{right}",), 0),
        (("{wrong}",), 1),
        (("missing.yaml",), 1),
        (("{right}", "{wrong}"), 1),
        (("{right}", "--rules", "{breaks}"), 2),
        (("{wrong}", "--rules", "{breaks}"), 2),
    ],
)
def test_the_exit_is_the_same_in_every_form(
    arguments: tuple[str, ...], code: int, form: str, tmp_path: Path
) -> None:
    breaks = tmp_path / "breaks.py"
    breaks.write_text(BREAKS, encoding="utf-8")
    given = [one.format(right=RIGHT, wrong=WRONG, breaks=breaks) for one in arguments]
    assert cli.main(["check", *given, "--as", form]) == code


def test_the_readme_and_the_help_state_them() -> None:
    readme = " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
    assert EXIT_CODES in readme
    assert EXIT_CODES in " ".join(parser().format_help().split())


def test_the_hook_for_pre_commit_checks_the_whole_repository(run: Run, tmp_path: Path) -> None:
    (hook,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    assert hook["language"] == "python" and hook["types"] == ["yaml"]
    program, *arguments = shlex.split(hook["entry"])
    arguments += hook["args"]
    assert program == "wellstrung" and not hook["pass_filenames"]
    (tmp_path / "ci.yaml").write_text("steps: []\n", encoding="utf-8")
    (tmp_path / "plans").mkdir()
    for path, code in ((RIGHT, 0), (WRONG, 1)):
        (tmp_path / "plans" / path.name).write_bytes(path.read_bytes())
        assert run(*arguments, cwd=tmp_path).code == code
