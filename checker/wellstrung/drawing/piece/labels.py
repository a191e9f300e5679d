"""Words beside a drawing, each with a line to what it names, none over another.

Above a drawing, words begin at their own line and run to the right. Placed from the right end on, a
label lies higher than those that it runs over, so no line crosses words: worked out for this
project.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing import marks
from wellstrung.drawing.canvas import Canvas, words_width
from wellstrung.drawing.marks import Mark

#: from one row of labels to the next, and from one mark to the next, mm on paper
ROW, _STEP = 5.6, 2 * marks.REACH + 0.6


class Label(Struct, frozen=True):
    """Words, with the marks of remarks before them, for the part or the half that lies at (x, y).

    It is `level` where it may point to the other side of the run as well.
    """

    x: float
    y: float
    words: str
    marks: tuple[Mark, ...] = ()
    part: str = ""
    half: str = ""
    level: bool = False

    @property
    def other_side(self) -> Label:
        """The same, pointing to the other side of a run whose middle lies at height 0."""
        return replace(self, y=-self.y)

    @property
    def width(self) -> float:
        """On paper, mm, with a little air."""
        return len(self.marks) * _STEP + words_width(self.words) + 2.0


def above(canvas: Canvas, labels: Iterable[Label], edge: float) -> None:
    """Labels in rows above a drawing whose top is at `edge`."""
    _in_rows(canvas, labels, edge, -1)


def below(canvas: Canvas, labels: Iterable[Label], edge: float) -> None:
    """Labels in rows below a drawing whose foot is at `edge`."""
    _in_rows(canvas, labels, edge, 1)


def _in_rows(canvas: Canvas, labels: Iterable[Label], edge: float, way: int) -> None:
    paper = canvas.paper
    begins: list[float] = []  # where the words of each row begin, from the nearest row on
    for label in sorted(labels, key=lambda one: -one.x):
        right = label.x + paper(label.width)
        row = next((row for row, start in enumerate(begins) if right <= start), len(begins))
        begins[row : row + 1] = [label.x]
        # to the right of this label's line, nearer rows are no longer free
        begins[:row] = [min(start, label.x) for start in begins[:row]]
        middle = edge + way * paper(1.5 + row * ROW + ROW / 2)
        canvas.line(label.x, middle - way * paper(ROW / 2), label.x, label.y, "leader")
        _write(canvas, label, label.x, middle)


def beside(canvas: Canvas, labels: Iterable[Label], edge: float, top: float = -math.inf) -> None:
    """Labels in a column to the right of a drawing whose right edge is at `edge`, below `top`."""
    row = canvas.paper(ROW)
    least = top + row / 2
    for label in sorted(labels, key=lambda one: one.y):
        y = max(label.y, least)
        least = y + row
        start = edge + canvas.paper(6)
        turn = (edge + canvas.paper(1.5), label.y)
        canvas.curve([(label.x, label.y), turn, (start - canvas.paper(0.8), y)], "leader")
        _write(canvas, label, start, y)


def _write(canvas: Canvas, label: Label, x: float, middle: float) -> None:
    """The end of the line to what it names, its marks, and its words."""
    with canvas.thing(label.part, label.half, "named"):
        canvas.circle(label.x, label.y, canvas.paper(0.4), "leader-end")
        for which in label.marks:
            marks.mark(canvas, x + canvas.paper(marks.REACH), middle, which)
            x += canvas.paper(_STEP)
        if label.words:
            canvas.text(x + canvas.paper(0.4), middle, label.words, "label", anchor="start")
