"""Where beads are left out, for they are too many: a break mark, and how many there are in all."""

from __future__ import annotations

from wellstrung.drawing.canvas import words_width
from wellstrung.drawing.pen import Pen

#: how far a break mark lies from what it breaks, mm
_AWAY = 0.8


def _zigzag(pen: Pen, along: float, half: float) -> None:
    """A break mark across the line, half so wide."""
    spots = [(along + (-0.5, 0.5)[n % 2], half * (n / 3 - 1)) for n in range(7)]
    pen.line(spots, "broken")


def gap(pen: Pen, start: float, end: float, half: float) -> None:
    """Break marks at both ends of what is left out from `start` to `end`."""
    for along in (start + _AWAY, end - _AWAY):
        _zigzag(pen, along, half)


def left_out(pen: Pen, start: float, end: float, half: float, count: int) -> None:
    """The marks where beads are left out from `start` to `end`, and the count of all beads."""
    gap(pen, start, end, half)
    words = f"{count:,} beads"
    canvas, middle = pen.canvas, (start + end) / 2
    if pen.upright:
        canvas.text(*pen.at(middle, half + canvas.paper(1.0)), words, anchor="start")
    elif canvas.paper(words_width(words)) <= end - start - 4 * _AWAY:
        canvas.text(*pen.at(middle), words)
