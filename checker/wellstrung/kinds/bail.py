"""Bail: goes round a rope, a strand or a chain, and carries a pendant by the eye at its foot.

The prongs of a pinch bail are its eye: they go into the pendant's hole and close there.
"""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung_schemas import fragment

BAIL = Kind(
    "bail",
    fragment("bail"),
    Role.BAIL,
    eyes={"eye": EyeField(("eye",), carries=True)},
    quantities={
        "inside": size("inside", allowance="eye size"),
        "length": size("length", allowance="part length"),
        "mass": mass("mass"),
    },
    types={"pinch": Traits(opens=True)},  # its prongs are bent apart and pressed together
    look=Look("bail", label=(("length", "long"),)),
)
