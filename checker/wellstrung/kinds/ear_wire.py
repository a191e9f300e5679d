"""Ear wire or post: goes through the ear, and the earring hangs from its eye."""

from __future__ import annotations

from wellstrung.derive import Quantities
from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model import EyeField, Kind, Part, Role
from wellstrung.quantity import Quantity, derived
from wellstrung_schemas import fragment


def _wire(part: Part, ask: Quantities) -> Quantity:
    return part.wire("wire")


def _along(part: Part, ask: Quantities) -> Quantity:
    """From where it bears in the ear to where the earring bears in its eye."""
    return derived(
        f"{part.name}.along",
        "mm",
        lambda length, eye_wire: length - eye_wire,
        "length - eye_wire",
        length=ask.of(part, "length"),
        eye_wire=ask.of(part, "eye.wire"),
        source="geometry, worked out for this project",
    )


EAR_WIRE = Kind(
    "ear wire",
    fragment("ear wire"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": _wire,
        "length": size("length", "part length"),
        "along": _along,
        "mass": stated_mass,
    },
)
