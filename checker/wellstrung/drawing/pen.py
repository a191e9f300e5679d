"""A pen that draws along a line, whichever way the line runs on the page.

A part is drawn from its outer end on: `along` counts from there, `across` from the middle of the
line. A pen that is turned round draws the same part the other way, as at the other end of a run.
"""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing.canvas import Canvas, Spot


class Pen(Struct, frozen=True):
    """Shapes on a canvas by their place along and across a line that starts at (x, y).

    The line runs to the right, or down the page where it is `upright`; `way` is -1 for a pen that
    is turned round.
    """

    canvas: Canvas
    x: float = 0.0
    y: float = 0.0
    upright: bool = False
    way: int = 1

    def at(self, along: float, across: float = 0.0) -> Spot:
        """Where a spot lies on the page."""
        if self.upright:
            return self.x + across, self.y + self.way * along
        return self.x + self.way * along, self.y + across

    def moved(self, along: float, across: float = 0.0) -> Pen:
        """The same pen further along."""
        x, y = self.at(along, across)
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
        x, y = self.at(along, across)
        if not turn:
            rx, ry = (width, length) if self.upright else (length, width)
            self.canvas.ellipse(x, y, rx / 2, ry / 2, look)
            return
        far_x, far_y = self.at(along + math.cos(turn), across + math.sin(turn))
        degrees = math.degrees(math.atan2(far_y - y, far_x - x))
        self.canvas.ellipse(x, y, length / 2, width / 2, look, degrees)

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
        x, y = self.at(along)
        sides = (width, length) if self.upright else (length, width)
        self.canvas.ring(x, y, *sides, wire, look)

    def disc(
        self, along: float, diameter: float, look: str, quantity: str = "", across: float = 0.0
    ) -> None:
        """A round with its middle at (along, across)."""
        x, y = self.at(along, across)
        self.canvas.circle(x, y, diameter / 2, look, quantity)

    def line(
        self, spots: list[Spot], look: str, *, of_length: str = "", of_width: str = ""
    ) -> None:
        """A line through spots, each along and across; closed by naming the first one again."""
        side = self.side(along=bool(of_length)) if of_length or of_width else ""
        self.canvas.curve([self.at(*spot) for spot in spots], look, of_length or of_width, side)
