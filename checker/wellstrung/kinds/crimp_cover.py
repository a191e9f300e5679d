"""Crimp cover: an open ball that is closed over a crimp, which then looks like a bead."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

CRIMP_COVER = Kind(
    "crimp cover",
    fragment("crimp cover"),
    Role.COVER,
    quantities={
        "inside": size("inside", allowance="cap size"),
        "outside": size("outside", allowance="cap size"),
        "mass": mass("mass"),
    },
    look=Look(label=(("outside", "outside"),)),
    sold=Sold("crimps", size_is={"": ("outside",)}),
)
