"""What the flat stitches share: width from bead to bead, rows against length, shaping, thread.

A row is counted as beaders count it for that stitch. Rows and columns are measured between the
middles of their beads; the outermost beads add half a bead at each edge.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, hand, measurable, written_or
from wellstrung.formulas import row_on_row
from wellstrung.formulas.arithmetic import most
from wellstrung.model.beads import rounds_listed
from wellstrung.model.looks import Face
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
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


def lists_rows(part: Part) -> bool:
    """Whether `each_row` counts every row by itself, and is not what each has more."""
    return part.lists("each_row")


def across_of(part: Part) -> int:
    """Beads (or units) in the first row."""
    return part.counts("each_row")[0] if lists_rows(part) else part.count("across", default=1)


def change_of(part: Part) -> int:
    """Beads that each row has more than the one before; 0 where it follows no such rule."""
    return 0 if lists_rows(part) else part.count("each_row", default=0)


def rows_of(part: Part) -> int:
    """Rows that the plan counts, or lists; raises Missing."""
    listed = len(part.counts("each_row")) if lists_rows(part) else rounds_listed(part)
    return listed or part.count("rows")


def counts_of(part: Part, first: Callable[[float], int] | None = None) -> tuple[int, ...]:
    """Beads (or units) of each row of a shaped band; none where its edges are straight.

    `first` gives the beads of the first row where they are not `across`.
    """
    if lists_rows(part):
        return part.counts("each_row")
    change, across = change_of(part), across_of(part)
    begun = first(across) if first else across
    return tuple(begun + change * row for row in range(rows_of(part))) if change else ()


def widest_of(part: Part) -> float:
    """Beads (or units) in the widest row; shaped bands count their rows."""
    return max(counts_of(part), default=across_of(part))


def face(part: Part) -> Face:
    """What is seen of a band: all of it."""
    return Face(across_of(part), counts := counts_of(part), asides=row_on_row.on_columns(counts))


#: the fields of a band that say something about one stitch or another
_OF_A_STITCH = (
    "each_row", "bead_up", "loop", "warp", "between", "started_on", "sides", "needles", "cords",
    "one_for",
)  # fmt: skip


def refuses(
    part: Part,
    stitch: str,
    *,
    fewest: int = 1,
    first: Callable[[float], int] | None = None,
    adds: int | None = None,
    uses: tuple[str, ...] = ("each_row",),
    narrow: bool = False,
) -> Iterator[tuple[str, Place]]:
    """What no flat stitch can do: too narrow, shaped by a length, narrowed to nothing.

    `first` gives the beads of the first row where they are not `across`; a row has at most as many
    more than the one before as the stitch `adds`; of the fields of a stitch it `uses` some.
    One that is `narrow` is one across where the plan does not say.
    """
    for field in _OF_A_STITCH:
        if part.has(field) and field not in uses:
            yield (
                f"`{part.name}` has `{field}`, which {stitch} does not use: take it out",
                part.place_of(field),
            )
    if lists_rows(part):
        yield from _refuses_list(part, stitch, adds)
        return
    if not part.has("across") and not narrow:
        yield (
            f"`{part.name}` does not say how many go across: write `across: 12`",
            part.key.place,
        )
        return
    across, change = across_of(part), change_of(part)
    begun = first(across) if first else across
    if across < fewest and not (fewest == 2 and change > 0 and adds):
        yield (
            f"`{part.name}` is {across} across, too narrow for {stitch}: write"
            f" `across: {fewest}` or more",
            part.place_of("across"),
        )
    if change and not part.has("rows"):
        yield (
            f"`{part.name}` has `each_row`, so its rows must be counted: write `rows` instead of"
            " `length`",
            part.place_of("length"),
        )
    elif change < 0 and begun + change * (part.count("rows") - 1) < 1:
        most = 1 + (begun - 1) // -change
        yield (
            f"`{part.name}` starts with {begun} in a row and loses {-change} each row, which"
            f" leaves none before row {part.count('rows')}: write `rows: {most}` or fewer",
            part.place_of("rows"),
        )
    elif adds is not None and change > adds:
        yield (
            f"each row of `{part.name}` has {change} more than the one before, and {stitch} adds"
            f" {adds} at most: write `each_row: {adds}`",
            part.place_of("each_row"),
        )


def _refuses_list(part: Part, stitch: str, adds: int | None) -> Iterator[tuple[str, Place]]:
    """Counts that say the rows again, and a row that is wider than can be added at once."""
    counts = part.counts("each_row")
    said = {"across": f"begins with {counts[0]} in a row", "rows": f"counts {len(counts)} rows"}
    said["length"] = "counts its rows"
    for field, says in said.items():
        if part.has(field):
            yield (
                f"`{part.name}` has `{field}`, and its `each_row` {says}: take `{field}` out",
                part.place_of(field),
            )
    for row, (before, now) in enumerate(pairwise(counts), 2):
        if adds is not None and now > before + adds:
            between = [*map(str, range(before + adds, now, adds))]
            more = ["..."] if len(between) > 3 else []
            way = ", ".join((f"{before}", *between[:3], *more, f"{now}"))
            yield (
                f"row {row} of `{part.name}` has {now} and the row before it {before}, and {stitch}"
                f" adds {adds} at most from row to row: put rows between them, as in `{way}`",
                part.place_of("each_row"),
            )
            return


#: the one cause that moves both ways of a band: how tight the thread is drawn
_TENSION = hand(
    "thread tension",
    TENSION,
    cure="weave 2 cm, measure it, write `measured: {width: ...}` in {part}; for its length write"
    " `length: ...` in place of its rows, and stop at that",
)


def pitch(along_hole: bool, share: float = 1.0, bead: Formula | None = None) -> Formula:
    """From bead to bead, along the holes or across them; `share` of it where rows interlock.

    `bead` is the size of some of the beads, where they alone lie so.
    """
    what, function = ("length", end_to_end) if along_hole else ("outside", side_by_side)
    return formula(
        "column" if along_hole else "stack",
        "mm",
        lambda bead, tension: share * function(bead, tension),
        bead=bead or making.bead(what),
        tension=_TENSION,
        source=GEOMETRY,
    )


def width(pitch: Formula, bead: str | Formula, columns: Count = widest_of) -> Formula:
    """Width across the widest row: its columns from middle to middle, and half a bead each side."""
    across = formula(
        "width",
        "mm",
        extent,
        pitch=pitch,
        count=count("columns", columns),
        bead=making.bead(bead) if isinstance(bead, str) else bead,
        source=GEOMETRY,
    )
    return measurable("width", across)


def of_two_hole_beads(part: Part) -> bool:
    """Whether all its beads have two holes, and lie flat."""
    return all(bead.two_hole for bead, _ in making.beads_of(part))


_FLAT_BEAD = formula(
    "thickness",
    "mm",
    lambda outside, share: outside * share,
    outside=making.bead("outside"),
    share=hand(
        "how thick two-hole beads are",
        (0.3, 0.4, 0.55),
        source="shares of their size, from memory: a tile of 5 mm is 1.9 mm thick",
        cure="measure one, write `measured: {thickness: ...}` in {part}",
    ),
)


def _one_bead(part: Part, ask: Quantities) -> Quantity:
    if part.has("one_for"):
        return making.fattest(part, ask)
    return (_FLAT_BEAD if of_two_hole_beads(part) else making.bead("outside"))(part, ask)


#: Flat work is one bead thick: the thread lies in the holes and between the beads.
thickness: Formula = measurable("thickness", _one_bead)


def growth(rise: Formula, bead: str | Formula, steps_less: int = 1) -> dict[str, Formula]:
    """Rise, length and rows: whichever of the two the plan states gives the other.

    The outermost rows reach half a bead (its `bead` size, or a formula of a unit's) beyond their
    middles. `steps_less` is 1
    where rows are rows of beads, 0 where a row lies between two lines of beads.
    """
    edge = making.bead(bead) if isinstance(bead, str) else bead
    by_length = formula(
        "rows",
        "",
        lambda length, bead, rise: most(0, length - bead) / rise + steps_less,
        length="length",
        bead=edge,
        rise="rise",
    )
    by_rows = formula(
        "length",
        "mm",
        lambda rows, rise, bead: (rows - steps_less) * rise + bead,
        rows="rows",
        rise="rise",
        bead=edge,
    )
    counted = count("rows", rows_of)
    written = ("length",), ("measured", "length")

    def rows(part: Part, ask: Quantities) -> Quantity:
        known = part.has("rows") or lists_rows(part) or rounds_listed(part)
        return (counted if known else by_length)(part, ask)

    return {
        "rise": rise,
        "length": written_or(making.WOVEN_LENGTH, *written, otherwise=by_rows),
        "rows": rows,
    }


def beads(
    function: Callable[..., float] = shaped,
    listed: Callable[[tuple[int, ...]], float] = sum,
    **counts: Count,
) -> Formula:
    """Beads of a part by its rows and its counts, which go to `function` by name.

    Where every row is counted by itself `listed` has them.
    """
    counts = counts or {"across": across_of, "each_row": change_of}
    source = "counted row by row, worked out for this project"
    by_rule = formula(
        "beads",
        "",
        function,
        {"rows": "rows", **{name: count(name, of) for name, of in counts.items()}},
        source=source,
    )
    by_list = count("beads", lambda part: listed(counts_of(part)), source)
    return lambda part, ask: (by_list if lists_rows(part) else by_rule)(part, ask)


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
