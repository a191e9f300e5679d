"""Jump rings: sizes, and the hole that a curved wire needs. Sizes in mm."""

from __future__ import annotations

import math


def inside_of(outside: float, wire: float) -> float:
    """Inside diameter of a ring: outside = inside + 2 x wire (trade table `jump_rings`).

    >>> inside_of(outside=5.0, wire=0.8)
    3.4
    """
    return outside - 2 * wire


def outside_of(inside: float, wire: float) -> float:
    """Outside diameter of a ring: inside + 2 x wire (trade table `jump_rings`).

    >>> outside_of(inside=3.4, wire=0.8)
    5.0
    """
    return inside + 2 * wire


def hole_needed(wire: float, inside: float, through: float) -> float | None:
    """The straight hole that a ring's wire needs to go round an eye `through` thick.

    The wire bends away from the hole's middle by the sagitta of the ring's inner circle over the
    thickness: hole >= wire + r - sqrt(r^2 - through^2 / 4), r = inside / 2. None where the eye is
    thicker than the ring is wide inside, so that it cannot go round at all. Geometry, worked out
    for this project.

    >>> round(hole_needed(wire=0.8, inside=3.4, through=1.2), 3)
    0.909
    >>> hole_needed(wire=0.8, inside=3.4, through=4.0) is None
    True
    """
    if through > inside:
        return None
    radius = inside / 2
    return wire + radius - math.sqrt(radius**2 - through**2 / 4)
