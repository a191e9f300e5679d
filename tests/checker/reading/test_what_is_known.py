"""Messages list at most eight of what is known, the nearest first, and say how to see all."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from running import ROOT, Run
from wellstrung.common.wording import one_of
from wellstrung.judging.checker import Checker

_WORD = r"`[^`]+`"
PINNED = sorted((ROOT / "tests" / "checker").glob("*/**/*.yaml"))
COMMANDS = {
    "rules foo": (2, "rule called `foo`: write one of", "(`wellstrung rules` lists them)"),
    "rules cap-bor": (2, "rule called `cap-bor`: write `cap-bore`", ""),
    "tables foo": (2, "table called `foo`: write one of", "(`wellstrung tables` lists them)"),
    "xyzzy": (2, "there is no `xyzzy`: write one of", "(`wellstrung --help` lists them)"),
    "chek plan.yaml": (2, "there is no `chek`: write `check`", ""),
}


def listed(text: str) -> int:
    """The most words that a text lists after `one of`."""
    flat = " ".join(text.split())
    lists = re.findall(rf"one of ({_WORD}(?:,? (?:or |and )?{_WORD})*)", flat)
    return max((len(re.findall(_WORD, one)) for one in lists), default=0)


@pytest.mark.parametrize("file", PINNED, ids=lambda file: file.stem)
def test_no_pinned_message_lists_more_than_eight(file: Path) -> None:
    assert listed(file.read_text(encoding="utf-8")) <= 8


def test_the_nearest_come_first_and_a_command_lists_all() -> None:
    known = [f"{word} {number}" for number in range(5) for word in ("rope", "band", "strand")]
    said = one_of(known, "stand 9", "wellstrung tables parts")
    assert said.startswith("one of `strand 0`, `strand 1`, `strand 2`, `strand 3`, `strand 4`, ")
    assert said.endswith(" and 7 more (`wellstrung tables parts` lists them)")
    assert listed(said) == 8


@pytest.mark.parametrize("old", ["kind: end cap", "stitch: tubular peyote"])
def test_a_word_of_the_plan(old: str, checker: Checker, collar: str) -> None:
    new = f"{old.partition(':')[0]}: xyzzy"
    assert old in collar
    said = [one.needed for one in checker.check_text(collar.replace(old, new)).remarks]
    assert any("more (`wellstrung schema language` lists them)" in one for one in said)
    assert max(map(listed, said)) == 8


@pytest.mark.parametrize("command", COMMANDS)
def test_a_word_of_the_command_line(command: str, run: Run) -> None:
    code, head, tail = COMMANDS[command]
    ran = run(*command.split())
    said = " ".join(ran.err.split())
    assert ran.code == code and head in said and said.endswith(tail) and listed(said) <= 8
