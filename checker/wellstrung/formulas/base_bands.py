"""The band that a bezel's rounds grow from: woven flat, joined into a ring round the stone.

Of right-angle weave one unit carries one bead of each round, of ladder and square stitch two beads
do: a round of peyote takes every second. Lengths in mm. All of it is counting and geometry, worked
out for this project; no published figure.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from wellstrung.formulas import thread
from wellstrung.formulas.arithmetic import sqrt

#: right-angle weave as its beads touch, and a little: as flat right-angle weave is usually drawn
_USUAL = 1.02


def unit(length: float, outside: float) -> float:
    """The side of a unit of right-angle weave, drawn close: ovals that touch at its corners.

    Two ovals of length l and outside d, one on each side of a corner, touch when their middles lie
    as far apart as the halves of a square of side sqrt(l^2 + d^2). Geometry of this project.

    >>> round(unit(1.45, 2.1), 2)
    2.55
    """
    return sqrt(length**2 + outside**2)


def column_of_units(length: float, outside: float) -> float:
    """What one bead of the ring takes up on a band of right-angle weave: half of a unit.

    Geometry of this project.

    >>> round(column_of_units(1.45, 2.1), 2)
    1.28
    """
    return unit(length, outside) / 2


def units_tall(length: float, outside: float, rows: float) -> float:
    """What rows of right-angle weave add between two rounds: from edge bead to edge bead.

    Half a bead more, since a round lies half a bead beyond its neighbour. Geometry of this project.

    >>> round(units_tall(1.45, 2.1, rows=1), 2)
    3.65
    """
    return rows * unit(length, outside) * _USUAL + outside / 2


def beads_of_units(around: float, rows: float) -> float:
    """Beads of a ring of right-angle weave: a side and a bottom for each unit, and the top edge.

    Counting.

    >>> beads_of_units(around=36, rows=1)
    54.0
    """
    return around / 2 * (2 * rows + 1)


def columns_tall(length: float, outside: float, rows: float) -> float:
    """What rows of ladder or square stitch add between two rounds; geometry of this project.

    >>> round(columns_tall(1.45, 2.1, rows=2), 2)
    3.95
    """
    return rows * length + outside / 2


def beads_of_columns(around: float, rows: float) -> float:
    """Beads of a ring of ladder or square stitch: counting.

    >>> beads_of_columns(around=36, rows=1)
    36
    """
    return around * rows


def thread_of_units(length: float, outside: float, rows: float) -> float:
    """Thread that one bead of the ring takes in a band of right-angle weave: six passes a unit.

    Counted passes, worked out for this project.

    >>> round(thread_of_units(1.45, 2.1, rows=1), 2)
    5.7
    """
    return 3 * rows * (length + thread.corner(length, unit(length, outside) * _USUAL))


class BaseBand(NamedTuple):
    """A base by its stitch: what a bead of the ring takes up, its height, beads and thread.

    The column takes the sizes that stand beside it, the thread is that of one bead of the ring.
    """

    column: tuple[Callable[..., float], tuple[str, ...]]
    tall: Callable[..., float]
    beads: Callable[..., float]
    thread: Callable[[float, float, float], float]


#: beads on end side by side
_ON_END = (lambda outside: outside, ("outside",))
#: the stitches a base is woven in; a ring of thread through each and its neighbour, or that below
BASE_BANDS = {
    "right-angle weave": BaseBand(
        (column_of_units, ("length", "outside")), units_tall, beads_of_units, thread_of_units
    ),
    "ladder": BaseBand(
        _ON_END,
        columns_tall,
        beads_of_columns,
        lambda length, outside, rows: rows * thread.ladder(length, outside, rung=rows),
    ),
    "square": BaseBand(
        _ON_END,
        columns_tall,
        beads_of_columns,
        lambda length, outside, rows: rows * thread.square(length, outside),
    ),
}
