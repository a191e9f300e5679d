"""The built-in rules: one family a folder, one rule a file, each file's rule named `RULE`."""

from __future__ import annotations

from importlib import import_module
from pkgutil import iter_modules

from wellstrung.plugins.hooks import hookimpl
from wellstrung.rulebook import Rule

FAMILIES = (
    "fit", "joining", "count", "length", "hold", "work", "adhesive", "wearer", "supply", "bench",
)  # fmt: skip


@hookimpl
def wellstrung_rules() -> list[Rule]:
    """Every rule in every family's folder: a file put there is a rule."""
    rules = []
    for family in FAMILIES:
        package = import_module(f"{__name__}.{family}")
        for module in iter_modules(package.__path__, f"{package.__name__}."):
            rules.append(import_module(module.name).RULE)
    return rules
