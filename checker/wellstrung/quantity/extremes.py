"""The least and the greatest value of any combination of causes, each moved from -1 to 1."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from functools import partial
from itertools import product
from typing import NamedTuple

from wellstrung.quantity.causes import Cause, Moves, Spread, Window

_ENDS: tuple[float, ...] = (-1.0, 1.0)
#: Causes that a climb moves in all: more than it needs of a few dozen.
_MOST_MOVES = 20_000


def points_of(
    causes: Iterable[Cause], leaves: Iterable[Iterable[Spread]], *, kinked: bool
) -> dict[Cause, tuple[float, ...]]:
    """Where each cause may push a value furthest: at its ends; at rest too, if leaves share it.

    One leaf alone has nothing at rest that it has not at an end.
    """
    points = dict.fromkeys(causes, _ENDS)
    if kinked:
        moving = Counter(spread.cause for spreads in leaves for spread in spreads)
        points.update({cause: (*_ENDS, 0.0) for cause in points if moving[cause] > 1})
    return points


def shared_by(args: Iterable[Collection[Cause]], elsewhere: Iterable[Cause]) -> set[Cause]:
    """The causes that move more than one argument, or one and something `elsewhere`."""
    met, shared = set(elsewhere), set(elsewhere)
    for causes in args:
        shared.update(met.intersection(causes))
        met.update(causes)
    return shared


class Node(NamedTuple):
    """One value of a graph: its key, the causes that move it, and how to work it out.

    `work` takes the point of each cause, and by key the values of the nodes below.
    """

    key: int
    causes: Collection[Cause]
    work: Callable[[Mapping[Cause, float], Mapping[int, float]], float]


def of_ends(
    function: Callable[..., float],
    at_rest: Mapping[str, float],
    middle: float,
    ends: Mapping[str, Window],
) -> Window:
    """The range over the ends of arguments that share no cause; all others are at rest."""
    work = partial(function, **at_rest)
    values = [work(**dict(zip(ends, at, strict=True))) for at in product(*ends.values())]
    return Window(min(middle, *values), max(middle, *values))


def reached(
    nodes: Iterable[Node],
    alone: Moves,
    end: Callable[..., float],
    points: Sequence[float],
) -> float:
    """The value with each cause at the point where that cause `alone` moves the value furthest.

    Each node comes after the nodes below it, and the value itself is the last.
    """
    at = {cause: points[moves.index(end(moves))] for cause, moves in alone.items()}
    values: dict[int, float] = {}
    for node in nodes:
        values[node.key] = value = node.work(at, values)
    return value


class _Moved:
    """A graph whose causes move one at a time; only the nodes that a cause moves are updated.

    Each node comes after the nodes below it, and the value itself is the last.
    """

    def __init__(self, nodes: Sequence[Node], points: Mapping[Cause, float]) -> None:
        self.points = dict(points)
        self._nodes = nodes
        self._values: dict[int, float] = {}
        self._of: dict[Cause, list[Node]] = {}
        for node in nodes:
            self._values[node.key] = node.work(self.points, self._values)
            for cause in node.causes:
                self._of.setdefault(cause, []).append(node)

    @property
    def value(self) -> float:
        """The value with all causes at their present points."""
        return self._values[self._nodes[-1].key]

    def move(self, cause: Cause, by: float) -> float:
        """The value after one cause has moved to another point."""
        self.points[cause] = by
        for node in self._of.get(cause, ()):
            self._values[node.key] = node.work(self.points, self._values)
        return self.value

    def of(self, cause: Cause) -> tuple[float, Mapping[int, float]]:
        """The point of a cause, and the values of the nodes that it moves."""
        return self.points[cause], {
            node.key: self._values[node.key] for node in self._of.get(cause, ())
        }

    def put_back(self, cause: Cause, by: float, values: Mapping[int, float]) -> None:
        """Undo the moves of one cause: put back what `of` returned before them."""
        self.points[cause] = by
        self._values.update(values)


def of_corners(
    nodes: Sequence[Node], middle: float, points: Mapping[Cause, tuple[float, ...]]
) -> Window:
    """Over every combination of the points of the causes: exact where nothing turns between."""
    moved = _Moved(nodes, {cause: ends[0] for cause, ends in points.items()})
    low, high = min(middle, moved.value), max(middle, moved.value)
    for corner in product(*points.values()):
        for cause, by in zip(points, corner, strict=True):
            if moved.points[cause] != by:
                moved.move(cause, by)
        low, high = min(low, moved.value), max(high, moved.value)
    return Window(low, high)


def climbed(
    nodes: Sequence[Node], middle: float, alone: Mapping[Cause, Mapping[float, float]]
) -> Window:
    """Over so many causes that not every corner can be tried.

    `alone` has the value with each cause alone at each of its points. From its own best point one
    cause after another is moved until none helps. Where `_MOST_MOVES` causes have been moved before
    that, the range is no narrower than all that each cause does alone, added up: no error comes of
    a range that was not followed to its end.
    """
    low, high = (_climb(sign, nodes, middle, alone) for sign in (-1.0, 1.0))
    return Window(min(middle, -low), max(middle, high))


def _climb(
    sign: float,
    nodes: Sequence[Node],
    middle: float,
    alone: Mapping[Cause, Mapping[float, float]],
) -> float:
    """The greatest `sign` x value that is found."""
    own = {cause: max(at, key=lambda point: sign * at[point]) for cause, at in alone.items()}
    moved = _Moved(nodes, own)
    best = sign * moved.value
    improved, left = True, _MOST_MOVES // len(alone)  # each trial may move them all
    while improved:
        improved = False
        for cause, tried in alone.items():
            before = moved.of(cause)
            for point in tried:
                if point == moved.points[cause]:
                    continue
                if not left:
                    gains = [sign * (alone[one][by] - middle) for one, by in moved.points.items()]
                    return max(best, sign * middle + math.fsum(max(0.0, gain) for gain in gains))
                left -= 1
                trial = sign * moved.move(cause, point)
                if trial > best + 1e-12:
                    best, improved, before = trial, True, moved.of(cause)
                else:
                    moved.put_back(cause, *before)
    return best
