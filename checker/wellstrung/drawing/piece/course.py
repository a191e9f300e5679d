"""The course that a piece takes when it is worn: a curve as long as the piece.

A necklace lies on the neck and hangs before the breast: half a circle behind, half an oval in
front. A bracelet lies in an oval, and a lariat hangs down with both its ends. Worked out for this
project; how a heavy piece drapes over a breast is left out.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable
from itertools import accumulate, pairwise

from msgspec import Struct

from wellstrung.drawing.canvas import Spot

#: in how many straight steps a course is laid
_STEPS = 240
#: how much wider than high the oval of a wrist is: from memory, no source
_OVAL = 1.25
#: how far apart the ends of a lariat hang, mm, so that both are seen: our own choice
_APART = 16.0
#: how far each turn of a coil lies below the last, mm, so that all are seen: our own choice
_TURN_BELOW = 10.0


class Course(Struct, frozen=True):
    """A line of spots, mm, with how far along each lies; `closed` where its end meets its start."""

    spots: tuple[Spot, ...]
    along: tuple[float, ...]
    closed: bool

    def bend(self, along: float, across: float) -> Spot:
        """Where a spot of the straight piece lies; before the start and after the end it goes on.

        Across counts to the right as one goes along: outwards on a closed course.
        """
        if self.closed and self.along[-1]:
            along %= self.along[-1]
        index = min(max(bisect_right(self.along, along) - 1, 0), len(self.spots) - 2)
        (x1, y1), (x2, y2) = self.spots[index], self.spots[index + 1]
        long = (self.along[index + 1] - self.along[index]) or 1.0
        right, down = (x2 - x1) / long, (y2 - y1) / long
        on = along - self.along[index]
        return x1 + right * on - down * across, y1 + down * on + right * across


def _through(spots: list[Spot], *, closed: bool) -> Course:
    lengths = [math.dist(one, other) for one, other in pairwise(spots)]
    return Course(tuple(spots), tuple(accumulate(lengths, initial=0.0)), closed)


def oval(length: float, wider: float = _OVAL) -> Course:
    """An oval as long all the way round as a piece, from its top round by the left.

    >>> course = oval(180.0)
    >>> round(course.along[-1], 1), round(course.bend(90.0, 0.0)[1], 1)
    (180.0, 50.8)
    """
    high = _solved(lambda r: _half(wider * r, r), length / 2, length)
    return _through(_arc(wider * high, high, 0, 2), closed=True)


def coil(length: float, turns: int, wider: float = _OVAL, *, meets: bool = False) -> Course:
    """Several turns of an oval, seen from a slant: each lies below the last.

    Where its end `meets` its start, as at a clasp, the last half turn climbs to it.

    >>> round(coil(540.0, 3).along[-1])
    540
    >>> [round(abs(one), 1) for one in coil(540.0, 3, meets=True).spots[-1]]
    [0.0, 0.0]
    """

    def laid(high: float) -> list[Spot]:
        flat = _arc(wider * high, high, 0, 2 * turns)
        return [(x, y + _below(step / _STEPS)) for step, (x, y) in enumerate(flat)]

    def _below(turn: float) -> float:
        climbs = turn - (turns - 0.5) if meets else 0.0
        if climbs <= 0:
            return _TURN_BELOW * turn
        return _TURN_BELOW * (turns - 0.5) * (1 + math.cos(2 * math.pi * climbs)) / 2

    def long(high: float) -> float:
        return sum(math.dist(one, other) for one, other in pairwise(laid(high)))

    return _through(laid(_solved(long, length, length)), closed=False)


def on_neck(length: float, neck: float) -> Course:
    """From behind the neck round by the left, down before the breast and back by the right.

    A piece that is shorter than the neck lies in a circle of its own.

    >>> course = on_neck(470.0, 360.0)
    >>> round(course.along[-1], 1), round(course.bend(235.0, 0.0)[1], 1)
    (470.0, 178.8)
    """
    r = min(neck, length) / (2 * math.pi)
    deep = _solved(lambda deep: _half(r, deep), length - math.pi * r, length)
    behind, before = _arc(r, r, 0, 0.5), _arc(r, deep, 0.5, 1.5, middle=r)
    spots = [*behind, *before[1:], *_arc(r, r, 1.5, 2)[1:]]
    return _through(spots, closed=True)


def over_neck(length: float, neck: float) -> Course:
    """Both ends hang down before the breast, as those of a lariat.

    >>> round(over_neck(1050.0, 360.0).along[-1])
    1050
    """
    r = min(neck, length * 0.6) / (2 * math.pi)
    away = r - _APART / 2
    down = math.sqrt(max(((length - math.pi * r) / 2) ** 2 - away**2, 1.0))
    left = [(-_APART / 2, r + down), *reversed(_arc(r, r, 0, 0.5))]
    return _through([*left, *((-x, y) for x, y in reversed(left[:-1]))], closed=False)


def _arc(wide: float, high: float, start: float, end: float, middle: float = 0.0) -> list[Spot]:
    """Of an oval whose top is at (0, 0), or its middle at a height: from so many half turns on."""
    middle = middle or high
    steps = max(round(_STEPS * (end - start) / 2), 2)
    turns = [math.pi * (start + (end - start) * n / steps) for n in range(steps + 1)]
    return [(-wide * math.sin(turn), middle - high * math.cos(turn)) for turn in turns]


def _half(wide: float, high: float) -> float:
    """How long half of an oval is, by its half axes: as it is laid in straight steps."""
    return sum(math.dist(one, other) for one, other in pairwise(_arc(wide, high, 0.5, 1.5)))


def _solved(length_of: Callable[[float], float], length: float, most: float) -> float:
    """The size at which a curve is so long, by halving."""
    low, high = 0.0, most
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if length_of(middle) > length else (middle, high)
    return low
