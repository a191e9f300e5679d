"""Pendant: hangs by its top eyes and carries others by its bottom eyes."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _height(part: Part, ask: Quantities) -> Quantity:
    return part.length("height", allowance="part length")


def _width(part: Part, ask: Quantities) -> Quantity:
    return part.length("width", allowance="part length")


PENDANT = Kind(
    "pendant",
    fragment("pendant"),
    Role.EYED,
    eyes={
        "top_eyes": EyeField(("top_eyes",), several=True),
        "bottom_eyes": EyeField(("bottom_eyes",), several=True),
    },
    quantities={"height": _height, "width": _width, "mass": stated_mass},
)
