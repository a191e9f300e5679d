"""One bead: an oval, or the outline that its family has in the trade tables."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.pen import Pen

#: corners, in parts of the bead's length along its hole and of its outside
_OUTLINES: Mapping[str, Sequence[Spot]] = {
    "bicone": ((-0.5, -0.14), (0, -0.5), (0.5, -0.14), (0.5, 0.14), (0, 0.5), (-0.5, 0.14)),
    "box": ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)),
    "facets": (
        *((-0.5, -0.21), (-0.21, -0.5), (0.21, -0.5), (0.5, -0.21)),
        *((0.5, 0.21), (0.21, 0.5), (-0.21, 0.5), (-0.5, 0.21)),
    ),
    "chip": (
        *((-0.5, -0.1), (-0.3, -0.5), (0.2, -0.42), (0.5, -0.1)),
        *((0.38, 0.4), (-0.1, 0.5), (-0.45, 0.3)),
    ),
}
#: corners of what hangs by a hole through its top, in parts of its width and of its height, down
_HANGING: Mapping[str, Sequence[Spot]] = {
    "drop": (
        *((-0.14, -0.06), (0.14, -0.06), (0.25, 0.2), (0.44, 0.45), (0.5, 0.64), (0.42, 0.82)),
        *((0.22, 0.92), (0, 0.94), (-0.22, 0.92), (-0.42, 0.82), (-0.5, 0.64)),
        *((-0.44, 0.45), (-0.25, 0.2)),
    ),
    "dagger": (
        *((-0.2, -0.06), (0.2, -0.06), (0.32, 0.2), (0.5, 0.62), (0.36, 0.8)),
        *((0, 0.94), (-0.36, 0.8), (-0.5, 0.62), (-0.32, 0.2)),
    ),
}


def bead(pen: Pen, sizes: Sizes, name: str, middle: float, *, turned: bool = False) -> None:
    """A bead of the palette with its middle at `middle`; `turned` with its hole across the line."""
    length, outside = sizes.bead(name)
    outline, look = sizes.outline(name), sizes.look(name)
    along, across = (outside, length) if turned else (length, outside)
    if outline in _HANGING:
        height, top = sizes.height(name), middle
        spots = [(outside * wide, height * down) for wide, down in _HANGING[outline]]
        if turned:  # down the line, from where its top lies
            top = middle - height / 2
            spots = [(down + 0.06 * height, wide) for wide, down in spots]
    elif outline in _OUTLINES:
        corners = _OUTLINES[outline]
        spots = [
            (along * x, across * y) for x, y in (corners if not turned else map(_flip, corners))
        ]
        top = middle
    else:
        pen.oval(middle, along, across, look)
        return
    pen.line([(top + x, y) for x, y in (*spots, spots[0])], look)


def _flip(spot: Spot) -> Spot:
    return spot[1], spot[0]
