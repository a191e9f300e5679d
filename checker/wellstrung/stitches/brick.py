"""Brick stitch: peyote turned by a quarter, so beads stand side by side and rows end to end.

Each bead hangs from a bridge of thread between two beads of the row before, half a bead aside:
straight edges step in and out by half a bead; one bead fewer (or more) each row keeps the middle.
All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, hand
from wellstrung.formulas import row_on_row, thread_turns
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making

#: What a row can have more than the one before: a bead more at each edge hangs on the outermost
#: bridge, which gives one more in all, and at each edge one is laddered on beyond it (`Brick
#: stitch`, https://beading.live/brick-stitch).
_ADDS = 3


def columns(part: Part) -> float:
    """Beads that the width holds: straight rows lie half a bead aside of each other (geometry)."""
    if counts := flat.counts_of(part):
        return row_on_row.staggered(counts)
    one_row = part.has("rows") and part.count("rows") == 1
    return row_on_row.staggered([flat.across_of(part)] * (1 if one_row else 2))


def face(part: Part) -> Face:
    """What is seen of it: rows that step aside as their counts say."""
    counts = flat.counts_of(part)
    return Face(flat.across_of(part), counts, asides=row_on_row.asides(counts) if counts else ())


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two beads or more in the first row: a bead hangs between two."""
    yield from flat.refuses(
        part, "brick stitch", fewest=2, adds=_ADDS, uses=("each_row", "started_on")
    )


def row_on(outside: float, bead_length: float, sits: float) -> float:
    """How long a row is, mm, that goes once round a hoop with the holes of its beads pointing out.

    Beads touch where they are widest: straight ones at the end that lies on the hoop, `sits` 0,
    round ones at half their length, 1. Geometry, worked out for this project.

    >>> round(row_on(25.0, 1.45, 0.0), 1), round(row_on(25.0, 1.45, 1.0), 1)
    (78.5, 83.1)
    """
    return pi * (outside + sits * bead_length)


def _start(part: Part) -> Part:
    what = part.part("started_on")
    if what is None:
        raise part.missing("started_on")
    return what


_COUNT_THEM = "weave ten beads of {part} onto it, and see how many go on"
_SITS = hand("where the beads of the first row touch", (0.0, 0.5, 1.0), cure=_COUNT_THEM)


def _room(part: Part, ask: Quantities) -> Quantity:
    """How long the row is that goes onto what the band is started on, mm."""
    what = _start(part)
    if not what.traits.hoop:
        return ask.of(what, "length")
    return derived(
        f"{part.name}.room for its first row",
        "mm",
        row_on,
        outside=ask.of(what, what.traits.hoop),
        bead_length=making.bead("length")(part, ask),
        sits=_SITS(part, ask),
        source=GEOMETRY,
    )


_PITCH = flat.pitch(along_hole=False)
_ROOM_FOR = formula(
    "room for",
    "",
    lambda room, outside, tension: room / flat.side_by_side(outside, tension),
    room=_room,
    outside=making.bead("outside"),
    tension=hand("thread tension", flat.TENSION, cure=_COUNT_THEM),
    source=GEOMETRY,
)


def _begun(part: Part, ask: Quantities) -> Quantity:
    """Thread that a bead of the first row takes beyond the others."""
    what = part.part("started_on")
    if what is None:
        sizes = {f"bead_{size}": making.bead(size) for size in ("length", "outside")}
        return formula("begun", "mm", thread_paths.brick_first, sizes)(part, ask)
    # chain has wires of several links: a thread goes round little more than its own path
    wire = ask.of(what, "wire") if "wire" in what.kind.quantities else exact("wire", 0.0, "mm")
    return derived(f"{part.name}.begun", "mm", thread_paths.round_a_wire, wire=wire)


_THREAD = formula(
    "thread",
    "mm",
    lambda beads, rows, bead_length, bead_outside, first, begun, share: (
        (
            beads * thread_paths.brick(bead_length, bead_outside)
            + rows * thread_turns.brick_turn(bead_length, bead_outside)
            + first * begun
        )
        * share
    ),
    beads="beads",
    rows="rows",
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    first=count("first row", flat.across_of),
    begun=_begun,
    share=making.thread_share(thread_paths.WALKED),
)


BRICK = Stitch(
    name="brick",
    makes=flat.BAND,
    columns="beads",
    quantities={
        **flat.band(
            flat.width(_PITCH, "outside", columns),
            flat.growth(flat.pitch(along_hole=True), "length"),
            _THREAD,
        ),
        "room_for": _ROOM_FOR,
    },
    refuses=refuses,
    how="Each bead hangs from the thread between two beads of the row before: the needle goes under"
    " it, and back up through the bead",
    held_against="11 beads of 10/0 or 11/0 in a row -> about 2.5 cm: `Diamond shaped earrings`,"
    " copy seen; 11 d gives 23.1 mm of 11/0 and 25.3 mm of 10/0",
    look=Weave(Pattern.BRICKS, face, "rows", along=True, thread=Thread.BRIDGES),
)
