"""Fit classes after ISO 286-1:2010 with limit deviations of ISO 286-2:2010, in micrometres.

25 H7/h6 is a whole printed row (copy seen); 20 H6/e7, 20 H7/s6 and 50 H7/s6 are textbook examples
3.1 to 3.3 (copies seen); the others are worked out from printed deviations (copies seen). For
20 mm, k6 and p6 follow ISO 286-2, not one seen table that prints +3/+16 and +24/+37. H7/p6 is
interference only above 3 mm: 3 mm is a transition fit, and at 10 mm one end is exactly zero.
"""

from __future__ import annotations

import pytest

from wellstrung.formulas.fits import fit_class

ROWS = [
    ("H7/g6", 25, (21, 0), (-7, -20), 41, 7, "clearance fit"),
    ("H7/h6", 25, (21, 0), (0, -13), 34, 0, "clearance fit"),
    ("H8/f7", 8, (22, 0), (-13, -28), 50, 13, "clearance fit"),
    ("H6/e7", 20, (13, 0), (-40, -61), 74, 40, "clearance fit"),
    ("H8/f7", 3, (14, 0), (-6, -16), 30, 6, "clearance fit"),
    ("H7/k6", 25, (21, 0), (15, 2), 19, -15, "transition fit"),
    ("H7/n6", 25, (21, 0), (28, 15), 6, -28, "transition fit"),
    ("H7/k6", 10, (15, 0), (10, 1), 14, -10, "transition fit"),
    ("H7/k6", 20, (21, 0), (15, 2), 19, -15, "transition fit"),
    ("H7/js6", 25, (21, 0), (6.5, -6.5), 27.5, -6.5, "transition fit"),
    ("H7/p6", 25, (21, 0), (35, 22), -1, -35, "interference fit"),
    ("H7/p6", 20, (21, 0), (35, 22), -1, -35, "interference fit"),
    ("H7/s6", 20, (21, 0), (48, 35), -14, -48, "interference fit"),
    ("H7/s6", 50, (25, 0), (59, 43), -18, -59, "interference fit"),
    ("H7/p6", 10, (15, 0), (24, 15), 0, -24, "interference fit"),
    ("H7/p6", 3, (10, 0), (12, 6), 4, -12, "transition fit"),
]


@pytest.mark.parametrize(("fit", "size", "hole", "shaft", "most", "least", "name"), ROWS)
def test_fit(
    fit: str,
    size: int,
    hole: tuple[float, float],
    shaft: tuple[float, float],
    most: float,
    least: float,
    name: str,
) -> None:
    hole_high, hole_low = (size + deviation / 1000 for deviation in hole)
    shaft_high, shaft_low = (size + deviation / 1000 for deviation in shaft)
    found = fit_class(hole_low, hole_high, shaft_low, shaft_high)
    assert found.name == name, fit
    assert found[1:] == pytest.approx((most / 1000, least / 1000), abs=1e-9), fit
