"""`fills the rest`: the length of the one part that makes the piece come out as long as wanted."""

from __future__ import annotations

import math

from wellstrung.common import units
from wellstrung.derived.piece import adds, thickest, turns
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity


def rest_of(wanted: float, others: float, thickness: float, places: int) -> float:
    """Length, mm, for each of `places` of a part that fills what `others` leave of a length wanted.

    `thickness` is 0 where the goal is a length laid taut; the way round inside loses pi times the
    thickness, as `inside_length` has it. Nothing is left where the others are as long. Geometry,
    worked out for this project.

    >>> rest_of(wanted=460.0, others=63.0, thickness=0.0, places=1)
    397.0
    >>> round(rest_of(wanted=430.0, others=63.0, thickness=9.9, places=1), 1)
    398.1
    """
    return max(0.0, wanted + math.pi * thickness - others) / places


def fills(part: Part, ask: Quantities) -> bool:
    """Whether a part is made as long as what the others leave, and they leave something."""
    if not part.fills_rest or part.has("measured", "length"):
        return False
    return ask.of(part, "length").middle > 0


def rest(part: Part, ask: Quantities) -> Quantity:
    """The length that fills the rest, mm: a length to weave, as sure as one that is written."""
    goal, worn = ask.plan.goal, thickest(ask.plan, ask)
    assert goal is not None  # a plan without one is refused when it is built
    lengths = [adds(entry, ask) for entry in ask.plan.run if entry.part is not part]
    others = sum(length.middle for length in lengths)
    places = len(ask.plan.run) - len(lengths)
    loses = worn is not None and goal.field == "inside"
    thick = worn.middle if worn is not None and loses else 0.0
    round_ = turns(ask.plan).middle if loses else 1
    length = rest_of(round_ * goal.middle, others, round_ * thick, places)
    allowance = ask.plan.bench.allowances["woven length"].value
    text = units.show(length, goal.unit)
    cure = f"measure it as you weave, and stop at {text}"
    inside = f" + pi * {thick:.4g} mm" if loses else ""
    return leaf(
        f"{part.name}.length",
        length,
        "mm",
        [Spread(Cause("length", f"`{part.name}`", cure), allowance, allowance)],
        place=part.place_of("length"),
        spelling=text,
        spelled_unit=goal.unit,
        source=f"fills the rest: {goal.middle:.4g} mm wanted{inside}"
        f" - {others:.4g} mm of the others{f', in {places} places' if places > 1 else ''}",
    )
