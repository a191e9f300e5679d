"""Closed outlines as points, and the straight lines that hatch what lies within them.

A section shows its materials by hatching and never by colour alone. The lines are worked out here,
because an SVG pattern is known by a name that two drawings of one page would share.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wellstrung.drawing.canvas import Spot

Outline = Sequence[Spot]
Segment = tuple[Spot, Spot]

#: corners of the polygon that stands for a circle: on paper it is off by a twentieth of a mm
_CORNERS = 72
#: the shortest line that is drawn, in steps: where two curves touch, their corners leave specks
_SPECK = 0.1


def circle(x: float, y: float, r: float) -> list[Spot]:
    """The outline of a circle about (x, y)."""
    return arc(x, y, r, 0, 360, _CORNERS)[:-1]


def rim(x: float, y: float, outside: float, inside: float) -> list[Outline]:
    """The two outlines of a round wall about (x, y), by its diameters."""
    return [circle(x, y, outside / 2), circle(x, y, inside / 2)]


def box(x: float, y: float, width: float, height: float) -> list[Spot]:
    """The outline of a rectangle with its upper left corner at (x, y)."""
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


def link(x: float, y: float, long: float, wide: float) -> list[Spot]:
    """The outline of a link with its left end at (x, y): straight sides and round ends."""
    r = min(long, wide) / 2
    corners = ((1, -1, -90), (1, 1, 0), (-1, 1, 90), (-1, -1, 180))
    return [
        spot
        for right, down, turn in corners
        for spot in arc(
            x + long / 2 + right * (long / 2 - r), y + down * (wide / 2 - r), r, turn, 90, 10
        )
    ]


def rod(spots: Sequence[Spot], thick: float) -> list[Spot]:
    """The outline of a rod along a line of spots, cut off square at both ends.

    >>> rod([(0, 0), (4, 0)], 2)
    [(0.0, 1.0), (4.0, 1.0), (4.0, -1.0), (0.0, -1.0)]
    """
    sides: tuple[list[Spot], list[Spot]] = ([], [])
    for index, (x, y) in enumerate(spots):
        (x1, y1), (x2, y2) = spots[max(index - 1, 0)], spots[min(index + 1, len(spots) - 1)]
        long = math.hypot(x2 - x1, y2 - y1) or 1.0
        aside = thick / 2 * (y1 - y2) / long, thick / 2 * (x2 - x1) / long
        for side, way in zip(sides, (1, -1), strict=True):
            side.append((x + way * aside[0], y + way * aside[1]))
    return [*sides[0], *reversed(sides[1])]


def arc(x: float, y: float, r: float, start: float, turn: float, steps: int = 12) -> list[Spot]:
    """Points on a circle about (x, y), from `start` on and round by `turn`, both in degrees."""
    turns = [math.radians(start + turn * n / steps) for n in range(steps + 1)]
    return [(x + r * math.cos(one), y + r * math.sin(one)) for one in turns]


def hatch(
    within: Sequence[Outline], step: float, degrees: float, but: Sequence[Outline] = ()
) -> list[Segment]:
    """Lines `step` apart through what lies within an odd number of outlines, less the area `but`.

    They run at `degrees` from level, anticlockwise on the page.

    >>> hatch([box(0, 0, 4, 2)], 1.5, 0)
    [((0.0, 0.0), (4.0, 0.0)), ((0.0, 1.5), (4.0, 1.5))]
    >>> hatch([box(0, 0, 4, 1)], 1.5, 0, but=[box(1, -1, 2, 4)])
    [((0.0, 0.0), (1.0, 0.0)), ((3.0, 0.0), (4.0, 0.0))]
    """
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turned = [[(x * cos - y * sin, x * sin + y * cos) for x, y in line] for line in within]
    cut = [[(x * cos - y * sin, x * sin + y * cos) for x, y in line] for line in but]
    spans = _spans(turned, step)
    holes = _spans(cut, step, range(min(spans), max(spans) + 1)) if cut and spans else {}
    found = []
    for number, inside in sorted(spans.items()):
        y = number * step
        found += [
            ((x1 * cos + y * sin, y * cos - x1 * sin), (x2 * cos + y * sin, y * cos - x2 * sin))
            for x1, x2 in _less(inside, holes.get(number, ()))
            if x2 - x1 > step * _SPECK
        ]
    return found


def _spans(
    outlines: Sequence[Outline], step: float, lines: range | None = None
) -> dict[int, list[tuple[float, float]]]:
    """Where level lines (all, or these) run inside outlines, left to right, by number of line.

    Each side finds the lines that cross it, so that no line looks through all sides.
    """
    crossed: dict[int, list[float]] = {}
    for outline in filter(None, outlines):
        x1, y1 = outline[-1]
        begin = math.ceil(y1 / step)
        for x2, y2 in outline:
            end = math.ceil(y2 / step)
            if begin != end:
                passed = range(min(begin, end), max(begin, end))
                if lines is not None:
                    passed = range(max(passed.start, lines.start), min(passed.stop, lines.stop))
                for number in passed:
                    x = x1 + (x2 - x1) * (number * step - y1) / (y2 - y1)
                    crossed.setdefault(number, []).append(x)
            x1, y1, begin = x2, y2, end
    by_line = ((number, sorted(found)) for number, found in crossed.items())
    return {number: list(zip(xs[::2], xs[1::2], strict=True)) for number, xs in by_line}


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
