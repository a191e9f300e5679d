"""Commands work on right plans, and on near-right ones, by turns: no crash and no traceback."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema_rs
import pytest

import wellstrung_schemas as schemas
from generated import program
from generated.choices import Seeded
from generated.mutated import mutated
from generated.plans import PIECES, seeded
from turns import some
from wellstrung.commands.parser import commands_of, parser

#: what is run on each plan, and the schema of what it prints, where that is JSON
COMMANDS: tuple[tuple[tuple[str, ...], str], ...] = (
    (("check", "{}", "--workings"), ""),
    (("check", "{}", "--brief"), ""),
    (("check", "{}", "--as", "json"), "report"),
    (("check", "{}", "--as", "sarif"), ""),
    (("check", "{}", "--as", "html", "--out", "pages", "--full"), ""),
    (("check", "{}", "--since", "old.yaml"), ""),
    (("sheet", "{}"), ""),
    (("sheet", "{}", "--steps", "--large", "--out", "steps.html"), ""),
    (("sheet", "{}", "--since", "old.yaml", "--out", "since.html"), ""),
    (("supplies", "{}", "--makers", "7"), ""),
    (("supplies", "{}", "--as", "json"), "supplies"),
    (("cuts", "{}"), ""),
    (("cuts", "{}", "--as", "json"), "cuts"),
    (("sizes", "{}"), ""),
    (("sizes", "{}", "--as", "json"), "sizes"),
    (("picture", "{}", "--out", "picture.svg"), ""),
    (("bench", "{}"), ""),
    (("mend", "{}", "--all"), ""),
)
QUICK = 1


def runs(folder: Path, text: bytes, turn: int, *, right: bool) -> None:
    """Run commands on a plan; each gives an exit code of its own, and the JSON that it says."""
    there = commands_of(parser()).choices
    (folder / "old.yaml").write_text(seeded(1)[0], encoding="utf-8")
    (folder / "plan.yaml").write_bytes(text)
    for words, schema in some(COMMANDS, 3, turn):
        if words[0] not in there:
            continue
        code, printed = program.run(*(word.format("plan.yaml") for word in words))
        # a plan without a size to change, or that cannot be read, has no list of sizes: exit 2
        assert code in (0, 1) or words[0] in ("sizes", "bench", "picture"), (words, printed)
        if schema and code != 2:
            jsonschema_rs.validator_for(schemas.load(schema)).validate(json.loads(printed))
        assert right or code in (0, 1, 2)


@pytest.mark.parametrize(
    ("turn", "number"),
    [
        pytest.param(turn, number, marks=[pytest.mark.slow] if number >= QUICK else [])
        for turn, number in enumerate(some(range(len(PIECES)), 3))
    ],
)
def test_every_command_works(
    turn: int, number: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    plans = [text.encode() for text in seeded(2 * len(PIECES))]
    runs(tmp_path, plans[number], turn, right=True)
    if number % 2 == 0:
        near = mutated(Seeded(f"near {number}"), plans[number], plans[number - 1])
        runs(tmp_path, near, turn + 1, right=False)
