"""Crimp: holds the end of a strand's wire, which comes back through it in a small loop."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.derived.declared import GEOMETRY, allowed, mass, size, total
from wellstrung.formulas.arithmetic import most
from wellstrung.model.looks import Look
from wellstrung.model.parts import Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity import arithmetic
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

#: Bare wire from crimp to bearing point, mm: common practice, no source.
_LOOP = 2.0

_LENGTH = size("length", allowance="eye size")


def _with_cover(what: str, alone: Formula, unit: str, both: Callable[..., float]) -> Formula:
    """A quantity of the crimp, and of the cover that is closed over it where it has one."""

    def found(part: Part, ask: Quantities) -> Quantity:
        cover, crimp = part.part("cover"), alone(part, ask)
        if cover is None:
            return crimp
        sizes = {"crimp": crimp, "cover": ask.of(cover, what)}
        return arithmetic.derived(f"{part.name} in its cover", unit, both, sizes, source=GEOMETRY)

    return found


CRIMP = Kind(
    "crimp",
    fragment("crimp"),
    Role.CRIMP,
    quantities={
        "inside": size("inside", allowance="crimp hole"),
        "outside": size("outside", allowance="eye size"),
        "length": _LENGTH,
        # its length, or its cover, and the loop of wire in front, where ring or clasp bears
        "along": total(
            "along",
            "mm",
            _with_cover("outside", _LENGTH, "mm", lambda crimp, cover: most(crimp, cover)),
            allowed(
                "loop",
                _LOOP,
                "crimp loop",
                "the loop of wire",
                "crimp one end of {part} and measure it",
            ),
            source=GEOMETRY,
        ),
        "mass": _with_cover("mass", mass("mass"), "g", lambda crimp, cover: crimp + cover),
    },
    look=Look("crimp", label=(("length", "long"),)),
    sold=Sold("crimps", {"tube": "crimp tube", "bead": "crimp bead", "": "tube or bead"}),
)
