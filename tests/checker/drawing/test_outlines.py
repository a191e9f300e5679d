"""Outlines and hatching: what its lines cover, against areas reckoned otherwise."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.drawing.outlines import Segment, box, circle, hatch


def covered(lines: list[Segment], step: float) -> float:
    return sum(math.hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in lines) * step


@given(st.floats(0, 180), st.floats(-5, 5), st.floats(-5, 5))
def test_lines_cover_a_ring(degrees: float, x: float, y: float) -> None:
    lines = hatch([circle(x, y, 5), circle(x, y, 3)], 0.05, degrees)
    assert covered(lines, 0.05) == pytest.approx(math.pi * (25 - 9), rel=0.02)


@given(st.floats(0, 180), st.floats(0.5, 3))
def test_what_lies_in_a_hole_is_left_out(degrees: float, apart: float) -> None:
    """Two equal circles: the lens that they share is left, by its formula."""
    r = 2.0
    lens = 2 * r * r * math.acos(apart / (2 * r)) - apart / 2 * math.sqrt(4 * r * r - apart**2)
    lines = hatch([circle(0, 0, r)], 0.02, degrees, but=[circle(apart, 0, r)])
    assert covered(lines, 0.02) == pytest.approx(math.pi * r * r - lens, rel=0.03, abs=0.05)
    assert all(math.hypot(x - apart, y) > r - 0.02 for (x, y), _ in lines)


def test_lines_run_as_they_are_asked_to() -> None:
    for degrees in (0, 30, 90, 135):
        for (x1, y1), (x2, y2) in hatch([box(0, 0, 10, 10)], 1.0, degrees):
            # up the page is down in y
            assert math.degrees(math.atan2(y1 - y2, x2 - x1)) % 180 == pytest.approx(degrees % 180)


def test_nothing_is_hatched_by_no_line() -> None:
    assert hatch([], 1.0, 45.0) == []
    assert hatch([box(0, 0, 1, 1)], 0.1, 45.0, but=[box(0, 0, 1, 1)]) == []
