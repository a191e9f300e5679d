"""What all drawings share: the numbers of remarks, the check bar, and the scales.

Sizes here are on paper, mm, so that they stay legible at any scale.
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from wellstrung.drawing.canvas import Canvas

#: how far the number of a remark reaches from its middle, and how high it is, mm on paper
REACH, _NUMBER = 2.1, 2.7
#: how large a drawing may be, times life: the larger, the finer what has to be seen
USUAL, CLOSE, FINE = 5.0, 10.0, 20.0
#: the scales that drawings are made at, the largest first
SCALES = (
    FINE, CLOSE, USUAL, 4.0, 3.0, 2.0, 1.5, 1.0, 0.8, 2 / 3, 0.5, 0.4,
    *(1 / n for n in (3, 4, 5, 6, 8, 10, 15, 20, 40, 100, 200, 500, 1000, 10_000, 100_000)),
)  # fmt: skip
#: the longest that a check bar is on paper, and how high it is, mm
_LONGEST_BAR, _BAR = 50.0, 1.4
#: the round lengths of bars and of the steps of rulers, times powers of ten
_ROUND = (1.0, 2.0, 5.0, 10.0)


class Mark(NamedTuple):
    """The number of a remark in the report, and its level."""

    number: int
    level: str


def mark(canvas: Canvas, x: float, y: float, which: Mark) -> None:
    """The number of a remark about (x, y): in a disc for an error, in a box for a warning."""
    r = canvas.paper(REACH)
    if which.level == "error":
        canvas.circle(x, y, r, "mark error")
    else:
        canvas.box(x - r, y - r, 2 * r, 2 * r, f"mark {which.level}")
    canvas.text(x, y, str(which.number), f"number {which.level}", _NUMBER)


def fitting(width: float, height: float, paper: tuple[float, float], most: float = USUAL) -> float:
    """The largest scale, of those up to `most`, at which a body in mm fits on a paper's mm.

    What fits at none is drawn at the smallest.

    >>> fitting(20, 10, (145, 95)), fitting(70, 10, (145, 95)), fitting(150, 90, (145, 95))
    (5.0, 2.0, 0.8)
    """
    wide, high = paper
    fits = (one for one in SCALES if one <= most and width * one <= wide and height * one <= high)
    return next(fits, SCALES[-1])


def stated(scale: float) -> str:
    """A scale as drawings state it.

    >>> stated(5.0), stated(1 / 3), stated(1.0)
    ('5 : 1', '1 : 3', 'life-size')
    """
    if scale == 1:
        return "life-size"
    ratio = Fraction(scale).limit_denominator(100_000)
    return f"{ratio.numerator} : {ratio.denominator}"


def round_length(mm: float, *, most: bool = False) -> float:
    """The next round length, mm, from `mm` on; the last one up to it where `most` is set.

    >>> round_length(15.0), round_length(45.0), round_length(45.0, most=True)
    (20.0, 50.0, 20.0)
    """
    ten = 10.0 ** int(f"{mm:e}".split("e")[1])
    if most:
        return next(ten * by for by in reversed(_ROUND) if ten * by <= mm * (1 + 1e-9))
    return next(ten * by for by in _ROUND if ten * by >= mm * (1 - 1e-9))


def check_bar(canvas: Canvas, x: float, y: float) -> None:
    """A bar of a round length to hold a ruler against, with its top left corner at (x, y).

    Its words say how long it is on the piece, at which scale, and on paper.
    """
    length = round_length(canvas.paper(_LONGEST_BAR), most=True)
    high, block = canvas.paper(_BAR), length / 5
    canvas.box(x, y, length, high, "bar")
    for number in (0, 2, 4):
        canvas.box(x + number * block, y, block, high, "bar-block")
    words = f"{length:.10g} mm, {'' if canvas.scale == 1 else 'drawn '}{stated(canvas.scale)}"
    if canvas.scale != 1:
        words += f": {length * canvas.scale:.3g} mm on paper"
    canvas.text(x + length + canvas.paper(1.6), y + high / 2, words, anchor="start")
