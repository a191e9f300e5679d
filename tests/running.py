"""Where things are, and the type of the `run` fixture."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple, Protocol

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
