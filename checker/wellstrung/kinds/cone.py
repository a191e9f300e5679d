"""Cone: covers the gathered ends of strands; the wire link through it carries them.

What a cone covers is measured along the strands and the wire link, so it adds nothing of its own.
"""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    return exact(f"{part.name}.along", 0.0, "mm", source="it covers what is measured already")


CONE = Kind(
    "cone",
    fragment("cone"),
    Role.CONE,
    quantities={
        **{what: size(what, "cap size") for what in ("bore", "hole", "depth", "outside")},
        "length": size("length", "part length"),
        "along": _along,
        "mass": stated_mass,
    },
    traits=Traits(stiff="length"),
)
