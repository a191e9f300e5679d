"""What metal parts share: their stated mass, and the mass of wire from volume and density."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.parts import Part, Quantities
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity


def stated_mass(part: Part, ask: Quantities) -> Quantity:
    """The mass that the plan states."""
    return part.mass("mass")


def density(part: Part) -> Quantity:
    """Density of the part's metal, g/cm3, from the trade tables; raises Missing without one."""
    row = tables.metal(part.text("metal"))
    if "density" not in row.cells:
        raise part.missing("mass")
    cell = row.cell("density")
    cause = Cause("alloy", f"`{part.text('metal')}`", f"weigh `{part.name}` and write `mass: ...`")
    return leaf(
        f"{row.name}.density",
        cell.value,
        "g/cm3",
        [Spread(cause, cell.value - cell.low, cell.high - cell.value)],
        source=f"trade tables, metals, {row.name}: {cell.grade}",
        grade=cell.grade,
    )


def ring_mass(inside: float, wire: float, density: float) -> float:
    """Mass of a ring of round wire, g: a torus of density g/cm3, sizes in mm.

    Volume = pi^2 / 4 x wire^2 x middle diameter (geometry).

    >>> round(ring_mass(inside=3.4, wire=0.81, density=8.53), 3)
    0.058
    """
    return pi**2 / 4 * wire**2 * (inside + wire) * density / 1000
