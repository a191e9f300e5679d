"""Wire link, head pin, eye pin: a wire with loops that its beads sit on.

Formulas are geometry worked out for this project; a wrapped loop's turns lie round the wire, so
each is pi x two wires long.
"""

from __future__ import annotations

from msgspec.structs import replace

from wellstrung.formulas.arithmetic import pi
from wellstrung.kinds.metal import density, stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.beads import bead_mix
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived, exact, product
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def loop_wire(hole: float, wire: float, wraps: float) -> float:
    """Wire in one loop, mm: once round the hole, and `wraps` turns round the neck.

    Geometry, worked out for this project.

    >>> round(loop_wire(hole=2.5, wire=0.64, wraps=3), 1)
    21.9
    """
    return pi * (hole + wire) + wraps * pi * 2 * wire


def along(stack: float, hole: float, wire: float, wraps: float) -> float:
    """Between the insides of the two loops, mm: the beads, and at both ends loop and neck.

    Geometry, worked out for this project.

    >>> round(along(stack=8.0, hole=2.5, wire=0.64, wraps=0), 2)
    14.28
    """
    return stack + 2 * (hole + wire + wraps * wire)


def cylinder_mass(length: float, wire: float, density: float) -> float:
    """Mass of round wire, g, of a length and thickness in mm and a density in g/cm3.

    Geometry: volume times density.

    >>> round(cylinder_mass(length=1000.0, wire=0.8118, density=10.36), 2)
    5.36
    """
    return pi / 4 * wire**2 * length * density / 1000


def _wire(part: Part, ask: Quantities) -> Quantity:
    return part.wire("wire")


def wraps_of(part: Part) -> int:
    """Turns of a wrapped loop; a simple one has none."""
    wrapped = part.has("loops") and part.text("loops") == "wrapped"
    return part.count("wraps", default=3) if wrapped else 0


def loops_to_make(part: Part) -> int:
    """Loops that are still to be made: an eye pin comes with one, a head pin keeps its head."""
    return 2 if part.text("type") == "link" else 1


def beads_on(part: Part) -> int:
    """How many beads it carries."""
    if not part.has("beads"):
        return 0
    return part.count("count", default=sum(bead_mix(part).values()))


def _stack(part: Part, ask: Quantities) -> Quantity:
    """What sits on the wire between its loops: beads, or the narrow part of a cone."""
    if part.has("over"):
        cone = ask.plan.parts[part.text("over")]
        return ask.of(cone, "length") - ask.of(cone, "depth")
    if not part.has("beads"):
        return exact(f"{part.name}.stack", 0.0, "mm")
    return product(
        f"{part.name}.stack", "mm", exact("count", beads_on(part)), making.bead(part, ask, "length")
    )


def _along(part: Part, ask: Quantities) -> Quantity:
    if part.has("measured", "along"):
        return part.length("along")
    if part.has("over"):  # the loop at the cone's wide end lies inside it
        return derived(
            f"{part.name}.along",
            "mm",
            lambda stack, hole, wire, wraps: stack + hole + wire + wraps * wire,
            _loop(part, ask),
            source="geometry, worked out for this project",
        )
    return derived(
        f"{part.name}.along",
        "mm",
        along,
        _loop(part, ask),
        source="geometry, worked out for this project",
    )


def _loop(part: Part, ask: Quantities) -> dict[str, Quantity]:
    return {
        "stack": _stack(part, ask),
        "hole": ask.of(part, "loop.hole"),
        "wire": _wire(part, ask),
        "wraps": exact("wraps", wraps_of(part)),
    }


def _needed(part: Part, ask: Quantities) -> Quantity:
    """Wire to cut or pin to buy, mm: the stack, the loops and what the pliers hold at each loop."""
    allowance = ask.plan.bench.limits["pin grip"]
    return derived(
        f"{part.name}.needed",
        "mm",
        lambda stack, hole, wire, wraps, loops, grip: (
            stack + loops * (loop_wire(hole, wire, wraps) + grip)
        ),
        {
            **_loop(part, ask),
            "loops": exact("loops", loops_to_make(part)),
            "grip": exact("grip", allowance.value, "mm", source=allowance.reason),
        },
        source="geometry, worked out for this project",
    )


def _mass(part: Part, ask: Quantities) -> Quantity:
    """As stated; else the wire as cut and the beads on it."""
    if part.has("mass"):
        return stated_mass(part, ask)
    wire = derived(
        f"{part.name}.wire mass",
        "g",
        cylinder_mass,
        length=ask.of(part, "length"),
        wire=_wire(part, ask),
        density=density(part),
    )
    if not part.has("beads"):
        return wire
    return wire + making.mass(part, ask)


#: its loops are turned round what they take
_PIN = Traits(on_wire=True, opens=True, stiff="stack", named_by_type=True)

WIRE_LINK = Kind(
    "wire link",
    fragment("wire link"),
    Role.EYED,
    eyes={"loop": EyeField(("loop",))},
    quantities={
        "wire": _wire,
        "loop.wire": _wire,
        "loop.through": _wire,
        "beads": lambda part, ask: exact(f"{part.name}.beads", beads_on(part)),
        "stack": _stack,
        "length": size("length", "part length"),
        "needed": _needed,
        "along": _along,
        "mass": _mass,
    },
    traits=_PIN,
    types={"link": replace(_PIN, of_wire=True, bought=False)},
)
