"""The least and the greatest value of a function of causes, each moved from -1 to 1."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from itertools import product

from wellstrung.quantity.causes import Cause, Window

#: Causes that a climb moves in all: more than it needs of a few dozen.
_MOST_MOVES = 20_000
#: the value with these causes moved, all others at rest
At = Callable[[Mapping[Cause, float]], float]


def of_corners(at: At, middle: float, points: Mapping[Cause, tuple[float, ...]]) -> Window:
    """Over every combination of the points of the causes: exact where nothing turns between."""
    values = [at(dict(zip(points, corner, strict=True))) for corner in product(*points.values())]
    return Window(min(middle, *values), max(middle, *values))


def climbed(at: At, middle: float, alone: Mapping[Cause, Mapping[float, float]]) -> Window:
    """Over so many causes that not every corner can be tried.

    `alone` has the value with each cause alone at each of its points. From its own best point one
    cause after another is moved until none helps. Where `_MOST_MOVES` causes have been moved before
    that, the range is no narrower than all that each cause does alone, added up: no error comes of
    a range that was not followed to its end.
    """
    low, high = (_climb(sign, at, middle, alone) for sign in (-1.0, 1.0))
    return Window(min(middle, -low), max(middle, high))


def _climb(
    sign: float, at: At, middle: float, alone: Mapping[Cause, Mapping[float, float]]
) -> float:
    """The greatest `sign` x value that is found."""
    moved = {
        cause: max(tried, key=lambda point: sign * tried[point]) for cause, tried in alone.items()
    }
    best = sign * at(moved)
    improved, left = True, _MOST_MOVES // len(alone)  # each trial moves them all
    while improved:
        improved = False
        for cause, tried in alone.items():
            for point in tried:
                if point == moved[cause]:
                    continue
                if not left:
                    gains = [sign * (alone[one][by] - middle) for one, by in moved.items()]
                    return max(best, sign * middle + math.fsum(max(0.0, gain) for gain in gains))
                left -= 1
                trial = sign * at({**moved, cause: point})
                if trial > best + 1e-12:
                    best, improved = trial, True
                    moved[cause] = point
    return best
