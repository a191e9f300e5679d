"""Brick stitch: peyote turned by a quarter, so beads stand side by side and rows end to end.

Each bead hangs from a bridge of thread between two beads of the row before, half a bead aside:
straight edges step in and out by half a bead; one bead fewer (or more) each row keeps the middle.
All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.formulas import thread as thread_paths
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making


def columns(rows: float, across: float, each_row: float) -> float:
    """Beads that the width holds: straight rows lie half a bead aside of each other (geometry).

    >>> columns(10, 8, 0), columns(8, 8, -1), columns(1, 8, 0)
    (8.5, 8, 8)
    """
    return across + 0.5 if each_row == 0 and rows > 1 else flat.widest(rows, across, each_row)


def _columns_of(part: Part) -> float:
    rows = part.count("rows") if part.has("rows") else 2
    return columns(rows, flat.across_of(part), flat.change_of(part))


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two beads or more in the first row: a bead hangs between two."""
    yield from flat.refuses(part, "brick stitch", fewest=1 if flat.change_of(part) > 0 else 2)


BRICK = Stitch(
    name="brick",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=False), "outside", _columns_of),
        flat.growth(flat.pitch(along_hole=True), "length"),
        making.thread(thread_paths.brick),
    ),
    refuses=refuses,
    held_against="11 beads of 10/0 or 11/0 in a row -> about 2.5 cm: `Diamond shaped earrings`,"
    " copy seen; 11 d gives 23.1 mm of 11/0 and 25.3 mm of 10/0",
    look=Weave(Pattern.BRICKS, flat.face, "rows", along=True, thread=Thread.BRIDGES),
)
