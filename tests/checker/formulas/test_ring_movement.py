"""Movements of rings: how they grow with pull, ring and wire, and which is the greater."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.formulas.ring_movement import (
    bending_rigidity,
    closed_movements,
    open_across_gap,
    open_across_movement,
    open_in_line_gap,
    open_in_line_movement,
    sideways_gap,
    spread_gap,
    spread_pull,
)

Movement = Callable[[float, float, float], float]


def closed_along(pull: float, radius: float, rigidity: float) -> float:
    return closed_movements(pull, radius, rigidity)[0]


def closed_narrowing(pull: float, radius: float, rigidity: float) -> float:
    return -closed_movements(pull, radius, rigidity)[1]


def sideways(pull: float, radius: float, rigidity: float) -> float:
    return sideways_gap(pull, radius, rigidity, 0.3)


#: from the least to the greatest under the same pull
MOVEMENTS: list[Movement] = [
    closed_narrowing,
    closed_along,
    open_in_line_movement,
    open_across_movement,
    open_in_line_gap,
    open_across_gap,
    spread_gap,
    sideways,
]
pulls = st.floats(0.1, 100)
radii = st.floats(1.0, 20.0)
wires = st.floats(0.3, 3.0)
stiffness = st.floats(10_000, 210_000)


@given(pulls, radii, wires, stiffness)
def test_which_gives_more(pull: float, radius: float, wire: float, elasticity: float) -> None:
    rigidity = bending_rigidity(wire, elasticity)
    moved = [movement(pull, radius, rigidity) for movement in MOVEMENTS]
    assert moved[0] > 0 and moved == sorted(moved)


@given(st.sampled_from(MOVEMENTS), pulls, radii, wires, stiffness, st.floats(0.5, 3.0))
def test_what_a_movement_grows_with(
    movement: Movement, pull: float, radius: float, wire: float, elasticity: float, factor: float
) -> None:
    """With the pull, with the cube of the ring, and against the fourth power of the wire."""
    rigidity = bending_rigidity(wire, elasticity)
    once = movement(pull, radius, rigidity)
    assert movement(factor * pull, radius, rigidity) == pytest.approx(factor * once)
    assert movement(pull, factor * radius, rigidity) == pytest.approx(factor**3 * once)
    thicker = bending_rigidity(factor * wire, elasticity)
    assert movement(pull, radius, thicker) == pytest.approx(once / factor**4)
    stiffer = bending_rigidity(wire, factor * elasticity)
    assert movement(pull, radius, stiffer) == pytest.approx(once / factor)


@given(pulls, radii, wires, stiffness)
def test_the_pull_that_spreads_a_ring_undoes_its_gap(
    pull: float, radius: float, wire: float, elasticity: float
) -> None:
    rigidity = bending_rigidity(wire, elasticity)
    assert spread_pull(spread_gap(pull, radius, rigidity), radius, rigidity) == pytest.approx(pull)


@given(radii, wires, stiffness, st.floats(0.0, 0.5), st.floats(0.0, 0.5))
def test_metal_that_narrows_more_when_pulled_twists_more(
    radius: float, wire: float, elasticity: float, one: float, other: float
) -> None:
    rigidity = bending_rigidity(wire, elasticity)
    less, more = sorted((one, other))
    assert sideways_gap(1, radius, rigidity, less) <= sideways_gap(1, radius, rigidity, more)
