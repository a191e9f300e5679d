"""Every formula says what it gives, shows an example that runs, and names where it comes from."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from running import ROOT

CORE = ROOT / "checker" / "wellstrung"
#: modules, and folders of them, whose plain functions of numbers are formulas
FORMULAS = (
    *(CORE / "formulas").glob("*.py"),
    *(CORE / "derived").glob("*.py"),
    *(CORE / "stitches").glob("*.py"),
    *(CORE / "kinds").glob("*.py"),
    *(CORE / "lists").glob("*.py"),
    *(CORE / "work").glob("*.py"),
    *(CORE / "common" / "units").glob("*.py"),
    *(ROOT / "rules").rglob("*.py"),
)
NUMBERS = {
    "bool", "float", "float | None", "int", "int | None", "list[float]", "Sequence[float]",
    "Sequence[int]", "str", "tuple[float, ...]",
}  # fmt: skip
#: what a formula may name: a kind of reasoning, a standard, a print, or that there is none
SOURCE = re.compile(
    r"geometry|counting|counted|statics|textbook|handbook|common practice|no source|from memory"
    r"|rule of thumb|published|best-known|printed?\b|trade table|standard|\bISO\b|\bASTM\b|\bEN \d"
    r"|worked out for this project|definition|Castigliano|Winkler",
    re.IGNORECASE,
)


def formulas() -> Iterator[tuple[str, str]]:
    """Where each public function of numbers is, and its docstring."""
    for path in sorted(FORMULAS):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if not isinstance(node, ast.FunctionDef) or node.name.startswith("_"):
                continue
            takes = {_type(argument) for argument in (*node.args.args, *node.args.kwonlyargs)}
            takes |= {_type(node.args.kwarg)} if node.args.kwarg else set()
            gives = ast.unparse(node.returns) if node.returns else ""
            if takes and takes <= NUMBERS and re.search(r"float|int\b", gives):
                yield f"{path.relative_to(ROOT)}:{node.name}", ast.get_docstring(node) or ""


def _type(argument: ast.arg) -> str:
    return ast.unparse(argument.annotation) if argument.annotation else "nothing"


FOUND = list(formulas())


@pytest.mark.parametrize(("where", "docstring"), FOUND, ids=[where for where, _ in FOUND])
def test_a_formula_has_an_example_and_a_source(where: str, docstring: str) -> None:
    assert ">>> " in docstring, f"{where} shows no example"
    assert SOURCE.search(docstring), f"{where} names no source"


def test_formulas_were_found() -> None:
    found = {Path(where.partition(":")[0]).name for where, _ in FOUND}
    assert {"circles.py", "rings.py", "thread.py", "tubular_peyote.py", "findings.py"} <= found
    assert len(FOUND) > 110
