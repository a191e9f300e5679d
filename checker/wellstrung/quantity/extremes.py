"""The least and the greatest value of a function of causes, each moved from -1 to 1."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from functools import partial
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


def climbed(
    at: At,
    alone: Callable[[Cause, float], float],
    middle: float,
    causes: Iterable[Cause],
    points: tuple[float, ...],
) -> Window:
    """Over so many causes that not every corner can be tried; `alone` moves one of them.

    From each cause's own best point one cause after another is moved until none helps. Where
    `_MOST_MOVES` causes have been moved before that, the range is no narrower than all that each
    cause does alone, added up: no error comes of a range that was not followed to its end.
    """
    causes = tuple(causes)
    low, high = (_climb(sign, at, alone, middle, causes, points) for sign in (-1.0, 1.0))
    return Window(min(middle, -low), max(middle, high))


def _climb(
    sign: float,
    at: At,
    alone: Callable[[Cause, float], float],
    middle: float,
    causes: tuple[Cause, ...],
    points: tuple[float, ...],
) -> float:
    """The greatest `sign` x value that is found."""

    def signed(cause: Cause, point: float) -> float:
        return sign * alone(cause, point)

    moved = {cause: max(points, key=partial(signed, cause)) for cause in causes}
    best = sign * at(moved)
    improved, left = True, _MOST_MOVES // len(causes)  # each trial moves them all
    while improved:
        improved = False
        for cause in causes:
            for point in points:
                if not left:
                    each = (max(0.0, signed(one, moved[one]) - sign * middle) for one in causes)
                    return max(best, sign * middle + math.fsum(each))
                left -= 1
                trial = sign * at({**moved, cause: point})
                if trial > best + 1e-12:
                    best, improved = trial, True
                    moved[cause] = point
    return best
