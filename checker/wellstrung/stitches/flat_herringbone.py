"""Flat herringbone: an even number of stacks of beads on end, two by two, a bead a stack a row.

The two beads of a pair tilt into each other, and each stack touches the next. Beads `between` two
pairs lie across, one row above the other, so that no row lies closer to the next than they are
wide. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import FITTED, GEOMETRY, count, formula, hand, measurable
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import either, most
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making, tubular_herringbone


def width(stacks: float, bead_outside: float, settle: float, between: float, pitch: float) -> float:
    """Width, mm: so many stacks side by side, and the beads that lie between two pairs.

    `settle` is 0.90 where pairs tilt into each other, 1.03 where thread keeps them apart; `pitch`
    is from bead to bead of those between. Geometry, worked out for this project.

    >>> round(width(8, 2.1, 1.0, 0, 1.5), 1), round(width(8, 2.1, 1.0, 1, 1.5), 1)
    (16.8, 21.3)
    """
    return stacks * bead_outside * settle + (stacks / 2 - 1) * between * pitch


def rise(bead_length: float, bead_outside: float, between: float, lean: float) -> float:
    """Length that a row adds, mm: a bead's length by how it leans, or the width of one between.

    Geometry; how far they lean is the tube's own range.

    >>> round(rise(1.45, 2.1, 0, 1.0), 2), round(rise(1.45, 2.1, 1, 1.0), 2)
    (1.45, 2.1)
    """
    return most(bead_length, either(between > 0, bead_outside, bead_length)) * lean


def beads(rows: float, stacks: float, between: float) -> float:
    """Beads in all: a bead a stack a row, and those between the pairs; the first row has none.

    Counting.

    >>> beads(10, 8, 0), beads(10, 8, 1)
    (80.0, 107.0)
    """
    return rows * stacks + most(0, rows - 1) * between * (stacks / 2 - 1)


def thread(
    rows: float, stacks: float, between: float, bead_length: float, bead_outside: float
) -> float:
    """Thread, mm: two passes a bead and a step; a ladder first; one pass of each bead between.

    At each edge it turns round the thread of the row before, half as far as a bead is wide. Counted
    passes, walked through a model, +/- 12 %.

    >>> round(thread(10, 8, 0, 1.45, 2.1), 1)
    407.6
    """
    woven = (rows - 1) * stacks * thread_paths.herringbone(bead_length, bead_outside)
    ladder = stacks * thread_paths.ladder(bead_length, bead_outside)
    lying = (rows - 1) * between * (stacks / 2 - 1) * bead_length
    return woven + ladder + lying + (rows - 1) * bead_outside / 2


def between_of(part: Part) -> int:
    """Beads between two pairs of stacks."""
    return part.count("between", default=0)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An even number of stacks: herringbone adds beads two by two."""
    yield from flat.refuses(part, "flat herringbone", fewest=2, uses=("between",))
    stacks = flat.across_of(part)
    if stacks % 2 and stacks > 2:
        yield (
            f"`{part.name}` is {stacks} across, and herringbone adds beads in pairs: write"
            f" `across: {stacks - 1}` or `across: {stacks + 1}`",
            part.place_of("across"),
        )
    elif between_of(part) and stacks == 2:
        yield (
            f"`{part.name}` is one pair across, so no bead lies between two: write `across: 4` or"
            " more, or take `between` out",
            part.place_of("between"),
        )


_STACKS, _BETWEEN = count("stacks", flat.across_of), count("between", between_of)
_WIDTH = formula(
    "width",
    "mm",
    width,
    stacks=_STACKS,
    bead_outside=making.bead("outside"),
    settle=hand("how the stacks settle", tubular_herringbone.SETTLE, cure=making.swatch("weave")),
    between=_BETWEEN,
    pitch=flat.pitch(along_hole=True),
    source=GEOMETRY,
)
_RISE = formula(
    "rise",
    "mm",
    rise,
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    between=_BETWEEN,
    lean=hand(
        "how the stacks lean",
        tubular_herringbone.RISE,
        source=f"0.95..1.1 of a bead a row, {FITTED}",
        cure="weave ten rows of {part}, measure, write `rows: ...`",
    ),
    source=GEOMETRY,
)
_THREAD = formula(
    "thread",
    "mm",
    lambda share, **values: thread(**values) * share,
    rows="rows",
    stacks=_STACKS,
    between=_BETWEEN,
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    share=making.thread_share(thread_paths.WALKED),
)


def _face(part: Part) -> Face:
    return Face(flat.across_of(part), between=between_of(part))


FLAT_HERRINGBONE = Stitch(
    name="flat herringbone",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        measurable("width", _WIDTH),
        flat.growth(_RISE, "length"),
        _THREAD,
        flat.beads(beads, stacks=flat.across_of, between=between_of),
    ),
    refuses=refuses,
    in_pairs=True,
    how="The first row is ladder stitch; then up one stack, two beads on, down the stack beside it",
    held_against="no published figure of a width or a length: print gives the first row of ladder"
    " stitch and the even count (`Ndebele or herringbone stitch`,"
    " https://thebeadingroom.com/blogs/news/ndebele-or-herringbone-stitch) alone",
    look=Weave(Pattern.ROWS, _face, "rows", along=True, leans=tubular_herringbone.LEANS),
)
