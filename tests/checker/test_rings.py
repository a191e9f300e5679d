"""Rings: the hole a curved wire needs, by building the wire and measuring its height."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.rings import hole_needed, inside_of, outside_of

wires = st.floats(0.3, 3.0)
insides = st.floats(1.0, 20.0)
shares = st.floats(0.05, 1.0)


@given(wires, insides, shares)
def test_hole_needed_by_walking_along_the_wire(wire: float, inside: float, share: float) -> None:
    """Stand the ring in a hole `through` thick and measure from its inner to its outer arc."""
    through, radius = inside * share, inside / 2
    across = [through * (step / 200 - 0.5) for step in range(201)]
    lowest_inner = min(math.sqrt(radius**2 - x * x) for x in across if abs(x) <= radius)
    highest_outer = max(math.sqrt((radius + wire) ** 2 - x * x) for x in across)
    needed = hole_needed(wire, inside, through)
    assert needed == pytest.approx(highest_outer - lowest_inner, abs=1e-6)


def test_an_eye_as_thick_as_the_ring_is_wide_is_the_last_it_can_go_round() -> None:
    assert hole_needed(1.0, 4.0, 4.0) == 3.0
    assert hole_needed(1.0, 4.0, 4.0001) is None


@given(wires, st.floats(0.01, 1.0), st.floats(6.5, 20.0), shares)
def test_thicker_wire_never_makes_more_room(
    wire: float, more: float, outside: float, share: float
) -> None:
    thin, thick = inside_of(outside, wire), inside_of(outside, wire + more)
    assert thick < thin
    through = share * min(thin, thick) if thick > 0 else 0.0
    if thick > 0:
        one, other = hole_needed(wire, thin, through), hole_needed(wire + more, thick, through)
        assert one is not None and other is not None and other > one - 1e-12


@given(wires, insides)
def test_outside_and_inside_undo_each_other(wire: float, inside: float) -> None:
    assert inside_of(outside_of(inside, wire), wire) == pytest.approx(inside)
