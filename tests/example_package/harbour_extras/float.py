"""Cork float: a ball of cork that hangs by an eye; what it weighs follows from its size."""

from __future__ import annotations

import math

from wellstrung import tables
from wellstrung.derived.declared import formula, from_table, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity

_COMMON = "common.json#/$defs"
_FRAGMENT = {
    "type": "object",
    "description": "A ball of cork that hangs.",
    "additionalProperties": False,
    "required": ["kind", "height"],
    "properties": {
        "kind": {"const": "cork float", "description": "The kind of part."},
        "height": {"$ref": f"{_COMMON}/length", "description": "How wide the ball is."},
        "eye": {
            "type": "object",
            "description": "The eye that it hangs by.",
            "additionalProperties": False,
            "properties": {
                "hole": {"$ref": f"{_COMMON}/length", "description": "Width of the hole."},
                "wire": {"$ref": f"{_COMMON}/wire", "description": "Thickness of the wall."},
            },
        },
    },
}


def ball(height: float, density: float) -> float:
    """Mass of a ball, g, from its width in mm and its density in g/cm3 (geometry).

    >>> round(ball(20.0, 0.2), 2)
    0.84
    """
    return math.pi / 6 * height**3 / 1000 * density


def _density(part: Part, ask: Quantities) -> Quantity:
    row = tables.load("floats").row("cork")
    cause = Cause("how light the cork is", f"`{part.name}`", f"weigh `{part.name}`")
    return from_table(f"{part.name}.density", "floats", row, "density", cause, place=part.key.place)


FLOAT = Kind(
    "cork float",
    _FRAGMENT,
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "height": size("height", allowance="part length"),
        "mass": formula("mass", "g", ball, height="height", density=_density),
    },
    look=Look("pendant", label=(("height", "wide"),)),
)
