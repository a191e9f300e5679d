"""Crimp: holds the end of a strand's wire, which comes back through it in a small loop."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import Kind, Part, Quantities, Role
from wellstrung.quantity.arithmetic import leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

#: Bare wire from crimp to bearing point, mm: common practice, no source.
_LOOP = 2.0


def _along(part: Part, ask: Quantities) -> Quantity:
    """Its length and the loop of wire in front of it, where ring or clasp bears."""
    allowance = ask.plan.bench.allowances["crimp loop"]
    cure = f"crimp one end of `{part.name}` and measure it"
    cause = Cause("the loop of wire", f"`{part.name}`", cure)
    loop = leaf(
        f"{part.name}.loop",
        _LOOP,
        "mm",
        [Spread(cause, allowance.value, allowance.value)],
        source=allowance.reason,
    )
    return total(
        f"{part.name}.along",
        "mm",
        [ask.of(part, "length"), loop],
        source="geometry, worked out for this project",
    )


CRIMP = Kind(
    "crimp",
    fragment("crimp"),
    Role.CRIMP,
    quantities={
        "inside": size("inside", "eye size"),
        "outside": size("outside", "eye size"),
        "length": size("length", "eye size"),
        "along": _along,
        "mass": stated_mass,
    },
)
