"""End cap: takes the end of a rope; a ring holds it by its eye."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.run import taken
from wellstrung_schemas import fragment


def _bore(part: Part, ask: Quantities) -> Quantity:
    return part.length("bore", allowance="cap size")


def _depth(part: Part, ask: Quantities) -> Quantity:
    return part.length("depth", allowance="cap size")


def _outside(part: Part, ask: Quantities) -> Quantity:
    return part.length("outside", allowance="cap size")


def _length(part: Part, ask: Quantities) -> Quantity:
    return part.length("length", allowance="part length")


def _along(part: Part, ask: Quantities) -> Quantity:
    """Length less the eye's end wall, where the ring bears, less the depth the rope enters.

    Where only the nub goes in, the beads end at the rim and nothing is lost.
    """
    if taken(part) == "nub":
        return up_to_the_eye("length")(part, ask)
    return derived(
        f"{part.name}.along",
        "mm",
        along,
        length=ask.of(part, "length"),
        eye_wire=ask.of(part, "eye.wire"),
        depth=ask.of(part, "depth"),
        source="geometry, worked out for this project",
    )


def along(length: float, eye_wire: float, depth: float) -> float:
    """What a cap adds to the run, mm, with the rope pushed home.

    Geometry, worked out for this project.

    >>> round(along(length=15.0, eye_wire=1.2, depth=7.0), 2)
    6.8
    """
    return length - eye_wire - depth


END_CAP = Kind(
    "end cap",
    fragment("end cap"),
    Role.CAP,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "bore": _bore,
        "depth": _depth,
        "outside": _outside,
        "length": _length,
        "along": _along,
        "mass": stated_mass,
    },
    traits=Traits(stiff="length"),
)
