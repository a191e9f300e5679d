"""French wire (gimp): a fine coil that covers the line where it goes round the eye of a clasp."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived.declared import (
    GEOMETRY,
    allowed,
    by_length,
    constant,
    formula,
    from_table,
    size,
    written_or,
)
from wellstrung.formulas.arithmetic import most, pi
from wellstrung.model.looks import Look
from wellstrung.model.parts import Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

_TABLE = "french_wires"


def bent(wall: float, outside: float) -> float:
    """The coil that half a turn round the wall of an eye takes, mm: geometry of this project.

    >>> round(bent(wall=0.9, outside=0.9), 1)
    2.8
    """
    return pi / 2 * (wall + outside)


def reach(length: float, wall: float, outside: float) -> float:
    """From where the coil bears in the eye to the bead, mm: half a turn, and both sides straight.

    Geometry, worked out for this project; no published figure.

    >>> round(reach(length=9.5, wall=0.9, outside=0.9), 1)
    3.8
    """
    return wall / 2 + most(0, length - bent(wall, outside)) / 2


def _of_size(what: str) -> Formula:
    """As the plan says it, or by its size from the trade table; raises Missing without either."""

    def found(part: Part, ask: Quantities) -> Quantity:
        if not part.has("size"):
            raise part.missing(what)
        row = tables.load(_TABLE).row(part.text("size"))
        cause = Cause(
            what, f"`{part.name}`", f"measure it and write `{what}: ...` in `{part.name}`"
        )
        return from_table(
            f"{part.name}.{what}", _TABLE, row, what, cause, place=part.place_of("size")
        )

    return written_or(size(what), (what,), otherwise=found)


def _cut(part: Part, ask: Quantities) -> Quantity:
    row = tables.load(_TABLE).row("cut")
    cause = Cause("length", f"`{part.name}`", f"write the `length` that you cut in `{part.name}`")
    return from_table(f"{part.name}.length", _TABLE, row, "length", cause, place=part.key.place)


FRENCH_WIRE = Kind(
    "french wire",
    fragment("french wire"),
    Role.SLEEVE,
    quantities={
        "inside": _of_size("inside"),
        "outside": _of_size("outside"),
        "length": written_or(by_length("length"), ("length",), otherwise=_cut),
        "wall": allowed(
            "wall",
            0.9,
            "eye wall",
            "wall of the eye",
            "measure the wire of the eye that {part} goes round",
        ),
        "along": formula(
            "along",
            "mm",
            reach,
            length="length",
            wall="wall",
            outside="outside",
            source=GEOMETRY,
        ),
        "mass": constant("mass", 0.05, "g", source="a piece of 1 cm weighs nothing: from memory"),
    },
    look=Look("coil", label=(("length", "long"),)),
)
