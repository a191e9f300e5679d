"""The piece laid out straight, to scale, with what hangs from it and where its remarks are.

Two drawings: the whole piece over a ruler, and a close-up in which long worked parts are cut short
by breaks, so that the findings can be made out. Earrings are drawn as they hang.
"""

from __future__ import annotations

from wellstrung.drawing import Figure
from wellstrung.drawing.laid_out import LaidOut
from wellstrung.drawing.parts import Sizes
from wellstrung.drawing.shapes import Canvas
from wellstrung.drawing.written import Written
from wellstrung.judging.result import PlanResult
from wellstrung.quantity.working import number

#: what fits between the margins of A4 and of Letter, and leaves room for a caption, mm
PAGE_WIDTH, PAGE_HEIGHT = 176.0, 190.0
#: scales as a drawing states them, the largest first
SCALES = {
    "5 : 1": 5.0, "4 : 1": 4.0, "3 : 1": 3.0, "2 : 1": 2.0, "3 : 2": 1.5, "1 : 1": 1.0,
    "4 : 5": 0.8, "2 : 3": 2 / 3, "1 : 2": 0.5, "2 : 5": 0.4, "1 : 3": 1 / 3, "1 : 4": 0.25,
    "1 : 5": 0.2, "1 : 6": 1 / 6, "1 : 8": 0.125,
    **{f"1 : {n}": 1 / n for n in (10, 15, 20, 40, 100, 200, 500, 1000, 10_000, 100_000)},
}  # fmt: skip


def drawings(result: PlanResult) -> list[Figure]:
    """The drawings of a checked plan; none where the result keeps no plan, or it has no run."""
    if result.ask is None or not result.ask.plan.run:
        return []
    sizes = Sizes(result.ask)
    if any(entry.part.kind.name == "ear wire" for entry in result.ask.plan.run):
        return [_fitted(result, sizes, "The piece as it hangs", upright=True, close=True, most=5.0)]
    whole = "The whole piece, laid out straight"
    return [
        _fitted(result, sizes, whole, upright=False, close=False, most=1.0),
        _fitted(result, sizes, "Close up", upright=False, close=True, most=3.0),
    ]


def _fitted(
    result: PlanResult, sizes: Sizes, title: str, *, upright: bool, close: bool, most: float
) -> Figure:
    """One drawing at the largest scale at which it fits on the page."""
    bare = LaidOut(sizes, Canvas(), upright=upright, close=close).canvas
    for scale in SCALES.values():
        # words keep their height on the page, so that only drawing tells whether all of it fits
        if scale <= most and _fits(bare, scale):
            piece = LaidOut(sizes, Canvas(scale), upright=upright, close=close)
            written = Written(result, piece)
            if _fits(piece.canvas, scale):
                break
    alt = _in_words(piece, written)
    svg = piece.canvas.svg(title, alt, "piece")
    return Figure(title, alt, _caption(piece), svg, tuple(sorted(written.marked)))


def _fits(canvas: Canvas, scale: float) -> bool:
    """Whether what is on a canvas fits on a page at a scale; at the smallest everything does."""
    width, height = (side * scale for side in canvas.size)
    return (width <= PAGE_WIDTH and height <= PAGE_HEIGHT) or scale == min(SCALES.values())


def _caption(piece: LaidOut) -> str:
    said = f"Drawn {stated(piece.canvas.scale)}."
    if piece.band:
        said += f" Each band of woven work is {number(piece.band)} mm long."
    if piece.cut_short:
        said += f" Cut short at the breaks: {', '.join(piece.cut_short)}."
    if piece.hanging.left_out():
        said += f" Drawn of many: {', '.join(piece.hanging.left_out())}."
    if piece.plan.is_loop:
        said += " Laid open: its two ends meet."
    return said


def _in_words(piece: LaidOut, written: Written) -> str:
    """What a drawing shows, for who cannot see it."""
    way = "from the top down" if piece.upright else "from left to right"
    said = f"{piece.plan.title}, {way}: "
    said += ", then ".join(piece.words(one) for one in piece.shown if not one.hung) + "."
    hung = [piece.words(one) for one in piece.shown if one.hung]
    if hung:
        said += f" From it hang: {', '.join(hung)}."
    if written.marked:
        said += f" Remarks marked at their place: {', '.join(map(str, sorted(written.marked)))}."
    return said


def stated(scale: float) -> str:
    """A scale in words, as `life-size` or `1 : 3, 33.33 % of life`."""
    if scale == 1:
        return "life-size"
    size = f"{number(scale)} times life" if scale > 1 else f"{number(scale * 100)} % of life"
    return f"{next(words for words, one in SCALES.items() if one == scale)}, {size}"
