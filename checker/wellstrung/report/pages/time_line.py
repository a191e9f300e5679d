"""The work as a time line: hands above, and striped below them what cures by itself.

Blocks are drawn as long as they take, but short ones keep room for their number, and long stretches
in which hands are idle are shortened.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from wellstrung.drawing import Figure
from wellstrung.drawing.canvas import Canvas, words_width
from wellstrung.report.pages.work_order import Order, days

#: width of a time line on the page, and on the screen of a phone, mm
_WIDTH, _PHONE = 166.0, 91.0
#: the least that a block with a number takes, mm; an idle stretch
_BLOCK, _IDLE = 4.4, 16.0
#: height of a row, with what cures and without; room for the names at their heads, mm
_HIGH, _FLAT, _LEAST_NAME, _MOST_NAME = 13.5, 8.5, 26.0, 48.0
#: so many stretches of a row can be made out; of more, one block stands for all
_MOST_BLOCKS = 160
#: so many rows fit on a page together
_ROWS = 14


class Row(NamedTuple):
    """One time line: its name, the work, and whether at a student's pace."""

    name: str
    order: Order
    student: bool


class _Block(NamedTuple):
    """A stretch of a time line: of hands, or of what cures."""

    start: float
    end: float
    name: str
    cures: bool


def time_lines(rows: Sequence[Row]) -> Iterator[Figure]:
    """Time lines of many plans, in figures that each fit on a page."""
    for start in range(0, len(rows), _ROWS):
        some = rows[start : start + _ROWS]
        last = start + len(some)
        title = "Plan by plan" if len(rows) <= _ROWS else f"Plans {start + 1} to {last}"
        yield time_line(title, some)


def time_line(title: str, rows: Sequence[Row]) -> Figure:
    """One figure of several rows; on the screen of a phone each has its name above it."""
    said = [
        f"{name}: {days(order.student_hands if student else order.hands)} of hands, "
        f"done in {_ends(order, student=student)}"
        for name, order, student in rows
    ]
    alt = f"{title}. {'; '.join(said)}. The table below lists each step."
    caption = (
        "Numbers are the steps of the plan. Striped: cures by itself. Long waits are shortened."
    )
    wide, narrow = _beside(rows), _below(rows)
    return Figure(
        title,
        alt,
        caption,
        wide.svg(title, alt, "timeline roomy"),
        narrow=narrow.svg(title, alt, "timeline narrow"),
    )


def _beside(rows: Sequence[Row]) -> Canvas:
    """The rows, their names to the left of them."""
    canvas, y = Canvas(), 0.0
    heads = [_cut(name, _MOST_NAME) for name, *_ in rows]
    room = max(*map(words_width, heads), _LEAST_NAME) + 2.0
    for head, (_, order, student) in zip(heads, rows, strict=True):
        canvas.text(0, y + 3.3, head, "label", anchor="start")
        canvas.text(0, y + 6.8, f"done in {_ends(order, student=student)}", anchor="start")
        y += _draw_row(canvas, _blocks(order, student=student), y, (room, _WIDTH))
    return canvas


def _below(rows: Sequence[Row]) -> Canvas:
    """The rows as a phone shows them, each below its name."""
    canvas, y = Canvas(), 0.0
    for name, order, student in rows:
        ends = f", done in {_ends(order, student=student)}"
        head = _cut(name, _PHONE - words_width(ends))
        canvas.text(0, y + 2.0, f"{head}{ends}", "label", anchor="start")
        y += 3.6
        y += _draw_row(canvas, _blocks(order, student=student), y, (0.0, _PHONE)) + 2.0
    return canvas


def _cut(words: str, room: float) -> str:
    """Words in so much room, mm, with their end left out where they have more."""
    letters = max(int(room / words_width("m")), 2)
    return words if len(words) <= letters else f"{words[: letters - 1]}…"


def _ends(order: Order, *, student: bool) -> str:
    return days(order.student_ends if student else order.maker_ends)


def _blocks(order: Order, *, student: bool) -> list[_Block]:
    found = []
    for step in order.steps:
        start = step.student_begins if student else step.begins
        hands = step.student_hands if student else step.hands
        if hands:
            found.append(_Block(start, start + hands, str(step.number), False))
        if step.rest:
            end = start + hands + step.rest
            found.append(_Block(start + hands, end, days(step.rest), True))
    return found


def _draw_row(
    canvas: Canvas, blocks: list[_Block], y: float, between: tuple[float, float]
) -> float:
    """One time line: hands above, what cures below; returns how high it is."""
    if len(blocks) > _MOST_BLOCKS:  # too short to be made out: one block for all
        blocks = [_Block(blocks[0].start, blocks[-1].end, f"{len(blocks)} stretches", False)]
    at = _places(blocks, *between)
    for block in blocks:
        left, right = at[block.start], at[block.end]
        top = y + 7.4 if block.cures else y + 1
        canvas.box(left, top, right - left, 5.2, "cure" if block.cures else "hands")
        if block.cures:
            for stripe in range(int((right - left) / 2.4)):
                x = left + 1.2 + stripe * 2.4
                canvas.line(x, top + 5.2, x + 1.2, top, "stripe")
        width = words_width(block.name)
        if width > right - left:
            continue  # the table below has it
        if block.cures:
            middle = (left + right) / 2
            canvas.box(middle - width / 2 - 0.5, top + 0.7, width + 1.0, 3.8, "words-ground")
        canvas.text((left + right) / 2, top + 2.6, block.name)
    return _HIGH if any(block.cures for block in blocks) else _FLAT


def _places(blocks: list[_Block], left: float, right: float) -> dict[float, float]:
    """Where each moment lies on the page: blocks of hands by their length, idle time shortened."""
    moments = sorted({moment for block in blocks for moment in (block.start, block.end)})
    spans = list(pairwise(moments))
    busy = [
        any(not b.cures and b.start < end and b.end > start for b in blocks) for start, end in spans
    ]
    idle = min(_IDLE, (right - left) / 2 / max(busy.count(False), 1))
    room = right - left - idle * busy.count(False)
    worked = sum(end - start for (start, end), one in zip(spans, busy, strict=True) if one)
    least = min(_BLOCK, room / max(busy.count(True), 1))
    spare = max(room - least * busy.count(True), 0.0)
    at, places = left, {}
    for (start, end), one in zip(spans, busy, strict=True):
        places[start] = at
        at += least + spare * (end - start) / worked if one else idle
        places[end] = at
    return places
