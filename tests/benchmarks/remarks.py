"""Plans with 10 to 1,000 remarks: at most 2 x the same plans put right, and eight checks.

Each remark has its own numbers, so that none is alike and each has a remedy to try.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from functools import partial

from timing import Row, ratio, shown

from plans import of_rings
from wellstrung.commands.checked import collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.judging.trials import MOST_TRIALS
from wellstrung.plugins import host


def rows() -> Iterator[Row]:
    """Each number of remarks against its bar."""
    checker, bare = Checker(host.load()), Checker(host.load(), trials=0)
    collect_new_garbage()  # as the command does
    for count in (10, 100, 1000):
        right, wrong = of_rings(count, thick=False), of_rings(count, thick=True)
        remarks = len(checker.check_text(wrong).numbered)
        to_right, took = ratio(
            partial(checker.check_text, wrong), partial(checker.check_text, right), rounds=3
        )
        to_once, _ = ratio(
            partial(checker.check_text, wrong), partial(bare.check_text, wrong), rounds=3
        )
        bar = 1 / (2 / to_right + MOST_TRIALS / to_once)
        on = f"{took * 1000:.0f} ms, {to_right:.2f} x the plan put right"
        yield Row(f"{remarks} remarks, to twice the plan put right and eight checks", bar, 1, on=on)


if __name__ == "__main__":
    sys.exit(shown(rows()))
