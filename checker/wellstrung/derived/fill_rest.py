"""`fills the rest`: the length of the one part that makes the piece come out as long as wanted."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from wellstrung.common import units
from wellstrung.model.parts import Part
from wellstrung.model.plan import Goal
from wellstrung.quantity.value import Cause, Quantity, Spread, leaf

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities


def rest_of(wanted: float, others: float, thickness: float, places: int) -> float:
    """Length, mm, for each of `places` of a part that fills what `others` leave of a length wanted.

    `thickness` is 0 where the length is wanted laid taut; the way round inside loses pi times the
    thickness, as `inside_length` has it. Nothing is left where the others are as long. Geometry,
    worked out for this project.

    >>> rest_of(wanted=460.0, others=63.0, thickness=0.0, places=1)
    397.0
    >>> round(rest_of(wanted=430.0, others=63.0, thickness=9.9, places=1), 1)
    398.1
    """
    return max(0.0, wanted + math.pi * thickness - others) / places


def filled(part: Part, others: Quantity, thickness: Quantity | None, ask: Quantities) -> Quantity:
    """The length that fills the rest, mm: a length to weave, as sure as one that is written."""
    goal = ask.plan.goal
    assert goal is not None  # `building` refuses a rest of nothing
    places = sum(entry.part is part for entry in ask.plan.run)
    length = rest_of(wanted(goal), others.middle, thickness.middle if thickness else 0.0, places)
    allowance = ask.plan.bench.allowances["woven length"].value
    text = units.show(length, goal.unit)
    cure = f"measure it as you weave, and stop at {text}"
    inside = f" + pi * {thickness.middle:.4g} mm" if thickness else ""
    return leaf(
        f"{part.name}.length",
        length,
        "mm",
        [Spread(Cause("length", f"`{part.name}`", cure), allowance, allowance)],
        place=part.place_of("length"),
        spelling=text,
        spelled_unit=goal.unit,
        source=f"fills the rest: {wanted(goal):.4g} mm wanted{inside}"
        f" - {others.middle:.4g} mm of the others{f', in {places} places' if places > 1 else ''}",
    )


def wanted(goal: Goal) -> float:
    """The middle of the length wanted, mm."""
    return (goal.window.low + goal.window.high) / 2


def fills(part: Part) -> bool:
    """Whether the part's length is what the others leave; a measured one beats that."""
    return part.fills_rest and not part.has("measured", "length")
