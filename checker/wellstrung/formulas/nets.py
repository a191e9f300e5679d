"""Nets: meshes of rhombi, how far they are opened, how wide and long they are, and their beads.

A side is half a loop; a shared bead lies at every crossing. Sizes in mm, `opened` a share of the
widest that a mesh can be.
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import atan, cos, least, most, sin, sqrt

#: How much of a mesh the faces of its beads cover at most: closer than that no hole is left, and
#: the work is peyote. Judged by eye, no source.
FULL = 0.95


def side(
    loop: float,
    bead_length: float,
    bead_outside: float,
    shared_length: float,
    shared_outside: float,
    tension: float = 1.0,
) -> float:
    """From the middle of a shared bead to that of the next, along a leg, mm.

    A leg, half of what a loop has beside its shared bead, reaches from one shared bead to another,
    each as thick as an oval is at 45 degrees. Where that leaves the faces of the loop's beads less
    room than they need in a mesh laid square, thread shows between them.

    Geometry, worked out for this project.

    >>> round(side(5, 1.45, 2.1, 1.45, 2.1), 2), round(side(3, 1.45, 2.1, 1.45, 2.1), 2)
    (4.59, 3.14)
    """
    leg = (loop * bead_length - shared_length) / 2
    aslant = sqrt(2) * shared_length * shared_outside / sqrt(shared_length**2 + shared_outside**2)
    return most(leg + aslant, sqrt(loop * bead_length * bead_outside / FULL)) * tension


def closed(side: float, loop: float, bead_length: float, bead_outside: float) -> float:
    """How wide a mesh is, of its widest, where the faces of its beads leave it no narrower.

    A rhombus of side s whose sides lie t from its length is s^2 sin 2t large, and the faces of one
    loop fill `FULL` of it. `side` is drawn tight: a slack one has as much more room. Geometry,
    worked out for this project.

    >>> round(closed(4.59, 5, 1.45, 2.1), 2), round(closed(3.14, 3, 1.45, 2.1), 2)
    (0.42, 0.62)
    """
    filled = least(1.0, loop * bead_length * bead_outside / FULL / side**2)
    return sqrt((1 - sqrt(1 - filled**2)) / 2)


def opened(share: float, closed: float) -> float:
    """A share of the widest that the mesh can have: from closed to closed the other way.

    Geometry, worked out for this project.

    >>> opened(0.71, closed=0.42), opened(0.2, closed=0.42), round(opened(0.95, closed=0.42), 2)
    (0.71, 0.42, 0.91)
    """
    return most(closed, least(share, sqrt(1 - closed**2)))


def across_mesh(side: float, opened: float) -> float:
    """Half of how wide a mesh is, mm: geometry.

    >>> across_mesh(5.0, 0.6)
    3.0
    """
    return side * opened


def along_mesh(side: float, opened: float) -> float:
    """Half of how long a mesh is, mm: plain geometry, the other side of a right-angled triangle.

    >>> along_mesh(5.0, 0.6)
    4.0
    """
    return side * sqrt(1 - opened**2)


def width(across: float, half_mesh: float, bead_length: float) -> float:
    """Width, mm: two half meshes a loop, and half a bead beyond the shared bead at each edge.

    Geometry, worked out for this project.

    >>> width(4, 3.0, 1.5)
    25.5
    """
    return 2 * across * half_mesh + bead_length


def beads(rows: float, across: float, loop: float) -> float:
    """Beads of a flat net: its base, and each row's loops; every second row turns by a bead more.

    An odd number of rows has half a bead less.

    Counting.

    >>> beads(2, 4, 5)
    46.0
    """
    return across + 1 + rows * (across * loop + 0.5)


def beads_around(rounds: float, points: float, loop: float) -> float:
    """Beads of a net in the round: a shared bead for each point, and a loop a round.

    Counting; the first round is strung with it: 10 points of loops of 3 begin with a ring of 40, as
    in `Net stitch` (amulet pouch, copy seen).

    >>> beads_around(1, 10, 3)
    40
    """
    return points * (1 + rounds * loop)


def beads_over_ball(
    points: float,
    loop: float,
    side: float,
    opened: float,
    core: float,
    bead_length: float,
    bead_outside: float,
    way: float,
    area: float,
) -> float:
    """Beads of a net over a ball, from hole to hole along a `way`, over an `area`.

    Its points stay as many, so that its meshes are widest round the middle and draw together and
    grow longer towards the holes: rounds are the way over how long a half mesh is there (Simpson's
    rule). Where the meshes can close no further, smaller loops go on, and their faces cover what
    is left. Geometry, worked out for this project; no published figure.

    >>> round(beads_over_ball(12, 5, 4.82, 0.604, 20.0, 1.45, 2.1, 30.6, 1508.0))
    400
    """
    across = core + bead_outside
    shut, end = closed(side, loop, bead_length, bead_outside), way / across
    turn = least(end, atan(sqrt(most(0, (opened / shut) ** 2 - 1))))

    def long(angle: float) -> float:
        return 1 / sqrt(1 - (opened * cos(angle)) ** 2)

    rounds = across / side * turn / 6 * (long(0) + 4 * long(turn / 2) + long(turn))
    left = area * (1 - sin(turn) / sin(end))
    return beads_around(rounds, points, loop) + FULL * left / (bead_length * bead_outside)
