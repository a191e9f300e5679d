"""The one comparison of the project: whether a margin is at least zero."""

from __future__ import annotations

from enum import Enum

from wellstrung.quantity.value import Quantity

#: A comparison forgives a micrometre (or a milligram, a millinewton): less than any bench measures.
SLACK = 1e-3


class Verdict(Enum):
    """How a margin stands over its range."""

    HOLDS = "holds"
    MAY_FAIL = "may fail"
    FAILS = "fails"


def compare(margin: Quantity, *, over: str = "likely") -> Verdict:
    """Whether a margin is at least zero over all, part or none of its range.

    `over` is `likely`, or `worst` for rules of hold and of safety.

    >>> from wellstrung.quantity.arithmetic import exact
    >>> compare(exact("room", 0.0, "mm"))
    <Verdict.HOLDS: 'holds'>
    """
    if over == "likely":
        if margin.likely_at_least(-SLACK):
            return Verdict.HOLDS
        return Verdict.FAILS if margin.likely.high < -SLACK else Verdict.MAY_FAIL
    if margin.worst.low >= -SLACK:
        return Verdict.HOLDS
    return Verdict.FAILS if margin.worst.high < -SLACK else Verdict.MAY_FAIL


def holds(margin: Quantity, *, over: str = "likely") -> bool:
    """Whether a margin is at least zero over all of its range: see `compare`."""
    return compare(margin, over=over) is Verdict.HOLDS
