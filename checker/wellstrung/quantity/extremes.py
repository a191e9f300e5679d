"""The least and the greatest value of a function of causes, each moved from -1 to 1."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from itertools import product

from wellstrung.quantity.causes import Cause, Window

#: Causes that a climb moves in all: more than it needs of a few dozen.
_MOST_MOVES = 20_000
#: the value with these causes moved, all others at rest
At = Callable[[Mapping[Cause, float]], float]


class Moved:
    """The arguments of a function under causes that are moved one at a time.

    Each argument is worked out once for every point of the causes that move it.
    """

    def __init__(self, args: Mapping[str, tuple[At, Collection[Cause]]]) -> None:
        self._args = args
        self._known: dict[tuple[object, ...], float] = {}
        self._of: dict[Cause, list[str]] = {}
        for key, (_, causes) in args.items():
            for cause in causes:
                self._of.setdefault(cause, []).append(key)

    def values(self, moved: Mapping[Cause, float], by: Cause | None = None) -> dict[str, float]:
        """All arguments, or those that one cause moves, each where all causes are moved so far."""
        found = {}
        for key in self._args if by is None else self._of.get(by, ()):
            at, causes = self._args[key]
            point = (key, *[moved[cause] for cause in causes])
            value = self._known.get(point)
            if value is None:
                value = self._known[point] = at(moved)
            found[key] = value
        return found


def of_corners(
    function: Callable[..., float],
    args: Moved,
    middle: float,
    points: Mapping[Cause, tuple[float, ...]],
) -> Window:
    """Over every combination of the points of the causes: exact where nothing turns between."""
    corners = [dict(zip(points, corner, strict=True)) for corner in product(*points.values())]
    values = [function(**args.values(corner)) for corner in corners]
    return Window(min(middle, *values), max(middle, *values))


def climbed(
    function: Callable[..., float],
    args: Moved,
    middle: float,
    alone: Mapping[Cause, Mapping[float, float]],
) -> Window:
    """Over so many causes that not every corner can be tried.

    `alone` has the value with each cause alone at each of its points. From its own best point one
    cause after another is moved until none helps. Where `_MOST_MOVES` causes have been moved before
    that, the range is no narrower than all that each cause does alone, added up: no error comes of
    a range that was not followed to its end.
    """
    low, high = (_climb(sign, function, args, middle, alone) for sign in (-1.0, 1.0))
    return Window(min(middle, -low), max(middle, high))


def _climb(
    sign: float,
    function: Callable[..., float],
    args: Moved,
    middle: float,
    alone: Mapping[Cause, Mapping[float, float]],
) -> float:
    """The greatest `sign` x value that is found."""
    moved = {
        cause: max(tried, key=lambda point: sign * tried[point]) for cause, tried in alone.items()
    }
    values = args.values(moved)
    best = sign * function(**values)
    improved, left = True, _MOST_MOVES // len(alone)  # each trial moves them all
    while improved:
        improved = False
        for cause, tried in alone.items():
            for point in tried:
                before = moved[cause]
                if point == before:
                    continue
                if not left:
                    gains = [sign * (alone[one][by] - middle) for one, by in moved.items()]
                    return max(best, sign * middle + math.fsum(max(0.0, gain) for gain in gains))
                left -= 1
                moved[cause] = point
                there = {**values, **args.values(moved, cause)}
                trial = sign * function(**there)
                if trial > best + 1e-12:
                    best, improved, values = trial, True, there
                else:
                    moved[cause] = before
    return best
