"""The piece laid out straight, to scale, with what hangs from it and where its remarks are.

A checked plan in, figures out: the whole piece over a ruler, and a close-up in which long worked
parts are cut short by breaks, so that the findings can be made out. Earrings are drawn as they
hang.
"""

from __future__ import annotations

import zlib
from functools import partial

from wellstrung.drawing import Figure, marks
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.marks import Room
from wellstrung.drawing.piece.annotations import Annotations
from wellstrung.drawing.piece.body import Body, hangs
from wellstrung.drawing.piece.hanging import can_be_seen, counted
from wellstrung.drawing.piece.worn import worn as worn
from wellstrung.judging.result import PlanResult
from wellstrung.quantity.working import number

#: what fits between the margins of A4 and of Letter, and leaves room for a caption, mm
PAPER = (170.0, 190.0)
#: what the screen of a phone of 390 pixels shows, mm
PHONE = (93.0, 200.0)
#: how large the whole piece, a close-up, and a piece that hangs may be drawn, times life
_WHOLE, _CLOSE_UP, _HANGING = 1.0, 3.0, marks.USUAL


def drawings(result: PlanResult, room: Room = PAPER, only: int | None = None) -> list[Figure]:
    """The drawings of a checked plan; none where the result keeps no plan, or it has no run.

    Each fits into the room, mm on paper, if it can be drawn so small. `only` is one of them: 0 is
    the whole piece, 1 the close-up.
    """
    if result.ask is None or not result.ask.plan.run:
        return []
    things = counted(result.ask.plan)
    if not can_be_seen(result.ask.plan):
        says = f"It has {things:,} things to draw, more than can be made out on a page"
        figure = Figure("The piece is not drawn", says, f"{says}.", "")
        return [] if only else [figure]
    fitted = partial(_fitted, result, Sizes(result.ask), room)
    if hangs(result.ask.plan):
        title = "The piece as it hangs"
        ways = [partial(fitted, title, _HANGING, upright=True, close=True)]
    else:
        title = "The whole piece, laid out straight"
        ways = [
            partial(fitted, title, _WHOLE, close=False),
            partial(fitted, "Close up", _CLOSE_UP, close=True),
        ]
    return [draw() for number, draw in enumerate(ways) if only in (None, number)]


def _fitted(
    result: PlanResult,
    sizes: Sizes,
    room: Room,
    title: str,
    most: float,
    *,
    upright: bool = False,
    close: bool,
) -> Figure:
    """One drawing at the largest scale at which it fits on the page with its words.

    And once more on the screen of a phone, where its shapes are those of the other.
    """
    body = Body(sizes, Canvas(), upright=upright, close=close)
    # one page may show several plans
    name = f"{title.split()[-1]}-{zlib.crc32(body.plan.text.encode()):x}"
    notes = _noted(result, body, name, room, most)
    small = _noted(result, body, name, PHONE, most, again=True)
    alt = _in_words(body, notes)
    return Figure(
        title,
        alt,
        _caption(body),
        notes.canvas.svg(title, alt, "piece roomy"),
        tuple(sorted(notes.marked)),
        notes.canvas.paper_size[1],
        small.canvas.svg(title, alt, "piece narrow"),
        scale=notes.canvas.scale,
    )


def _noted(
    result: PlanResult,
    body: Body,
    name: str,
    paper: Room,
    most: float,
    *,
    again: bool = False,
) -> Annotations:
    """A body with its words, at the largest scale at which both fit on a paper's mm."""

    def noted(scale: float, *, letters: bool = False) -> Annotations:
        canvas = Canvas(scale)
        canvas.take(body.canvas, "piece", name, again=again)
        return Annotations(result, body, canvas, paper, letters=letters)

    def fits(notes: Annotations) -> bool:
        pairs = zip(notes.canvas.paper_size, paper, strict=True)
        return all(side <= room for side, room in pairs)

    left, top, right, bottom = body.canvas.extent
    first = marks.fitting(right - left, bottom - top, paper, most)
    smaller = marks.SCALES[marks.SCALES.index(first) + 1 :]
    notes = noted(first)
    if again and not fits(notes):
        noted = partial(noted, letters=True)
        notes = noted(first)
    # where it does not fit at the smallest scale, its words alone take more than a page
    if not fits(notes) and smaller and fits(noted(smaller[-1])):
        for scale in smaller:
            notes = noted(scale)
            if fits(notes):
                break
    return notes


def _caption(body: Body) -> str:
    said = []
    if body.band:
        said.append(f"Each band of woven work is {number(body.band)} mm long.")
    if body.cut_short:
        said.append(f"Cut short at the breaks: {', '.join(body.cut_short)}.")
    if body.hanging.left_out:
        said.append(f"Drawn of many: {', '.join(body.hanging.left_out)}.")
    if body.plan.is_loop:
        said.append("Laid open: its two ends meet.")
    return " ".join(said)


def _in_words(body: Body, notes: Annotations) -> str:
    """What a drawing shows, for readers who cannot see it."""
    way = "from the top down" if body.upright else "from left to right"
    said = f"{body.plan.title}, {way}: "
    said += ", then ".join(body.words(one) for one in body.shown if not one.hung) + "."
    hung = [body.words(one) for one in body.shown if one.hung]
    if hung:
        said += f" From it hang: {', '.join(hung)}."
    if notes.marked:
        said += f" Remarks marked at their place: {', '.join(map(str, sorted(notes.marked)))}."
    return said
