"""Woven band: flat or shaped work; its stitch says what it measures, the run takes its length."""

from __future__ import annotations

from wellstrung.derive import Quantities
from wellstrung.model import Kind, Part, Role
from wellstrung.quantity import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


def _outside(part: Part, ask: Quantities) -> Quantity:
    """What it stands off the body is its thickness; it is no round rope, so no cap takes it."""
    return ask.of(part, "thickness")


WOVEN_BAND = Kind(
    "woven band",
    fragment("woven band"),
    Role.BAND,
    quantities={"outside": _outside, "along": _along},
)
