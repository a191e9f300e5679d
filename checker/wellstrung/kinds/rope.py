"""Woven rope: its stitch says what it measures; along the run it adds its length."""

from __future__ import annotations

from wellstrung.kinds.plain import WOVEN
from wellstrung.model.parts import Kind, Part, Quantities, Role
from wellstrung.quantity.value import Quantity
from wellstrung.stitches.beaded_braid import nub_length
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


def _nub_outside(part: Part, ask: Quantities) -> Quantity:
    return part.length("nub", "outside")


WOVEN_ROPE = Kind(
    "woven rope",
    fragment("woven rope"),
    Role.ROPE,
    traits=WOVEN,
    quantities={"along": _along, "nub.outside": _nub_outside, "nub.length": nub_length},
)
