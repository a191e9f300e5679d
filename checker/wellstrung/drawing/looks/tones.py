"""What tells the beads of a palette apart: a colour each, and a grain that a grey printer keeps.

A bead has the colour that the plan gives it, or a grey. The first bead of the palette is plain and
the others have a grain each, so that two of like tone are told apart in print too.
"""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.colours import contrast
from wellstrung.drawing.looks.faces import Laid
from wellstrung.drawing.pen import Pen

#: as many as share no divisor with the grains: seven greys and eight grains are 56 beads apart
GREYS = ("#d4d4d4", "#8f8f8f", "#b5b5b5", "#6e6e6e", "#f0f0f0", "#a2a2a2", "#7d7d7d")
_INKS = {"dark": "#000000", "light": "#ffffff"}
#: the least of a bead on paper, mm, that a grain is drawn on
_LEAST = 0.8
_DOT, _RING = 0.12, 0.26

Stroke = tuple[Spot, Spot]


def _dot(pen: Pen, one: Laid, size: float, ink: str) -> None:
    pen.disc(one.along, 2 * _DOT * size, f"grain dot {ink}", across=one.across)


def _ring(pen: Pen, one: Laid, size: float, ink: str) -> None:
    pen.disc(one.along, 2 * _RING * size, f"grain {ink}", across=one.across)


def _lines(*strokes: Stroke) -> Callable[[Pen, Laid, float, str], None]:
    """Lines by their ends, in parts of the bead: along its hole, and across."""

    def draw(pen: Pen, one: Laid, size: float, ink: str) -> None:
        ends = [(one.spot(*start), one.spot(*end)) for start, end in strokes]
        pen.strokes(ends, f"grain {ink}")

    return draw


def _aslant(rise: float) -> tuple[Stroke, ...]:
    return tuple(((at - 0.15, -rise), (at + 0.15, rise)) for at in (-0.2, 0.0, 0.2))


#: how the beads of a palette are marked, one after another and again from the first
GRAINS: dict[str, Callable[[Pen, Laid, float, str], None] | None] = {
    "plain": None,
    "a dot": _dot,
    "a bar": _lines(((0.0, -0.32), (0.0, 0.32))),
    "a ring": _ring,
    "hatched": _lines(*_aslant(0.3)),
    "a cross": _lines(((0.0, -0.3), (0.0, 0.3)), ((-0.3, 0.0), (0.3, 0.0))),
    "two bars": _lines(((-0.16, -0.3), (-0.16, 0.3)), ((0.16, -0.3), (0.16, 0.3))),
    "hatched the other way": _lines(*_aslant(-0.3)),
}


def grain_of(number: int) -> str:
    """The grain of a bead by its number in the palette."""
    return list(GRAINS)[number % len(GRAINS)]


def grey_of(number: int) -> str:
    """The grey of a bead without a colour, by its number in the palette."""
    return GREYS[number % len(GREYS)]


def grain(pen: Pen, one: Laid, which: str, colour: str) -> None:
    """The grain of a bead, in black or in white, whichever stands out from its colour."""
    draw, size = GRAINS[which], min(one.long, one.wide)
    if draw is not None and size * pen.canvas.scale >= _LEAST:
        draw(pen, one, size, max(_INKS, key=lambda ink: contrast(_INKS[ink], colour)))
