"""Bail: goes round a rope, a strand or a chain, and carries a pendant by the eye at its foot.

The prongs of a pinch bail are its eye: they go into the pendant's hole and close there.
"""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung_schemas import fragment

BAIL = Kind(
    "bail",
    fragment("bail"),
    Role.BAIL,
    eyes={"eye": EyeField(("eye",), carries=True)},
    quantities={
        "inside": size("inside", "eye size"),
        "length": size("length", "part length"),
        "mass": stated_mass,
    },
    types={"pinch": Traits(opens=True)},  # its prongs are bent apart and pressed together
)
