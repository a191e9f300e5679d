"""What the flat stitches share: width from bead to bead, rows against length, shaping, thread.

A row is counted as beaders count it for that stitch. Rows and columns are measured between the
middles of their beads; the outermost beads add half a bead at each edge.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, hand, measurable, written_or
from wellstrung.formulas.arithmetic import most
from wellstrung.model.looks import Face
from wellstrung.model.parts import Formula, Part
from wellstrung.stitches import making

Count = Callable[[Part], float]

#: Thread tension, as tubular peyote has it: beads end to end lie 1.00 (tight) to 1.10 (loose) bead
#: lengths apart; beads side by side touch at the usual 1.05. No print was found for flat work.
TENSION = TIGHT, USUAL, LOOSE = 1.00, 1.05, 1.10
BAND = "woven band"


def end_to_end(bead_length: float, tension: float) -> float:
    """From the middle of one bead to the next along their holes, mm (geometry of this project).

    >>> end_to_end(1.45, 1.05)
    1.5225
    """
    return bead_length * tension


def side_by_side(bead_outside: float, tension: float) -> float:
    """From the middle of one bead to the next across their holes, mm (geometry of this project).

    At the usual tension they touch; a tight hand presses uneven beads a little closer.

    >>> side_by_side(2.1, 1.05)
    2.1
    """
    return bead_outside * tension / USUAL


def extent(pitch: float, count: float, bead: float) -> float:
    """How far `count` beads reach, mm, when their middles lie `pitch` apart: plain geometry.

    >>> extent(1.5, 10, 1.4)
    14.9
    """
    return pitch * (count - 1) + bead


def shaped(rows: float, across: float, each_row: float) -> float:
    """Beads in `rows` rows, the first of `across` beads and each of `each_row` more: counting.

    >>> shaped(11, 11, -1)
    66.0
    """
    return rows * across + each_row * rows * (rows - 1) / 2


def widest(rows: float, across: float, each_row: float) -> float:
    """Beads in the widest row.

    Counting.

    >>> widest(5, 3, 1), widest(5, 9, -1)
    (7, 9)
    """
    return max(across, across + each_row * (rows - 1))


def across_of(part: Part) -> int:
    """Beads (or units) in the first row."""
    return part.count("across")


def change_of(part: Part) -> int:
    """Beads that each row has more than the one before; 0 where the edges are straight."""
    return part.count("each_row", default=0)


def widest_of(part: Part) -> float:
    """Beads (or units) in the widest row; shaped bands count their rows."""
    rows = part.count("rows") if change_of(part) else 1
    return widest(rows, across_of(part), change_of(part))


def face(part: Part) -> Face:
    """What is seen of a band: all of it."""
    return Face(across_of(part), change_of(part))


def refuses(
    part: Part,
    stitch: str,
    *,
    fewest: int = 1,
    first: int | None = None,
    idle: tuple[str, ...] = ("bead_up", "loop", "warp"),
) -> Iterator[tuple[str, Place]]:
    """What no flat stitch can do: too narrow, shaped by a length, narrowed to nothing.

    `first` is the beads of the first row where they are not `across`; `idle` are fields that say
    nothing about this stitch.
    """
    across, change = across_of(part), change_of(part)
    first = across if first is None else first
    if across < fewest:
        yield (
            f"`{part.name}` is {across} across, too narrow for {stitch}: write"
            f" `across: {fewest}` or more",
            part.place_of("across"),
        )
    for field in idle:
        if part.has(field):
            yield (
                f"`{part.name}` has `{field}`, which {stitch} does not use: take it out",
                part.place_of(field),
            )
    if change and not part.has("rows"):
        yield (
            f"`{part.name}` has `each_row`, so its rows must be counted: write `rows` instead of"
            " `length`",
            part.place_of("length"),
        )
    elif change < 0 and first + change * (part.count("rows") - 1) < 1:
        most = 1 + (first - 1) // -change
        yield (
            f"`{part.name}` starts with {first} in a row and loses {-change} each row, which"
            f" leaves none before row {part.count('rows')}: write `rows: {most}` or fewer",
            part.place_of("rows"),
        )


#: the one cause that moves both ways of a band: how tight the thread is drawn
_TENSION = hand(
    "thread tension",
    TENSION,
    cure="weave 2 cm, measure it, write `measured: {width: ...}` in {part}",
)


def pitch(along_hole: bool, share: float = 1.0) -> Formula:
    """From bead to bead, along the holes or across them; `share` of it where rows interlock."""
    what, function = ("length", end_to_end) if along_hole else ("outside", side_by_side)
    return formula(
        "column" if along_hole else "stack",
        "mm",
        lambda bead, tension: share * function(bead, tension),
        bead=making.bead(what),
        tension=_TENSION,
        source=GEOMETRY,
    )


def width(pitch: Formula, bead: str, columns: Count = widest_of) -> Formula:
    """Width across the widest row: its columns from middle to middle, and half a bead each side."""
    across = formula(
        "width",
        "mm",
        extent,
        pitch=pitch,
        count=count("columns", columns),
        bead=making.bead(bead),
        source=GEOMETRY,
    )
    return measurable("width", across)


#: Flat work is one bead thick: the thread lies in the holes and between the beads.
thickness: Formula = measurable("thickness", making.bead("outside"))


def growth(rise: Formula, bead: str, steps_less: int = 1) -> dict[str, Formula]:
    """Rise, length and rows: whichever of the two the plan states gives the other.

    The outermost rows reach half a bead (its `bead` size) beyond their middles. `steps_less` is 1
    where rows are rows of beads, 0 where a row lies between two lines of beads.
    """
    by_length = formula(
        "rows",
        "",
        lambda length, bead, rise: most(0, length - bead) / rise + steps_less,
        length="length",
        bead=making.bead(bead),
        rise="rise",
    )
    by_rows = formula(
        "length",
        "mm",
        lambda rows, rise, bead: (rows - steps_less) * rise + bead,
        rows="rows",
        rise="rise",
        bead=making.bead(bead),
    )
    counted = count("rows", lambda part: part.count("rows"))
    written = ("length",), ("measured", "length")
    return {
        "rise": rise,
        "length": written_or(making.WOVEN_LENGTH, *written, otherwise=by_rows),
        "rows": written_or(counted, ("rows",), otherwise=by_length),
    }


def beads(function: Callable[..., float] = shaped, **counts: Count) -> Formula:
    """Beads of a part by its rows and its counts, which go to `function` by name."""
    counts = counts or {"across": across_of, "each_row": change_of}
    return formula(
        "beads",
        "",
        function,
        {"rows": "rows", **{name: count(name, of) for name, of in counts.items()}},
        source="counted row by row, worked out for this project",
    )


#: beads counted row by row, where each row has as many more or fewer
BEADS = beads()


def band(
    width: Formula, growth: dict[str, Formula], thread: Formula, beads: Formula = BEADS
) -> dict[str, Formula]:
    """What every band gives, by how wide it is, how it grows, and its thread."""
    return {
        "width": width,
        "thickness": thickness,
        **growth,
        "beads": beads,
        "mass": making.mass,
        "thread": thread,
    }
