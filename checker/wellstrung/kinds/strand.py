"""Strand: beads on a line, strung, knotted or spaced; along the run it adds its length."""

from __future__ import annotations

from wellstrung.model.parts import Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part, "length")


STRAND = Kind(
    "strand",
    fragment("strand"),
    Role.STRAND,
    quantities={"along": _along},
    traits=Traits(made_by="string", bought=False),
)
