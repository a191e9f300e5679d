"""Rings: the hole a curved wire needs, by building the wire and measuring its height."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.formulas.rings import (
    closed_first_yield,
    closed_hinge,
    hole_needed,
    inside_of,
    open_across_first_yield,
    open_across_hinge,
    outside_of,
    taken_beside,
)

wires = st.floats(0.3, 3.0)
insides = st.floats(1.0, 20.0)
shares = st.floats(0.05, 1.0)
CASES = [
    # wire, inside, through, hole
    (0.8, 3.4, 0.0, 0.8),
    (1.0, 10.0, 6.0, 2.0),  # 5 - sqrt(25 - 9) = 1
    (0.5, 5.2, 4.8, 2.1),  # 2.6 - sqrt(6.76 - 5.76) = 1.6
    (1.0, 4.0, 4.0, 3.0),
    (1.0, 4.0, 4.0001, 5.0),  # it cannot go round: the hole takes the whole ring
    (0.8, 3.4, 4.0, 4.2),
]


@pytest.mark.parametrize(("wire", "inside", "through", "hole"), CASES)
def test_hole_needed(wire: float, inside: float, through: float, hole: float) -> None:
    assert hole_needed(wire, inside, through) == pytest.approx(hole)


@given(wires, insides, shares)
def test_hole_needed_by_walking_along_the_wire(wire: float, inside: float, share: float) -> None:
    """Points round both edges of the ring's wire, from face to face of the eye: what they span."""
    through = inside * share
    heights = []
    for radius in (inside / 2, inside / 2 + wire):
        last = math.asin(through / 2 / radius)
        for step in range(-100, 101):
            angle = last * step / 100
            assert abs(radius * math.sin(angle)) <= through / 2 + 1e-9
            heights.append(radius * math.cos(angle))
    needed = hole_needed(wire, inside, through)
    assert needed == pytest.approx(max(heights) - min(heights), abs=1e-6)


@given(wires, insides, shares, shares)
def test_a_thicker_eye_never_needs_a_smaller_hole(
    wire: float, inside: float, one: float, other: float
) -> None:
    thin, thick = (inside * share for share in sorted((one, other)))
    small, large = hole_needed(wire, inside, thin), hole_needed(wire, inside, thick)
    assert small is not None and large is not None and wire <= small <= large


@given(wires, st.floats(0.01, 1.0), st.floats(8.5, 20.0), shares)
def test_thicker_wire_never_makes_more_room(
    wire: float, more: float, outside: float, share: float
) -> None:
    thin, thick = inside_of(outside, wire), inside_of(outside, wire + more)
    assert 0 < thick < thin
    one = hole_needed(wire, thin, share * thick)
    other = hole_needed(wire + more, thick, share * thick)
    assert one is not None and other is not None and other > one


@given(wires, insides)
def test_outside_and_inside_undo_each_other(wire: float, inside: float) -> None:
    assert inside_of(outside_of(inside, wire), wire) == pytest.approx(inside)


PULLS = [open_across_first_yield, open_across_hinge, closed_first_yield, closed_hinge]
stresses = st.floats(30, 2000)


def thin(inside: float, wire: float, stress: float) -> float:
    """Pull across an open ring at first yield, were its wire to bend like a straight one."""
    return stress * math.pi * wire**3 / 32 / ((inside + wire) / 2)


def thin_closed(inside: float, wire: float, stress: float) -> float:
    return math.pi * thin(inside, wire, stress)


ORDER = [
    (open_across_first_yield, thin),
    (thin, open_across_hinge),
    (closed_first_yield, thin_closed),
    (thin_closed, closed_hinge),
    (open_across_first_yield, closed_first_yield),
    (open_across_hinge, closed_hinge),
]


@given(st.floats(0.3, 3.0), st.floats(1.5, 20.0), stresses)
def test_what_gives_first(wire: float, ratio: float, stress: float) -> None:
    for first, then in ORDER:
        assert first(wire * ratio, wire, stress) < then(wire * ratio, wire, stress)


@given(st.sampled_from(PULLS), st.floats(0.3, 3.0), st.floats(1.0, 20.0), stresses)
def test_pull_grows_with_the_square_of_the_size_and_with_the_stress(
    pull: Callable[[float, float, float], float], wire: float, inside: float, stress: float
) -> None:
    once = pull(inside, wire, stress)
    assert pull(2 * inside, 2 * wire, stress) == pytest.approx(4 * once)
    assert pull(inside, wire, 2 * stress) == pytest.approx(2 * once)


@given(st.sampled_from(PULLS), st.floats(0.3, 3.0), st.floats(3.0, 20.0), st.floats(1.01, 2))
def test_thicker_wire_and_a_smaller_ring_hold_more(
    pull: Callable[[float, float, float], float], wire: float, ratio: float, more: float
) -> None:
    """Down to an inside of one and a half wires; tighter bends lose to their own curvature."""
    inside = wire * ratio
    assert pull(inside, wire * more, 100) > pull(inside, wire, 100)
    assert pull(inside * more, wire, 100) < pull(inside, wire, 100)


@given(
    st.sampled_from([open_across_hinge, closed_hinge]),
    st.floats(0.3, 3.0),
    st.floats(2.0, 40.0),
    st.floats(0.5, 3.0),
)
def test_a_hinge_goes_with_the_cube_of_the_wire_and_falls_with_the_ring(
    pull: Callable[[float, float, float], float], wire: float, ratio: float, factor: float
) -> None:
    """On one middle radius double wire holds eight times as much; a double ring holds half."""
    radius = ratio * wire
    once = pull(2 * radius - wire, wire, 100)
    thicker, wider = factor * wire, factor * radius
    assert pull(2 * radius - thicker, thicker, 100) == pytest.approx(factor**3 * once)
    assert pull(2 * wider - wire, wire, 100) == pytest.approx(once / factor)


@given(st.floats(0.3, 3.0), st.floats(10.0, 1e4))
def test_the_curve_of_the_wire_counts_less_in_a_wide_ring(wire: float, ratio: float) -> None:
    """Its inside bears 1 + 3/8 x wire over radius, and the pull itself adds 1/8; a series in it.

    Under the pull of a closed ring the wire is only bent.
    """
    ring = (wire * (2 * ratio - 1), wire, 100)
    opened = open_across_first_yield(*ring) / thin(*ring)
    closed = closed_first_yield(*ring) / thin_closed(*ring)
    assert opened == pytest.approx(1 - 1 / (2 * ratio), abs=0.2 / ratio**2 + 1e-9)
    assert closed == pytest.approx(1 - 3 / (8 * ratio), abs=0.2 / ratio**2 + 1e-9)


@given(st.floats(2.0, 20.0), st.floats(0.4, 2.0), st.floats(0.8, 3.0))
def test_a_ring_beside_a_bar_by_trying_every_middle(across: float, wire: float, bar: float) -> None:
    def reach(middle: float) -> float:
        corners = max(math.hypot(across / 2, middle), math.hypot(across / 2, wire - middle))
        return max(corners, abs(wire + bar / 2 - middle) + bar / 2)

    least = 2 * min(reach(wire / 2 + step * (bar + wire) / 4000) for step in range(4001))
    assert taken_beside(across, wire, bar) == pytest.approx(least, rel=2e-3)
