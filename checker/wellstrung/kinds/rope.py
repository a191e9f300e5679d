"""Woven rope: its stitch says what it measures; along the run it adds its length."""

from __future__ import annotations

from wellstrung.derive import Quantities
from wellstrung.model import Kind, Part, Role
from wellstrung.quantity import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


WOVEN_ROPE = Kind("woven rope", fragment("woven rope"), Role.ROPE, quantities={"along": _along})
