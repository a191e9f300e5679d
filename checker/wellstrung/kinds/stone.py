"""A stone by its outline, which beads are worked round: its sizes and the way round it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wellstrung.derived.declared import GEOMETRY, size, written_or
from wellstrung.formulas import stones
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.value import Quantity

_LONG = size("stone", "outside", allowance="stone size")
_WIDE = written_or(
    size("stone", "width", allowance="stone size"), ("stone", "width"), otherwise=_LONG
)


def shape(part: Part) -> str:
    """The outline of its stone: as written, else round, or oval where it has a width."""
    if part.has("stone", "shape"):
        return part.text("stone", "shape")
    return "oval" if part.has("stone", "width") else "round"


def _corner(part: Part, ask: Quantities) -> Quantity:
    written = part.has("stone", "corner")
    return part.size("stone", "corner") if written else exact("corner", 0.0, "mm")


def of_stone(what: str, unit: str, by_shape: Mapping[str, Callable[..., float]]) -> Formula:
    """What its outline gives, by a function for each shape."""

    def found(part: Part, ask: Quantities) -> Quantity:
        sizes = {name: ask.of(part, f"stone{of}") for name, of in _SIZES.items()}
        if shape(part) == "square":
            sizes["corner"] = _corner(part, ask)
        called = f"{part.name}.{what} of the stone"
        return derived(called, unit, by_shape[shape(part)], sizes, source=GEOMETRY)

    return found


_SIZES = {"length": "", "width": ".width"}

#: what a stone measures, whatever beads go round it
SIZES: Mapping[str, Formula] = {
    "stone": _LONG,
    "stone.width": _WIDE,
    "perimeter": of_stone("perimeter", "mm", stones.PERIMETERS),
}


def girth(part: Part, ask: Quantities) -> Quantity:
    """How wide a round stone is with the same way round: as many beads go round it (Steiner)."""
    if shape(part) == "round":
        return ask.of(part, "stone")
    return derived(
        f"{part.name}.girth",
        "mm",
        lambda perimeter: perimeter / pi,
        perimeter=ask.of(part, "perimeter"),
        source=GEOMETRY,
    )
