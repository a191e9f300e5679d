"""A shape: how a part is drawn from where its outer end bears, and where others meet it."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from msgspec import Struct

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part

#: draws a part that takes a length of its line, mm, from its outer end on
Draw = Callable[[Pen, Sizes, Part, float], None]
#: where a label points to on a part of a length, from its outer end on
SpotOf = Callable[[Sizes, Part, float], Spot]
#: how much of a clasp's closed length its second half takes
Share = Callable[[Sizes, Part, float], float]


class Drawn(NamedTuple):
    """A hung part as drawn: how long it is, and where what hangs from it bears, from its top."""

    length: float
    feet: tuple[Spot, ...]


def half_across(sizes: Sizes, part: Part) -> float:
    """Half of what a part takes across its line."""
    return sizes.across(part) / 2


def none_across(sizes: Sizes, part: Part) -> float:
    """A label points to the line itself."""
    return 0.0


def wide(sizes: Sizes, part: Part) -> float:
    """How wide a part is that hangs beside others."""
    return sizes.known(part, "width", sizes.known(part, "outside", UNKNOWN / 2))


def in_the_middle(sizes: Sizes, part: Part) -> tuple[float, ...]:
    """A part that hangs by its middle."""
    return (0.0,)


class Shape(Struct, frozen=True):
    """How a part is drawn.

    `reach` is how far it reaches across its line, where a label points to it; `width` what it takes
    beside others that hang; `tops` where its upper eyes lie across. `hang` draws the piece of that
    number as it hangs; without it the part hangs as it lies in the run. Of a clasp `second` is the
    second half, `second_takes` what that takes of the length that a plan gives for both, and `spot`
    where a label points to. From a shape that `is_round` a fringe hangs along its rim. A `flat`
    shape hangs from a level line by its edge, its `length` down.
    """

    draw: Draw
    reach: Callable[[Sizes, Part], float] = half_across
    width: Callable[[Sizes, Part], float] = wide
    tops: Callable[[Sizes, Part], tuple[float, ...]] = in_the_middle
    hang: Callable[[Pen, Sizes, Part, int], Drawn] | None = None
    second: Shape | None = None
    second_takes: Share | None = None
    spot: SpotOf | None = None
    flat: bool = False
    is_round: bool = False

    def half(self, name: str) -> Shape:
        """The shape of one half of a clasp, `a` or `b`; of other parts the shape itself."""
        return self.second or self if name == "b" else self

    def hung(self, pen: Pen, sizes: Sizes, part: Part, number: int) -> Drawn:
        """Draw one hung part; the number is that of the piece in a graduated fringe."""
        if self.hang is not None:
            return self.hang(pen, sizes, part, number)
        length = sizes.known(part, "length" if self.flat else "along", UNKNOWN)
        upside_down = self.upside_down(sizes, part)
        self.draw(pen.turned(length) if upside_down else pen, sizes, part, length)
        return Drawn(length, ((length, 0.0),))

    def upside_down(self, sizes: Sizes, part: Part) -> bool:
        """Whether a part hangs with its start down: what hangs from an edge hangs from that one."""
        hung = [line for line in sizes.plan.hung if line.source is part and line.source_eyes]
        eyes = [part.kind.eyes[line.source_eyes] for line in hung]
        return not self.flat and bool(eyes) and all(one.at_start for one in eyes)

    def foot(self, sizes: Sizes, part: Part) -> float:
        """How far below a level line it reaches."""
        if self.flat:
            return sizes.known(part, "length", UNKNOWN)
        return sizes.across(part) / 2
