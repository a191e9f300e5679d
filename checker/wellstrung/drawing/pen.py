"""A pen that draws along a line, whichever way the line runs on the page.

A part is drawn from its outer end on: `along` counts from there, `across` from the middle of the
line. A pen that is turned round draws the same part the other way, as at the other end of a run.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing import outlines
from wellstrung.drawing.canvas import Canvas, Spot

#: where a spot of a straight line, along and across, lies on a curve
Bend = Callable[[float, float], Spot]
#: the longest side of an outline that is bent in one go, mm
_BENT = 4.0
#: of the corners of a link that is bent every so many-th is kept
_CORNERS = 4


class Pen(Struct, frozen=True):
    """Shapes on a canvas by their place along and across a line that starts at (x, y).

    The line runs to the right, or down the page where it is `upright`; `way` is -1 for a pen that
    is turned round. `bend` puts each spot of a straight line on the curve that it lies in.
    """

    canvas: Canvas
    x: float = 0.0
    y: float = 0.0
    upright: bool = False
    way: int = 1
    bend: Bend | None = None

    def at(self, along: float, across: float = 0.0) -> Spot:
        """Where a spot lies on the page."""
        x, y = self._straight(along, across)
        return (x, y) if self.bend is None else self.bend(x, y)

    def _straight(self, along: float, across: float) -> Spot:
        if self.upright:
            return self.x + across, self.y + self.way * along
        return self.x + self.way * along, self.y + across

    def moved(self, along: float, across: float = 0.0) -> Pen:
        """The same pen further along."""
        x, y = self._straight(along, across)
        return replace(self, x=x, y=y)

    def turned(self, length: float) -> Pen:
        """A pen that starts at the far end of a part of this length and comes back."""
        return replace(self.moved(length), way=-self.way)

    def side(self, *, along: bool) -> str:
        """The side of a box on the page that lies along the line, or across it."""
        return "height" if along == self.upright else "width"

    def box(
        self,
        along: float,
        length: float,
        width: float,
        look: str,
        *,
        across: float = 0.0,
        corner: float = 0.0,
        of_length: str = "",
        of_width: str = "",
    ) -> None:
        """A box about the line; it draws the quantity of its length, or that of its width."""
        if self.bend is not None:
            rim = outlines.box(along, across - width / 2, length, width)
            self.line([*rim, rim[0]], look)  # no area, which is hollow where its turns cross
            return
        x, y = self.at(along, across - width / 2)
        far_x, far_y = self.at(along + length, across + width / 2)
        self.canvas.box(
            min(x, far_x),
            min(y, far_y),
            abs(far_x - x),
            abs(far_y - y),
            look,
            of_length or of_width,
            self.side(along=bool(of_length)) if of_length or of_width else "",
            corner,
        )

    def oval(
        self,
        along: float,
        length: float,
        width: float,
        look: str,
        across: float = 0.0,
        turn: float = 0.0,
    ) -> None:
        """An oval with its middle at (along, across); `turn` leans it from along to across, rad."""
        if not turn and self.bend is None:
            x, y = self.at(along, across)
            rx, ry = (width, length) if self.upright else (length, width)
            self.canvas.ellipse(x, y, rx / 2, ry / 2, look)
            return
        x, y, degrees = self._leaning(along, across, turn)
        self.canvas.ellipse(x, y, length / 2, width / 2, look, degrees)

    def rounded(
        self,
        along: float,
        length: float,
        width: float,
        look: str,
        corner: Spot,
        across: float = 0.0,
        turn: float = 0.0,
    ) -> None:
        """A box with its middle at (along, across), that leans by `turn` as an oval does.

        `corner` is how far its corners are rounded along its length and its width.
        """
        x, y, degrees = self._leaning(along, across, turn)
        degrees %= 180
        if 89.99 < degrees < 90.01:
            length, width, corner, degrees = width, length, corner[::-1], 0.0
        self.canvas.rounded(x, y, length, width, look, corner, degrees % 179.995)

    def _leaning(self, along: float, across: float, turn: float) -> tuple[float, float, float]:
        """Where a spot lies on the page, and how far clockwise what leans there is turned."""
        x, y = self.at(along, across)
        far_x, far_y = self.at(along + 0.1 * math.cos(turn), across + 0.1 * math.sin(turn))
        return x, y, math.degrees(math.atan2(far_y - y, far_x - x))

    def strokes(self, lines: Sequence[tuple[Spot, Spot]], look: str) -> None:
        """Many short straight lines of one look, as one shape."""
        self.canvas.strokes([(self.at(*one), self.at(*other)) for one, other in lines], look)

    def ring(
        self,
        along: float,
        outside: float,
        wire: float,
        look: str,
        quantity: str = "",
        across: float = 0.0,
    ) -> None:
        """A ring of wire with its middle at (along, across)."""
        x, y = self.at(along, across)
        self.canvas.ring(x, y, outside, outside, wire, look, quantity)

    def link(self, along: float, length: float, width: float, wire: float, look: str) -> None:
        """A link of wire with its middle at `along`."""
        if self.bend is not None:
            rims = [
                outlines.link(along - long / 2, 0.0, long, wide)[::_CORNERS]
                for long, wide in ((length, width), (length - 2 * wire, width - 2 * wire))
                if wide > 0
            ]
            self.area(rims, look)
            return
        x, y = self.at(along)
        sides = (width, length) if self.upright else (length, width)
        self.canvas.ring(x, y, *sides, wire, look)

    def disc(
        self, along: float, diameter: float, look: str, quantity: str = "", across: float = 0.0
    ) -> None:
        """A round with its middle at (along, across)."""
        x, y = self.at(along, across)
        self.canvas.circle(x, y, diameter / 2, look, quantity)

    def area(self, rims: Sequence[Sequence[Spot]], look: str) -> None:
        """What lies within closed outlines, their spots each along and across."""
        self.canvas.area([[self.at(*spot) for spot in self._fine(rim)] for rim in rims], look)

    def line(
        self, spots: list[Spot], look: str, *, of_length: str = "", of_width: str = ""
    ) -> None:
        """A line through spots, each along and across; closed by naming the first one again."""
        if self.bend is not None:
            of_length = of_width = ""
        side = self.side(along=bool(of_length)) if of_length or of_width else ""
        fine = [*self._fine(spots, closed=False)]
        self.canvas.curve([self.at(*spot) for spot in fine], look, of_length or of_width, side)

    def _fine(self, spots: Sequence[Spot], *, closed: bool = True) -> Sequence[Spot]:
        """The corners of an outline, with spots between them where it is bent."""
        if self.bend is None:
            return spots
        found: list[Spot] = []
        ahead = [*spots[1:], spots[0]] if closed else spots[1:]
        for (x1, y1), (x2, y2) in zip(spots, ahead, strict=closed):
            steps = math.ceil(abs(x2 - x1) / _BENT) or 1
            found += [
                (x1 + (x2 - x1) * n / steps, y1 + (y2 - y1) * n / steps) for n in range(steps)
            ]
        return found if closed else [*found, spots[-1]]
