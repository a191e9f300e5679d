"""Every benchmark in one run, as a table: `python tests/benchmarks/all.py [PLANS]`.

Figures are medians of ratios, each of two works that take turns, so that a busy machine changes
them little. `PLANS` is how many a large folder has, 10,000 if it is left out.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

import cold_start
import folders
import remarks
import throughput
from timing import Row, shown


def rows(many: int) -> Iterator[Row]:
    """All rows; those of memory while this process is small, which a run begins as large as."""
    yield from folders.rows(many)
    yield from cold_start.rows()
    yield from throughput.rows()
    yield from remarks.rows()


if __name__ == "__main__":
    sys.exit(shown(rows(int(sys.argv[1]) if sys.argv[1:] else folders.MANY)))
