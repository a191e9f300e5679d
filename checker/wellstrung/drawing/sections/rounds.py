"""Round things packed in a round hole: the view that many fits share."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from msgspec import Struct

from wellstrung.drawing import outlines
from wellstrung.drawing.sections.case import Case, Said, marks_of, mm, size
from wellstrung.drawing.sections.section import Row, Section
from wellstrung.formulas import circles
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.quantity.value import Quantity

#: how much of a bead's wall shows its colour, so that what is drawn over the rest is seen
_RIM = 0.25


class Thing(Struct, frozen=True):
    """A round thing in a hole: its name, how thick it is, and by which quantity."""

    words: str
    thick: Quantity
    quantity: str
    look: str = "held"


class Hole(Struct, frozen=True):
    """A round hole: its name, its size and by which quantity, and the outside of its wall.

    `look` is that of the wall; one that is hatched is cut through. A bead has a rim in its colour.
    """

    word: str
    size: Quantity
    quantity: str
    outside: Quantity | None = None
    outside_quantity: str = ""
    look: str = "metal"
    rim: str = ""

    def behind(self, section: Section, x: float = 0.0, y: float = 0.0) -> None:
        """Its wall, under what is in the hole; none where the hole is as wide as all of it."""
        if self.outside is None or self.outside.middle <= self.size.middle:
            return
        wall = outlines.rim(x, y, self.outside.middle, self.size.middle)
        if self.look in ("metal", "work"):
            section.cut(wall, self.look)
        else:
            section.canvas.area(wall, self.look)
        if self.rim:
            inner = self.outside.middle - _RIM * (self.outside.middle - self.size.middle)
            section.canvas.area(outlines.rim(x, y, self.outside.middle, inner), self.rim)
        if self.outside_quantity:
            section.canvas.circle(x, y, self.outside.middle / 2, "edge", self.outside_quantity)

    def before(self, section: Section, x: float = 0.0, y: float = 0.0) -> None:
        """Its edge, over what is in it."""
        section.round_ranges(x, y, self.size)
        section.canvas.circle(x, y, self.size.middle / 2, "edge", self.quantity)

    @property
    def row(self) -> Row:
        """The dimension of the hole."""
        return self.size.middle, f"{self.word} {size(self.size)}", self.quantity

    def widest(self, *others: float) -> float:
        """How wide a drawing of it is, with other round things about its middle."""
        return max(self.size.middle, self.outside.middle if self.outside else 0.0, *others)


class Packed(NamedTuple):
    """Things as they lie in a hole: their words, their middles, and which point is furthest out."""

    words: str
    spots: tuple[tuple[float, float], ...]
    furthest: tuple[float, float]


def hole_of(case: Case[Any], part: Part, what: str, *, word: str = "", look: str = "metal") -> Hole:
    """The hole of a part, within its outside where the plan has that."""
    outside = case.perhaps(part, "outside")
    return Hole(
        word or what, case.of(part, what), f"{part.name}.{what}",
        outside, f"{part.name}.outside" if outside else "", look,
    )  # fmt: skip


def thing_of(case: Case[Any], part: Part, what: str, words: str, look: str = "held") -> Thing:
    """A round thing by a size of its part."""
    return Thing(words, case.of(part, what), f"{part.name}.{what}", look)


def together(things: Sequence[Thing]) -> float:
    """Diameter, mm, of the hole that takes the things side by side at their middle sizes."""
    return circles.container([thing.thick.middle for thing in things])


def in_hole(
    section: Section, hole: Hole, things: Sequence[Thing], *, letters: bool = True
) -> Packed:
    """Draw things packed in their hole, from its wall to its edge; several with their round."""
    hole.behind(section)
    held = pack(section, 0, 0, hole.size.middle, things, letters=letters)
    hole.before(section)
    if len(things) > 1:
        section.round_pattern(0, 0, together(things), "taken")
    return held


def finish(
    section: Section, held: Packed, said: Sequence[Said], hole: Hole, rows: Iterable[Row]
) -> None:
    """Mark the remarks where things reach furthest out, and set the dimensions."""
    if said:
        section.mark(*held.furthest, marks_of(said))
    section.rows([hole.row, *rows])


def thing_rows(things: Sequence[Thing], word: str) -> list[Row]:
    """The dimension of the only thing in a hole, or of all of them together."""
    if len(things) == 1:
        [thing] = things
        return [(thing.thick.middle, f"{word} {size(thing.thick)}", thing.quantity)]
    taken = together(things)
    return [(taken, f"together {mm(taken)}", "")]


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
    placed = [(thing, x + dx, y + dy) for thing, (dx, dy) in zip(things, spots, strict=True)]
    for thing, at_x, at_y in placed:
        r = thing.thick.middle / 2
        section.canvas.circle(at_x, at_y, r, thing.look, thing.quantity)
        if len(things) == 1:
            section.round_ranges(at_x, at_y, thing.thick)
        section.clash([outlines.circle(at_x, at_y, r)], [outlines.circle(x, y, hole / 2)])
    named = []
    for thing, at_x, at_y in placed:
        words = f"{thing.words} {size(thing.thick)}"
        if letters and len(things) > 1:
            words = f"({section.letter(at_x, at_y, thing.thick.middle)}) {words}"
        named.append(words)
    reach = [
        (math.hypot(dx, dy) + thing.thick.middle / 2, math.atan2(dy, dx))
        for thing, (dx, dy) in zip(things, spots, strict=True)
    ]
    # of those that reach equally far the one nearest to the upper right, where marks have room
    far, turn = max(reach, key=lambda one: (round(one[0], 6), math.cos(one[1] + math.pi / 4)))
    furthest = (x + far * math.cos(turn), y + far * math.sin(turn))
    places = tuple((at_x, at_y) for _, at_x, at_y in placed)
    return Packed(", ".join(dict.fromkeys(named)), places, furthest)
