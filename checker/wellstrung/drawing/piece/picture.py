"""A picture of a piece for a pattern or a shop page: nothing but the piece, bead by bead.

A checked plan and a size in, a canvas out.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.piece.annotations import Annotations
from wellstrung.drawing.piece.body import Body, hangs
from wellstrung.drawing.piece.worn import on_course
from wellstrung.judging.result import PlanResult

#: no more beads of one part are drawn one by one
_MOST_BEADS = 6000
#: the width that words may have, mm, where they stand beside a piece
_WORDS = 170.0
#: how often the scale is mended where words take room that does not grow with the piece
_TRIES = 30

#: how wide and high a picture may be, mm on paper: the scale that this asks for, from its size
Sizing = Callable[[float, float], float]


def picture(
    result: PlanResult, sizing: Sizing | None = None, *, notes: bool = False, curved: bool = False
) -> Canvas | None:
    """The piece as it lies or hangs, life-size, or as large as asked for.

    With `notes` it has its names, the marks of its remarks, a ruler and a key. It may be `curved`
    as it is worn: None where it goes round nothing.
    """
    assert result.ask is not None
    if curved:
        body = on_course(result, _MOST_BEADS)
        if body is None:
            return None
    else:
        upright = hangs(result.ask.plan)
        body = Body(Sizes(result.ask), Canvas(), upright=upright, most_beads=_MOST_BEADS)

    def drawn(scale: float) -> Canvas:
        canvas = Canvas(scale)
        canvas.take(body.canvas, "piece")
        if notes:
            Annotations(result, body, canvas, (_WORDS, math.inf))
        return canvas

    canvas = drawn(1.0)
    if sizing is None:
        return canvas
    for _ in range(_TRIES):
        by = sizing(*canvas.paper_size)
        if abs(by - 1) < 1e-4:
            break
        canvas = drawn(canvas.scale * by)
    return canvas
