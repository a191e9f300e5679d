"""Right-angle weave, flat: rings of four beads that share their sides.

Beads lie on the lines of a square net, one on each side of a square, so a unit is a square and the
pitch is its side. Beads round a corner are taken as ovals that touch; the hand draws them closer or
leaves room. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, hand
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most, sqrt
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making

#: Beads drawn closer than ovals would touch, since their ends are flat and the thread gives; as
#: they touch, and a little; and with room at the corners.
_TIGHT, _USUAL, _LOOSE = 0.95, 1.02, 1.10


def pitch(bead_length: float, bead_outside: float, tension: float) -> float:
    """The side of a unit, mm: from one line of beads to the next.

    Two ovals of length l and outside d, one on each side of a corner, touch when their middles lie
    as far apart as the halves of a square of side sqrt(l^2 + d^2). Geometry of this project; good
    for beads from about half as long as wide to twice as long.

    >>> round(pitch(1.45, 2.1, 1.02), 2)
    2.6
    """
    return sqrt(bead_length**2 + bead_outside**2) * tension


def beads(rows: float, across: float, each_row: float) -> float:
    """Beads of a flat weave: one for each side of each unit, shared sides once (counting).

    >>> beads(1, 1, 0), beads(2, 3, 0), beads(2, 2, -1)
    (4.0, 17.0, 10.0)
    """
    units = flat.shaped(rows, across, each_row)
    grown = most(0, each_row) * (rows - 1)
    return 2 * units + rows + across + grown


def listed_beads(units: Sequence[int]) -> float:
    """The same where every row has its own count: two rows share the sides that both have.

    Counting.

    >>> listed_beads([3, 3]), listed_beads([2, 1]), listed_beads([1, 3, 2])
    (17, 10, 19)
    """
    upright = sum(count + 1 for count in units)
    return upright + units[0] + units[-1] + sum(map(max, pairwise(units)))


def first_row(across: float) -> float:
    """Beads of the first row: four, then three for each further unit.

    Counting.

    >>> first_row(5)
    16
    """
    return 3 * across + 1


def thread(beads: float, first: float, bead_length: float) -> float:
    """Thread, mm: beads of the first row are passed twice, later ones three times, with corners.

    Counted passes, worked out for this project, +/- 20 %.

    >>> round(thread(17, 10, 1.45), 2)
    75.85
    """
    later = (beads - first) * thread_paths.right_angle_weave_later(bead_length)
    return first * thread_paths.right_angle_weave_first(bead_length) + later


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """One unit or more in every row."""
    yield from flat.refuses(part, "right-angle weave")


#: the side of a unit, by the beads and the hand
UNIT = formula(
    "unit",
    "mm",
    pitch,
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    tension=hand(
        "thread tension",
        (_TIGHT, _USUAL, _LOOSE),
        cure="weave ten units of {part} and measure them",
    ),
    source=GEOMETRY,
)


def _lines(part: Part) -> float:
    """Lines of beads that the width holds: one more than units."""
    return flat.widest_of(part) + 1


_THREAD = formula(
    "thread",
    "mm",
    lambda beads, first, bead_length, share: thread(beads, first, bead_length) * share,
    beads="beads",
    first=count("first row", lambda part: first_row(flat.across_of(part))),
    bead_length=making.bead("length"),
    share=making.thread_share(),
)

RIGHT_ANGLE = Stitch(
    name="right-angle weave",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        flat.width(UNIT, "outside", _lines),
        flat.growth(UNIT, "outside", steps_less=0),
        _THREAD,
        flat.beads(beads, listed_beads, across=flat.across_of, each_row=flat.change_of),
    ),
    refuses=refuses,
    passes=3,
    held_against="no published figure: units to the inch are not printed where we could look, and"
    " how far the corners gape is a maker's own, so measure ten units",
    look=Weave(Pattern.SQUARES, flat.face, "rows", thread=Thread.ROUND),
)
