"""Crimp: holds the end of a strand's wire, which comes back through it in a small loop."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, allowed, mass, size, total
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

#: Bare wire from crimp to bearing point, mm: common practice, no source.
_LOOP = 2.0

CRIMP = Kind(
    "crimp",
    fragment("crimp"),
    Role.CRIMP,
    quantities={
        "inside": size("inside", allowance="crimp hole"),
        "outside": size("outside", allowance="eye size"),
        "length": size("length", allowance="eye size"),
        # its length and the loop of wire in front of it, where ring or clasp bears
        "along": total(
            "along",
            "mm",
            "length",
            allowed(
                "loop",
                _LOOP,
                "crimp loop",
                "the loop of wire",
                "crimp one end of {part} and measure it",
            ),
            source=GEOMETRY,
        ),
        "mass": mass("mass"),
    },
    look=Look("crimp", label=(("length", "long"),)),
    sold=Sold("crimps", {"tube": "crimp tube", "bead": "crimp bead", "": "tube or bead"}),
)
