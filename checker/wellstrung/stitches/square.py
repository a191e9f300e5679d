"""Square stitch: beads in straight rows and columns, each sewn to the bead below it.

Along a row beads lie end to end, from row to row side by side. All of it is geometry, worked out
for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas import thread_turns
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two beads or more in the first row: one bead wide it is a ladder."""
    yield from flat.refuses(part, "square stitch", fewest=2)


SQUARE = Stitch(
    name="square",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=True), "length"),
        flat.growth(flat.pitch(along_hole=False), "outside"),
        making.thread(
            thread_paths.square,
            share=thread_paths.WALKED,
            turn=thread_turns.square_turn,
            each="rows",
        ),
    ),
    refuses=refuses,
    passes=3,
    held_against="12 g of 3 mm cubes -> a bracelet of 8 1/2 in: `Marching Cubes bracelet`, copy"
    " seen; its width was not seen, and 72 rows of 3 are 216 cubes, which weigh 10 to 13 g",
    look=Weave(Pattern.ROWS, flat.face, "rows", thread=Thread.LINKS),
)
