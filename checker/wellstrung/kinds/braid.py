"""Braid: cords braided round, with beads on them or without; along the run it adds its length."""

from __future__ import annotations

from wellstrung.derived.declared import same_as
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role
from wellstrung_schemas import fragment

BRAID = Kind(
    "braid",
    fragment("braid"),
    Role.ROPE,
    quantities={"along": same_as("length")},
    traits=WOVEN,
    look=Look("woven", label=(("outside", "across"),)),
)
