"""Bead drop: a leg of beads on thread that goes down, round a turn bead and up again.

A drop that lists several counts stands for a graduated fringe: its length and leg are those of the
longest, its beads, mass and thread the mean of them, so that a whole fringe comes out right.
"""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.derived.declared import (
    by_length,
    count,
    formula,
    hand,
    mass,
    of_each,
    product,
    written_or,
)
from wellstrung.derived.outline import apart
from wellstrung.formulas import thread
from wellstrung.formulas.arithmetic import sqrt
from wellstrung.formulas.thread import PACKING
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Bead, Missing
from wellstrung.model.looks import Look
from wellstrung.model.parts import Formula, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, total
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.subjects.base import Eyes
from wellstrung.subjects.hung import fringes_along, tassels
from wellstrung_schemas import fragment


def legs(part: Part) -> tuple[int, ...]:
    """Beads down each leg, without the turn bead: one count, or one for each drop of a fringe."""
    return part.counts("count") or (sum(bead_mix(part).values()),)


def beads_in(part: Part) -> float:
    """Beads down the leg, without the turn bead; of a graduated fringe the mean."""
    counts = legs(part)
    return sum(counts) / len(counts)


def _to_foot(beads: Callable[[Part], float]) -> Formula:
    """From its eye to its foot: the leg, and the turn bead, which hangs with its hole across."""
    leg = product("leg", "mm", count("count", beads), making.bead("length"), source="counting")

    def length(part: Part, ask: Quantities) -> Quantity:
        turn = part.bead("turn")
        foot = [ask.of(turn, "height")] if turn else []
        return total(f"{part.name}.length", "mm", [leg(part, ask), *foot])

    return length


_LENGTH = written_or(
    by_length("length"), ("measured", "length"), otherwise=_to_foot(lambda part: max(legs(part)))
)
_MEAN_LENGTH = _to_foot(beads_in)


def _width(part: Part, ask: Quantities) -> Quantity:
    """Its fattest bead."""
    turn = part.bead("turn")
    sizes = [ask.of(bead, "outside") for bead, _ in making.beads_of(part)]
    if turn is not None:
        sizes.append(ask.of(turn, "outside" if turn.hangs else "length"))
    return max(sizes, key=lambda size: size.middle)


def _mass(part: Part, ask: Quantities) -> Quantity:
    counts = _counts(part)
    weighs = of_each((bead for bead, _ in counts), "per_gram", ask)
    terms = [
        derived(
            f"{part.name}.mass of {bead.name}",
            "g",
            lambda count, per_gram: count / per_gram,
            count=exact("count", each),
            per_gram=per_gram,
        )
        for (bead, each), per_gram in zip(counts, weighs, strict=True)
    ]
    return total(f"{part.name}.mass", "g", terms)


def _counts(part: Part) -> list[tuple[Bead, float]]:
    counts = [(bead, share * beads_in(part)) for bead, share in making.beads_of(part)]
    turn = part.bead("turn")
    return [*counts, (turn, 1.0)] if turn else counts


#: from legs that slide into the dips between each other's beads to legs that stand off
_CLOSE = hand(
    "how close the legs hang", (0.9, 1.0, 1.1), cure="measure across {part} where it is thickest"
)


def bundled(**legs: float) -> float:
    """Thickness of legs that hang as one bundle, mm: the root of 1.3 times the squares of all.

    `many1` legs of `wide1`, and so on; packed as thread is in a hole (`thread.PACKING`), plain
    geometry. Held against a printed figure: forty legs below a tube rolled of two inches of silk,
    16 mm across (`Bead tassel easily made`, newspaper of 1912, excerpt seen; its bead has no size).

    >>> round(bundled(many1=40, wide1=2.1), 1)
    15.1
    """
    numbers = range(1, len(legs) // 2 + 1)
    return sqrt(PACKING * sum(legs[f"many{n}"] * legs[f"wide{n}"] ** 2 for n in numbers))


def _bundle(part: Part, ask: Quantities) -> Quantity:
    """The tassel of which it is a leg, across; turn beads may spread it wider at its foot."""
    lines = next(
        (one.lines for one in tassels(ask.plan) for line in one.lines if line.part is part), None
    )
    if lines is None:
        raise Missing(f"`legs` of `{part.name}`, or `times` where it hangs")
    args = {"close": _CLOSE(part, ask)}
    for n, line in enumerate(lines, 1):
        eyes = Eyes(line.source, line.source_eyes) if line.source_eyes else None
        many = line.times / (eyes.count if eyes is not None else 1)
        args |= {f"many{n}": exact("legs", many), f"wide{n}": making.fattest(line.part, ask)}
    return derived(
        f"{part.name}.bundle",
        "mm",
        lambda close, **legs: close * bundled(**legs),
        args,
        source="1.3 x the squares of all legs, worked out for this project",
    )


def _apart(part: Part, ask: Quantities) -> Quantity:
    """From leg to leg along a rope, a strand or a long edge, the first where it hangs."""
    fringe = next(
        (one for one in fringes_along(ask.plan) for line in one.lines if line.part is part), None
    )
    if fringe is None:
        raise Missing(f"where `{part.name}` hangs: along a rope, a strand or a long edge")
    return apart(fringe, ask)


#: legs further apart, mm, are sewn on one by one: common practice, no source
_ONE_BY_ONE = 25.0


def _step(part: Part, ask: Quantities) -> Quantity:
    """What the thread takes from one leg to the next: along what is long as far as they are apart.

    Along an edge whose beads are counted it is a bead.
    """
    along = any(line.part is part for one in fringes_along(ask.plan) for line in one.lines)
    step = _apart(part, ask) if along else None
    near = step is not None and step.middle <= _ONE_BY_ONE
    return step if near and step is not None else making.bead("length")(part, ask)


def _leg_of_thread(part: Part, ask: Quantities) -> Quantity:
    return (_LENGTH if len(legs(part)) == 1 else _MEAN_LENGTH)(part, ask)


BEAD_DROP = Kind(
    "bead drop",
    fragment("bead drop"),
    Role.DROP,
    traits=Traits(bought=False),
    quantities={
        "length": _LENGTH,
        "width": _width,
        "bundle": _bundle,
        "apart": _apart,
        "beads": count("beads", lambda part: beads_in(part) + part.has("turn")),
        "mass": written_or(mass("mass"), ("measured", "mass"), otherwise=_mass),
        "thread": formula(
            "thread",
            "mm",
            lambda leg, step, share: thread.fringe(leg, step) * share,
            leg=_leg_of_thread,
            step=_step,
            share=making.thread_share(thread.WALKED),
            source="2 x leg and a step: counted passes, worked out for this project",
        ),
    },
    look=Look("leg", label=(("length", "long"),)),
)
