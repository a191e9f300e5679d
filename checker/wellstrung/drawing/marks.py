"""What all drawings share: the numbers of remarks, the check bar, the key, and the scales.

Sizes here are on paper, mm, so that they stay legible at any scale; they are our own choice.
"""

from __future__ import annotations

import math
from collections.abc import Collection
from fractions import Fraction
from typing import NamedTuple

from wellstrung.drawing.canvas import WORDS, Canvas, Spot, words_width

#: how far the number of a remark reaches from its middle, and how high it is, mm on paper
REACH, _NUMBER = 2.6, 3.2
#: how large a drawing may be, times life: the larger, the finer what has to be seen
USUAL, CLOSE, FINE = 5.0, 10.0, 20.0
#: the scales that drawings are made at, the largest first
SCALES = (
    FINE, CLOSE, USUAL, 4.0, 3.0, 2.0, 1.5, 1.0, 0.8, 2 / 3, 0.5, 0.4,
    *(1 / n for n in (3, 4, 5, 6, 8, 10, 15, 20, 40, 100, 200, 500, 1000, 10_000, 100_000)),
)  # fmt: skip
#: the longest that a check bar is on paper, and in a narrow drawing; how high it is, mm
LONGEST_BAR, _NARROW_BAR, _BAR = 50.0, 40.0, 1.4
#: the round lengths of bars and of the steps of rulers, times powers of ten
_ROUND = (1.0, 2.0, 5.0, 10.0)


#: how wide and how high a drawing may be, mm on paper
Room = tuple[float, float]


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


def fitting(width: float, height: float, paper: Room, most: float = USUAL) -> float:
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

    >>> stated(5.0), stated(1 / 3), stated(1.0), stated(0.371)
    ('5 : 1', '1 : 3', 'life-size', '1 : 2.7')
    """
    if scale == 1:
        return "life-size"
    if not any(math.isclose(scale, one, rel_tol=1e-6) for one in SCALES):
        return f"{scale:.3g} : 1" if scale > 1 else f"1 : {1 / scale:.3g}"
    ratio = Fraction(scale).limit_denominator(100_000)
    return f"{ratio.numerator} : {ratio.denominator}"


class Rows:
    """Entries of a key side by side from (x, y) on, in as many rows as they need up to `right`."""

    def __init__(self, x: float, y: float, right: float, high: float) -> None:
        self.x = self._left = x
        self.y, self._right, self._high = y, right, high

    def place(self, wide: float, air: float = 0.0) -> Spot:
        """Where the next entry begins, with so much white after it."""
        if self.begun and self.x + wide > self._right:
            self.x, self.y = self._left, self.y + self._high
        spot = self.x, self.y
        self.x += wide + air
        return spot

    @property
    def begun(self) -> bool:
        """Whether its last row has an entry."""
        return self.x > self._left


#: what the key of a drawing says of the looks that need words: the swatch is drawn like the thing
_LEGEND = {
    "solder": "soldered",
    "slit": "open, not soldered",
    "open-size": "size not given",
    "broken": "cut short here",
}


def legend(canvas: Canvas, x: float, y: float, right: float, looks: Collection[str]) -> float:
    """What the looks that a drawing has mean, in rows from (x, y) on; where the next row begins."""
    paper = canvas.paper
    high = paper(WORDS * 1.5)
    rows = Rows(x, y, right, high)
    for look, words in _LEGEND.items():
        if look in looks:
            x, y = rows.place(paper(8 + words_width(words)), paper(3))
            _swatch(canvas, x + paper(2.5), y, look)
            canvas.text(x + paper(6), y, words, anchor="start")
    return rows.y + high if rows.begun else rows.y


def _swatch(canvas: Canvas, x: float, y: float, look: str) -> None:
    """A thing of a look about (x, y), 4 mm on paper."""
    paper = canvas.paper
    if look == "open-size":
        canvas.box(x - paper(2), y - paper(1.3), paper(4), paper(2.6), "metal open-size")
    elif look == "broken":
        for at in (-1.0, 1.0):
            teeth = [
                (x + paper(at + (0.4, -0.4)[n % 2]), y + paper(n * 0.5 - 1.5)) for n in range(7)
            ]
            canvas.curve(teeth, "broken")
    else:
        r, wire = paper(1.5), paper(0.5)
        canvas.ring(x, y, 2 * r, 2 * r, wire, "metal")
        if look == "solder":
            canvas.circle(x, y - r + wire / 2, wire * 0.7, "solder")
        else:
            canvas.line(x, y - r, x + wire / 4, y - r + wire, "slit")


def round_length(mm: float, *, most: bool = False) -> float:
    """The next round length, mm, from `mm` on; the last one up to it where `most` is set.

    >>> round_length(15.0), round_length(45.0), round_length(45.0, most=True)
    (20.0, 50.0, 20.0)
    """
    ten = 10.0 ** int(f"{mm:e}".split("e")[1])
    if most:
        return next(ten * by for by in reversed(_ROUND) if ten * by <= mm * (1 + 1e-9))
    return next(ten * by for by in _ROUND if ten * by >= mm * (1 - 1e-9))


def check_bar(canvas: Canvas, x: float, y: float, *, on_paper: bool = True) -> None:
    """A bar of a round length to hold a ruler against, with its top left corner at (x, y).

    Its words say how long it is on the piece, at which scale, and `on_paper`; without that the bar
    is shorter too, for a narrow drawing.
    """
    longest = LONGEST_BAR if on_paper else _NARROW_BAR
    length = round_length(canvas.paper(longest), most=True)
    high, block = canvas.paper(_BAR), length / 5
    canvas.box(x, y, length, high, "bar")
    for number in (0, 2, 4):
        canvas.box(x + number * block, y, block, high, "bar-block")
    words = f"{length:.10g} mm, {'' if canvas.scale == 1 else 'drawn '}{stated(canvas.scale)}"
    if on_paper and canvas.scale != 1:
        words += f": {length * canvas.scale:.3g} mm on paper"
    canvas.text(x + length + canvas.paper(1.6), y + high / 2, words, anchor="start")
