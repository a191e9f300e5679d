"""Ear post: goes through the ear; the earring hangs from its eye, or is glued to its pad."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size, up_to_the_eye
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _wire(part: Part, ask: Quantities) -> Quantity:
    return part.wire("wire")


def _along(part: Part, ask: Quantities) -> Quantity:
    """From the post to where the earring bears in its eye; a pad lies behind what is glued on."""
    if not part.has("eye"):
        return exact(f"{part.name}.along", 0.0, "mm", source="its pad lies behind what it carries")
    return up_to_the_eye("drop")(part, ask)


EAR_POST = Kind(
    "ear post",
    fragment("ear post"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": _wire,
        "length": size("length", "part length"),
        "pad": size("pad", "part length"),
        "drop": size("drop", "part length"),
        "along": _along,
        "mass": stated_mass,
    },
)
