"""Bead drop: a leg of beads on thread that goes down, round a turn bead and up again.

A drop that lists several counts stands for a graduated fringe: its length and leg are those of the
longest, its beads, mass and thread the mean of them, so that a whole fringe comes out right.
"""

from __future__ import annotations

from wellstrung.formulas import thread
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Item
from wellstrung.model.parts import Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived, exact, product, total
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def legs(part: Part) -> tuple[int, ...]:
    """Beads down each leg, without the turn bead: one count, or one for each drop of a fringe."""
    return part.counts("count") or (sum(bead_mix(part).values()),)


def beads_in(part: Part) -> float:
    """Beads down the leg, without the turn bead; of a graduated fringe the mean."""
    counts = legs(part)
    return sum(counts) / len(counts)


def _turn(part: Part, ask: Quantities) -> Item | None:
    return ask.plan.beads.get(part.text("turn")) if part.has("turn") else None


def _leg(part: Part, ask: Quantities, beads: float) -> Quantity:
    return product(
        f"{part.name}.leg",
        "mm",
        exact("count", beads),
        making.bead(part, ask, "length"),
        source="counting",
    )


def _length(part: Part, ask: Quantities) -> Quantity:
    """From its eye to its foot: the leg, and the turn bead, which hangs with its hole across."""
    if part.has("measured", "length"):
        return part.length("length")
    return _to_foot(part, ask, max(legs(part)))


def _to_foot(part: Part, ask: Quantities, beads: float) -> Quantity:
    turn = _turn(part, ask)
    foot = [ask.of(turn, "outside")] if turn else []
    return total(f"{part.name}.length", "mm", [_leg(part, ask, beads), *foot])


def _width(part: Part, ask: Quantities) -> Quantity:
    """Its fattest bead."""
    turn = _turn(part, ask)
    sizes = [ask.of(bead, "outside") for bead, _ in making.beads_of(part, ask)]
    if turn is not None:
        sizes.append(ask.of(turn, "length"))
    return max(sizes, key=lambda size: size.middle)


def _beads(part: Part, ask: Quantities) -> Quantity:
    return exact(f"{part.name}.beads", beads_in(part) + part.has("turn"))


def _mass(part: Part, ask: Quantities) -> Quantity:
    if part.has("measured", "mass"):
        return part.mass("mass")
    terms = [
        derived(
            f"{part.name}.mass of {bead.name}",
            "g",
            lambda count, per_gram: count / per_gram,
            count=exact("count", count),
            per_gram=ask.of(bead, "per_gram"),
        )
        for bead, count in _counts(part, ask)
    ]
    return total(f"{part.name}.mass", "g", terms)


def _counts(part: Part, ask: Quantities) -> list[tuple[Item, float]]:
    counts = [(bead, share * beads_in(part)) for bead, share in making.beads_of(part, ask)]
    turn = _turn(part, ask)
    return [*counts, (turn, 1.0)] if turn else counts


def _thread(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.thread",
        "mm",
        lambda leg, step, share: thread.fringe(leg, step) * share,
        leg=_length(part, ask) if len(legs(part)) == 1 else _to_foot(part, ask, beads_in(part)),
        step=making.bead(part, ask, "length"),
        share=making.thread_share(part),
        source="2 x leg and a step: counted passes, worked out for this project",
    )


BEAD_DROP = Kind(
    "bead drop",
    fragment("bead drop"),
    Role.DROP,
    traits=Traits(bought=False),
    quantities={
        "length": _length,
        "width": _width,
        "beads": _beads,
        "mass": _mass,
        "thread": _thread,
    },
)
