"""Ladder stitch: rungs side by side, each of one bead or of `across` beads end to end.

A row is a rung: it adds the outside of a bead to the length. All of it is geometry, worked out for
this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.formulas import thread as thread_paths
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Rungs of one bead or more."""
    yield from flat.refuses(part, "ladder stitch")


def _rung(part: Part) -> float:
    """Beads of a rung; where rungs grow or shrink, of a rung halfway along."""
    counts = flat.counts_of(part) or (flat.across_of(part),)
    return sum(counts) / len(counts)


LADDER = Stitch(
    name="ladder",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=True), "length"),
        flat.growth(flat.pitch(along_hole=False), "outside"),
        making.thread(thread_paths.ladder, share=thread_paths.WALKED, rung=_rung),
    ),
    refuses=refuses,
    passes=3,
    held_against="no published figure: rungs that touch are plain to see, but a loose ladder gapes"
    " by more than the 5 % allowed here, so measure a swatch",
    look=Weave(Pattern.ROWS, flat.face, "rows", thread=Thread.RUNGS),
)
