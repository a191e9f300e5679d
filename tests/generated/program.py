"""The checker as its users have it: through its command line, run in this process.

This is the one place where the generator's tests touch the program.
"""

from __future__ import annotations

import contextlib
import io
import json
from collections.abc import Mapping
from functools import cache
from importlib.metadata import entry_points
from pathlib import Path
from typing import Any

SCHEMAS = Path(__file__).parents[2] / "schemas" / "wellstrung_schemas"


def run(*arguments: str | Path) -> tuple[int, str]:
    """Runs the command line; gives its exit code and what it printed."""
    (script,) = entry_points(group="console_scripts", name="wellstrung")
    main = script.load()
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed):
        code = main([str(argument) for argument in arguments])
    return code, printed.getvalue()


def checked(folder: Path, files: Mapping[str, str]) -> dict[str, Any]:
    """The report on texts, which are written below a folder; by file name where they lie there.

    Files called `bench.yaml` and `drawer.yaml` are settings and parts of the plans beside them.
    """
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    beside = ("bench.yaml", "drawer.yaml")
    plans = [folder / name for name in files if Path(name).name not in beside]
    code, printed = run("check", *plans, "--as", "json")
    assert code in (0, 1), printed
    report: dict[str, Any] = json.loads(printed)
    return report


@cache
def rules() -> dict[str, dict[str, Any]]:
    """Every rule that is installed, by name."""
    code, printed = run("rules", "--as", "json")
    assert code == 0
    return {rule["name"]: rule for rule in json.loads(printed)}


@cache
def kinds() -> dict[str, dict[str, Any]]:
    """The schema of every kind of part, by the kind's own word."""
    read = (json.loads(path.read_text("utf-8")) for path in SCHEMAS.glob("kinds/*.json"))
    return {schema["properties"]["kind"]["const"]: schema for schema in read}


@cache
def plan_schema() -> dict[str, Any]:
    """The schema of a plan."""
    found: dict[str, Any] = json.loads((SCHEMAS / "plan.json").read_text("utf-8"))
    return found


@cache
def verbs() -> dict[str, dict[str, Any]]:
    """The schema of every step, by its verb."""
    found: dict[str, Any] = json.loads((SCHEMAS / "work.json").read_text("utf-8"))["verbs"]
    return found
