"""What metal parts share: the mass of wire from volume and density."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived.declared import from_table
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity


def density(part: Part, ask: Quantities) -> Quantity:
    """Density of the part's metal, g/cm3, from the trade tables; raises Missing without one."""
    row = tables.metal(part.text("metal"))
    if "density" not in row.cells:
        raise part.missing("mass")
    cause = Cause("alloy", f"`{part.said('metal')}`", f"weigh `{part.name}` and write `mass: ...`")
    return from_table(f"{row.name}.density", "metals", row, "density", cause)


def ring_mass(inside: float, wire: float, density: float) -> float:
    """Mass of a ring of round wire, g: a torus of density g/cm3, sizes in mm.

    Volume = pi^2 / 4 x wire^2 x middle diameter (geometry).

    >>> round(ring_mass(inside=3.4, wire=0.81, density=8.53), 3)
    0.058
    """
    return pi**2 / 4 * wire**2 * (inside + wire) * density / 1000
