"""Beads on a hoop: laid one beside the other round its wire."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.kinds.ear_wire import round_hoop

sizes = st.floats(1.0, 6.0)


@given(st.integers(1, 30), sizes, sizes, st.floats(20.0, 60.0), st.floats(0.5, 1.2))
def test_each_bead_meets_the_next(
    beads: int, length: float, outside: float, across: float, wire: float
) -> None:
    """The inner corner of each end is that of the next bead; balls meet at the ends of holes."""
    middle = (across - wire) / 2
    for square in (0, 1):
        reach = round_hoop(beads, length, outside, across, wire, square)
        turned = cmath.rect(1, reach / beads / middle)
        inner = middle - square * outside / 2
        near, far = complex(inner, length / 2), complex(inner, -length / 2)
        assert abs(near - far * turned) == pytest.approx(0, abs=1e-9)
        assert reach <= beads * math.pi * middle
