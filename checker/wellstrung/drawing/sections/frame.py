"""The frame of a section: its scale, dimensions, flags, item letters, check bar and key.

Everything is placed in mm life-size; what must keep its height on paper is divided by the scale.
Dimensions are stacked below the body, shortest first, so that no line crosses a figure.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import partial
from string import ascii_lowercase
from typing import NamedTuple

from wellstrung.drawing import hatching
from wellstrung.drawing.hatching import Outline
from wellstrung.drawing.shapes import Canvas
from wellstrung.quantity.causes import Window
from wellstrung.quantity.value import Quantity

#: The most a body may take on paper, mm: what an upright A4 page has beside its margins, less what
#: dimensions take beside it; and a third of its height.
_WIDEST, _HIGHEST = 145.0, 95.0
SCALES = (5.0, 2.0, 1.0, 0.5, 0.2, 0.1)
#: for eyes and links, where a tenth of a mm decides
CLOSE = (10.0, *SCALES)
#: for holes of beads, in which thread of a fifth of a mm has to be seen
FINE = (20.0, *CLOSE)
#: the check bar, mm on paper
BAR = 50.0
#: height of letters on paper, mm, and how wide one is at most
_LETTERS, _LETTER = 2.5, 1.55

#: what the patterns mean, by their look
_KEY = {
    "likely": "likely range",
    "worst": "worst range",
    "clash": "does not fit",
    "taken": "room taken",
    "true": "closes true round this",
    "lost": "lost in the cut",
    "reckoned": "reckoned as a straight hole",
}


class Mark(NamedTuple):
    """The number of a remark in the report, and its level."""

    number: int
    level: str


def goes_on_page(width: float, scale: float) -> bool:
    """Whether a body this wide, in mm, goes on the page at a scale."""
    return width * scale <= _WIDEST


def scale_for(width: float, height: float, scales: Sequence[float] = SCALES) -> float:
    """The first of the scales at which a body of this size, in mm, goes on the page.

    >>> scale_for(20, 10), scale_for(40, 10), scale_for(140, 90)
    (5.0, 2.0, 1.0)
    """
    fits = (s for s in scales if goes_on_page(width, s) and height * s <= _HIGHEST)
    return next(fits, min(_WIDEST / max(width, 1e-9), _HIGHEST / max(height, 1e-9)))


def told(scale: float) -> str:
    """A scale as it is written beside a drawing.

    >>> told(5.0), told(0.2)
    ('5:1', '1:5')
    """
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:.3g}"


class Section:
    """One section on its canvas."""

    def __init__(self, width: float, height: float, scales: Sequence[float] = SCALES) -> None:
        self.scale = scale_for(width, height, scales)
        self.canvas = Canvas(self.scale, margin=self.paper(1.5))
        self._over: list[Callable[[], None]] = []  # words lie over every line
        self._used: dict[str, None] = {}
        self._letters = iter(ascii_lowercase)
        self._aside = math.inf  # how low the next item letter beside the body has to stand
        self._row = 0.0
        self._top = 0.0
        self._flags: list[float] = []

    def paper(self, mm: float) -> float:
        """Millimetres on paper as millimetres life-size."""
        return mm / self.scale

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of what is drawn so far."""
        return self.canvas.extent

    # --- areas

    def cut(self, outlines: Sequence[Outline], look: str = "metal") -> None:
        """Material that is cut through: filled, outlined and hatched by what it is."""
        self.canvas.area(outlines, look)
        step, degrees = {"metal": (1.4, 45.0), "work": (2.2, 0.0), "thread": (0.9, 90.0)}[look]
        lines = hatching.hatch(outlines, self.paper(step), degrees)
        self.canvas.strokes(lines, f"{look}-lines")

    def clash(self, within: Sequence[Outline], but: Sequence[Outline] = ()) -> None:
        """What has no room: hatched both ways, less the area `but`."""
        for degrees in (30.0, 120.0):
            lines = hatching.hatch(within, self.paper(0.8), degrees, but)
            if lines:
                self._used["clash"] = None
            self.canvas.strokes(lines, "clash")

    def round_bands(self, x: float, y: float, size: Quantity) -> None:
        """How far a diameter may be off: likely hatched, worst between dotted lines."""
        for look, window in (("worst", size.worst), ("likely", size.likely)):
            low, high = self._spread(window)
            if high - low < self.paper(0.02):
                continue
            self._used[look] = None
            if look == "worst":
                for end in filter(None, (low, high)):
                    self.canvas.circle(x, y, end / 2, look)
                continue
            ring = [hatching.circle(x, y, high / 2), hatching.circle(x, y, low / 2)]
            self.canvas.area(ring, look)
            self.canvas.strokes(hatching.hatch(ring, self.paper(0.7), 135.0), "likely-lines")

    def strips(self, size: Quantity, start: float, end: float, *, upright: bool = False) -> None:
        """The same of a width about the middle: level strips, or upright ones for a length."""
        for side in (-1, 1):
            for look, window in (("worst", size.worst), ("likely", size.likely)):
                low, high = sorted(side * edge / 2 for edge in self._spread(window))
                if high - low < self.paper(0.02):
                    continue
                self._used[look] = None
                strip = hatching.box(start, low, end - start, high - low)
                if upright:
                    strip = [(y, x) for x, y in strip]
                if look == "worst":
                    for one, other in (strip[:2], strip[2:]):
                        self.canvas.line(*one, *other, look)
                    continue
                self.canvas.area([strip], look)
                self.canvas.strokes(hatching.hatch([strip], self.paper(0.7), 135.0), "likely-lines")

    def taken(self, x: float, y: float, diameter: float) -> None:
        """The round hole that things take together, drawn dashed."""
        self._used["taken"] = None
        self.canvas.circle(x, y, diameter / 2, "taken")

    def closes_true(self, x: float, y: float, diameter: float) -> None:
        """The thickest round thing that an open ring goes round and still closes true."""
        self._used["true"] = None
        self.canvas.circle(x, y, diameter / 2, "true")

    def reckoned(self, outlines: Sequence[Outline]) -> None:
        """What a formula takes for the shape of something rounder."""
        self._used["reckoned"] = None
        self.canvas.area(outlines, "reckoned")

    def lost(self, outlines: Sequence[Outline]) -> None:
        """What is cut through and lost."""
        self._used["lost"] = None
        self.canvas.area(outlines, "lost")

    def goes_on(self, x: float, y: float, long: float, *, level: bool = False) -> None:
        """A break from (x, y) on, down or level to the right: what is cut off there goes on."""
        teeth = (-0.7, 0.7, -0.7, 0.7, -0.7)
        ways = [(long * step / 4, self.paper(tooth)) for step, tooth in enumerate(teeth)]
        points = [
            (x + along, y + aside) if level else (x + aside, y + along) for along, aside in ways
        ]
        self.canvas.curve(points, "break")

    @staticmethod
    def _spread(window: Window) -> tuple[float, float]:
        return max(window.low, 0.0), max(window.high, 0.0)

    # --- dimensions, letters and flags

    def across(
        self,
        x1: float,
        x2: float,
        y: float,
        words: str,
        quantity: str = "",
        *,
        same_row: bool = False,
    ) -> None:
        """A level dimension from x1 to x2 of what stands at height y, below all that is drawn.

        Or in the same row as the one before, for what stands beside.
        """
        row = self._row if same_row else max(self.box[3], y) + self.paper(4.6)
        self._row = row
        for x in (x1, x2):
            self.canvas.line(x, y, x, row + self.paper(1), "reach")
        self._measure(x1, row, x2, row, quantity)
        if len(words) * _LETTER + 2 <= (x2 - x1) * self.scale:
            self._words((x1 + x2) / 2, row - self.paper(0.9), words, "middle")
        else:
            self._words(x2 + self.paper(1.6), row + self.paper(0.8), words, "start")

    def down(self, y1: float, y2: float, x: float, words: str, quantity: str = "") -> None:
        """An upright dimension from y1 to y2 of what stands at x, right of all that is drawn."""
        column = max(self.box[2], x) + self.paper(3.5)
        for y in (y1, y2):
            self.canvas.line(x, y, column + self.paper(1), y, "reach")
        self._measure(column, y1, column, y2, quantity)
        self._words(column + self.paper(1.6), (y1 + y2) / 2 + self.paper(0.9), words, "start")

    def letter(self, x: float, y: float, room: float, again: str = "") -> str:
        """The next item letter, or one `again`: within a thing if it has room, else beside all."""
        letter = again or next(self._letters, "z")
        if room * self.scale >= 3.4:
            self._words(x, y + self.paper(0.9), letter, "middle")
            return letter
        left = min(self.box[0], x) - self.paper(0 if self._aside < math.inf else 4)
        place = y if self._aside == math.inf else max(y, self._aside)
        self._aside = place + self.paper(3.6)
        self.canvas.line(left + self.paper(1.6), place, x, y, "reach")
        self._words(left, place + self.paper(0.9), letter, "middle")
        return letter

    def flag(self, x: float, y: float, marks: Sequence[Mark]) -> None:
        """The numbers of remarks, above the body, with a line to what they are about."""
        size, top = self.paper(6.4), self.box[1]
        if self._flags:
            top = self._top
        self._top = top
        at = x
        while any(abs(at - other) < size for other in self._flags):
            at += size
        for step, mark in enumerate(marks):
            centre = (at + step * size, top - self.paper(5))
            self._flags.append(centre[0])
            if step == 0:
                self.canvas.line(*centre, x, y, "pointer")
                self.canvas.circle(x, y, self.paper(0.5), "pointed")
            self._over.append(partial(self._flag, *centre, mark))

    def _flag(self, x: float, y: float, mark: Mark) -> None:
        """Round for an error, square for a warning."""
        r = self.paper(2.8)
        if mark.level == "error":
            self.canvas.circle(x, y, r, "flag")
        else:
            self.canvas.area([hatching.box(x - r, y - r, 2 * r, 2 * r)], "flag")
        self.canvas.text(x, y + self.paper(1.05), str(mark.number), "flag-number", 3.0)

    def note(self, x: float, y: float, words: str, anchor: str = "middle") -> None:
        """Words at a place."""
        self._words(x, y, words, anchor)

    def _measure(self, x1: float, y1: float, x2: float, y2: float, quantity: str) -> None:
        self.canvas.line(x1, y1, x2, y2, "measure", quantity)
        tick = self.paper(0.8)
        for x, y in ((x1, y1), (x2, y2)):
            self.canvas.line(x - tick, y + tick, x + tick, y - tick, "tick")

    def _words(self, x: float, y: float, words: str, anchor: str) -> None:
        # words are put last, over every line; their room is held before the next row finds its own
        high, wide = self.paper(_LETTERS), self.paper(len(words) * _LETTER)
        left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
        self.canvas.hold(left, y - high, left + wide, y + high / 3)
        self._over.append(lambda: self.canvas.text(x, y, words, "words", _LETTERS, anchor))

    # --- the whole

    def svg(self, title: str, alt: str) -> str:
        """The drawing with its check bar and the key to its patterns."""
        for put in self._over:
            put()
        left, _, _, bottom = self.box
        y = bottom + self.paper(4)
        self._bar(left, y)
        self._keys(left, y + self.paper(5.5))
        return self.canvas.svg(title, alt, "section")

    def _bar(self, x: float, y: float) -> None:
        block, high = self.paper(BAR / 5), self.paper(1.4)
        self.canvas.box(x, y, 5 * block, high, "bar")
        for number in (0, 2, 4):
            self.canvas.box(x + number * block, y, block, high, "bar-block")
        words = f"{BAR:g} mm on paper, drawn {told(self.scale)}"
        self.canvas.text(
            x + self.paper(BAR + 1.6), y + self.paper(1.6), words, "words", anchor="start"
        )

    def _keys(self, x: float, y: float) -> None:
        at = x
        for look in (look for look in _KEY if look in self._used):
            swatch = [hatching.box(at, y, self.paper(5), self.paper(2.2))]
            self.canvas.area(swatch, f"{look} swatch")
            angles = {"clash": (30.0, 120.0), "likely": (135.0,)}.get(look, ())
            for degrees in angles:
                lines = hatching.hatch(swatch, self.paper(0.8), degrees)
                self.canvas.strokes(lines, "clash" if look == "clash" else "likely-lines")
            words = _KEY[look]
            self.canvas.text(at + self.paper(6), y + self.paper(2), words, "words", anchor="start")
            at += self.paper(8.5 + len(words) * _LETTER)
