"""Where things are, and the command line as tests run it."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple, Protocol

import pytest
import yaml

from wellstrung import __main__

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


#: options by which a run loads code of others, or starts processes: such a run has a process
_LOADS_OR_STARTS = {"--rules", "--workers"}


def ran(*arguments: str | Path, cwd: Path = ROOT, **environment: str) -> Ran:
    """Run the command line in this process, as if it were one of its own.

    Settings that Python reads when it starts, code of others and several processes need their own.
    """
    words = [*map(str, arguments)]
    if environment.keys() - {"COLUMNS"} or _LOADS_OR_STARTS & {*words}:
        return ran_apart(*words, cwd=cwd, **environment)
    streams = [io.TextIOWrapper(io.BytesIO(), "utf-8") for _ in ("out", "err")]
    with pytest.MonkeyPatch.context() as around, Path(os.devnull).open() as nothing:
        for name in os.environ:
            around.delenv(name)
        for name, value in _around(environment).items():
            around.setenv(name, value)
        around.chdir(cwd)
        for name, stream in zip(("stdin", "stdout", "stderr"), (nothing, *streams), strict=True):
            around.setattr(sys, name, stream)
        try:
            code = __main__.main(words)
        except SystemExit as end:  # of the help, and of a slip on the command line
            code = int(end.code or 0)
    return Ran(code, *map(_read, streams))


def ran_apart(*arguments: str | Path, cwd: Path = ROOT, **environment: str) -> Ran:
    """Run the command line in a process of its own, with nothing but these settings around it."""
    done = subprocess.run(
        [sys.executable, "-m", "wellstrung", *map(str, arguments)],
        cwd=cwd,
        env=_around(environment),
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    return Ran(done.returncode, done.stdout, done.stderr)


def _around(environment: Mapping[str, str]) -> dict[str, str]:
    ours = {name: os.environ[name] for name in ("PATH", "PYTHONPATH") if name in os.environ}
    return {**ours, "COLUMNS": "80", "PYTHONUTF8": "1", **environment}


def _read(stream: io.TextIOWrapper) -> str:
    """What was written, lines ended as a process is read."""
    stream.flush()
    stream.seek(0)
    return stream.read()


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
