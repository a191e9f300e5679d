"""Plans with 10 to 1,000 remarks: at most 2 x the same plans put right, and eight checks.

Each remark has its own numbers, so that none is alike and each has a remedy to try.
"""

from __future__ import annotations

import sys
from functools import partial

from throughput import in_turns

from plans import of_rings
from wellstrung.commands.checked import collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.judging.trials import MOST_TRIALS
from wellstrung.plugins import host


def main() -> int:
    """Print the ratios; 1 when one of them is beyond its bar."""
    checker, bare = Checker(host.load()), Checker(host.load(), trials=0)
    collect_new_garbage()  # as the command does
    worst = 0.0
    for count in (10, 100, 1000):
        right, wrong = of_rings(count, thick=False), of_rings(count, thick=True)
        remarks = len(checker.check_text(wrong).numbered)
        clean, spoiled, once = in_turns(
            partial(checker.check_text, right),
            partial(checker.check_text, wrong),
            partial(bare.check_text, wrong),
        )
        worst = max(worst, spoiled / (2 * clean + MOST_TRIALS * once))
        print(
            f"{remarks} remarks {spoiled * 1000:.0f} ms, with none tried {once * 1000:.0f} ms,"
            f" put right {clean * 1000:.0f} ms"
        )
    print(f"at most {worst:.2f} of the bar")
    return 0 if worst <= 1 else 1


if __name__ == "__main__":
    sys.exit(main())
