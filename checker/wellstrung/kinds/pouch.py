"""Pouch: a tube woven in the round, laid flat and closed along its bottom; its edges carry.

Its stitch says what the tube measures; laid flat, each face is half the way round. A pouch folded
of a flat band and sewn up at its sides is a `woven band` with a step that sews it.
"""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, formula, measurable, same_as
from wellstrung.formulas.arithmetic import pi
from wellstrung.kinds.band import edge_sizes, spaced_over_width
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def laid_flat(outside: float, wall: float) -> float:
    """Width over all, mm, of a tube laid flat: half the way round its bore, a wall at each fold.

    `outside` is its outside while it is round. Geometry, worked out for this project; no published
    figure.

    >>> round(laid_flat(outside=24.0, wall=2.0), 1)
    35.4
    """
    return pi * (outside - 2 * wall) / 2 + 2 * wall


def columns_of_face(part: Part) -> int:
    """Columns of one face, half of those around: as many beads lie along the closed bottom.

    The two faces close bead into bead like the teeth of a zipper (`Tubular Peyote Stitch`, excerpt
    seen), so that the bottom is a single row.
    """
    return making.around_of(part) // 2


def _corners(part: Part) -> int:
    """The two ends of the opening."""
    return 2


_WALL = making.bead("outside")
_EDGES = {
    "bottom edge": EyeField(several=True, counted=columns_of_face, counted_by=("around",)),
    "top edge": EyeField(
        several=True, counted=making.around_of, counted_by=("around",), at_start=True
    ),
    "corners": EyeField(several=True, counted=_corners, counted_by=("around",)),
}

POUCH = Kind(
    "pouch",
    fragment("pouch"),
    Role.WOVEN,
    traits=WOVEN,
    eyes=_EDGES,
    quantities={
        "width": measurable(
            "width",
            formula("width", "mm", laid_flat, outside="outside", wall=_WALL, source=GEOMETRY),
        ),
        # what lies flat in it may be as wide as half the way round inside
        "width_inside": formula(
            "width inside",
            "mm",
            lambda width, wall: width - 2 * wall,
            width="width",
            wall=_WALL,
            source=GEOMETRY,
        ),
        # empty and laid flat it is two walls thick
        "thickness": formula("thickness", "mm", lambda wall: 2 * wall, wall=_WALL, source=GEOMETRY),
        "along": same_as("width"),  # between two ends of a strap that are sewn to its corners
        **edge_sizes(_EDGES, spaced_over_width(columns_of_face)),
        "corners.spacing": same_as("width"),
    },
    look=Look("pouch", label=(("width", "wide"),)),
)
