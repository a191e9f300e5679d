"""A strand that hangs between two ends on one level, longer than they are apart.

A parabola, near enough to how a strand hangs; its depth is found by halving.
"""

from __future__ import annotations

import math
from itertools import pairwise

from wellstrung.drawing.canvas import Spot

#: how many stretches a sagging strand is drawn in
_STRETCHES = 100

#: a point of a curve: how far along it, and where on the page
CurvePoint = tuple[float, float, float]


def sagging(start: float, chord: float, length: float, lead: float = 0.0) -> list[CurvePoint]:
    """A curve of a length whose ends lie `chord` apart, mm; it leads in and out straight so far.

    >>> curve = sagging(0.0, 100.0, 110.0)
    >>> round(curve[-1][0], 3), round(max(y for _, _, y in curve), 1)
    (110.0, 20.2)
    >>> [round(one, 1) for one in sagging(0.0, 100.0, 110.0, lead=8.0)[1]]
    [8.0, 8.0, 0.0]
    """
    if 0.0 < lead < chord / 4:
        hung = sagging(start + lead, chord - 2 * lead, length - 2 * lead)
        between = [(along + lead, x, y) for along, x, y in hung]
        return [(0.0, start, 0.0), *between, (between[-1][0] + lead, start + chord, 0.0)]
    low, high = 0.0, length
    for _ in range(50):
        depth = (low + high) / 2
        too_deep = _parabola(start, chord, depth)[-1][0] > length
        low, high = (low, depth) if too_deep else (depth, high)
    return _parabola(start, chord, low)


def _parabola(start: float, chord: float, depth: float) -> list[CurvePoint]:
    shares = [n / _STRETCHES for n in range(_STRETCHES + 1)]
    points = [(start + chord * share, 4 * depth * share * (1 - share)) for share in shares]
    curve: list[CurvePoint] = [(0.0, *points[0])]
    for before, after in pairwise(points):
        curve.append((curve[-1][0] + math.dist(before, after), *after))
    return curve


def point_on(curve: list[CurvePoint], along: float) -> Spot:
    """The point of a curve at a length along it; its end where that is longer than the curve."""
    for (s0, x0, y0), (s1, x1, y1) in pairwise(curve):
        if along <= s1:
            share = (along - s0) / (s1 - s0) if s1 > s0 else 0.0
            return x0 + share * (x1 - x0), y0 + share * (y1 - y0)
    return curve[-1][1:]
