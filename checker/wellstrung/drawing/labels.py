"""Words beside a drawing, each with a line to what it names, none over another.

Above a drawing words begin at their own line and run to the right. Placed from the right end on, a
label lies higher than those that it runs over, so no line crosses words: worked out for this
project.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing.shapes import LETTER, Canvas

#: height of the words on the page, mm, and of a line of them
SIZE, LINE = 2.6, 4.6
#: how far a mark with a number reaches from its middle on the page, mm
REACH = 2.0


class Mark(Struct, frozen=True):
    """The number of a remark, and its level."""

    number: int
    level: str


class Label(Struct, frozen=True):
    """Words, with the marks of remarks before them, for what lies at (x, y)."""

    x: float
    y: float
    words: str
    marks: tuple[Mark, ...] = ()

    @property
    def width(self) -> float:
        """On the page, mm, with a little air."""
        return len(self.marks) * (2 * REACH + 0.6) + len(self.words) * SIZE * LETTER + 2.0


def above(canvas: Canvas, labels: list[Label], edge: float) -> None:
    """Labels in rows above a drawing whose top is at `edge`."""
    _in_rows(canvas, labels, edge, -1)


def below(canvas: Canvas, labels: list[Label], edge: float) -> None:
    """Labels in rows below a drawing whose foot is at `edge`."""
    lowered = [replace(label, y=-label.y) for label in labels]
    _in_rows(canvas, lowered, edge, 1)


def _in_rows(canvas: Canvas, labels: list[Label], edge: float, way: int) -> None:
    unit = 1 / canvas.scale
    begins: list[float] = []  # where the words of each row begin, from the nearest row on
    for label in sorted(labels, key=lambda one: -one.x):
        right = label.x + label.width * unit
        row = next((row for row, start in enumerate(begins) if right <= start), len(begins))
        begins[row : row + 1] = [label.x]
        # to the right of this label's line, a nearer row is free no more
        begins[:row] = [min(start, label.x) for start in begins[:row]]
        middle = edge + way * (1.5 + row * LINE + LINE / 2) * unit
        canvas.line(label.x, middle - way * LINE * unit / 2, label.x, label.y, "leader")
        canvas.circle(label.x, label.y, 0.4 * unit, "leader-end")
        _write(canvas, label, label.x, middle)


def beside(canvas: Canvas, labels: list[Label], edge: float, top: float = float("-inf")) -> None:
    """Labels in a column to the right of a drawing whose right edge is at `edge`, below `top`."""
    unit = 1 / canvas.scale
    least = top + LINE * unit / 2
    for label in sorted(labels, key=lambda one: one.y):
        y = max(label.y, least)
        least = y + LINE * unit
        start = edge + 6 * unit
        turn = (edge + 1.5 * unit, label.y)
        canvas.curve([(label.x, label.y), turn, (start - 0.8 * unit, y)], "leader")
        canvas.circle(label.x, label.y, 0.4 * unit, "leader-end")
        _write(canvas, label, start, y)


def _write(canvas: Canvas, label: Label, x: float, middle: float) -> None:
    unit = 1 / canvas.scale
    for which in label.marks:
        mark(canvas, x + REACH * unit, middle, which)
        x += (2 * REACH + 0.6) * unit
    if label.words:
        canvas.text(
            x + 0.4 * unit, middle + SIZE * unit * 0.36, label.words, "label", SIZE, "start"
        )


def mark(canvas: Canvas, x: float, y: float, which: Mark) -> None:
    """The number of a remark: in a disc for an error, in a box for a warning."""
    reach = REACH / canvas.scale
    if which.level == "error":
        canvas.circle(x, y, reach, "mark error")
    else:
        canvas.box(x - reach, y - reach * 0.9, 2 * reach, 1.8 * reach, "mark warning")
    canvas.text(
        x, y + SIZE / canvas.scale * 0.36, str(which.number), f"mark-words {which.level}", SIZE
    )
