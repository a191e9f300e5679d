"""Jump ring: open, closed, split or soldered."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.kinds.metal import density, ring_mass, stated_mass
from wellstrung.model.parts import Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _wire(part: Part, ask: Quantities) -> Quantity:
    return part.wire("wire")


def _inside(part: Part, ask: Quantities) -> Quantity:
    """Inside diameter: as written or measured, or outside less two wires."""
    if part.has("inside") or part.has("measured", "inside"):
        return part.length("inside", allowance="ring size")
    return derived(
        f"{part.name}.inside",
        "mm",
        rings.inside_of,
        outside=part.length("outside", allowance="ring size"),
        wire=_wire(part, ask),
        source="outside = inside + 2 x wire, trade table `jump_rings`, several pages",
    )


def _outside(part: Part, ask: Quantities) -> Quantity:
    if part.has("outside") or part.has("measured", "outside"):
        return part.length("outside", allowance="ring size")
    return derived(
        f"{part.name}.outside",
        "mm",
        rings.outside_of,
        inside=_inside(part, ask),
        wire=_wire(part, ask),
        source="outside = inside + 2 x wire, trade table `jump_rings`, several pages",
    )


def _along(part: Part, ask: Quantities) -> Quantity:
    """Pulled taut between two parts, a ring adds its inside."""
    return ask.of(part, "inside")


def _mass(part: Part, ask: Quantities) -> Quantity:
    if part.has("mass"):
        return stated_mass(part, ask)
    return derived(
        f"{part.name}.mass",
        "g",
        ring_mass,
        inside=ask.of(part, "inside"),
        wire=ask.of(part, "wire"),
        density=density(part),
        source="volume of a torus",
    )


JUMP_RING = Kind(
    "jump ring",
    fragment("jump ring"),
    Role.RING,
    quantities={
        "inside": _inside,
        "outside": _outside,
        "wire": _wire,
        "along": _along,
        "mass": _mass,
    },
    types={
        "open": Traits(opens=True, gapes=True),
        "split": Traits(opens=True),
        "closed": Traits(opens=False),
        "soldered": Traits(opens=False),
    },
    typed_by="closing",
)
