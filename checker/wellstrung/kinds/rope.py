"""Woven rope: its stitch says what it measures; along the run it adds its length."""

from __future__ import annotations

from wellstrung.derived.declared import same_as, size
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role
from wellstrung_schemas import fragment

WOVEN_ROPE = Kind(
    "woven rope",
    fragment("woven rope"),
    Role.ROPE,
    quantities={
        "along": same_as("length"),
        "nub.outside": size("nub", "outside"),
        "nub.length": size("nub", "length"),
    },
    traits=WOVEN,
    look=Look("woven", label=(("outside", "across"),)),
)
