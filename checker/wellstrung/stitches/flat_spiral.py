"""Flat spiral: a core of beads, and at each core bead a loop of outer beads to its left and right.

The first stitch strings a few core beads and lays a loop on either side; each later one adds a core
bead and two loops, which overlap those before. Counting and geometry, worked out for this project,
on what a spiral rope of the same beads is.
"""

from __future__ import annotations

from wellstrung.derived.declared import (
    GEOMETRY,
    count,
    formula,
    hand,
    measurable,
    product,
    same_as,
)
from wellstrung.formulas.arithmetic import most, sqrt
from wellstrung.formulas.thread import WALKED
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.stitches import making, spiral_rope


def bow(loop: float, span: float) -> float:
    """How far the middle of a loop lies from the line between its ends, mm: a flat arc.

    sqrt(3 x span x (loop - span) / 8), 0 where the loop is no longer than what it spans; geometry.

    >>> round(bow(loop=9.0, span=6.0), 2), bow(loop=4.0, span=6.0)
    (2.6, 0.0)
    """
    return sqrt(3 * span * most(0, loop - span) / 8)


def width(core: float, outer: float, loop: float, span: float, lie: float = 1.0) -> float:
    """From edge to edge, mm: loops beside the core, or as far out as they bow, on both sides.

    `core` and `outer` are how thick the beads are. Geometry, worked out for this project.

    >>> width(core=3.0, outer=2.0, loop=8.0, span=8.0)
    7.0
    >>> round(width(core=3.0, outer=2.0, loop=12.0, span=8.0), 2)
    8.93
    """
    return lie * most(core + 2 * outer, 2 * bow(loop, span) + outer)


def thickness(core: float, outer: float, overlap: float) -> float:
    """How thick it lies, mm: its core, or loops that overlap, 1 to 2 beads deep.

    Geometry; how far they overlap is the stitch's own range.

    >>> thickness(core=3.0, outer=2.0, overlap=1.6)
    3.2
    """
    return most(core, outer * overlap)


def thread_for(
    stitches: float, at_start: float, core_length: float, core_outside: float, loop: float
) -> float:
    """Thread in the work, mm: each stitch strings a core bead, and goes twice out and up again.

    `loop` is the length of the beads of one outer loop. Counted passes and steps, walked through
    a model, +/- 12 %.

    >>> thread_for(stitches=2, at_start=4, core_length=1.5, core_outside=2.0, loop=6.5)
    65.5
    """
    span = at_start * core_length
    each = core_length + 2 * (most(loop, span) + core_outside + span)
    return stitches * each + (at_start - 1) * core_length


#: How close the loops lie beside the core: 12 % either way, as on a spiral rope; no print.
_LIE = (0.88, 1.0, 1.12)
#: How deep the loops of one side lie over each other, in beads: no print.
_OVERLAP = (1.0, 1.5, 2.0)
_SIDES = 2

_SPAN = product(
    "span of a loop", "mm", spiral_rope.core_bead("length"), spiral_rope.START, spiral_rope.SIT
)


def _beads_in_loops(part: Part) -> int:
    return _SIDES * spiral_rope.in_loop(part)


def _face(part: Part) -> Face:
    return Face(1, loop=spiral_rope.in_loop(part), core=spiral_rope.at_start(part))


_WIDTH: Formula = formula(
    "width",
    "mm",
    width,
    core=spiral_rope.core_bead("outside"),
    outer=spiral_rope.fattest_outer,
    loop=spiral_rope.loop,
    span=_SPAN,
    lie=hand("how close the loops lie", _LIE, cure=making.swatch("weave")),
    source=GEOMETRY,
)

FLAT_SPIRAL = Stitch(
    name="flat spiral",
    quantities={
        **spiral_rope.SPIRAL.quantities,
        "outside": measurable("outside", _WIDTH),
        "width": same_as("outside"),
        "thickness": formula(
            "thickness",
            "mm",
            thickness,
            core=spiral_rope.core_bead("outside"),
            outer=spiral_rope.fattest_outer,
            overlap=hand("how deep the loops overlap", _OVERLAP, cure=making.swatch("weave")),
            source=GEOMETRY,
        ),
        "outer_beads": product(
            "outer beads",
            "",
            "rounds",
            count("beads in two loops", _beads_in_loops),
            source="counting: a loop to the left and one to the right",
        ),
        "thread": spiral_rope.thread(thread_for, WALKED),
    },
    refuses=spiral_rope.refuses,
    held_against="no published figure of a width: print has loops on both sides of every core bead"
    " and 25 core beads of 6 mm for 7 in (`Emerald city flat spiral bracelet`, excerpt seen), which"
    " beads of its core alone would reach at 150 mm and with the 8/0 between them at 200",
    cored=True,
    passes=6,  # with three core beads at the start one of them takes seven: counting
    look=Weave(Pattern.WINGS, _face, "rounds"),
)
