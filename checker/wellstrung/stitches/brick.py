"""Brick stitch: peyote turned by a quarter, so beads stand side by side and rows end to end.

Each bead hangs from a bridge of thread between two beads of the row before, half a bead aside:
straight edges step in and out by half a bead; one bead fewer (or more) each row keeps the middle.
All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.formulas import thread as thread_paths
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making

#: What a row can have more than the one before: a bead more at each edge hangs on the outermost
#: bridge, which gives one more in all, and at each edge one is laddered on beyond it. Common
#: practice, no source.
_ADDS = 3


def columns(part: Part) -> float:
    """Beads that the width holds: straight rows lie half a bead aside of each other (geometry)."""
    if counts := flat.counts_of(part):
        return flat.staggered(counts)
    one_row = part.has("rows") and part.count("rows") == 1
    return flat.staggered([flat.across_of(part)] * (1 if one_row else 2))


def face(part: Part) -> Face:
    """What is seen of it: rows that step aside as their counts say."""
    counts = flat.counts_of(part)
    return Face(flat.across_of(part), counts, asides=flat.asides(counts) if counts else ())


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two beads or more in the first row: a bead hangs between two."""
    yield from flat.refuses(part, "brick stitch", fewest=2, adds=_ADDS)


BRICK = Stitch(
    name="brick",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=False), "outside", columns),
        flat.growth(flat.pitch(along_hole=True), "length"),
        making.thread(thread_paths.brick),
    ),
    refuses=refuses,
    held_against="11 beads of 10/0 or 11/0 in a row -> about 2.5 cm: `Diamond shaped earrings`,"
    " copy seen; 11 d gives 23.1 mm of 11/0 and 25.3 mm of 10/0",
    look=Weave(Pattern.BRICKS, face, "rows", along=True, thread=Thread.BRIDGES),
)
