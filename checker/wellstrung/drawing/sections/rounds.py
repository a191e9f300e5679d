"""Round things packed in a round hole: the view that many fits share."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from msgspec import Struct

from wellstrung.drawing import hatching
from wellstrung.drawing.sections.case import size
from wellstrung.drawing.sections.frame import Section
from wellstrung.formulas import circles
from wellstrung.model.item import Missing
from wellstrung.quantity.value import Quantity


class Thing(Struct, frozen=True):
    """A round thing in a hole: what it is called, how thick it is, and by which quantity."""

    words: str
    thick: Quantity
    quantity: str
    look: str = "held"


class Packed(NamedTuple):
    """What lies in a hole, in words and where, and the point of it that reaches out furthest."""

    words: str
    spots: tuple[tuple[float, float], ...]
    furthest: tuple[float, float]


def together(things: Sequence[Thing]) -> float:
    """Diameter, mm, of the hole that takes the things side by side at their middle sizes."""
    return circles.container([thing.thick.middle for thing in things])


def pack(
    section: Section,
    x: float,
    y: float,
    hole: float,
    things: Sequence[Thing],
    *,
    letters: bool = True,
) -> Packed:
    """Draw the things packed about (x, y), what does not fit the hole hatched.

    Where there are several, each has a letter.
    """
    try:
        spots = circles.packed([thing.thick.middle for thing in things])
    except ValueError as unlike:
        raise Missing("sizes that can be drawn beside each other") from unlike
    named = []
    for thing, (dx, dy) in zip(things, spots, strict=True):
        at, r = (x + dx, y + dy), thing.thick.middle / 2
        section.canvas.circle(*at, r, thing.look, thing.quantity)
        if len(things) == 1:
            section.round_bands(*at, thing.thick)
        section.clash([hatching.circle(*at, r)], [hatching.circle(x, y, hole / 2)])
    for thing, (dx, dy) in zip(things, spots, strict=True):
        words = f"{thing.words} {size(thing.thick)}"
        if letters and len(things) > 1:
            words = f"({section.letter(x + dx, y + dy, thing.thick.middle)}) {words}"
        named.append(words)
    reach = [
        (math.hypot(dx, dy) + thing.thick.middle / 2, math.atan2(dy, dx))
        for thing, (dx, dy) in zip(things, spots, strict=True)
    ]
    # of those that reach equally far the one nearest to the upper right, where flags have room
    far, turn = max(reach, key=lambda one: (round(one[0], 6), math.cos(one[1] + math.pi / 4)))
    furthest = (x + far * math.cos(turn), y + far * math.sin(turn))
    places = tuple((x + dx, y + dy) for dx, dy in spots)
    return Packed(", ".join(dict.fromkeys(named)), places, furthest)
