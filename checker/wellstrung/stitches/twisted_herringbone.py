"""Twisted herringbone: the stacks of tubular herringbone leaning round the tube all one way.

A leaning bead adds less length, so the same rope takes more rounds, beads and thread.
"""

from __future__ import annotations

from msgspec.structs import replace

from wellstrung.model.parts import Stitch
from wellstrung.stitches.tubular_herringbone import LOOK, quantities, refuses

#: A leaning bead's share of its length that goes into the rope: common practice, no source.
_RISE = (0.87, 0.905, 0.94)
#: How far its beads lean, degrees: its cosine is 0.906, about the middle of `_RISE`.
_LEAN = 25.0
#: How the stacks lie: as in straight herringbone at the low end. A stack that leans so is
#: 1 / 0.905 times as wide round the tube, up to 8 % more outside: worked out for this project.
_SETTLE = (0.90, 1.0, 1.08)

TWISTED = Stitch(
    name="twisted herringbone",
    quantities=quantities(_SETTLE, _RISE),
    refuses=refuses,
    held_against="no published figure of a size: print gives 25 g of 11/0 triangles for a bracelet"
    " of 8 in and 60 g for a necklace of 18 in (`Gemstones in Ndebele herringbone`), both with"
    " other beads in the length and without the count around",
    look=replace(LOOK, leans=(_LEAN,), winds=True),
)
