"""Folders of 200 and of 10,000 plans: memory, time for a plan, and several processes.

A smaller number may be named instead of 10,000.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from timing import Row, command, median_of, ratio, shown

from plans import about_110_lines

FEW, MANY, ROUNDS = 200, 10_000, 3


def rows(many: int = MANY) -> Iterator[Row]:
    """The report on screen and the one as JSON, each by one process and the first by two."""
    with tempfile.TemporaryDirectory() as here:
        all_of_them, few = Path(here) / "all", Path(here) / "few"
        for folder in (all_of_them, few):
            folder.mkdir()
        text = about_110_lines()
        for number in range(many):
            titled = text.replace("title: ", f"title: {number} ", 1)
            (all_of_them / f"{number:05}.yaml").write_text(titled, encoding="utf-8")
        for plan in islice(sorted(all_of_them.iterdir()), FEW):
            (few / plan.name).write_text(plan.read_text("utf-8"), encoding="utf-8")
        one, two = ("--workers", "1"), ("--workers", "2")
        times, took = ratio(
            command("check", few, *two), command("check", few, *one), rounds=ROUNDS,
            clock=time.perf_counter,
        )  # fmt: skip
        on = f"{FEW} plans {took:.1f} s"
        yield Row("two processes, to one", times, 1, on=on)
        small = median_of([command("check", few, *one)() for _ in range(ROUNDS)])
        large = command("check", all_of_them, *one)()
        each = large.seconds / many / (small.seconds / FEW)
        yield Row(
            f"a plan among {many}, to one among {FEW}", each, 1.1, on=f"{large.seconds:.0f} s"
        )
        yield Row(f"memory for {many} plans", large.megabytes, 150, "MB", "the report on screen")
        lines = command("check", few, *one, "--as", "json")()
        yield Row(f"memory for {FEW} plans", lines.megabytes, 150, "MB", "the JSON report")


if __name__ == "__main__":
    sys.exit(shown(rows(int(sys.argv[1]) if sys.argv[1:] else MANY)))
