"""Strands side by side differ enough in length to lie beside each other, or not at all.

Strands that meet at both ends lie apart at the front. Each outer strand is then longer than the
next by pi times the distance between their middles, over half a round.
"""

from __future__ import annotations

from itertools import pairwise

from wellstrung.formulas.arithmetic import pi
from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, StrandsBeside, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, at_least, in_unit_of


def check(beside: StrandsBeside, ask: Ask) -> Answer:
    strands = sorted(beside.strands, key=lambda strand: ask.of(strand, "length").middle)
    found = [(_room(one, other, ask), one, other) for one, other in pairwise(strands)]
    apart = [pair for pair in found if not _as_one(pair[1], pair[2], ask)]
    if not apart:
        return Held()  # strands of one length lie as one
    margin, inner, outer = min(apart, key=lambda pair: pair[0].likely.low)
    if answer := kept(margin):
        return answer
    length = ask.of(outer, "length")
    more = length.middle - ask.of(inner, "length").middle
    wanted = at_least(more - margin.likely.low, length)
    return Misfit(
        says=f"`{outer.name}` is {in_unit_of(more, length)} longer than `{inner.name}`, too much to"
        " lie as one and {|perhaps }too little to lie beside it: to lie outside, it needs to be"
        f" {about(_step(inner, outer, ask), length)} longer",
        place=outer.place_of("length"),
        found=f"{in_unit_of(more, length)} longer",
        needed=f"{wanted} longer or more, or the same length",
        remedies=(
            Remedy(
                f"make `{outer.name}` at least {wanted} longer than `{inner.name}`, or both the"
                " same length"
            ),
        ),
        margin=margin,
        also=(inner.place_of("length"),),
    )


def _as_one(inner: Part, outer: Part, ask: Ask) -> bool:
    more = ask.of(outer, "length").middle - ask.of(inner, "length").middle
    return more <= ask.limit("strands as one").middle


def _room(inner: Part, outer: Part, ask: Ask) -> Quantity:
    return ask.of(outer, "length") - ask.of(inner, "length") - _step(inner, outer, ask)


def _step(inner: Part, outer: Part, ask: Ask) -> Quantity:
    return derived(
        "step from strand to strand",
        "mm",
        step,
        one=ask.of(inner, "outside"),
        other=ask.of(outer, "outside"),
        source="geometry, worked out for this project",
    )


def step(one: float, other: float) -> float:
    """How much longer, mm, a strand is that lies outside another over half a round. Geometry.

    >>> round(step(one=4.0, other=4.0), 1)
    12.6
    """
    return pi * (one + other) / 2


RULE = Rule(
    name="strand-nest",
    family="length",
    subject=StrandsBeside,
    check=check,
    fault="strands too near in length",
    title="strands side by side have one length, or differ enough to lie beside each other",
    why="a strand a little longer than the next rides over it, and the fall of the rows is lost",
    sources=(
        "half a round at the distance of their middles: geometry, worked out for this project",
        "strands within 5 mm lie as one: common practice, no source",
    ),
    bad="strands of 44 cm and 44.8 cm, both 4 mm thick",
    good="strands of 44 cm and 46.5 cm, both 4 mm thick",
    level="warning",
)
