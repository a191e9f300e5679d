"""Fits in the words of ISO 286-1: clearance, transition, interference.

The words describe; whether a fit will do is for practice to say: a woven rope takes an interference
fit that a steel shaft would not.
"""

from __future__ import annotations

from typing import NamedTuple


class Fit(NamedTuple):
    """A fit's name, and its greatest and least clearance (negative: interference), mm."""

    name: str
    most_clearance: float
    least_clearance: float


def fit_class(hole_low: float, hole_high: float, shaft_low: float, shaft_high: float) -> Fit:
    """The fit between a hole and what goes into it, from their limits of size in mm.

    ISO 286-1:2010: least clearance >= 0 is a clearance fit (0 is line contact), greatest clearance
    <= 0 an interference fit, anything else a transition fit.

    >>> fit_class(25.000, 25.021, 24.980, 24.993).name
    'clearance fit'
    """
    # limits are given to a tenth of a micrometre at most; rounding keeps line contact at zero
    most, least = round(hole_high - shaft_low, 5), round(hole_low - shaft_high, 5)
    if least >= 0:
        return Fit("clearance fit", most, least)
    return Fit("interference fit" if most <= 0 else "transition fit", most, least)
