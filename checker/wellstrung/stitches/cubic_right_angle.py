"""Cubic right-angle weave: a rope of cubes, a bead on each edge, worked on a ring of four.

A round is a cube: four beads upright, four across them. The rope is square; a round bore must take
its corners, while on the body it lies on a face. All of it is geometry, worked out for this
project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, formula, measurable
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most, sqrt
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.stitches import making
from wellstrung.stitches.right_angle import SQUARE

_SIDES = 4


def outside(pitch: float, bead_outside: float) -> float:
    """Outside of a rope of cubes, mm, across its corners, which is what a cap must take.

    Its four edges are beads that stand `pitch` apart (geometry of this project).

    >>> round(outside(2.6, 2.1), 2)
    5.78
    """
    return pitch * sqrt(2) + bead_outside


def thickness(pitch: float, bead_outside: float) -> float:
    """From face to face, mm: how thick it lies, and what calipers read.

    Geometry, worked out for this project.

    >>> thickness(2.6, 2.1)
    4.7
    """
    return pitch + bead_outside


def inside(pitch: float, bead_outside: float) -> float:
    """What is open between the faces, mm; 0 where the beads fill it.

    Geometry, worked out for this project.

    >>> inside(2.6, 2.1), inside(2.0, 2.1)
    (0.5, 0)
    """
    return most(0, pitch - bead_outside)


def beads(rounds: float) -> float:
    """Beads of a rope of cubes: a ring of four, then four upright and four across for each cube.

    Eight a cube is printed as 3-2-2-1, copy seen.

    >>> beads(10)
    84
    """
    return _SIDES + 2 * _SIDES * rounds


def thread_per_bead(bead_length: float, side: float) -> float:
    """Thread for one bead, mm: 25 passes for the eight beads of a cube, a corner after each.

    Round each wall and on to the next, and once round the four beads on top, to where the next
    cube begins, +/- 12 %. Counted passes, walked through a model.

    >>> round(thread_per_bead(1.45, side=2.6), 2)
    5.93
    """
    return 25 / 8 * (bead_length + thread_paths.corner(bead_length, side))


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """A cube starts with a ring of four and adds eight beads."""
    for field, right in (("around", _SIDES), ("each_round", 2 * _SIDES)):
        if part.has(field) and part.count(field) != right:
            yield (
                f"`{part.name}` has `{field}: {part.count(field)}`, and cubic right-angle weave"
                f" starts with a ring of {_SIDES} and adds {2 * _SIDES} for each cube: write"
                f" `{field}: {right}`",
                part.place_of(field),
            )


def _by_unit(what: str, function: Callable[..., float]) -> Formula:
    """A size of the rope by the side of its cube and the outside of its bead."""
    size = formula(
        what, "mm", function, pitch=SQUARE, bead_outside=making.bead("outside"), source=GEOMETRY
    )
    return measurable(what, size)


def _one_side(part: Part) -> Face:
    """A column of squares: the rope lies on a face."""
    return Face(1)


CUBIC = Stitch(
    name="cubic right-angle weave",
    quantities={
        "outside": _by_unit("outside", outside),
        "thickness": _by_unit("thickness", thickness),
        "inside": _by_unit("inside", inside),
        **making.growth(SQUARE),
        "beads": formula(
            "beads",
            "",
            beads,
            rounds="rounds",
            source="counting: a ring of four, then eight a cube",
        ),
        "mass": making.mass,
        "thread": formula(
            "thread",
            "mm",
            lambda beads, bead_length, side, share: (
                beads * thread_per_bead(bead_length, side) * share
            ),
            beads="beads",
            bead_length=making.bead("length"),
            side=SQUARE,
            share=making.thread_share(thread_paths.WALKED),
        ),
    },
    refuses=refuses,
    held_against="eight beads a cube, printed as 3-2-2-1: `CRAW`, copy seen; no published size:"
    " 5 mm square of 11/0 is remembered and 4.7 computed, but cubes gape by hand, so measure ten",
    look=Weave(
        Pattern.SQUARES,
        _one_side,
        "rounds",
        deep=True,
        thread=Thread.ROUND,
        breadth="thickness",
    ),
)
