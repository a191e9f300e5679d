"""Hexagon weave, flat: rings of six beads that share their sides, each row half a unit aside.

Beads lie on the sides of a comb; three meet at every corner, as ovals that touch. A row is a row of
units side by side. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, measurable
from wellstrung.formulas.arithmetic import sqrt
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making, right_angle

#: beads that thread passes for a unit, a corner after each: its six, and three to the next
_PASSES = 9
_STEPS = 3


def side(bead_length: float, bead_outside: float, tension: float) -> float:
    """The side of a unit, mm: ovals on two sides of a corner of 120 degrees touch.

    Geometry, worked out for this project.

    >>> round(side(1.45, 2.1, 1.02), 2)
    1.93
    """
    return sqrt(bead_length**2 + bead_outside**2 / 3) * tension


def width(units: float, side: float, bead_outside: float) -> float:
    """Width, mm: units side by side, and half a bead beyond at each edge: plain geometry.

    >>> round(width(3.5, 1.93, 2.1), 1)
    13.8
    """
    return units * sqrt(3) * side + bead_outside


def edge(bead_length: float, bead_outside: float) -> float:
    """How far the beads of the first and last row reach beyond their middles, mm: ovals aslant.

    Geometry, worked out for this project.

    >>> round(edge(1.45, 2.1), 2)
    1.96
    """
    return sqrt(bead_length**2 + 3 * bead_outside**2) / 2


def beads(rows: float, across: float) -> float:
    """Beads of a comb: one for each side of each unit, shared sides once (counting).

    >>> beads(1, 1), beads(1, 3), beads(2, 1), beads(2, 3)
    (6, 16, 11, 27)
    """
    return 5 * across + 1 + (rows - 1) * (3 * across + 2)


def _refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Straight edges, one unit or more in every row."""
    yield from flat.refuses(part, "hexagon weave", uses=())


def _units(part: Part) -> float:
    """Units that its width holds: every second row lies half a unit aside."""
    alone = part.has("rows") and flat.rows_of(part) == 1
    return flat.across_of(part) + (0 if alone else 0.5)


_BEAD = {"bead_length": making.bead("length"), "bead_outside": making.bead("outside")}

HEXAGON = Stitch(
    name="hexagon weave",
    makes=flat.BAND,
    columns="units",
    quantities={
        "side": formula("side", "mm", side, _BEAD, tension=right_angle.TENSION, source=GEOMETRY),
        **flat.band(
            measurable(
                "width",
                formula(
                    "width",
                    "mm",
                    width,
                    units=count("units", _units),
                    side="side",
                    bead_outside=making.bead("outside"),
                    source=GEOMETRY,
                ),
            ),
            flat.growth(
                formula("rise", "mm", lambda side: 1.5 * side, side="side", source=GEOMETRY),
                formula("edge", "mm", edge, _BEAD, source=GEOMETRY),
                steps_less=0,
            ),
            right_angle.thread_by_units(
                lambda part: _PASSES,
                lambda part: _PASSES,
                lambda part: _STEPS if flat.widest_of(part) > 1 else 0,
                side="side",
            ),
            flat.beads(beads, across=flat.across_of),
        ),
    },
    refuses=_refuses,
    passes=3,
    how="Each unit is a ring of six beads that shares sides with those beside it and below; three"
    " beads meet at every corner, and no thread crosses a unit",
    held_against="units of six that share a side: `Basic Hexagon Stitch Beaded Earring Pattern`,"
    " copy seen; no published width, so measure ten units",
    look=Weave(Pattern.COMBS, lambda part: Face(flat.across_of(part), loop=3), "rows"),
)
