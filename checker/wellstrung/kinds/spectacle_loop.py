"""Spectacle loop: a loop of rubber that grips the arm of spectacles, with an eye for the chain."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

SPECTACLE_LOOP = Kind(
    "spectacle loop",
    fragment("spectacle loop"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "length": size("length", allowance="part length"),
        "along": up_to_the_eye("length"),  # from where it grips the arm
        "mass": mass("mass"),
    },
    traits=Traits(grips_spectacles=True),
    look=Look("ear hoop", label=(("length", "long"),)),
    sold=Sold("spectacles", size_is={"": ("length",)}),
)
