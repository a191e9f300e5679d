"""Outlines of stones: the way round them and their area, and how both grow with rows outside.

Lengths in mm, areas in mm2. Of any outline without a hollow side the way round grows by 2 pi for
every millimetre further out (Steiner's formula, a theorem).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wellstrung.formulas.arithmetic import atan, most, pi, sqrt


def round_perimeter(length: float, width: float) -> float:
    """The way round an ellipse, or a circle: the first formula published by Ramanujan in 1914.

    Within 0.01 % where the ellipse is up to three times as long as it is wide.

    >>> round(round_perimeter(40.0, 30.0), 2), round(round_perimeter(10.0, 10.0), 2)
    (110.52, 31.42)
    """
    a, b = length / 2, width / 2
    return pi * (3 * (a + b) - sqrt((3 * a + b) * (a + 3 * b)))


def square_perimeter(length: float, width: float, corner: float) -> float:
    """The way round a square or an oblong whose corners are rounded: plain geometry.

    >>> round(square_perimeter(20.0, 20.0, corner=2.0), 2)
    76.57
    """
    return 2 * (length + width) - 8 * corner + 2 * pi * corner


def pear_perimeter(length: float, width: float) -> float:
    """The way round a drop: a circle as wide as it is, and two lines from its tip that touch it.

    Geometry, worked out for this project: real pears swell a little beyond the lines.

    >>> round(pear_perimeter(30.0, 20.0), 2), round(pear_perimeter(20.0, 20.0), 2)
    (76.53, 62.83)
    """
    r = width / 2
    side = sqrt(most(0, (length - r) ** 2 - r**2))
    return 2 * side + 2 * r * (pi - atan(side / r))


def round_area(length: float, width: float) -> float:
    """Area of an ellipse or a circle: geometry.

    >>> round(round_area(10.0, 10.0), 2)
    78.54
    """
    return pi / 4 * length * width


def square_area(length: float, width: float, corner: float) -> float:
    """Area of a square or an oblong with rounded corners: geometry.

    >>> round(square_area(20.0, 20.0, corner=2.0), 2)
    396.57
    """
    return length * width - (4 - pi) * corner**2


def pear_area(length: float, width: float) -> float:
    """Area of the drop of `pear_perimeter`: geometry.

    >>> round(pear_area(20.0, 20.0), 2)
    314.16
    """
    r = width / 2
    side = sqrt(most(0, (length - r) ** 2 - r**2))
    return r * side + r**2 * (pi - atan(side / r))


def outside_of(perimeter: float, away: float) -> float:
    """The way round so far outside an outline: Steiner's formula, plain geometry.

    >>> round(outside_of(31.4159, away=2.0), 2)
    43.98
    """
    return perimeter + 2 * pi * away


def area_outside(area: float, perimeter: float, away: float) -> float:
    """The area within so far outside an outline: Steiner's formula, plain geometry.

    >>> round(area_outside(78.54, 31.4159, away=2.0), 2)
    153.94
    """
    return area + perimeter * away + pi * away**2


#: the way round a stone and its area, by the word for its shape
PERIMETERS: Mapping[str, Callable[..., float]] = {
    "round": round_perimeter,
    "oval": round_perimeter,
    "square": square_perimeter,
    "pear": pear_perimeter,
}
AREAS: Mapping[str, Callable[..., float]] = {
    "round": round_area,
    "oval": round_area,
    "square": square_area,
    "pear": pear_area,
}
