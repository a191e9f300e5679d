"""Where things are, and the type of the `run` fixture."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple, Protocol

import yaml

ROOT = Path(__file__).parent.parent
SAMPLES = ROOT / "sample_plans"
#: plans that tests share and no reader meets
SHARED = ROOT / "tests" / "plans"


class Ran(NamedTuple):
    """What a run of the command line gave."""

    code: int
    out: str
    err: str


class Run(Protocol):
    """Run the command line with these arguments and settings."""

    def __call__(self, *arguments: str | Path, cwd: Path = ..., **environment: str) -> Ran: ...


class Pinned(Protocol):
    """Hold a text against the file that pins it, or write that file anew."""

    def __call__(self, path: Path, text: str) -> None: ...


def middle_of(plan: Mapping[str, Any], name: str) -> float:
    """A quantity in the JSON report of a plan."""
    row = plan["quantities"][name]
    return middle_of(plan, row) if isinstance(row, str) else float(row[0])


def entries(file: Path) -> list[dict[str, Any]]:
    """The entries of a file that holds a list of them."""
    found: list[dict[str, Any]] = yaml.load(
        file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader
    )
    return found


def pinned_at(
    file: Path, key: str, answer: Callable[[dict[str, Any]], str], pinned: Pinned
) -> None:
    """Hold what every entry of a file has under a key against what it is answered now."""
    text = file.read_text(encoding="utf-8")
    root = yaml.compose(text, Loader=yaml.CSafeLoader)
    assert root is not None
    for node, entry in reversed([*zip(root.value, entries(file), strict=True)]):
        old = next(value for name, value in node.value if name.value == key)
        start, end = old.start_mark.index, old.end_mark.index
        lines = [f"    {line}".rstrip() for line in answer(entry).splitlines()]
        behind = text[start + len(text[start:end].rstrip()) :]
        text = "\n".join([f"{text[:start].rstrip()} |", *lines]) + behind
    pinned(file, text)
