"""What measurements leave of causes, held against numpy's linear algebra."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from wellstrung.quantity.arithmetic import derived, leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.conditioning import Key, Left, Reading, cholesky, conditioned

Matrix = NDArray[np.float64]
KEYS: list[Key] = [("a",), ("b",), ("c",), ("d",)]
SLOPES = st.floats(-3, 3).filter(lambda slope: slope == 0 or abs(slope) > 1e-3)
READINGS = st.lists(
    st.builds(
        Reading,
        st.floats(-2, 2),
        st.dictionaries(st.sampled_from(KEYS), SLOPES, min_size=1),
        st.floats(0.05, 4),
    ),
    max_size=6,
)


def covariance(left: Left, keys: list[Key]) -> Matrix:
    factor = np.array([left.loadings[key] for key in keys])
    found: Matrix = factor @ factor.T
    return found


def expected(readings: list[Reading], prior: list[float]) -> tuple[Matrix, Matrix]:
    """The textbook's posterior in closed form, by matrix inversion."""
    slopes = np.array([[one.slopes.get(key, 0.0) for key in KEYS] for one in readings])
    slopes = slopes.reshape(len(readings), len(KEYS))
    weights = np.diag([1 / one.variance for one in readings]) if readings else np.zeros((0, 0))
    left = np.linalg.inv(np.diag([1 / one for one in prior]) + slopes.T @ weights @ slopes)
    return left @ slopes.T @ weights @ np.array([one.off for one in readings]), left


@settings(max_examples=40)
@given(READINGS, st.lists(st.floats(0.1, 1), min_size=4, max_size=4))
def test_it_is_the_gaussian_update(readings: list[Reading], prior: list[float]) -> None:
    left = conditioned(readings, KEYS, dict(zip(KEYS, prior, strict=True)))
    means, matrix = expected(readings, prior)
    np.testing.assert_allclose([left.shifts[key] for key in KEYS], means, atol=1e-7)
    np.testing.assert_allclose(covariance(left, KEYS), matrix, atol=1e-7)


@settings(max_examples=30)
@given(READINGS)
def test_what_is_not_kept_is_only_left_out(readings: list[Reading]) -> None:
    every, some = conditioned(readings, KEYS), conditioned(readings, KEYS[1:3])
    assert [some.shifts[key] for key in KEYS[1:3]] == [every.shifts[key] for key in KEYS[1:3]]
    np.testing.assert_allclose(
        covariance(some, KEYS[1:3]), covariance(every, KEYS)[1:3, 1:3], atol=1e-9
    )


@settings(max_examples=30)
@given(READINGS, st.randoms(use_true_random=False))
def test_the_order_of_readings_changes_no_figure(readings: list[Reading], chance: object) -> None:
    mixed = [*readings]
    chance.shuffle(mixed)  # type: ignore[attr-defined]
    assert conditioned(mixed, KEYS) == conditioned(readings, KEYS)


@settings(max_examples=30)
@given(READINGS, READINGS, st.lists(SLOPES, min_size=4, max_size=4))
def test_more_readings_never_widen_what_hangs_on_the_causes(
    some: list[Reading], more: list[Reading], slopes: list[float]
) -> None:
    before, after = (
        math.sqrt(np.array(slopes) @ covariance(conditioned(one, KEYS), KEYS) @ np.array(slopes))
        for one in (some, [*some, *more])
    )
    assert after <= before + 1e-6 <= math.hypot(*slopes) + 2e-6


def test_a_reading_that_is_as_predicted_moves_nothing() -> None:
    left = conditioned([Reading(0.0, {("a",): 1.0, ("b",): 2.0}, 0.1)], KEYS[:2])
    assert set(left.shifts.values()) == {0.0}
    assert left.spread(("b",)) < 1


def test_causes_that_a_reading_ties_together_hinder_each_other() -> None:
    """A sum that is known: each part of it may vary, and the sum hardly does."""
    left = conditioned([Reading(0.0, {("a",): 1.0, ("b",): 1.0}, 1e-4)], KEYS[:2])
    assert left.spread(("a",)) == pytest.approx(math.sqrt(0.5), rel=1e-3)
    both = [a + b for a, b in zip(left.loadings[("a",)], left.loadings[("b",)], strict=True)]
    assert math.hypot(*both) < 0.011


@pytest.mark.parametrize("size", [1, 2, 5])
def test_the_factor_of_a_singular_matrix(size: int) -> None:
    ones = np.ones((size, size))
    found = np.array(cholesky(ones.tolist()))
    np.testing.assert_allclose(found @ found.T, ones, atol=1e-12)


def test_new_causes_move_leaves_either_way_and_leave_the_worst_range() -> None:
    """Two leaves that vary against each other: their sum is narrow, their difference wide."""
    shared = Cause("left", only="likely")
    a, b = (
        leaf(name, 10.0, "mm", [Spread(Cause(name, only="worst"), 2.0, 2.0), spread])
        for name, spread in (("a", Spread(shared, 1.0, 1.0)), ("b", Spread(shared, -1.0, -1.0)))
    )
    assert (a + b).likely == (20, 20)
    assert (a + b).worst == (16, 24)
    assert (a - b).likely == (-2, 2)
    assert (a - b).worst == (-4, 4)
    area = derived("area", "mm2", lambda a, b: a * b, a=a, b=b)
    assert area.worst == (64, 144)
    assert area.likely.low == 99
    assert a.chief_cause == (shared, 1.0)
