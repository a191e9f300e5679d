"""The page on the language is what the program reads, and the program reads what it shows."""

from __future__ import annotations

import re

import pytest

from running import ROOT, Pinned
from wellstrung.commands.cli import main
from wellstrung.plugins.host import Host
from wellstrung.reading import parser, schema
from wellstrung.reading.values import READERS

FILE = ROOT / "schemas" / "README.md"
PAGE = FILE.read_text(encoding="utf-8")
HEAD = "plan: 1\ntitle: Shown\npiece: necklace\n"
#: a row of a table: the field, how it is written, and its examples
ROW = re.compile(r"\| `([\w.\[\]]+)` \| .* \| (.*) \| .* \| (.*) \|")


def test_the_page_is_of_this_program(capsys: pytest.CaptureFixture[str], pinned: Pinned) -> None:
    assert main(["schema", "language"]) == 0
    pinned(FILE, capsys.readouterr().out)


def test_every_example_of_a_part_a_bead_and_a_step_has_the_right_shape(installed: Host) -> None:
    shown: dict[str, list[str]] = {"beads": [], "parts": [], "work": []}
    for block in re.findall(r"```yaml\n(.*)\n```", PAGE):
        section = "work" if block.startswith("- ") else "parts" if "kind:" in block else "beads"
        number = len(shown[section])
        shown[section].append(block.replace("my ", f"my {number} ", 1))
    assert len(shown["parts"]) == len(installed.kinds) and all(shown.values())
    sections = (f"{name}:\n  " + "\n  ".join(lines) for name, lines in shown.items())
    read = parser.read_text(HEAD + "\n".join(sections), "plan.yaml")
    known = schema.Known({name: kind.fragment for name, kind in installed.kinds.items()})
    assert read.faults == () and schema.check(read, known) == ()


@pytest.mark.parametrize("row", ROW.findall(PAGE), ids=lambda row: str(row[0]))
def test_every_example_of_a_field_is_read(row: tuple[str, str, str]) -> None:
    _, form, examples = row
    kind = re.fullmatch(r"\[(.*)\]\(#values\)", form)
    assert examples
    for example in re.findall(r"`([^`]+)`", examples):
        read = parser.read_text(f"shown: {example}", "plan.yaml")
        assert read.faults == () and read.tree is not None
        if kind:
            READERS[kind[1].replace(" ", "_")](read.tree.value["shown"])  # raises where it cannot


def test_the_page_names_every_kind_stitch_and_step(installed: Host) -> None:
    for name in (*installed.kinds, *installed.stitches):
        assert f"`{name}`" in PAGE, name
