"""Tolerance stack-ups: worst case and root-sum-square.

Method: NIST Technical Note 1297 (1994), section 5. Examples: a published housing-and-spacer worked
example (data published, totals computed here), a published analysis of three parts in a housing
(all printed), and the common ten-parts example.
"""

from __future__ import annotations

import pytest

from wellstrung.quantity.arithmetic import leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity


def part(name: str, nominal: float, tolerance: float, sign: float = 1.0) -> Quantity:
    return leaf(name, sign * nominal, "mm", [Spread(Cause(name), tolerance, tolerance)])


CASES = {
    "housing less spacer, ring and shoulder": (
        [
            part("A", 40, 0.10),
            part("B", 25, 0.05, -1),
            part("C", 2, 0.03, -1),
            part("D", 10, 0.05, -1),
        ],
        (3.0, 0.23, 0.126),
    ),
    "three parts in a housing": (
        [
            part("housing", 4.020, 0.005),
            part("first", 2.000, 0.005, -1),
            part("second", 1.500, 0.003, -1),
            part("third", 0.500, 0.002, -1),
        ],
        (0.020, 0.015, 0.00794),
    ),
    "the stack of three alone": (
        [part("first", 2.0, 0.005), part("second", 1.5, 0.003), part("third", 0.5, 0.002)],
        (4.0, 0.010, 0.00616),
    ),
    "ten parts": ([part(f"p{n}", 1.0, 0.1) for n in range(10)], (10.0, 1.0, 0.316)),
}


@pytest.mark.parametrize("case", CASES)
def test_stack_up(case: str) -> None:
    parts, (nominal, worst, root_sum_square) = CASES[case]
    gap = total("gap", "mm", parts)
    assert gap.middle == pytest.approx(nominal, abs=1e-9)
    assert gap.worst.high - gap.middle == pytest.approx(worst, abs=1e-9)
    assert gap.middle - gap.worst.low == pytest.approx(worst, abs=1e-9)
    assert gap.likely.high - gap.middle == pytest.approx(root_sum_square, rel=2e-3)
