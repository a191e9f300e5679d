"""Pendants, with their rows of eyes above and below."""

from __future__ import annotations

from msgspec import Struct

from wellstrung.drawing.looks.rings import eye
from wellstrung.drawing.looks.shape import Drawn
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part


class _Row(Struct, frozen=True):
    """A row of eyes: how many, their hole and wall, and how they are spaced if the plan says so."""

    count: int = 0
    hole: float = 0.0
    wall: float = 0.0
    spacing: float | None = None

    @property
    def reach(self) -> float:
        """What the row takes along: a wall, a hole and a wall."""
        return self.hole + 2 * self.wall

    @property
    def width(self) -> float:
        """What the row takes across, with a little metal beyond."""
        step = self.spacing or self.reach + 1.5
        return (max(self.count, 1) - 1) * step + self.reach + 2.0

    def places(self, width: float) -> tuple[float, ...]:
        """Where each lies across: as spaced, or spread over the width."""
        step = self.spacing or (width - self.reach) / max(self.count, 1)
        return tuple((number - (self.count - 1) / 2) * step for number in range(self.count))


def _row(sizes: Sizes, part: Part, key: str) -> _Row:
    if not part.has(key):
        return _Row()
    return _Row(
        part.count(key, "count", default=1),
        sizes.known(part, f"{key}.hole", 2.0),
        sizes.known(part, f"{key}.wire", 1.0),
        sizes.mm(part, f"{key}.spacing"),
    )


def pendant(pen: Pen, sizes: Sizes, part: Part, number: int = 0) -> Drawn:
    """Its top eyes, its body and its bottom eyes, from where the top eyes bear.

    A body whose height or width the plan does not say is dashed.
    """
    top, below = _row(sizes, part, "top_eyes"), _row(sizes, part, "bottom_eyes")
    across = width(sizes, part)
    known = sizes.mm(part, "width") is not None and sizes.mm(part, "height") is not None
    height = sizes.known(part, "height", top.reach + below.reach + max(across * 0.3, 3.0))
    start, end = top.hole + top.wall, height - top.wall - below.reach
    for place in top.places(across):
        eye(pen, sizes, part, "top_eyes", place)
    foot = start + max(end - start, 1.0)
    pen.box(start, foot - start, across, "metal" if known else "metal open-size", corner=1.2)
    feet = []
    for place in below.places(across):
        eye(pen.moved(foot), sizes, part, "bottom_eyes", place)
        feet.append((foot + below.hole, place))
    return Drawn(feet[0][0] if feet else sizes.known(part, "height", UNKNOWN), tuple(feet))


def lying(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A pendant in the run."""
    pendant(pen, sizes, part)


def width(sizes: Sizes, part: Part) -> float:
    """Its width, or what its eyes take where the plan does not say it."""
    rows = (_row(sizes, part, key) for key in ("top_eyes", "bottom_eyes"))
    return sizes.known(part, "width", max(UNKNOWN, *(row.width for row in rows)))


def tops(sizes: Sizes, part: Part) -> tuple[float, ...]:
    """Where its top eyes lie across; its middle where the plan does not say."""
    return _row(sizes, part, "top_eyes").places(width(sizes, part)) or (0.0,)
