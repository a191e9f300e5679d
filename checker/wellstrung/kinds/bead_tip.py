"""Bead tip: a cup that closes over the knot or the crimp at a strand's end; a ring takes its loop.

What is inside the cup stops the strand: the beads begin at the hole, and what the tip adds to the
run is measured from there to where the loop bears. The loop is a hook that is bent shut over what
it takes: common practice, no source.
"""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived.declared import from_table, mass, size
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.arithmetic import total
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

_STATED = mass("mass")


def _mass(part: Part, ask: Quantities) -> Quantity:
    """The tip, with the crimp in it where it covers one; a knot is left out."""
    crimp, tip = part.part("covers"), _STATED(part, ask)
    return total(f"{part.name}.mass", "g", (tip, ask.of(crimp, "mass"))) if crimp else tip


def _ties(part: Part, ask: Quantities) -> Quantity:
    """How many lines wide the knot is that the tip covers; raises Missing where it is a crimp."""
    row = tables.load("knots").rows.get(part.text("covers"))
    if row is None:
        raise part.missing("covers")
    cure = f"tie one, measure across it and write `measured: {{covered: ...}}` in `{part.name}`"
    cause, place = Cause("how the knot lies", f"`{part.name}`", cure), part.place_of("covers")
    return from_table(f"{row.name} across", "knots", row, "across", cause, place=place)


BEAD_TIP = Kind(
    "bead tip",
    fragment("bead tip"),
    Role.TIP,
    eyes={"eye": EyeField(("eye",), opens=True)},
    quantities={
        "inside": size("inside", allowance="cap size"),
        "hole": size("hole", allowance="eye size"),
        "outside": size("outside", allowance="cap size"),
        "length": size("length", allowance="part length"),
        "covered": size("covered"),
        "knot": _ties,
        "along": up_to_the_eye("length"),  # from the hole, where the beads begin
        "mass": _mass,
    },
    look=Look("tip", label=(("outside", "outside"), ("length", "long"))),
    sold=Sold("caps"),
)
