"""Loom work: rows of beads between warp threads, one more warp than columns.

A column is a bead and the warp beside it; rows lie side by side. `warp` is how thick the warp
threads are. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    GEOMETRY,
    constant,
    count,
    formula,
    measurable,
    size,
    written_or,
)
from wellstrung.formulas.thread import WALKED
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making

#: What each warp has beyond the work, to tie it on and to finish it: common practice, no source.
SPARE_WARP = 550.0
#: Threads that serve as warp, where the plan does not say: trade table `threads`, sizes B and D
#: and braids to 15 lb.
_THIN, _MIDDLE, _THICK = 0.1, 0.2, 0.3


def warps(columns: float) -> float:
    """Warp threads for so many columns: one beside each bead, and one more.

    9 beads take 10 warps: `Beading - using a loom`, copy seen.

    Counting.

    >>> warps(9)
    10
    """
    return columns + 1


def width(columns: float, bead_length: float, warp: float) -> float:
    """Width, mm: the beads, and the warps between and beside them (geometry of this project).

    >>> round(width(12, 1.3, 0.2), 2)
    18.2
    """
    return columns * bead_length + warps(columns) * warp


def weft_per_bead(bead_length: float, warp: float) -> float:
    """Weft for one bead, mm: below the warps and back above them, through the bead both times.

    Counted passes, worked out for this project, +/- 20 %.

    >>> weft_per_bead(1.3, 0.2)
    3.0
    """
    return 2 * (bead_length + warp)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two columns or more: with one there is no row to press the beads between the warps."""
    yield from flat.refuses(part, "loom work", fewest=2, uses=("each_row", "warp"))


def _usual_warp(part: Part, ask: Quantities) -> Quantity:
    cause = Cause(
        "warp thickness", f"`{part.name}`", f"write the warp of `{part.name}`, as `warp: 0.2 mm`"
    )
    spread = Spread(cause, _MIDDLE - _THIN, _THICK - _MIDDLE)
    return leaf(
        f"{part.name}.warp", _MIDDLE, "mm", [spread], source="not said; trade table `threads`"
    )


_WARP = written_or(size("warp"), ("warp",), otherwise=_usual_warp)
_WIDTH = formula(
    "width",
    "mm",
    width,
    columns=count("columns", flat.widest_of),
    bead_length=making.bead("length"),
    warp=_WARP,
    source=GEOMETRY,
)
#: weft and warps together; the tails of the weft are left out
_THREAD = formula(
    "thread",
    "mm",
    lambda beads, bead_length, warp, share, warps, each: (
        beads * weft_per_bead(bead_length, warp) * share + warps * each
    ),
    beads="beads",
    bead_length=making.bead("length"),
    warp=_WARP,
    share=making.thread_share(WALKED),
    warps="warps",
    each="warp_length",
)
#: one warp: the work, and what ties both its ends on and is woven in
_WARP_LENGTH = formula(
    "warp length",
    "mm",
    lambda length, ends: length + ends,
    length="length",
    ends=constant("both ends of a warp", SPARE_WARP, "mm", "common practice, no source"),
)

LOOM = Stitch(
    name="loom",
    makes=flat.BAND,
    columns="beads",
    quantities={
        **flat.band(
            measurable("width", _WIDTH),
            flat.growth(flat.pitch(along_hole=False), "outside"),
            _THREAD,
        ),
        "warps": count("warps", lambda part: warps(flat.widest_of(part))),
    },
    asides={"warp_length": _WARP_LENGTH},
    refuses=refuses,
    held_against="a loom's rod that spaces 18 threads to the inch suits 11/0 cylinders: `Beading -"
    " using a loom`, copy seen; 1.41 mm a column against 1.3 and a warp of 0.1 to 0.3 mm",
    look=Weave(Pattern.ROWS, flat.face, "rows", thread=Thread.WARPS),
)
