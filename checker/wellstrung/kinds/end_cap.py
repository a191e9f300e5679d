"""End cap: takes the end of a rope; a ring holds it by its eye."""

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


def _along(part: Part, ask: Quantities) -> Quantity:
    """Less the depth that the rope enters; of a nub alone the beads end at the rim."""
    return (_BEADS_AT_RIM if taken(part) == "nub" else _PUSHED_HOME)(part, ask)


END_CAP = Kind(
    "end cap",
    fragment("end cap"),
    Role.CAP,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        **{what: size(what, allowance="cap size") for what in ("bore", "depth", "outside")},
        "length": size("length", allowance="part length"),
        "along": _along,
        "mass": mass("mass"),
    },
    traits=Traits(stiff="length"),
    types={"fold-over": Traits(stiff="length", pressed=True)},
    look=Look("cap", label=(("outside", "outside"), ("bore", "bore"))),
    sold=Sold("caps", {"fold-over": "fold-over end", "": "end cap"}, size_is={"": ("bore",)}),
)
