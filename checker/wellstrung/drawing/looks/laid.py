"""One bead in its place on the face of woven work."""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing.canvas import Spot

#: how far a bead may reach over the ends of a stretch and still be drawn with it, mm
_LEEWAY = 0.03


class Laid(Struct, frozen=True):
    """A bead about (along, across), so long by its hole and so wide.

    `turn` is how far its hole lies from along to across, rad; `depth` how near it is to the eye. A
    bead of the `core` has loops round it; one seen `end_on` shows its hole. One of a net is
    `picked` up as the so-maniest of its loop, from 0; one that is `shared` joins two rows.
    One of another bead has the field of the part that names it, `named_by`.
    """

    along: float
    across: float
    long: float
    wide: float
    turn: float = 0.0
    depth: float = 0.0
    core: bool = False
    end_on: bool = False
    picked: int = -1
    shared: bool = False
    named_by: str = ""

    @property
    def reach(self) -> float:
        """How far it reaches from its middle along the work."""
        return math.hypot(self.long * math.cos(self.turn), self.wide * math.sin(self.turn)) / 2

    def spot(self, by_length: float, by_width: float) -> Spot:
        """Where a spot of the bead lies, by parts of its length and its width from its middle."""
        x, y = by_length * self.long, by_width * self.wide
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return self.along + x * cos - y * sin, self.across + x * sin + y * cos

    def within(self, length: float, width: float) -> Laid:
        """The same, moved to lie whole in a length that begins at 0 and a width about it."""
        reach = math.hypot(self.long * math.sin(self.turn), self.wide * math.cos(self.turn)) / 2
        room = max(width / 2 - reach, 0.0)
        return replace(
            self,
            along=min(max(self.along, self.reach), length - self.reach),
            across=min(max(self.across, -room), room),
        )

    def lies_in(self, length: float) -> bool:
        """Whether it lies whole within a stretch of a length that begins at 0."""
        return self.reach - _LEEWAY <= self.along <= length - self.reach + _LEEWAY
