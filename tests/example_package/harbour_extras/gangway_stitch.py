"""Gangway stitch: straight rows, each bead sewn to the one below it by two more passes."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making


def thread_per_bead(outside: float, length: float) -> float:
    """Thread for one bead, mm: four times through it, and down and up beside it (counted).

    >>> thread_per_bead(2.0, 1.5)
    10.0
    """
    return 4 * length + 2 * outside


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two columns or more."""
    yield from flat.refuses(part, "gangway stitch", fewest=2)


GANGWAY = Stitch(
    name="gangway",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=True), "length"),
        flat.growth(flat.pitch(along_hole=False), "outside"),
        making.thread(thread_per_bead),
    ),
    refuses=refuses,
    passes=4,
    held_against="no published figure",
    look=Weave(Pattern.ROWS, flat.face, "rows"),
)
