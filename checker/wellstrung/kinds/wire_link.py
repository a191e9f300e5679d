"""Wire link, head pin, eye pin: a wire with loops that its beads sit on.

Formulas are geometry worked out for this project; a wrapped loop's turns lie round the wire, so
each is pi x two wires long.
"""

from __future__ import annotations

from msgspec.structs import replace

from wellstrung.common.choice import Choice
from wellstrung.derived.declared import (
    GEOMETRY,
    Argument,
    by_length,
    constant,
    count,
    formula,
    mass,
    product,
    size,
    wire,
    written_or,
)
from wellstrung.formulas.arithmetic import pi, sqrt
from wellstrung.formulas.rings import loop_wire
from wellstrung.kinds.metal import density
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Bead
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def along(stack: float, hole: float, wire: float, wraps: float) -> float:
    """Between the insides of the two loops, mm: the beads, and at both ends loop and neck.

    Geometry, worked out for this project.

    >>> round(along(stack=8.0, hole=2.5, wire=0.64, wraps=0), 2)
    14.28
    """
    return stack + 2 * (hole + wire + wraps * wire)


def wrapped_drop(hole_length: float, loop: float, grip: float) -> float:
    """Wire to wrap a drop by the hole across its top, mm.

    Through the hole, both ends up to where they cross, half a hole's length above it, one on to the
    loop, the other round the neck, and what the pliers hold at both. Geometry, worked out for this
    project; no published figure.

    >>> round(wrapped_drop(hole_length=4.0, loop=21.9, grip=10.0), 1)
    51.6
    """
    return hole_length + 2 * sqrt(0.5) * hole_length + loop + 2 * grip


def cylinder_mass(length: float, wire: float, density: float) -> float:
    """Mass of round wire, g, of a length and thickness in mm and a density in g/cm3.

    Geometry: volume times density.

    >>> round(cylinder_mass(length=1000.0, wire=0.8118, density=10.36), 2)
    5.36
    """
    return pi / 4 * wire**2 * length * density / 1000


def wraps_of(part: Part) -> float:
    """Turns of a wrapped loop; a simple one has none."""
    wrapped = part.has("loops") and part.text("loops") == "wrapped"
    return part.number("wraps", default=3) if wrapped or part.traits.takes_tops else 0


def loops_to_make(part: Part) -> int:
    """Loops that are still to be made: an eye pin comes with one, a head pin keeps its head."""
    return 2 if part.text("type") == "link" else 1


def beads_on(part: Part) -> int:
    """How many beads it carries."""
    if not part.has("beads"):
        return 0
    return part.count("count", default=sum(bead_mix(part).values()))


def _drop(part: Part) -> Bead:
    """The drop that a wire holds by the hole across its top."""
    beads = [bead for bead, _ in making.beads_of(part)]
    return next((bead for bead in beads if bead.top_drilled), beads[0])


def _wraps_a_drop(wrapped: Formula, otherwise: Formula) -> Formula:
    """Of a wire that goes through the top of a drop one thing, of all others another."""

    def found(part: Part, ask: Quantities) -> Quantity:
        return (wrapped if part.traits.takes_tops else otherwise)(part, ask)

    return found


def _thickness(part: Part, ask: Quantities) -> Quantity:
    """How far it stands out: its fattest bead, or the wire of its loops."""
    return making.fattest(part, ask) if part.has("beads") else ask.of(part, "wire")


def _stack(part: Part, ask: Quantities) -> Quantity:
    """What sits on the wire between its loops: beads, and the narrow part of a cone."""
    cone, beads = part.part("over"), (_BEADS if part.has("beads") else _BARE)(part, ask)
    if cone is None:
        return beads
    narrow = ask.of(cone, "length") - ask.of(cone, "depth")
    return narrow + beads if part.has("beads") else narrow


_BARE = constant("stack", 0.0, "mm")
_BEADS = product("stack", "mm", count("count", beads_on), making.bead("length"))
_HOLE_AND_WRAPS: dict[str, Argument] = {
    "stack": "stack",
    "hole": "loop.hole",
    "wire": "wire",
    "wraps": count("wraps", wraps_of),
}
_ALONG = formula("along", "mm", along, _HOLE_AND_WRAPS, source=GEOMETRY)
#: what hangs below one loop: the drop, and half its hole above it to where the wire crosses
_HUNG_STACK = formula(
    "stack",
    "mm",
    lambda height, hole_length: height + hole_length / 2,
    height=lambda part, ask: ask.of(_drop(part), "height"),
    hole_length=lambda part, ask: ask.of(_drop(part), "length"),
    source=GEOMETRY,
)
_HUNG_NEEDED = formula(
    "needed",
    "mm",
    lambda hole_length, hole, wire, wraps, grip: wrapped_drop(
        hole_length, loop_wire(hole, wire, wraps), grip
    ),
    hole_length=lambda part, ask: ask.of(_drop(part), "length"),
    hole="loop.hole",
    wire="wire",
    wraps=lambda part, ask: _usual_wraps(part, ask),
    grip=lambda part, ask: _grip(part, ask),
    source=GEOMETRY,
)
#: the loop at the cone's wide end lies inside it
_THROUGH_CONE = formula(
    "along",
    "mm",
    lambda stack, hole, wire, wraps: stack + hole + wire + wraps * wire,
    _HOLE_AND_WRAPS,
    source=GEOMETRY,
)


def _grip(part: Part, ask: Quantities) -> Quantity:
    setting = part.bench.limits["pin grip"]
    return exact("grip", setting.value, "mm", source=setting.reason)


def _usual_wraps(part: Part, ask: Quantities) -> Quantity:
    """The turns of each loop; where the plan does not say, as many as a maker likes."""
    wraps, free = wraps_of(part), not part.has("wraps")
    span = Choice(1.5, 4.0, "turns of a wrapped loop, common practice, no source")
    return exact("wraps", wraps, choice=span if wraps and free else None)


#: wire to cut or pin to buy: the stack, the loops and what the pliers hold at each loop
_NEEDED = formula(
    "needed",
    "mm",
    lambda stack, hole, wire, wraps, loops, grip: (
        stack + loops * (loop_wire(hole, wire, wraps) + grip)
    ),
    _HOLE_AND_WRAPS,
    source=GEOMETRY,
    wraps=_usual_wraps,
    loops=count("loops", loops_to_make),
    grip=_grip,
)
_WIRE_MASS = formula("wire mass", "g", cylinder_mass, length="length", wire="wire", density=density)


def _with_beads(part: Part, ask: Quantities) -> Quantity:
    """The wire as cut and the beads on it, g."""
    wire_mass = _WIRE_MASS(part, ask)
    return wire_mass + making.mass(part, ask) if part.has("beads") else wire_mass


#: its loops are turned round what they take
_PIN = Traits(on_wire=True, opens=True, stiff="stack", named_by_type=True)

WIRE_LINK = Kind(
    "wire link",
    fragment("wire link"),
    Role.EYED,
    eyes={"loop": EyeField(("loop",))},
    quantities={
        **dict.fromkeys(("wire", "loop.wire", "loop.through"), wire("wire")),
        "beads": count("beads", beads_on),
        "stack": _wraps_a_drop(_HUNG_STACK, _stack),
        "thickness": _thickness,
        "length": by_length("length", allowance="part length"),
        "needed": _wraps_a_drop(_HUNG_NEEDED, _NEEDED),
        "along": written_or(
            size("along"),
            ("measured", "along"),
            otherwise=written_or(
                _THROUGH_CONE, ("over",), otherwise=_wraps_a_drop(_THROUGH_CONE, _ALONG)
            ),
        ),
        "mass": written_or(mass("mass"), ("mass",), otherwise=_with_beads),
    },
    traits=_PIN,
    types={
        "link": replace(_PIN, of_wire=True, bought=False),
        "briolette wrap": replace(_PIN, of_wire=True, bought=False, takes_tops=True),
    },
    look=Look(
        "wire link",
        types={"head pin": "head pin", "briolette wrap": "briolette wrap"},
        label=(("along", "inside its loops"),),
    ),
    sold=Sold("pins", size_is={"": ("length",)}),
)
