"""Flat peyote, even, odd and two-drop: columns of beads, each half a bead up from its neighbour.

A band `across` columns wide starts with that many beads, which are two rows; every later row puts a
bead on every other column. Rows are counted zigzag between two columns, as beaders count them. In
two-drop two beads are taken for one, in three-drop three: they lie end to end, so the sizes stay,
and only the count of columns must be a multiple of it. An odd count of stitches has no bead to turn
into at one edge, which takes thread. Beads with
two holes lie alike: a row on every other column, and the next row's thread through their second
holes, half their size further on. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import count, formula
from wellstrung.formulas import row_on_row, thread_turns
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import ceil, either, most
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making


def first_row(across: float) -> int:
    """Beads of the first row: every other column, the outermost included.

    Counting.

    >>> first_row(7), first_row(8)
    (4, 4)
    """
    return math.ceil(across / 2)


def beads(rows: float, across: float, each_row: float) -> float:
    """Beads in all: straight, half the columns a row; shaped, so many more or fewer each row.

    An odd count goes 4, 3, 4, 3: an odd number of its rows has half a bead more than is said here.

    Counting.

    >>> beads(100, 12, 0), beads(4, 7, -1)
    (600.0, 10.0)
    """
    shaped = flat.shaped(rows, ceil(across / 2), each_row)
    return either(each_row == 0, rows * across / 2, shaped)


def bead_up_of(part: Part) -> int:
    """Beads taken for one stitch."""
    return part.count("bead_up", default=1)


def columns(part: Part) -> float:
    """Columns at the widest: beads of one row stand on every other column (geometry)."""
    counts = flat.counts_of(part, first_row)
    if not counts:
        return flat.across_of(part)
    laid = 2 * row_on_row.staggered(counts) - 1
    return laid if flat.lists_rows(part) else most(flat.across_of(part), laid)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two stitches or more across, and whole stitches."""
    up = bead_up_of(part)
    yield from flat.refuses(
        part,
        "flat peyote",
        fewest=2 * up,
        first=first_row,
        adds=1,
        uses=("each_row", "bead_up"),
    )
    across = 0 if flat.lists_rows(part) else flat.across_of(part)
    if across % up and across > 2 * up:
        less = across - across % up
        yield (
            f"`{part.name}` is {across} beads across and takes {up} at a time: write"
            f" `across: {less}` or `across: {less + up}`",
            part.place_of("across"),
        )
    if up > 1 and part.has("each_row"):
        yield (
            f"`{part.name}` takes {up} beads at a time and is shaped by the bead: take `bead_up` or"
            " `each_row` out",
            part.place_of("each_row"),
        )


def _turns_at(part: Part) -> float:
    """How many of its edges turn without a bead to go into: one, where a straight count is odd."""
    stitches = flat.across_of(part) // bead_up_of(part)
    return 0.0 if flat.counts_of(part, first_row) else float(stitches % 2)


def _step(part: Part, ask: Quantities) -> Quantity:
    """How wide a bead is that the thread steps past; two-hole beads lie on one straight thread."""
    two_hole = flat.of_two_hole_beads(part)
    return exact("step", 0.0, "mm") if two_hole else making.bead("outside")(part, ask)


def _share(part: Part, ask: Quantities) -> Quantity:
    """How far the hand is off: less where fewer steps count, more where no thread was walked."""
    if flat.of_two_hole_beads(part):
        return making.thread_share()(part, ask)
    one = bead_up_of(part) == 1
    share = thread_paths.PEYOTE_WALKED if one else thread_paths.WALKED
    return making.thread_share(share)(part, ask)


_THREAD = formula(
    "thread",
    "mm",
    lambda beads, rows, bead_length, bead_outside, up, turns, share: (
        (
            beads * thread_paths.peyote(bead_length, bead_outside, up)
            + rows * thread_turns.peyote_turn(bead_outside)
            + turns * thread_paths.odd_turn(bead_length, bead_outside, up)
        )
        * share
    ),
    beads="beads",
    rows="rows",
    bead_length=making.bead("length"),
    bead_outside=_step,
    up=count("beads up", bead_up_of),
    turns=formula(
        "odd turns",
        "",
        lambda rows, edges: edges * rows / 2,
        rows="rows",
        edges=count("odd edges", _turns_at),
        source="every second row ends at one edge: counting",
    ),
    share=_share,
)


def _face(part: Part) -> Face:
    counts = flat.counts_of(part, first_row)
    asides = row_on_row.asides(counts) if counts else ()
    return Face(flat.across_of(part), counts, asides=asides, group=bead_up_of(part))


FLAT_PEYOTE = Stitch(
    name="flat peyote",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        flat.width(flat.pitch(along_hole=True), "length", columns),
        flat.growth(flat.pitch(along_hole=False, share=0.5), "outside"),
        _THREAD,
        flat.beads(beads, across=flat.across_of, each_row=flat.change_of),
    ),
    refuses=refuses,
    held_against="no published figure for a flat width; bent round, a hoop of 50 columns of 10/0"
    " cylinders is about 32 mm across (`Boot camp: peyote hoops`, copy seen), which is 1.10 bead"
    " lengths a column, the loose end of this form; real bands may come out wider",
    side_every=2,
    look=Weave(Pattern.COLUMNS, _face, "rows"),
)
