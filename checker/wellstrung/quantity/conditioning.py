"""What measurements say of the causes that they share: linear, Gaussian.

A cause is 0 at rest and ± 1 at the ends of its range; all are independent before anything is
measured. A reading is a sum of causes, each times its slope, and the error of measuring. What is
known afterwards is the textbook update of a Gaussian by such sums (the measurement update of a
Kalman filter, one reading after another); the causes then hang together, so that what is left of
them is written as new independent causes by the Cholesky factor of their covariance.

Ranges are half ranges throughout. As only their ratios count, it makes no difference how many
standard deviations a half range stands for.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

#: a cause, by any words that sort
Key = tuple[str, ...]
#: less than this share of a variance is nothing but rounding
_NOTHING = 1e-12


class Reading(NamedTuple):
    """One measurement: how far off its prediction, what moves it how far, and its own error.

    `variance` is the square of the half range that is of this reading alone.
    """

    off: float
    slopes: Mapping[Key, float]
    variance: float


class Left(NamedTuple):
    """What is known of some causes: how far each has shifted, and what is left of it.

    `loadings` has for each cause how far each of the new causes, all independent, moves it.
    """

    shifts: Mapping[Key, float]
    loadings: Mapping[Key, tuple[float, ...]]

    def spread(self, key: Key) -> float:
        """The half range that is left of a cause which had 1 (or its share of it)."""
        return math.hypot(*self.loadings[key])


def conditioned(
    readings: Sequence[Reading], keep: Sequence[Key], prior: Mapping[Key, float] | None = None
) -> Left:
    """The causes to `keep` after all readings; `prior` has the variance of those that have not 1.

    A reading of one cause as sure as the cause itself was goes halfway, and leaves half of the
    variance:

    >>> left = conditioned([Reading(0.8, {("a",): 1.0}, 1.0)], [("a",)])
    >>> left.shifts[("a",)], round(left.spread(("a",)) ** 2, 6)
    (0.4, 0.5)
    """
    keys = sorted({key for reading in readings for key in reading.slopes} | {*keep})
    at = {key: index for index, key in enumerate(keys)}
    means = [0.0] * len(keys)
    covariance = [[0.0] * len(keys) for _ in keys]
    for key, index in at.items():
        covariance[index][index] = (prior or {}).get(key, 1.0)
    for reading in sorted(readings, key=_in_one_order):
        _update(means, covariance, at, reading)
    kept = [at[key] for key in keep]
    factor = cholesky([[covariance[row][column] for column in kept] for row in kept])
    return Left(
        {key: means[at[key]] for key in keep},
        {key: tuple(row) for key, row in zip(keep, factor, strict=True)},
    )


def _in_one_order(reading: Reading) -> tuple[object, ...]:
    """By what it says, so that the order in which readings are written changes no last figure."""
    return reading.off, reading.variance, sorted(reading.slopes.items())


def _update(
    means: list[float], covariance: list[list[float]], at: Mapping[Key, int], reading: Reading
) -> None:
    """Take one reading in: means and covariance become those that it leaves."""
    slopes = {at[key]: slope for key, slope in reading.slopes.items() if slope}
    moved = [math.fsum(row[n] * slope for n, slope in slopes.items()) for row in covariance]
    variance = reading.variance + math.fsum(moved[n] * slope for n, slope in slopes.items())
    if variance <= 0:
        return  # it says nothing that is not known to the last figure
    off = reading.off - math.fsum(means[n] * slope for n, slope in slopes.items())
    for row, gain in enumerate(moved):
        if gain:
            means[row] += gain * off / variance
            for column, other in enumerate(moved):
                covariance[row][column] -= gain * other / variance


def cholesky(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    """The lower triangle whose product with its transpose is a matrix that may be singular.

    >>> cholesky([[4.0, 2.0], [2.0, 1.0]])
    [[2.0, 0.0], [1.0, 0.0]]
    """
    size = len(matrix)
    factor = [[0.0] * size for _ in range(size)]
    for column in range(size):
        before = factor[column][:column]
        pivot = matrix[column][column] - math.fsum(one * one for one in before)
        if pivot <= _NOTHING * max(1.0, matrix[column][column]):
            continue
        root = factor[column][column] = math.sqrt(pivot)
        for row in range(column + 1, size):
            shared = math.fsum(a * b for a, b in zip(factor[row], before, strict=False))
            factor[row][column] = (matrix[row][column] - shared) / root
    return factor
