"""A straight, stiff part of the run against the curve of the body that it lies on."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import most, pi, sqrt
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rigid, Rule, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, at_most, spelled

RIGID_CURVE = Limit(
    "rigid curve",
    5.0,
    "mm",
    "a straight bar of 30 mm lies well on a wrist of 16.5 cm, common practice",
)


def check(stiff: Rigid, ask: Ask) -> Answer:
    if stiff.curved:
        return None
    length, body = ask.of(stiff.item, stiff.size), stiff.wearer.girth(stiff.measure)
    limit = ask.limit(RIGID_CURVE)
    curve = derived(
        f"the curve over {stiff.item.name}",
        "mm",
        sagitta,
        length=length,
        body=body,
        source="a chord in a circle: geometry",
    )
    margin = limit - curve
    if answer := kept(margin):
        return answer
    longest = math.floor(_chord(limit.middle, body.middle) + 1e-9)
    size = at_most(longest, length)
    return Misfit(
        says=f"`{stiff.item.name}` is straight for {spelled(length)}, over which the"
        f" {stiff.measure} ({spelled(body)}) curves by {about(curve, length)}: its ends"
        " {|may }stand off",
        place=stiff.item.place_of(stiff.size if stiff.item.has(stiff.size) else "beads"),
        found=spelled(length),
        needed=f"{size} or shorter, or curved",
        remedies=_remedies(stiff, size),
        margin=margin,
        also=(stiff.wearer.place_of(stiff.measure),),
    )


def sagitta(length: float, body: float) -> float:
    """How far a round body of that girth rises above a straight line of a length, mm.

    r - sqrt(r^2 - length^2 / 4) with r = body / (2 pi), and r where the line is longer than the
    body is wide. Geometry; a wrist is flatter than a circle where a bracelet's front lies.

    >>> round(sagitta(length=30.0, body=165.0), 2), round(sagitta(length=90.0, body=165.0), 2)
    (4.71, 26.26)
    """
    radius = body / (2 * pi)
    return radius - sqrt(most(0, radius**2 - length**2 / 4))


def _chord(rise: float, body: float) -> float:
    """The length, mm, above which a body of that girth rises so far: `sagitta` the other way."""
    radius = body / (2 * pi)
    return 2 * math.sqrt(max(radius**2 - max(radius - rise, 0.0) ** 2, 0.0))


def _remedies(stiff: Rigid, size: str) -> tuple[Remedy, ...]:
    name, part = stiff.item.name, stiff.item if isinstance(stiff.item, Part) else None
    can_curve = part is None or part.takes("curved")
    bent = "one that is bent to the body (then write `curved: yes`), or " if can_curve else ""
    take = f"take {bent}one of {size} or shorter for `{name}`"
    by_hand = Remedy(f"{take}, or two with a link between them")
    if part is not None and part.traits.on_wire:
        return (Remedy(f"put fewer beads on `{name}`: {size} or less, and another link beside it"),)
    if not stiff.item.has(stiff.size):
        return (by_hand,)
    place = stiff.item.place_of(stiff.size)
    return (Remedy.write(place, size, f"take one of {size} for `{name}`"), by_hand)


RULE = Rule(
    name="rigid-run",
    family="length",
    subject=Rigid,
    check=check,
    fault="straight part too long",
    title="what is straight and stiff in the run is short enough for the curve it lies on",
    why=(
        "a bar of 45 mm bridges the wrist: its ends catch in every sleeve, and the bracelet feels"
        " tighter than it measures"
    ),
    limits=(RIGID_CURVE,),
    sources=(
        "a chord in the circle of wrist, ankle or neck: geometry",
        "about 30 mm lie well on a wrist of 16.5 cm, a curve of 5 mm: common practice, no source",
    ),
    bad="bar: {kind: connector, length: 45 mm} on a wrist of 16.5 cm, which curves by 12.7 mm",
    good="bar: {kind: connector, length: 28 mm} on a wrist of 16.5 cm, which curves by 4.1 mm",
    level="warning",
)
