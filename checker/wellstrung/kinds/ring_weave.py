"""Ring weave: a chain or band woven of jump rings, by a linear rule for each weave.

A unit of rings goes so many of their insides and wires along the chain (trade table `ring_weaves`,
each against printed rings an inch); a band of four-in-one has rows of them side by side.
"""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived.declared import GEOMETRY, by_length, formula, from_table, size
from wellstrung.formulas.arithmetic import most, sqrt
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def of_ring(what: str) -> Formula:
    """A quantity of the ring that it is woven of."""

    def asked(part: Part, ask: Quantities) -> Quantity:
        ring = part.part("rings")
        if ring is None:
            raise part.missing("rings")
        return ask.of(ring, what)

    return asked


def of_weave(column: str) -> Formula:
    """A cell of the weave's row in the trade tables."""

    def cell(part: Part, ask: Quantities) -> Quantity:
        row = tables.load("ring_weaves").row(part.text("type"))
        cure = f"weave 5 cm of `{part.name}`, pull it taut, and write its length as `measured`"
        cause = Cause(f"how {row.name} lies", f"`{part.name}`", cure)
        return from_table(f"{row.name} {column}", "ring_weaves", row, column, cause)

    return cell


def pitch_of(inside: float, wire: float, insides: float, wires: float) -> float:
    """How far a unit of rings goes along its chain, mm; fitted to printed rings an inch.

    >>> round(6 * 25.4 / pitch_of(2.25, 0.644, 2.0, -1.0), 1)  # Byzantine, 40 printed
    39.5
    >>> round(5 * 25.4 / pitch_of(4.07, 1.15, 1.0, 0.55), 1)  # five rows of four-in-one, 28 printed
    27.0
    """
    return insides * inside + wires * wire


def row_apart(inside: float, pitch: float) -> float:
    """How far apart the rows of four-in-one lie, mm, where linked rings are an inside apart.

    Geometry of this project; no published figure.

    >>> round(row_apart(4.0, 4.6), 2)
    3.27
    """
    return sqrt(most(0.0, inside**2 - (pitch / 2) ** 2))


def rows_of(part: Part) -> int:
    """How many rows lie side by side: three of four-in-one where nothing else is written."""
    return part.count("rows", default=3) if part.type == "four-in-one" else 1


def _rows(part: Part, ask: Quantities) -> Quantity:
    return exact(f"{part.name}.rows", rows_of(part))


def _rings(part: Part, ask: Quantities) -> Quantity:
    """As many as the plan counts, or as its length takes."""
    if part.has("count"):
        return exact(f"{part.name}.rings", part.count("count"))
    return _FOR_LENGTH(part, ask)


_FOR_LENGTH = formula(
    "rings",
    "",
    lambda length, pitch, unit, rows: length / pitch * unit * rows,
    length=by_length("length"),
    pitch="pitch",
    unit=of_weave("rings"),
    rows=_rows,
    source="units of rings in its length: trade table `ring_weaves`",
)
_OF_COUNT = formula(
    "along",
    "mm",
    lambda rings, pitch, unit, rows: rings / unit / rows * pitch,
    rings="rings",
    pitch="pitch",
    unit=of_weave("rings"),
    rows=_rows,
    source="units of rings, one after another: trade table `ring_weaves`",
)
_AS_ASKED = by_length("length", allowance="woven length")


def _along(part: Part, ask: Quantities) -> Quantity:
    asked = part.has("length") or part.has("measured", "length")
    return (_AS_ASKED if asked else _OF_COUNT)(part, ask)


def _width(part: Part, ask: Quantities) -> Quantity:
    return (size("width") if part.has("measured", "width") else _ACROSS)(part, ask)


_ACROSS = formula(
    "width",
    "mm",
    lambda rows, apart, inside, wire: (rows - 1) * apart + inside + 2 * wire,
    rows=_rows,
    apart=formula(
        "from row to row", "mm", row_apart, inside=of_ring("inside"), pitch="pitch", source=GEOMETRY
    ),
    inside=of_ring("inside"),
    wire=of_ring("wire"),
    source=GEOMETRY,
)

RING_WEAVE = Kind(
    "ring weave",
    fragment("ring weave"),
    Role.EYED,
    eyes={"first ring": EyeField(), "last ring": EyeField()},
    quantities={
        **{
            f"{end} ring.{what}": of_ring("inside" if what == "hole" else "wire")
            for end in ("first", "last")
            for what in ("hole", "wire", "through")
        },
        "pitch": formula(
            "pitch",
            "mm",
            pitch_of,
            inside=of_ring("inside"),
            wire=of_ring("wire"),
            insides=of_weave("insides"),
            wires=of_weave("wires"),
            source="trade table `ring_weaves`",
        ),
        "rings": _rings,
        "along": _along,
        "width": _width,
        "thickness": formula(
            "thickness",
            "mm",
            lambda inside, wire, share: share * (inside + 2 * wire),
            inside=of_ring("inside"),
            wire=of_ring("wire"),
            share=of_weave("thick"),
            source="trade table `ring_weaves`: from memory",
        ),
        "mass": formula(
            "mass", "g", lambda rings, each: rings * each, rings="rings", each=of_ring("mass")
        ),
    },
    traits=Traits(made_by="weave", bought=False, opens=True, two_ends=True, of_rings="rings"),
    look=Look("ring weave", label=(("along", "long"),)),
)
