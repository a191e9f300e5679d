"""Brooch pin: a bar with a pin and a catch, sewn or glued behind what it holds to the cloth."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role
from wellstrung_schemas import fragment

BROOCH_PIN = Kind(
    "brooch pin",
    fragment("brooch pin"),
    Role.BACK,
    quantities={
        "length": size("length", allowance="part length"),
        "width": size("width", allowance="part length"),
        "mass": mass("mass"),
    },
    look=Look(label=(("length", "long"),)),
)
