"""Pouch: a tube woven in the round, laid flat and closed along its bottom; its edges carry.

Its stitch says what the tube measures; laid flat, each face is half the way round. A pouch folded
of a flat band and sewn up at its sides is a `woven band` with a step that sews it.
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi
from wellstrung.kinds.band import edge_sizes, spaced_over_width
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
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


def _width(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.width",
        "mm",
        laid_flat,
        outside=ask.of(part, "outside"),
        wall=making.bead(part, ask, "outside"),
        source=making.GEOMETRY,
    )


def _width_inside(part: Part, ask: Quantities) -> Quantity:
    """What lies flat in it may be as wide as this: half the way round inside."""
    return derived(
        f"{part.name}.width inside",
        "mm",
        lambda width, wall: width - 2 * wall,
        width=ask.of(part, "width"),
        wall=making.bead(part, ask, "outside"),
        source=making.GEOMETRY,
    )


def _thickness(part: Part, ask: Quantities) -> Quantity:
    """Empty and laid flat it is two walls thick."""
    return derived(
        f"{part.name}.thickness",
        "mm",
        lambda wall: 2 * wall,
        wall=making.bead(part, ask, "outside"),
        source=making.GEOMETRY,
    )


def _along(part: Part, ask: Quantities) -> Quantity:
    """Between two ends of a strap that are sewn to its corners it adds its width."""
    return ask.of(part, "width")


def _between_corners(part: Part, ask: Quantities) -> Quantity:
    """The two ends of the opening are its width apart."""
    return ask.of(part, "width")


_EDGES = {
    "bottom edge": EyeField(several=True, counted=columns_of_face, counted_by="around"),
    "top edge": EyeField(several=True, counted=making.around_of, counted_by="around"),
    "corners": EyeField(several=True, counted=_corners, counted_by="around"),
}

POUCH = Kind(
    "pouch",
    fragment("pouch"),
    Role.WOVEN,
    traits=WOVEN,
    eyes=_EDGES,
    quantities={
        "width": making.measurable("width", _width),
        "width_inside": _width_inside,
        "thickness": _thickness,
        "along": _along,
        **edge_sizes(_EDGES, spaced_over_width(columns_of_face)),
        "corners.spacing": _between_corners,
    },
)
