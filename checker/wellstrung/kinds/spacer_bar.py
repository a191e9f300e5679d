"""Spacer bar: a row of holes that strands side by side go through; it adds its thickness."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

_THICKNESS = size("thickness", allowance="part length")

SPACER_BAR = Kind(
    "spacer bar",
    fragment("spacer bar"),
    Role.EYED,
    eyes={"holes": EyeField(("holes",), several=True, strung=True)},
    quantities={
        "along": _THICKNESS,
        "thickness": _THICKNESS,
        "holes.through": _THICKNESS,
        "mass": mass("mass"),
    },
    look=Look("spacer bar"),
    sold=Sold("spacer_bars"),
)
