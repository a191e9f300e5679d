"""End bar: a loop for each of several strands on one side, one eye for all on the other."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, formula, mass, size
from wellstrung.kinds.plain import end_wall
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

END_BAR = Kind(
    "end bar",
    fragment("end bar"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",)), "holes": EyeField(("holes",), several=True)},
    quantities={
        "length": size("length", allowance="part length"),
        # less one wall at each side, where ring and strands bear
        "along": formula(
            "along",
            "mm",
            lambda length, eye_wire, hole_wire: length - eye_wire - hole_wire,
            length="length",
            eye_wire=end_wall("eye"),
            hole_wire=end_wall("holes"),
            source=GEOMETRY,
        ),
        "mass": mass("mass"),
    },
    traits=Traits(two_ends=True, gathers=True),
    look=Look("end bar"),
    sold=Sold("spacer_bars"),
)
