"""Braid: cords braided round, with beads on them or without; along the run it adds its length."""

from __future__ import annotations

from wellstrung.kinds.plain import WOVEN
from wellstrung.model.parts import Kind, Part, Quantities, Role
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


BRAID = Kind("braid", fragment("braid"), Role.ROPE, quantities={"along": _along}, traits=WOVEN)
