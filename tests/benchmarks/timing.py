"""Two works timed in turn in one run, so that both meet the same machine, and rows of what came."""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
#: Compiled modules are kept, as they are for whoever has installed the command.
SETTINGS = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


class Row(NamedTuple):
    """A figure, the most that it may be, and what it was measured on."""

    what: str
    figure: float
    most: float
    unit: str = "x"
    on: str = ""


def children() -> float:
    """Seconds of computing of all runs of commands so far, which a busy machine changes little."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


class Ended(NamedTuple):
    """What a run of a command took: seconds of computing, and MB at its largest."""

    seconds: float
    megabytes: float


def ratio(
    one: Callable[[], object],
    other: Callable[[], object],
    *,
    rounds: int = 5,
    clock: Callable[[], float] = time.process_time,
) -> tuple[float, float]:
    """The median of how many times as long one takes as the other, and of the seconds of the one.

    Each round times both, one after the other; what they do first is not counted.
    """
    one(), other()
    pairs = [(_seconds(one, clock), _seconds(other, clock)) for _ in range(rounds)]
    return statistics.median(a / b for a, b in pairs), statistics.median(a for a, _ in pairs)


def _seconds(work: Callable[[], object], clock: Callable[[], float]) -> float:
    start = clock()
    work()
    return clock() - start


def ran(*arguments: str | Path, python: str = sys.executable) -> Ended:
    """A run of Python with these arguments, all that it prints read and thrown away."""
    with subprocess.Popen(
        [python, *map(str, arguments)], stdout=subprocess.DEVNULL, cwd=ROOT, env=SETTINGS
    ) as run:
        _, status, usage = os.wait4(run.pid, 0)
        run.returncode = os.waitstatus_to_exitcode(status)
    if run.returncode not in (0, 1):
        raise RuntimeError(f"{arguments} ended with {run.returncode}")
    return Ended(usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)


def command(*arguments: str | Path) -> Callable[[], Ended]:
    """A run of the command line, to be timed."""
    return lambda: ran("-m", "wellstrung", *arguments)


def shown(rows: Iterable[Row]) -> int:
    """Print each row of a table as soon as it is there; 1 when one of them is beyond its bar."""
    print("| what | figure | at most | on |\n| --- | --- | --- | --- |")
    beyond = 0
    for row in rows:
        beyond += row.figure > row.most
        figure = f"{row.figure:.2f} {row.unit}"
        print(f"| {row.what} | {figure} | {row.most:g} {row.unit} | {row.on} |", flush=True)
    return int(beyond > 0)


def median_of(runs: Sequence[Ended]) -> Ended:
    """The medians of several runs."""
    return Ended(*(statistics.median(each) for each in zip(*runs, strict=True)))
