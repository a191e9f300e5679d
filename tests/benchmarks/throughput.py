"""200 plans of about 110 lines against yaml.load over the same text: at most 4 x.

Also that the time for a plan stays flat over many plans, and grows no worse than linearly with the
number of parts.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

import yaml

from plans import about_110_lines, of_parts
from wellstrung.commands.checked import collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host

PLANS, MOST, ROUNDS = 200, 4.0, 5


def in_turns(*works: Callable[[], object]) -> list[float]:
    """The least seconds of computing that each takes, turn by turn so that all meet one machine."""
    best = [float("inf")] * len(works)
    for _ in range(ROUNDS):
        for number, work in enumerate(works):
            start = time.process_time()
            work()
            best[number] = min(best[number], time.process_time() - start)
    return best


def main() -> int:
    """Print the ratios; 1 when one of them is beyond its bar."""
    text, checker = about_110_lines(), Checker(host.load())
    collect_new_garbage()  # as the command does
    result = checker.check_text(text)
    assert result.outcome == "makeable", result.remarks
    ours, theirs = in_turns(
        lambda: [checker.check_text(text) for _ in range(PLANS)],
        lambda: [yaml.load(text, Loader=yaml.CSafeLoader) for _ in range(PLANS)],
    )
    lines = text.count("\n")
    print(
        f"{PLANS} plans of {lines} lines: {ours / PLANS * 1000:.2f} ms a plan,"
        f" {ours / theirs:.2f} x yaml.load"
    )
    few, many = of_parts(500), of_parts(5000)
    small, large = in_turns(lambda: checker.check_text(few), lambda: checker.check_text(many))
    growth = large / small / 10
    print(
        f"500 parts {small * 1000:.0f} ms, 5000 parts {large * 1000:.0f} ms: {growth:.2f} x linear"
    )
    return 0 if ours <= MOST * theirs and growth <= 1.3 else 1


if __name__ == "__main__":
    sys.exit(main())
