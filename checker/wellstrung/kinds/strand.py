"""Strand: beads on a line, strung, knotted or spaced; along the run it adds its length."""

from __future__ import annotations

from wellstrung.derived.declared import same_as
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role, Traits
from wellstrung_schemas import fragment

STRAND = Kind(
    "strand",
    fragment("strand"),
    Role.STRAND,
    quantities={"along": same_as("length")},
    traits=Traits(made_by="string", bought=False),
    look=Look("strand", label=(("along", "long"),)),
)
