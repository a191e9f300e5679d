"""Hatching: straight lines at one distance that fill an area, worked out point by point.

A section tells its materials by hatching and never by colour alone. The lines are worked out here,
because an SVG pattern is known by a name that two drawings of one page would share.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

Point = tuple[float, float]
Outline = Sequence[Point]
Segment = tuple[float, float, float, float]

#: corners of the polygon that stands for a circle: on paper it is off by a twentieth of a mm
_CORNERS = 72
#: the shortest line that is drawn, in steps: what corners leave where two curves touch is none
_SPECK = 0.1


def circle(x: float, y: float, r: float) -> list[Point]:
    """The outline of a circle about (x, y)."""
    turns = [2 * math.pi * n / _CORNERS for n in range(_CORNERS)]
    return [(x + r * math.cos(turn), y + r * math.sin(turn)) for turn in turns]


def box(x: float, y: float, width: float, height: float) -> list[Point]:
    """The outline of a rectangle with its upper left corner at (x, y)."""
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


def hatch(
    within: Sequence[Outline], step: float, degrees: float, but: Sequence[Outline] = ()
) -> list[Segment]:
    """Lines `step` apart through what lies within an odd number of outlines, less the area `but`.

    `degrees` is the way they run, anticlockwise from the right on the page.

    >>> hatch([box(0, 0, 4, 2)], 1.5, 0)
    [(0.0, 0.0, 4.0, 0.0), (0.0, 1.5, 4.0, 1.5)]
    >>> hatch([box(0, 0, 4, 1)], 1.5, 0, but=[box(1, -1, 2, 4)])
    [(0.0, 0.0, 1.0, 0.0), (3.0, 0.0, 4.0, 0.0)]
    """
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turned = [[(x * cos - y * sin, x * sin + y * cos) for x, y in line] for line in within]
    cut = [[(x * cos - y * sin, x * sin + y * cos) for x, y in line] for line in but]
    heights = [y for outline in turned for _, y in outline]
    if not heights:
        return []
    found = []
    for number in range(math.ceil(min(heights) / step), math.floor(max(heights) / step) + 1):
        y = number * step
        found += [
            (x1 * cos + y * sin, y * cos - x1 * sin, x2 * cos + y * sin, y * cos - x2 * sin)
            for x1, x2 in _less(_spans(turned, y), _spans(cut, y))
            if x2 - x1 > step * _SPECK
        ]
    return found


def _spans(outlines: Sequence[Outline], y: float) -> list[tuple[float, float]]:
    """Where a level line runs inside the outlines, from left to right."""
    crossed = sorted(x for outline in outlines for x in _crossed(outline, y))
    return list(zip(crossed[::2], crossed[1::2], strict=True))


def _crossed(outline: Outline, y: float) -> Iterator[float]:
    for (x1, y1), (x2, y2) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (y1 <= y) != (y2 <= y):
            yield x1 + (x2 - x1) * (y - y1) / (y2 - y1)


def _less(
    spans: Sequence[tuple[float, float]], holes: Sequence[tuple[float, float]]
) -> Iterator[tuple[float, float]]:
    """The spans without what lies in the holes."""
    for start, end in spans:
        for low, high in holes:
            if high <= start or low >= end:
                continue
            if low > start:
                yield start, low
            start = high
        if start < end:
            yield start, end
