"""Drops of glue on knots: adhesive and steps in, a volume out."""

from __future__ import annotations

from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import leaf, times
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.glued import on_knots


def drops_on_knots(adhesive: Part, ask: Quantities) -> Quantity | None:
    """The drops of an adhesive on knots, ml; None where there are none."""
    steps = [step for step in on_knots(ask.plan) if step.parts["with"] is adhesive]
    knots = sum(int(step.get("times") or 1) for step in steps) * ask.plan.makes
    cure = f"count how many knots a bottle of `{adhesive.name}` does"
    size = Spread(Cause("how large a drop is", f"`{adhesive.name}`", cure), 0.02, 0.03)
    drop = leaf("a drop", 0.03, "ml", [size], source="from memory", grade="from memory")
    return times(drop, knots) if knots else None
