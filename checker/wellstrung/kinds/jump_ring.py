"""Jump ring: open, closed, split or soldered."""

from __future__ import annotations

from wellstrung.derived.declared import formula, mass, measurable, same_as, size, wire, written_or
from wellstrung.formulas import rings
from wellstrung.kinds.metal import density, ring_mass
from wellstrung.kinds.plain import TWO_WIRES
from wellstrung.model.looks import Look
from wellstrung.model.parts import Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

_SIZE = "ring size"
#: rings sold by their inside, as those for chain maille are, have the mandrel's size
_MANDREL = "ring spring-back"

JUMP_RING = Kind(
    "jump ring",
    fragment("jump ring"),
    Role.RING,
    quantities={
        "inside": measurable(
            "inside",
            formula(
                "inside",
                "mm",
                rings.inside_of,
                outside=size("outside", allowance=_SIZE),
                wire="wire",
                source=TWO_WIRES,
            ),
            allowance=_MANDREL,
        ),
        "outside": measurable(
            "outside",
            formula(
                "outside", "mm", rings.outside_of, inside="inside", wire="wire", source=TWO_WIRES
            ),
            allowance=_SIZE,
        ),
        "wire": wire("wire"),
        "along": same_as("inside"),  # pulled taut between two parts
        "mass": written_or(
            mass("mass"),
            ("mass",),
            otherwise=formula(
                "mass",
                "g",
                ring_mass,
                inside="inside",
                wire="wire",
                density=density,
                source="volume of a torus",
            ),
        ),
    },
    types={
        "open": Traits(opens=True, gapes=True, hoop="outside"),
        "split": Traits(opens=True, hoop="outside"),
        "closed": Traits(opens=False, hoop="outside"),
        "soldered": Traits(opens=False, hoop="outside"),
    },
    traits=Traits(hoop="outside"),
    typed_by="closing",
    look=Look(
        "open ring",
        types={"split": "split ring", "closed": "ring", "soldered": "soldered ring"},
        label=(("outside", "outside"),),
    ),
    sold=Sold(
        "jump_rings",
        {"split": "split ring"},
        size_is={"": ("outside",)},
        usual={"closing": "open"},
        typed_by="closing",
    ),
)
