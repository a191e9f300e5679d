"""Spacer bar: a row of holes that strands side by side go through; it adds its thickness."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import EyeField, Kind, Role
from wellstrung_schemas import fragment

_THICKNESS = size("thickness", "part length")

SPACER_BAR = Kind(
    "spacer bar",
    fragment("spacer bar"),
    Role.EYED,
    eyes={"holes": EyeField(("holes",), several=True, strung=True)},
    quantities={
        "along": _THICKNESS,
        "thickness": _THICKNESS,
        "holes.through": _THICKNESS,
        "mass": stated_mass,
    },
)
