"""The piece laid out straight, to scale, with what hangs from it and where its remarks are.

A checked plan in, figures out: the whole piece over a ruler, and a close-up in which long worked
parts are cut short by breaks, so that the findings can be made out. Earrings are drawn as they
hang.
"""

from __future__ import annotations

from wellstrung.drawing import Figure, marks
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.piece.annotations import Annotations
from wellstrung.drawing.piece.body import Body
from wellstrung.drawing.piece.hanging import counted
from wellstrung.judging.result import PlanResult
from wellstrung.quantity.working import number

#: what fits between the margins of A4 and of Letter, and leaves room for a caption, mm
PAPER = (170.0, 190.0)
#: how large the whole piece, a close-up, and a piece that hangs may be drawn, times life
_WHOLE, _CLOSE_UP, _HANGING = 1.0, 3.0, marks.USUAL
#: so many things are drawn: places of the run, and what hangs from them
_MOST_THINGS = 500


def drawings(result: PlanResult, room: tuple[float, float] = PAPER) -> list[Figure]:
    """The drawings of a checked plan; none where the result keeps no plan, or it has no run.

    Each fits into the room, mm on paper, if it can be drawn so small.
    """
    if result.ask is None or not result.ask.plan.run:
        return []
    things = counted(result.ask.plan)
    if things > _MOST_THINGS:
        says = f"It has {things:,} things to draw, more than can be made out on a page"
        return [Figure("The piece is not drawn", says, f"{says}: its sizes are listed below.", "")]
    sizes = Sizes(result.ask)
    if any(entry.part.kind.look.hangs for entry in result.ask.plan.run):
        title = "The piece as it hangs"
        return [_fitted(result, sizes, room, title, _HANGING, upright=True, close=True)]
    return [
        _fitted(result, sizes, room, "The whole piece, laid out straight", _WHOLE, close=False),
        _fitted(result, sizes, room, "Close up", _CLOSE_UP, close=True),
    ]


def _fitted(
    result: PlanResult,
    sizes: Sizes,
    room: tuple[float, float],
    title: str,
    most: float,
    *,
    upright: bool = False,
    close: bool,
) -> Figure:
    """One drawing at the largest scale at which it fits into its room with its words."""

    def drawn(scale: float) -> tuple[Body, Annotations]:
        body = Body(sizes, Canvas(scale), upright=upright, close=close)
        return body, Annotations(result, body)

    left, top, right, bottom = Body(sizes, Canvas(), upright=upright, close=close).canvas.extent
    first = marks.fitting(right - left, bottom - top, room, most)
    body, notes = drawn(first)
    smaller = marks.SCALES[marks.SCALES.index(first) + 1 :]
    # where it does not fit at the smallest scale, its words alone take more than a page
    if not _fits(body, room) and smaller and _fits(drawn(smaller[-1])[0], room):
        for scale in smaller:
            body, notes = drawn(scale)
            if _fits(body, room):
                break
    alt = _in_words(body, notes)
    svg = body.canvas.svg(title, alt, "piece")
    high = body.canvas.paper_size[1]
    return Figure(title, alt, _caption(body), svg, tuple(sorted(notes.marked)), high)


def _fits(body: Body, room: tuple[float, float]) -> bool:
    """Whether a drawing fits into its room."""
    return all(side <= most for side, most in zip(body.canvas.paper_size, room, strict=True))


def _caption(body: Body) -> str:
    scale = body.canvas.scale
    size = f"{number(scale)} times life" if scale > 1 else f"{number(scale * 100)} % of life"
    said = f"Drawn {marks.stated(scale)}{'' if scale == 1 else f', {size}'}."
    if body.band:
        said += f" Each band of woven work is {number(body.band)} mm long."
    if body.cut_short:
        said += f" Cut short at the breaks: {', '.join(body.cut_short)}."
    if body.hanging.left_out:
        said += f" Drawn of many: {', '.join(body.hanging.left_out)}."
    if body.plan.is_loop:
        said += " Laid open: its two ends meet."
    return said


def _in_words(body: Body, notes: Annotations) -> str:
    """What a drawing shows, for who cannot see it."""
    way = "from the top down" if body.upright else "from left to right"
    said = f"{body.plan.title}, {way}: "
    said += ", then ".join(body.words(one) for one in body.shown if not one.hung) + "."
    hung = [body.words(one) for one in body.shown if one.hung]
    if hung:
        said += f" From it hang: {', '.join(hung)}."
    if notes.marked:
        said += f" Remarks marked at their place: {', '.join(map(str, sorted(notes.marked)))}."
    return said
