"""Pendant: hangs by its top eyes and carries others by its bottom eyes."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role
from wellstrung_schemas import fragment

PENDANT = Kind(
    "pendant",
    fragment("pendant"),
    Role.EYED,
    eyes={
        "top_eyes": EyeField(("top_eyes",), several=True),
        "bottom_eyes": EyeField(("bottom_eyes",), several=True),
    },
    quantities={
        "height": size("height", allowance="part length"),
        "width": size("width", allowance="part length"),
        "mass": mass("mass"),
    },
    look=Look("pendant", label=(("height", "tall"),)),
)
