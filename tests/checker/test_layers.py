"""The layers: a package imports what stands before it, and the core knows no rule."""

from __future__ import annotations

import ast
import re
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from running import ROOT

CORE = ROOT / "checker" / "wellstrung"
RULES = ROOT / "rules" / "wellstrung_rules"

#: every package in the order a plan travels, and exactly what it imports of the others
LAYERS: dict[str, set[str]] = {
    "common": set(),
    "reading": {"common"},
    "tables": {"common"},
    "short_forms": {"common", "reading", "tables"},
    "formulas": set(),
    "quantity": {"common", "formulas"},
    "model": {"common", "reading", "tables", "short_forms", "quantity"},
    "subjects": {"common", "reading", "tables", "formulas", "quantity", "model"},
    "derived": {"common", "reading", "tables", "formulas", "quantity", "model", "subjects"},
    "stitches": {"common", "tables", "formulas", "quantity", "model", "derived"},
    "work": {"common", "reading", "formulas", "quantity", "model", "subjects", "derived"},
    "kinds": {
        "common",
        "tables",
        "formulas",
        "quantity",
        "model",
        "subjects",
        "derived",
        "stitches",
    },
    "rulebook": {"common", "reading", "tables", "quantity", "model", "subjects", "derived", "work"},
    "judging": {
        "common",
        "reading",
        "short_forms",
        "quantity",
        "model",
        "subjects",
        "derived",
        "work",
        "rulebook",
    },
    "lists": {"common", "formulas", "quantity", "model", "subjects", "derived", "kinds"},
    "what_if": {
        "work",
        "common",
        "reading",
        "quantity",
        "model",
        "subjects",
        "derived",
        "rulebook",
        "judging",
        "lists",
    },
    "start": {"common", "reading", "tables", "short_forms", "quantity", "rulebook", "judging"},
    "drawing": {
        "common",
        "formulas",
        "quantity",
        "model",
        "subjects",
        "derived",
        "rulebook",
        "judging",
    },
    "report": {
        "common",
        "reading",
        "tables",
        "quantity",
        "model",
        "subjects",
        "derived",
        "work",
        "rulebook",
        "judging",
        "lists",
        "what_if",
        "drawing",
    },
    "plugins": {"common", "tables", "model", "derived", "rulebook", "report"},
    "builtin": {"model", "derived", "stitches", "work", "kinds", "report", "plugins"},
    "testing": {"reading", "rulebook", "judging", "plugins"},
    "commands": {
        "common",
        "drawing",
        "reading",
        "tables",
        "rulebook",
        "judging",
        "lists",
        "what_if",
        "start",
        "report",
        "plugins",
    },
    "__main__": {"commands"},
    "library": {"reading", "quantity", "judging", "lists", "plugins", "commands"},
    "__init__": {"library"},
}
#: all that a rule may import of the core
FOR_RULES = {"rulebook", "formulas"}
LONGEST_FILE = 350


def imported(path: Path) -> set[str]:
    """The packages of the core that a file imports, inside functions and for typing included."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom):
            package, _, rest = (node.module or "").partition(".")
            if package == "wellstrung":
                found |= {rest.split(".")[0]} if rest else {alias.name for alias in node.names}
        elif isinstance(node, ast.Import):
            for alias in node.names:
                package, _, rest = alias.name.partition(".")
                if package == "wellstrung":
                    found.add(rest.split(".")[0])
    return found


def home(path: Path) -> str:
    """The package a file belongs to; a file that lies flat is one of its own."""
    return path.relative_to(CORE).parts[0].removesuffix(".py")


FILES = sorted(CORE.rglob("*.py"))


def test_each_package_imports_exactly_what_the_table_says() -> None:
    found: dict[str, set[str]] = {home(path): set() for path in FILES}
    for path in FILES:
        found[home(path)] |= imported(path) - {home(path)}
    assert found == LAYERS


def test_no_package_imports_what_stands_behind_it() -> None:
    before: set[str] = set()
    for package, uses in LAYERS.items():
        assert uses <= before, f"{package} imports {sorted(uses - before)} from behind it"
        before.add(package)


def test_no_files_import_each_other_in_a_circle() -> None:
    """Imports for typing count; a module taken from its package is an import of that module."""
    names = {module(path) for path in FILES}
    uses = {module(path): taken(path, names) - {module(path)} for path in FILES}
    TopologicalSorter(uses).prepare()  # raises CycleError, which names the files of a circle


def module(path: Path) -> str:
    parts = path.relative_to(CORE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def taken(path: Path, names: set[str]) -> set[str]:
    """The modules that a file imports, or imports names from."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            for alias in node.names:
                inside = f"{node.module}.{alias.name}"
                found.add(inside if inside in names else node.module)
    return found & names


RULE_FILES = sorted(RULES.glob("*/[!_]*.py"))


@pytest.mark.parametrize("path", RULE_FILES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_rule_imports_the_rulebook_and_formulas_and_no_other_rule(path: Path) -> None:
    assert imported(path) <= FOR_RULES
    shared = {"wellstrung_rules.limits", f"wellstrung_rules.{path.parent.name}"}
    assert not {name for name in _packages(path) if name.startswith("wellstrung_rules")} - shared
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"\b(print|open)\(", text)


def _packages(path: Path) -> set[str]:
    """The modules that a file names after `from`."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(CORE)))
def test_a_file_is_no_longer_than_can_be_read(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST_FILE


def test_only_a_few_files_lie_flat() -> None:
    flat = {path.stem for path in CORE.glob("*.py")}
    assert flat == {"__init__", "__main__", "builtin", "library"}
