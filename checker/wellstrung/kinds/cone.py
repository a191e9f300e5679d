"""Cone: covers the gathered ends of strands; the wire link through it carries them.

What a cone covers is measured along the strands and the wire link, so it adds nothing of its own.
"""

from __future__ import annotations

from wellstrung.derived.declared import constant, mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

CONE = Kind(
    "cone",
    fragment("cone"),
    Role.CONE,
    quantities={
        **{what: size(what, allowance="cap size") for what in ("bore", "hole", "depth", "outside")},
        "length": size("length", allowance="part length"),
        "along": constant("along", 0.0, "mm", "it covers what is measured already"),
        "mass": mass("mass"),
    },
    traits=Traits(stiff="length"),
    look=Look("cone", label=(("outside", "outside"), ("bore", "bore"))),
    sold=Sold("caps"),
)
