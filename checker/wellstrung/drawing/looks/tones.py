"""What tells the beads of a palette apart: a colour each, and a grain that a grey printer keeps.

A bead has the colour that the plan gives it, or a grey. The first bead of the palette is plain;
each of the others has its own grain, so beads of the same tone look different in print too.
"""

from __future__ import annotations

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.colours import contrast
from wellstrung.drawing.looks.laid import Laid
from wellstrung.drawing.pen import Pen

#: seven greys and eight grains share no divisor, so 56 beads differ; chosen by eye, no source
GREYS = ("#d4d4d4", "#8f8f8f", "#b5b5b5", "#6e6e6e", "#f0f0f0", "#a2a2a2", "#7d7d7d")
_INKS = {"dark": "#000000", "light": "#ffffff"}
#: the least of a bead on paper, mm, that a grain is drawn on
_LEAST = 0.8

Stroke = tuple[Spot, Spot]


def _aslant(rise: float) -> tuple[Stroke, ...]:
    return tuple(((at - 0.15, -rise), (at + 0.15, rise)) for at in (-0.2, 0.0, 0.2))


#: how the beads of a palette are marked, one after another and again from the first: lines by their
#: ends, in parts of the bead along its hole and across; none is round, which would look like a hole
GRAINS: dict[str, tuple[Stroke, ...]] = {
    "plain": (),
    "a bar": (((0.0, -0.32), (0.0, 0.32)),),
    "hatched": _aslant(0.3),
    "a cross": (((0.0, -0.3), (0.0, 0.3)), ((-0.3, 0.0), (0.3, 0.0))),
    "two bars": (((-0.16, -0.3), (-0.16, 0.3)), ((0.16, -0.3), (0.16, 0.3))),
    "a chevron": (((-0.2, -0.3), (0.2, 0.0)), ((0.2, 0.0), (-0.2, 0.3))),
    "hatched the other way": _aslant(-0.3),
    "dotted": tuple((dot, dot) for dot in ((-0.2, 0.15), (0.0, -0.2), (0.2, 0.15))),
}


def grain_of(number: int) -> str:
    """The grain of a bead by its number in the palette."""
    return list(GRAINS)[number % len(GRAINS)]


def grey_of(number: int) -> str:
    """The grey of a bead without a colour, by its number in the palette."""
    return GREYS[number % len(GREYS)]


def grain(pen: Pen, one: Laid, which: str, colour: str) -> None:
    """The grain of a bead, in black or in white, whichever stands out from its colour."""
    strokes = GRAINS[which]
    if strokes and min(one.long, one.wide) * pen.canvas.scale >= _LEAST:
        ink = max(_INKS, key=lambda ink: contrast(_INKS[ink], colour))
        dots = " dots" if strokes[0][0] == strokes[0][1] else ""
        ends = [(one.spot(*start), one.spot(*end)) for start, end in strokes]
        pen.strokes(ends, f"grain{dots} {ink}")
