"""Commands from their start: a check against the bare imports, other commands against a check.

Measure in an environment with the run-time packages only, as whoever installs the command has it.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from timing import ROOT, Row, children, command, ran, ratio, shown

from plans import SAMPLE

#: pairs of runs of which the median counts
RUNS = 15


def rows() -> Iterator[Row]:
    """One plan, its page, and what a class buys."""
    timed = partial(ratio, rounds=RUNS, clock=children)
    check = command("check", SAMPLE)
    times, took = timed(check, lambda: ran("-c", "import yaml, jsonschema"))
    yield Row("cold check, to importing yaml and jsonschema", times, 1.3, on=_ms(took))
    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "page.html"
        times, took = timed(command("sheet", SAMPLE, "--out", page, "--force"), check)
        yield Row("page of a plan, to its check", times, 2.5, on=_ms(took))
    a_class = ROOT / "sample_plans" / "class"
    times, took = timed(
        command("supplies", a_class, "--makers", "12"), command("check", a_class), rounds=5
    )
    yield Row("supplies of a class of 12, to checking its plans", times, 2, on=_ms(took))


def _ms(seconds: float) -> str:
    return f"{seconds * 1000:.0f} ms"


if __name__ == "__main__":
    sys.exit(shown(rows()))
