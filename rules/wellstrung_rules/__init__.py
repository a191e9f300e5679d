"""The built-in rules: one family a folder, one rule a file, each file's rule named `RULE`."""

from __future__ import annotations

import os
from importlib import import_module

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
        for file in sorted(os.listdir(package.__path__[0])):
            name, ending = os.path.splitext(file)
            if ending == ".py" and name != "__init__":
                rules.append(import_module(f"{package.__name__}.{name}").RULE)
    return rules
