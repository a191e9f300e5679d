"""Ear wire or post: goes through the ear, and the earring hangs from its eye."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size, up_to_the_eye
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _wire(part: Part, ask: Quantities) -> Quantity:
    return part.wire("wire")


EAR_WIRE = Kind(
    "ear wire",
    fragment("ear wire"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": _wire,
        "length": size("length", "part length"),
        "along": up_to_the_eye("length"),  # from where it bears in the ear
        "mass": stated_mass,
    },
    traits=Traits(in_ear=True),
    types={"post": Traits(in_ear=True, stays_in=True)},
)
