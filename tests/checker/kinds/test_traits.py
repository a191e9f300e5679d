"""A kind, a type or a stitch is known by its traits: no other module compares its name."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from running import ROOT

HOMES = (ROOT / "checker" / "wellstrung", ROOT / "rules" / "wellstrung_rules")
#: what knows the names: the kinds and the stitches themselves
OWN = ("kinds/", "stitches/")
#: where a name is compared, and why
ALLOWED = {
    "model/references.py: part.kind.name not in (stitch.makes, *stitch.also_makes)": (
        "a stitch names the kinds that it makes"
    ),
    "short_forms/words.py: kinds.get(str(part.value.get('kind')), {})": (
        "here a part gets the schema of the kind that it names"
    ),
    "subjects/house.py: limit.kind == part.kind.name": (
        "a limit of the bench names the kind that it is for"
    ),
    "model/build.py: stitches.get(str(node.value.get('stitch')))": (
        "here a part gets the stitch that it names"
    ),
    "model/item.py: tables.load('other_beads').rows.get(self.text('type'))": (
        "here a bead gets the row that its type names"
    ),
}
#: the name of a kind or a stitch, or the field that names a type
NAME = re.compile(
    r"\.((kind|stitch)\.name"
    r"|(text|node_at|get)\(('thread', )?'(type|stitch|kind|closing|links_are)'\))(\.value)?\)?$"
)
#: a kind guessed by the eyes or the fields that it has
GUESS = re.compile(
    r"'[\w ]+' (not )?in [\w.]*kind\.eyes"
    r"|\.has\('(of|pattern|core_bead|over|stitch|tube|jaw|bar|ring)'[,)]|\.has\('stone'\)"
)


def modules() -> list[Path]:
    return [
        path
        for home in HOMES
        for path in sorted(home.rglob("*.py"))
        if not str(path.relative_to(home)).startswith(OWN)
    ]


def named(path: Path) -> Iterator[str]:
    """Every comparison of a name with a text, or with a table of texts."""
    home = next(home for home in HOMES if path.is_relative_to(home))
    for function in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not isinstance(function, ast.FunctionDef | ast.Module):
            continue
        aliases = {
            target.id
            for node in ast.walk(function)
            if isinstance(node, ast.Assign) and NAME.search(ast.unparse(node.value))
            for target in node.targets
            if isinstance(target, ast.Name) and isinstance(function, ast.FunctionDef)
        }
        for node in ast.walk(function):
            asked = None
            if isinstance(node, ast.Compare) and not isinstance(node.ops[0], ast.Is | ast.IsNot):
                asked = [node.left, *node.comparators]
            elif isinstance(node, ast.Subscript):
                asked = [node.slice]
            elif isinstance(node, ast.Match):
                asked = [node.subject]
            elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
                asked = node.args if node.func.attr == "get" else None
            for part in asked or ():
                text = ast.unparse(part)
                if NAME.search(text) or text in aliases:
                    yield f"{path.relative_to(home)}: {ast.unparse(node)}"


def guessed(path: Path) -> Iterator[str]:
    text = ast.unparse(ast.parse(path.read_text(encoding="utf-8")))
    yield from (found.group() for found in GUESS.finditer(text))


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(ROOT)))
def test_no_other_module_compares_a_name(path: Path) -> None:
    assert not [found for found in named(path) if found not in ALLOWED]


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(ROOT)))
def test_no_other_module_guesses_a_kind_by_what_it_has(path: Path) -> None:
    assert not list(guessed(path))


def test_what_is_allowed_is_there() -> None:
    assert set(ALLOWED) <= {found for path in modules() for found in named(path)}
