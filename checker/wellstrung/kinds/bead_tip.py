"""Bead tip: a cup that closes over the knot or the crimp at a strand's end; a ring takes its loop.

What is inside the cup stops the strand: the beads begin at the hole, and what the tip adds to the
run is measured from there to where the loop bears.
"""

from __future__ import annotations

from wellstrung import tables
from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size, up_to_the_eye
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role
from wellstrung.quantity.arithmetic import leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _mass(part: Part, ask: Quantities) -> Quantity:
    """The tip, with the crimp in it where it covers one; a knot is left out."""
    crimp = ask.plan.parts.get(part.text("covers")) if part.has("covers") else None
    if crimp is None:
        return stated_mass(part, ask)
    return total(f"{part.name}.mass", "g", (part.mass("mass"), ask.of(crimp, "mass")))


def _ties(part: Part, ask: Quantities) -> Quantity:
    """How many lines wide the knot is that the tip covers; raises Missing where it is a crimp."""
    row = tables.load("knots").rows.get(part.text("covers"))
    if row is None:
        raise part.missing("covers")
    cell = row.cell("across")
    cure = f"tie one, measure across it and write `measured: {{covered: ...}}` in `{part.name}`"
    return leaf(
        f"{row.name} across",
        cell.value,
        "",
        [
            Spread(
                Cause("how the knot lies", f"`{part.name}`", cure),
                cell.value - cell.low,
                cell.high - cell.value,
            )
        ],
        place=part.place_of("covers"),
        source=f"trade tables, knots, {row.name}, lines across: {cell.grade}",
        grade=cell.grade,
    )


BEAD_TIP = Kind(
    "bead tip",
    fragment("bead tip"),
    Role.TIP,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "inside": size("inside", "cap size"),
        "hole": size("hole", "eye size"),
        "outside": size("outside", "cap size"),
        "length": size("length", "part length"),
        "covered": size("covered"),
        "knot": _ties,
        "along": up_to_the_eye("length"),  # from the hole, where the beads begin
        "mass": _mass,
    },
)
