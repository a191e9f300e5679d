"""Woven band: flat or shaped work; its stitch says what it measures, the run takes its length.

Its first and last row are edges that carry: the hole of each edge bead is an eye.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wellstrung.kinds.plain import WOVEN
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Quantities, Role
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


def _outside(part: Part, ask: Quantities) -> Quantity:
    """What it stands off the body is its thickness; it is no round rope, so no cap takes it."""
    return ask.of(part, "thickness")


def in_last_row(across: int, rows: int, each_row: int) -> int:
    """Beads (or units) in the last row of a band whose rows grow by `each_row`: counting.

    >>> in_last_row(11, 11, -1), in_last_row(7, 30, 0)
    (1, 7)
    """
    return across + each_row * (rows - 1)


def _last_row(part: Part) -> int:
    change = flat.change_of(part)
    rows = part.count("rows") if change else 1
    return in_last_row(flat.across_of(part), rows, change)


def bead_wall(outside: float, hole: float) -> float:
    """Wall of a bead beside its hole, mm: half of what the hole leaves (geometry).

    >>> round(bead_wall(outside=2.1, hole=0.8), 2)
    0.65
    """
    return (outside - hole) / 2


def _edge_bead(part: Part, ask: Quantities, what: str) -> Quantity:
    """A size of the edge bead: of a mix, of that with the smallest hole, which fills first."""
    mixed = [bead for bead, _ in making.beads_of(part, ask)]
    return ask.of(min(mixed, key=lambda bead: ask.of(bead, "hole").middle), what)


def _hole(part: Part, ask: Quantities) -> Quantity:
    return _edge_bead(part, ask, "hole")


def _wall(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.wall of an edge bead",
        "mm",
        bead_wall,
        outside=_edge_bead(part, ask, "outside"),
        hole=_hole(part, ask),
        source=making.GEOMETRY,
    )


def _through(part: Part, ask: Quantities) -> Quantity:
    """How thick the eye is to go through: the bead along its hole."""
    return _edge_bead(part, ask, "length")


def spaced_over_width(columns: Callable[[Part], float]) -> Formula:
    """From bead to bead, mm, along an edge as wide as the part, which has so many beads."""

    def spacing(part: Part, ask: Quantities) -> Quantity:
        return derived(
            f"{part.name}.from bead to bead",
            "mm",
            lambda width, columns: width / columns,
            width=ask.of(part, "width"),
            columns=making.count(part, "columns", columns(part)),
            source=making.GEOMETRY,
        )

    return spacing


_EYE: dict[str, Formula] = {
    "hole": _hole,
    "wire": _wall,
    "through": _through,
}


def edge_sizes(edges: Iterable[str], spacing: Formula) -> dict[str, Formula]:
    """The sizes of the eyes along woven edges: the holes of their beads, and how far apart."""
    sizes = {**_EYE, "spacing": spacing}
    return {f"{edge}.{what}": size for edge in edges for what, size in sizes.items()}


#: the edges that carry, by the words an author writes
_EDGES = {
    "first edge": EyeField(several=True, counted=flat.across_of, counted_by="across"),
    "last edge": EyeField(several=True, counted=_last_row, counted_by="across"),
}

WOVEN_BAND = Kind(
    "woven band",
    fragment("woven band"),
    Role.BAND,
    traits=WOVEN,
    eyes=_EDGES,
    quantities={
        "outside": _outside,
        "along": _along,
        **edge_sizes(_EDGES, spaced_over_width(flat.widest_of)),
    },
)
