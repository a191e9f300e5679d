"""End cap: takes the end of a rope or the last cup of cup chain; a ball ends memory wire."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, formula, mass, size
from wellstrung.kinds.plain import end_wall, up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.run import taken
from wellstrung_schemas import fragment


def along(length: float, eye_wire: float, depth: float) -> float:
    """What a cap adds to the run, mm, with the rope pushed home.

    Geometry, worked out for this project.

    >>> round(along(length=15.0, eye_wire=1.2, depth=7.0), 2)
    6.8
    """
    return length - eye_wire - depth


_PUSHED_HOME = formula(
    "along", "mm", along, length="length", eye_wire=end_wall("eye"), depth="depth", source=GEOMETRY
)
_BEADS_AT_RIM = up_to_the_eye("length")


_LENGTH, _OUTSIDE = size("length", allowance="part length"), size("outside", allowance="cap size")


def _along(part: Part, ask: Quantities) -> Quantity:
    """Less the depth that the rope enters; of a nub or a wire alone the beads end at the rim."""
    if part.type == "ball":
        return ask.of(part, "length")
    return (_BEADS_AT_RIM if taken(part) in ("nub", "wire") else _PUSHED_HOME)(part, ask)


def _length(part: Part, ask: Quantities) -> Quantity:
    """A ball is as long as it is wide."""
    ball = part.type == "ball" and not part.has("length")
    return (_OUTSIDE if ball else _LENGTH)(part, ask)


END_CAP = Kind(
    "end cap",
    fragment("end cap"),
    Role.CAP,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        **{what: size(what, allowance="cap size") for what in ("bore", "depth")},
        "outside": _OUTSIDE,
        "length": _length,
        "along": _along,
        "mass": mass("mass"),
    },
    traits=Traits(stiff="length"),
    types={
        "fold-over": Traits(stiff="length", pressed=True),
        "ball": Traits(stiff="length", on_wire_end=True),
        "cup chain": Traits(stiff="length", pressed=True, cups=True),
    },
    look=Look("cap", {"ball": "ball"}, label=(("outside", "outside"), ("bore", "bore"))),
    sold=Sold(
        "caps",
        {
            "fold-over": "fold-over end",
            "ball": "end ball",
            "cup chain": "cup chain end",
            "": "end cap",
        },
        size_is={"": ("bore",), "ball": ("outside",), "cup chain": ()},
    ),
)
