"""One section on its canvas: areas, dimensions, letters, marks, the check bar and the key.

Everything is placed in mm life-size; what must keep its size on paper goes through `paper`.
Dimensions are stacked below the body, shortest first, so that no line crosses a figure.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from functools import partial
from string import ascii_lowercase

from wellstrung.drawing import marks, outlines
from wellstrung.drawing.canvas import Canvas, Spot, words_width
from wellstrung.drawing.key import draw_key
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.marks import Mark
from wellstrung.drawing.outlines import Outline
from wellstrung.quantity.causes import Window
from wellstrung.quantity.value import Quantity

#: how wide a section with its words is at most on paper, mm, where its words let it: two stand side
#: by side on A4 and Letter, and one on the screen of a phone
WIDTH = 83.0
#: the most that a body may take of that, less what dimensions take beside it; and how high it is
PAPER = (52.0, 36.0)
#: how each material is hatched: how far apart its lines are on paper, mm, and how they run
_HATCHING = {"metal": (1.4, 45.0), "work": (2.2, 0.0), "thread": (0.9, 90.0)}
#: how far apart the lines of a clash and of a likely range are on paper, mm, and how they run
_CLASH, _LIKELY = (0.5, (30.0, 120.0)), (0.7, (135.0,))
#: what the patterns mean, by their look
_KEY = {
    "metal": "metal, cut",
    "work": "beadwork, cut",
    "thread": "thread, cut",
    "likely": "likely range",
    "worst": "worst range",
    "clash": "does not fit",
    "taken": "room taken",
    "true": "closes true round this",
    "lost": "lost in the cut",
    "straight": "as a straight hole",
}
#: the least room that a letter needs within a thing, mm on paper
_LETTER_ROOM = 4.0

#: a level dimension of a figure: how wide, its words, and the quantity that it draws
Row = tuple[float, str, str]


class Section:
    """One section; `most` is the largest scale that it may be drawn at."""

    def __init__(self, width: float, height: float, most: float = marks.USUAL) -> None:
        self.canvas = Canvas(marks.fitting(width, height, PAPER, most))
        self.scale, self.paper = self.canvas.scale, self.canvas.paper
        self._over: list[Callable[[], None]] = []  # words lie over every line
        self._used: dict[str, None] = {}
        self._letters = iter(ascii_lowercase)
        self._aside = math.inf  # how low the next item letter beside the body has to stand
        self._top = 0.0
        self._marks: list[float] = []

    # --- areas

    def cut(self, within: Sequence[Outline], look: str = "metal") -> None:
        """Material that is cut through: filled, outlined and hatched by what it is."""
        self.patterned(within, look)
        self._hatch_cut(within, look)

    def clash(self, within: Sequence[Outline], but: Sequence[Outline] = ()) -> None:
        """What has no room: hatched both ways, less the area `but`."""
        if self._hatch(within, "clash", _CLASH, but):
            self._used["clash"] = None

    def patterned(self, within: Sequence[Outline], look: str) -> None:
        """An area with a look that the key explains."""
        self._used[look] = None
        self.canvas.area(within, look)

    def round_pattern(self, x: float, y: float, diameter: float, look: str) -> None:
        """A circle with a look that the key explains."""
        self._used[look] = None
        self.canvas.circle(x, y, diameter / 2, look)

    def round_ranges(self, x: float, y: float, size: Quantity) -> None:
        """How far a diameter may be off: likely hatched, worst between dotted lines."""
        for low, high in self._range("worst", size.worst):
            for end in filter(None, (low, high)):
                self.canvas.circle(x, y, end / 2, "worst")
        for low, high in self._range("likely", size.likely):
            self._likely(outlines.rim(x, y, high, low))

    def ranges(self, size: Quantity, start: float, end: float, *, upright: bool = False) -> None:
        """The same of a width about the middle: level strips, or upright ones for a length."""

        def strip(side: int, low: float, high: float) -> list[Spot]:
            box = outlines.box(start, side * low / 2, end - start, side * (high - low) / 2)
            return [(y, x) for x, y in box] if upright else box

        for side in (-1, 1):
            for low, high in self._range("worst", size.worst):
                a, b, c, d = strip(side, low, high)
                self.canvas.line(*a, *b, "worst")
                self.canvas.line(*c, *d, "worst")
            for low, high in self._range("likely", size.likely):
                self._likely([strip(side, low, high)])

    def goes_on(self, x: float, y: float, long: float, *, level: bool = False) -> None:
        """A break from (x, y) on, down or level to the right: what is cut off there goes on."""
        teeth = (-0.7, 0.7, -0.7, 0.7, -0.7)
        ways = [(long * step / 4, self.paper(tooth)) for step, tooth in enumerate(teeth)]
        points = [
            (x + along, y + aside) if level else (x + aside, y + along) for along, aside in ways
        ]
        self.canvas.curve(points, "break")

    def _hatch_cut(self, within: Sequence[Outline], look: str) -> None:
        step, degrees = _HATCHING[look]
        self._hatch(within, f"{look}-lines", (step, (degrees,)))

    def _hatch(
        self,
        within: Sequence[Outline],
        look: str,
        hatching: tuple[float, Iterable[float]],
        but: Sequence[Outline] = (),
    ) -> bool:
        """Hatch an area, a small one more closely; whether there was any."""
        step, ways = hatching
        lines: list[tuple[Spot, Spot]] = []
        for apart in (step, step / 2, step / 4):
            lines = lines or [
                line for way in ways for line in outlines.hatch(within, self.paper(apart), way, but)
            ]
        self.canvas.strokes(lines, look)
        return bool(lines)

    def _likely(self, within: Sequence[Outline]) -> None:
        self.canvas.area(within, "likely")
        self._hatch(within, "likely-lines", _LIKELY)

    def _range(self, look: str, window: Window) -> list[tuple[float, float]]:
        """The window above zero, if it is wide enough to be seen."""
        low, high = max(window.low, 0.0), max(window.high, 0.0)
        if high - low < self.paper(0.02):
            return []
        self._used[look] = None
        return [(low, high)]

    # --- dimensions, letters and marks

    def rows(self, rows: Iterable[Row], y: float = 0.0) -> None:
        """Level dimensions about the middle of what stands at height y, the shortest first."""
        for width, words, quantity in sorted(rows):
            self.across(-width / 2, width / 2, y, words, quantity)

    def across(self, x1: float, x2: float, y: float, words: str, quantity: str = "") -> None:
        """A level dimension from x1 to x2 of what stands at height y, below all that is drawn."""
        row = max(self.canvas.extent[3], y) + self.paper(5.2)
        for x in (x1, x2):
            self.canvas.line(x, y, x, row + self.paper(1), "reach")
        self._measure(x1, row, x2, row, quantity)
        middle, wide = (x1 + x2) / 2, words_width(words)
        if wide + 2 <= (x2 - x1) * self.scale:
            self.note(middle, row - self.paper(2.2), words)
        elif (x2 - self.canvas.extent[0]) * self.scale + wide > WIDTH - 4:
            self.note(middle, row + self.paper(3.0), words)
        else:
            self.note(x2 + self.paper(1.6), row, words, "start")

    def down(self, y1: float, y2: float, x: float, words: str, quantity: str = "") -> None:
        """An upright dimension from y1 to y2 of what stands at x, right of all that is drawn."""
        column = max(self.canvas.extent[2], x) + self.paper(3.5)
        for y in (y1, y2):
            self.canvas.line(x, y, column + self.paper(1), y, "reach")
        self._measure(column, y1, column, y2, quantity)
        self.note(column + self.paper(1.6), (y1 + y2) / 2, words, "start")

    def letter(self, x: float, y: float, room: float, again: str = "") -> str:
        """The next item letter, or one `again`: within a thing if it has room, else beside all."""
        letter = again or next(self._letters, "z")
        if room * self.scale >= _LETTER_ROOM:
            self.note(x, y, letter)
            return letter
        first = self._aside == math.inf
        left = min(self.canvas.extent[0], x) - (self.paper(4) if first else 0)
        place = y if first else max(y, self._aside)
        self._aside = place + self.paper(4.2)
        self.canvas.line(left + self.paper(1.6), place, x, y, "reach")
        self.note(left, place, letter)
        return letter

    def mark(self, x: float, y: float, several: Sequence[Mark]) -> None:
        """The numbers of remarks, above the body, with a line to what they are about."""
        step = self.paper(2 * marks.REACH + 0.8)
        top = self._top if self._marks else self.canvas.extent[1] - self.paper(5)
        self._top = top
        at = x
        # a mark is in the way of each of these, and once more, at most
        for _ in range((len(several) + 1) * len(self._marks)):
            row = [at + number * step for number in range(len(several))]
            if all(abs(mine - other) >= step for mine in row for other in self._marks):
                break
            at += step
        for number, one in enumerate(several):
            middle = at + number * step
            self._marks.append(middle)
            if number == 0:
                self.canvas.line(middle, top, x, y, "leader")
                self.canvas.circle(x, y, self.paper(0.5), "leader-end")
            self._over.append(partial(marks.mark, self.canvas, middle, top, one))

    def note(self, x: float, y: float, words: str, anchor: str = "middle") -> None:
        """Words at a place, over every line."""
        # they are put last; their room is held before the next row of dimensions finds its own
        self.canvas.hold(*self.canvas.words_extent(x, y, words, anchor=anchor))
        self._over.append(lambda: self.canvas.text(x, y, words, anchor=anchor))

    def _measure(self, x1: float, y1: float, x2: float, y2: float, quantity: str) -> None:
        self.canvas.line(x1, y1, x2, y2, "measure", quantity)
        tick = self.paper(0.8)
        for x, y in ((x1, y1), (x2, y2)):
            self.canvas.line(x - tick, y + tick, x + tick, y - tick, "tick")

    # --- the whole

    def svg(self, title: str, alt: str, sizes: Sizes | None = None) -> str:
        """The drawing with its check bar, the key to its patterns, and that of its beads."""
        for put in self._over:
            put()
        left, _, _, bottom = self.canvas.extent
        y = bottom + self.paper(4)
        marks.check_bar(self.canvas, left, y, on_paper=False)
        y = self._keys(left, y + self.paper(5.5))
        if sizes is not None:
            draw_key(self.canvas, sizes, left, y, self.paper(WIDTH))
        return self.canvas.svg(title, alt, "section")

    def _keys(self, x: float, y: float) -> float:
        """Draw the patches of the key; returns where they end."""
        right = max(self.canvas.extent[2], x + self.paper(WIDTH))
        rows = marks.Rows(x, y, right, self.paper(4.6))
        for look in (look for look in _KEY if look in self._used):
            words = _KEY[look]
            x, y = rows.place(self.paper(8.5 + words_width(words)))
            swatch = [outlines.box(x, y, self.paper(5), self.paper(2.2))]
            self.canvas.area(swatch, f"{look} swatch")
            if look in _HATCHING:
                self._hatch_cut(swatch, look)
            elif look == "clash":
                self._hatch(swatch, "clash", _CLASH)
            elif look == "likely":
                self._hatch(swatch, "likely-lines", _LIKELY)
            self.canvas.text(x + self.paper(6), y + self.paper(1.1), words, anchor="start")
        return rows.y + self.paper(3.4 if rows.begun else -2.0)
