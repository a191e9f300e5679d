"""Connector: a rigid part with an eye at each end."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, formula, mass, size
from wellstrung.kinds.plain import end_wall
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung_schemas import fragment

CONNECTOR = Kind(
    "connector",
    fragment("connector"),
    Role.EYED,
    eyes={"eyes": EyeField(("eyes",), several=True)},
    quantities={
        "length": size("length", allowance="part length"),
        "width": size("width", allowance="part length"),
        # less one eye wall at each end, where the rings bear
        "along": formula(
            "along",
            "mm",
            lambda length, eye_wire: length - 2 * eye_wire,
            length="length",
            eye_wire=end_wall("eyes"),
            source=GEOMETRY,
        ),
        "mass": mass("mass"),
    },
    traits=Traits(stiff="length"),
    look=Look("connector", label=(("along", "between rings"),)),
)
