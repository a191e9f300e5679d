"""Drops of glue on knots: adhesive and steps in, a volume out."""

from __future__ import annotations

from wellstrung.model.beads import holds
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities, Step
from wellstrung.quantity.arithmetic import leaf, times
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.glued import on_knots


def drops_in(step: Step) -> int:
    """How many drops a step puts on: one on each of its knots, or in the beads that glue holds."""
    held = holds(step.parts["part"]) if step.verb == "string" else 1
    return int(step.get("times") or 1) * held


def drops_on_knots(adhesive: Part, ask: Quantities) -> Quantity | None:
    """The drops of an adhesive on knots, ml; None where there are none."""
    steps = [step for step in on_knots(ask.plan) if step.parts["with"] is adhesive]
    knots = sum(drops_in(step) for step in steps) * ask.plan.makes
    cure = f"count how many knots a bottle of `{adhesive.name}` does"
    size = Spread(Cause("how large a drop is", f"`{adhesive.name}`", cure), 0.02, 0.03)
    drop = leaf("a drop", 0.03, "ml", [size], source="from memory", grade="from memory")
    return times(drop, knots) if knots else None
