"""Woven band: flat or shaped work; its stitch says what it measures, the run takes its length.

Its first and last row are edges that carry: the hole of each edge bead is an eye.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wellstrung.derived.declared import GEOMETRY, count, formula, product, same_as
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making
from wellstrung_schemas import fragment


def _last_row(part: Part) -> int:
    """Beads (or units) in the last row: counting."""
    return (flat.counts_of(part) or (flat.across_of(part),))[-1]


def bead_wall(outside: float, hole: float) -> float:
    """Wall of a bead beside its hole, mm: half of what the hole leaves (geometry).

    >>> round(bead_wall(outside=2.1, hole=0.8), 2)
    0.65
    """
    return (outside - hole) / 2


def _edge_bead(what: str) -> Formula:
    """A size of the edge bead: of a mix, of that with the smallest hole, which fills first."""

    def size(part: Part, ask: Quantities) -> Quantity:
        mixed = [bead for bead, _ in making.beads_of(part)]
        return ask.of(min(mixed, key=lambda bead: ask.of(bead, "hole").middle), what)

    return size


def _as_woven(part: Part, ask: Quantities) -> Quantity:
    """How wide it is without picots along its long edges."""
    woven = ask.offers(part, "woven.width")
    return ask.of(part, "woven.width" if woven else "width")


def spaced_over_width(columns: Callable[[Part], float]) -> Formula:
    """From bead to bead, mm, along an edge as wide as the part, which has so many beads."""
    return formula(
        "from bead to bead",
        "mm",
        lambda width, columns: width / columns,
        width=_as_woven,
        columns=count("columns", columns),
        source=GEOMETRY,
    )


_EYE: dict[str, Formula] = {
    "hole": _edge_bead("hole"),
    "wire": formula(
        "wall of an edge bead",
        "mm",
        bead_wall,
        outside=_edge_bead("outside"),
        hole=_edge_bead("hole"),
        source=GEOMETRY,
    ),
    "through": _edge_bead("length"),  # a bead is as thick to go through as it is long
}


def edge_sizes(edges: Iterable[str], spacing: Formula) -> dict[str, Formula]:
    """The sizes of the eyes along woven edges: the holes of their beads, and how far apart."""
    sizes = {**_EYE, "spacing": spacing}
    return {f"{edge}.{what}": size for edge in edges for what, size in sizes.items()}


#: the edges that carry, by the words an author writes
_EDGES = {
    "first edge": EyeField(
        several=True, counted=flat.across_of, counted_by=("across", "each_row"), at_start=True
    ),
    "last edge": EyeField(several=True, counted=_last_row, counted_by=("across", "each_row")),
}
#: its long edges, as it lies in the run; other words are common practice, no source
_SIDES = {
    "bottom edge": EyeField(
        several=True, along=True, called=("long edge", "side edge", "lower edge", "bottom")
    ),
    "top edge": EyeField(several=True, along=True, called=("other long edge", "upper edge", "top")),
}


def _rows_to_a_bead(part: Part) -> int:
    """Of how many rows one ends at each long edge."""
    return part.stitch.side_every if part.stitch is not None else 1


_EVERY = count("rows to a bead of the edge", _rows_to_a_bead)
_ALONG_SIDE = product("from bead to bead", "mm", "rise", _EVERY, source="counting")
_BEADS_ALONG = formula(
    "beads along a long edge",
    "beads",
    lambda rows, every: rows / every,
    rows="rows",
    every=_EVERY,
    source="counting",
)

WOVEN_BAND = Kind(
    "woven band",
    fragment("woven band"),
    Role.BAND,
    traits=WOVEN,
    eyes={**_EDGES, **_SIDES},
    quantities={
        "outside": same_as("thickness"),  # what it stands off the body
        "along": same_as("length"),
        **edge_sizes(_EDGES, spaced_over_width(flat.widest_of)),
        **edge_sizes(_SIDES, _ALONG_SIDE),
        "edge_beads": _BEADS_ALONG,
    },
    look=Look("woven", label=(("width", "wide"),)),
)
