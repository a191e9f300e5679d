"""Beadwork that closes over a core, a ball or a tube, with a hole left at both ends.

Sizes in mm. The beads lie on the core, so that their middles are half a bead outside it; the last
round of either end lies round the hole. All of it is geometry,
worked out for this project; no published figure.
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import atan, most, pi, sqrt


def _reach(outside: float, bead: float, hole: float) -> float:
    """Half of the way along the hole between the middles of the last rounds of a ball."""
    return sqrt(most(0, (outside + bead) ** 2 - (hole + bead) ** 2)) / 2


def ball_way(outside: float, bead: float, hole: float) -> float:
    """From hole to hole along the beads of a ball, mm: an arc; geometry of this project.

    >>> round(ball_way(outside=10.0, bead=2.0, hole=0.0), 2)
    16.84
    """
    return (outside + bead) * atan(2 * _reach(outside, bead, hole) / (hole + bead))


def ball_area(outside: float, bead: float, hole: float) -> float:
    """Area that the beads of a ball cover, mm2: a zone of a sphere; geometry of this project.

    >>> round(ball_area(outside=10.0, bead=2.0, hole=0.0), 1)
    446.1
    """
    return 2 * pi * (outside + bead) * _reach(outside, bead, hole)


def ball_length(outside: float, bead: float, hole: float) -> float:
    """Along the hole of a covered ball, mm; geometry of this project.

    >>> round(ball_length(outside=10.0, bead=2.0, hole=2.0), 2)
    13.31
    """
    return 2 * _reach(outside, bead, hole) + bead


def tube_way(outside: float, length: float, bead: float, hole: float) -> float:
    """From hole to hole along the beads of a tube, mm: over both ends; geometry of this project.

    >>> round(tube_way(outside=8.0, length=20.0, bead=2.0, hole=2.0), 2)
    27.14
    """
    return length + pi * bead / 2 + most(0, outside - hole - bead)


def tube_area(outside: float, length: float, bead: float, hole: float) -> float:
    """Area that the beads of a tube cover, mm2: side, rims and ends; geometry of this project.

    >>> round(tube_area(outside=8.0, length=20.0, bead=2.0, hole=2.0), 1)
    795.2
    """
    side = pi * (outside + bead) * length
    rims = pi * bead * (outside * pi / 2 + bead)
    return side + rims + pi / 2 * most(0, outside**2 - (hole + bead) ** 2)


def tube_length(length: float, bead: float) -> float:
    """Along the hole of a covered tube, mm: a bead at either end; geometry of this project.

    >>> tube_length(length=20.0, bead=2.0)
    24.0
    """
    return length + 2 * bead


def narrowed(straight: float, area: float, around: float, way: float) -> float:
    """Beads of work that narrows, from those of a straight tube as long: by the area covered.

    Geometry of this project; no published figure.

    >>> narrowed(straight=200.0, area=400.0, around=30.0, way=16.0) < 200
    True
    """
    return straight * area / (around * way)
