"""The layers of the checker: data moves one way, and the core knows no rule."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from running import ROOT

CORE = ROOT / "checker" / "wellstrung"
RULES = ROOT / "rules" / "wellstrung_rules"

#: each module and what it may import of its own package; a name with a dot stands for its folder
MAY: dict[str, set[str]] = {
    "records": set(),
    "words": set(),
    "place": set(),
    "quantity": {"place"},
    "units": set(),
    "bench": set(),
    "beads": set(),
    "prices": {"units"},
    "bench_file": {"bench", "place", "prices", "reading", "shape", "units", "words"},
    "bench_time": set(),
    "layouts": set(),
    "circles": {"layouts"},
    "rings": set(),
    "chain": set(),
    "cutting": set(),
    "fits": set(),
    "glue": set(),
    "magnets": set(),
    "thread": set(),
    "tables": {"words"},
    "slips": {"place"},
    "reading": {"place", "slips"},
    "shape": {"place", "prices", "reading", "units", "words"},
    "model": {"bench", "place", "quantity", "reading", "units"},
    "drawer": {"place", "reading", "shape", "words"},
    "building": {"bench", "model", "place", "reading", "tables", "units", "words"},
    "palette": {"model", "quantity", "tables"},
    "stringing": {"model", "quantity", "tables", "units"},
    "joins": {"chain", "model", "place", "units"},
    "carrying": {"joins", "model", "quantity"},
    "rest": {"model", "quantity", "units"},
    "work": {"joins", "model", "needs", "place", "reading"},
    "positions": {"joins", "model", "needs", "work"},
    "needs": {"joins", "model", "prices", "reading"},
    "work_time": {"bench", "bench_time", "joins", "model", "quantity", "reading", "work"},
    "work_order": set(),
    "work_needs": {"model", "work", "work_order"},
    "work_joins": {"joins", "model"},
    "derive": {
        "joins", "model", "needs", "palette", "quantity", "rest", "stringing", "words", "work_time",
    },
    "outline": {"circles", "derive", "model", "quantity"},
    "stitches": {"circles", "model", "quantity", "tables", "thread"},
    "kinds": {
        "chain", "derive", "glue", "joins", "model", "quantity", "rings", "stitches", "tables",
        "thread",
    },
    "supply_line": {"prices", "quantity", "units"},
    "taken": {
        "glue", "joins", "model", "needs", "prices", "quantity", "supply_line", "tables", "thread",
        "units", "work",
    },
    "chain_stock": {"chain", "joins", "kinds", "model", "quantity"},
    "shopping": {
        "chain_stock", "joins", "model", "prices", "quantity", "supply_line", "taken", "words",
    },
    "cuts": {"chain", "chain_stock", "joins", "kinds", "model", "taken", "thread"},
    "rulebook": {
        "carrying", "derive", "joins", "model", "needs", "outline", "place", "positions",
        "quantity", "reading", "shopping", "tables", "units", "words", "work", "work_joins",
        "work_needs", "work_order",
    },
    "hooks": set(),
    "installed": set(),
    "host": {"hooks", "installed"},
    "checking": {
        "bench", "building", "carrying", "derive", "drawer", "host", "joins", "model", "needs",
        "place", "positions", "quantity", "reading", "rulebook", "shape", "words", "work",
        "work_joins",
    },
    "drawing": {
        "chain", "checking", "circles", "joins", "model", "outline", "place", "quantity", "rings",
        "rulebook", "thread", "units", "words",
    },
    "report": {
        "bench_time", "checking", "cuts", "derive", "drawing", "host", "model", "place", "prices",
        "quantity", "rulebook", "shopping", "sizes", "substitutes", "supply_line", "tables",
        "units", "words", "work_time",
    },
    "testing": {"bench_file", "checking"},
    "substitutes": {"checking", "model", "quantity", "reading", "rulebook", "taken", "units"},
    "sizes": {
        "bench", "building", "checking", "derive", "drawer", "host", "joins", "model", "needs",
        "place", "quantity", "reading", "rulebook", "shape", "shopping", "supply_line", "units",
        "words", "work", "work_joins",
    },
    "builtin": {"hooks", "kinds", "model", "report", "stitches"},
    "cli": {
        "bench", "bench_file", "checking", "cuts", "drawer", "host", "report", "shopping", "sizes",
        "substitutes", "tables", "words",
    },
    "__main__": {"cli"},
    "__init__": set(),
}  # fmt: skip
#: what any module may use
ANYWHERE = {"records"}
#: formula modules that a rule may use beside the rulebook
FORMULAS = {
    "beads",
    "chain",
    "circles",
    "fits",
    "glue",
    "hooks",
    "magnets",
    "rings",
    "rulebook",
    "tables",
    "thread",
}


def imported(path: Path) -> set[str]:
    """Modules of the core that a file imports when it runs; imports for types only do not count."""
    found: set[str] = set()

    def look(node: ast.AST) -> None:
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
            return
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("wellstrung"):
            package, _, rest = (node.module or "").partition(".")
            if package == "wellstrung":
                found.update([rest.split(".")[0]] if rest else [name.name for name in node.names])
            elif package == "wellstrung_rules":
                found.add("RULES")
        for child in ast.iter_child_nodes(node):
            look(child)

    look(ast.parse(path.read_text(encoding="utf-8")))
    return found


def home(path: Path) -> str:
    return path.relative_to(CORE).parts[0].removesuffix(".py")


MODULES = sorted(CORE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(CORE)))
def test_a_module_imports_only_what_lies_before_it(path: Path) -> None:
    name = home(path)
    assert imported(path) - {name, *ANYWHERE} <= MAY[name]


def test_the_order_has_no_circle() -> None:
    left = {name: set(needs) for name, needs in MAY.items()}
    while left:
        free = {name for name, needs in left.items() if not needs & left.keys()}
        assert free, f"a circle among {sorted(left)}"
        left = {name: needs for name, needs in left.items() if name not in free}


@pytest.mark.parametrize(
    "path", sorted(RULES.rglob("*.py")), ids=lambda p: str(p.relative_to(RULES))
)
def test_a_rule_sees_the_rulebook_and_formulas_and_no_other_rule(path: Path) -> None:
    assert imported(path) <= FORMULAS
    text = path.read_text(encoding="utf-8")
    assert "print(" not in text and "open(" not in text


def test_every_module_of_the_core_has_its_layer() -> None:
    assert {home(path) for path in MODULES} == set(MAY)
