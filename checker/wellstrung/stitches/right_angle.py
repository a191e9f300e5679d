"""Right-angle weave, flat: rings of four beads that share their sides, or of as many as a `loop`.

Beads lie on the lines of a square net, one on each side of a square, so a unit is a square and the
pitch is its side. Beads round a corner are taken as ovals that touch; the hand draws them closer or
leaves room. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from wellstrung.common.places import Place
from wellstrung.derived.bead_sizes import mean_size
from wellstrung.derived.declared import GEOMETRY, count, formula, hand
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most
from wellstrung.formulas.base_bands import unit
from wellstrung.model.beads import SIDE, UNIT, bead_mix, bead_of_unit, beads_named, listed_for
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making

#: Beads drawn closer than ovals would touch, since their ends are flat and the thread gives; as
#: they touch, and a little; and with room at the corners.
_TIGHT, _USUAL, _LOOSE = 0.95, 1.02, 1.10
_FEWEST = 4


def pitch(bead_length: float, bead_outside: float, tension: float) -> float:
    """The side of a unit, mm: from one line of beads to the next.

    Geometry of this project; good for beads from about half as long as wide to twice as long.

    >>> round(pitch(1.45, 2.1, 1.02), 2)
    2.6
    """
    return unit(bead_length, bead_outside) * tension


def beads(rows: float, across: float, each_row: float, along: float = 1) -> float:
    """Beads of a flat weave: one for each side of each unit, shared sides once (counting).

    On the sides that run along the work lie `along` beads each: of loops of five, one and two.

    >>> beads(1, 1, 0), beads(2, 3, 0), beads(2, 2, -1), beads(10, 1, 0, along=1.5)
    (4.0, 17.0, 10.0, 41.0)
    """
    units = flat.shaped(rows, across, each_row)
    grown = most(0, each_row) * (rows - 1)
    return units + across + grown + along * (units + rows)


def listed_beads(units: Sequence[int]) -> float:
    """The same where every row has its own count: two rows share the sides that both have.

    Counting.

    >>> listed_beads([3, 3]), listed_beads([2, 1]), listed_beads([1, 3, 2])
    (17, 10, 18)
    """
    upright = sum(count + 1 for count in units)
    return upright + units[0] + units[-1] + sum(map(max, pairwise(units)))


def passes(loop: float, needles: float) -> float:
    """Beads that thread passes through for one unit of a loop.

    One needle goes round the whole loop, and on along its shorter side to where the next begins;
    of two needles that cross in the bead between two units, each goes through its own side of the
    loop. Counting.

    >>> passes(4, needles=1), passes(4, needles=2), passes(5, needles=1), passes(6, needles=1)
    (6, 4, 7, 9)
    """
    return loop + (2 - needles) * (loop // 2)


def corners(needles: float) -> float:
    """Corners that thread turns for one unit: four of the loop, and two on the way to the next.

    Two needles turn four. Counting.

    >>> corners(needles=1), corners(needles=2)
    (6, 4)
    """
    return 8 - 2 * needles


def steps(across: float, loop: int) -> int:
    """Beads that a needle passes from the end of a row to where the next begins.

    Two, or four where an odd row of squares ends on the wrong side of its last; none where the
    band is one unit wide. Counting.

    >>> steps(6, loop=4), steps(5, loop=4), steps(1, loop=4)
    (2, 4, 0)
    """
    if across < 2:
        return 0
    return 4 if loop == _FEWEST and across % 2 else 2


def needles_of(part: Part) -> int:
    """Needles that it is woven with."""
    return part.count("needles", default=1)


def loop_of(part: Part) -> int:
    """Beads of a unit."""
    return part.count("loop", default=_FEWEST)


def _along_of(part: Part) -> float:
    """Beads on each side that runs along the work; of an odd loop the mean of both sides."""
    return (loop_of(part) - 2) / 2


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """One unit or more in every row, of four beads or more; odd loops lie in one line."""
    uses = ("each_row", "loop", "sides", "needles", "one_for")
    yield from flat.refuses(part, "right-angle weave", uses=uses)
    if part.has("one_for"):
        yield from _refuses_list(part)
        return
    loop = loop_of(part)
    if loop < _FEWEST:
        yield (
            f"`{part.name}` has `loop: {loop}`, too few to share sides: write `loop: {_FEWEST}` or"
            " more",
            part.place_of("loop"),
        )
    elif loop != _FEWEST and part.has("each_row"):
        yield (
            f"`{part.name}` is shaped by units of {_FEWEST} beads: take `loop` or `each_row` out",
            part.place_of("loop"),
        )
    elif loop % 2 and flat.across_of(part) > 1:
        yield (
            f"`{part.name}` has loops of {loop}, whose sides differ, so that they lie in one line:"
            f" write `across: 1`, `loop: {loop - 1}` or `loop: {loop + 1}`",
            part.place_of("loop"),
        )


def _refuses_list(part: Part) -> Iterator[tuple[str, Place]]:
    """Listed units are of four beads, in straight rows; of a bead for each side four are listed."""
    each = part.text("one_for")
    for field in ("each_row", "sides", "loop"):
        if part.has(field) and (field != "loop" or loop_of(part) != _FEWEST):
            yield (
                f"`{part.name}` lists a bead for {each} of units of four in straight rows, and has"
                f" `{field}`: take `{field}` or `one_for` out",
                part.place_of(field),
            )
    listed = len(listed_for(part, each))
    if each == SIDE and listed and listed != _FEWEST:
        yield (
            f"`{part.name}` lists {listed} {'bead' if listed == 1 else 'beads'}, one for each side,"
            " and a unit has four: write four, such as `beads: [sand, kelp, sand, kelp]`",
            part.place_of("beads"),
        )
    elif not listed or each == UNIT:
        yield from making.wrong_list(part, flat.across_of)


#: how close the hand draws the beads of a ring
TENSION = hand(
    "thread tension",
    (_TIGHT, _USUAL, _LOOSE),
    cure="weave ten units of {part} and measure them",
)
#: the side of a unit, by the beads and the hand
SQUARE = formula(
    "unit",
    "mm",
    pitch,
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    tension=TENSION,
    source=GEOMETRY,
)


def _lines(part: Part) -> float:
    """Lines of beads that the width holds: one more than units."""
    return flat.widest_of(part) + 1


def _on(part: Part, places: Iterable[tuple[int, int | None]]) -> Counter[str]:
    """The beads at some places of listed units."""
    return Counter(bead_of_unit(part, *place) for place in places)


def _across_mix(part: Part) -> Mapping[str, int]:
    """The beads that lie across, between two rows."""
    if listed_for(part, SIDE):
        return _on(part, [(0, None), (1, None)])
    return beads_named(part, "beads") if part.has("sides") else bead_mix(part)


def _side_mix(part: Part) -> Mapping[str, int]:
    """The beads on the sides that run along the work."""
    if listed_for(part, SIDE):
        return _on(part, [(0, 0), (0, 1)])
    return beads_named(part, "sides") if part.has("sides") else bead_mix(part)


def _largest(what: str, mix: Callable[[Part], Mapping[str, int]]) -> Formula:
    """A size of the largest of some beads, which makes the widest row."""

    def size(part: Part, ask: Quantities) -> Quantity:
        if not (part.has("sides") or part.has("one_for")):
            return making.bead(what)(part, ask)
        sizes = [ask.of(part.beads[name], what) for name in mix(part)]
        return max(sizes, key=lambda size: size.middle)

    return size


def _mean(what: str, mix: Callable[[Part], Mapping[str, int]]) -> Formula:
    """The mean of some beads, which the length follows."""
    return lambda part, ask: mean_size(part, what, mix(part), ask)


def _of_sides(name: str, length: Formula, outside: Formula, along: Formula) -> Formula:
    return formula(
        name,
        "mm",
        lambda bead_length, bead_outside, tension, along: pitch(
            along * bead_length, bead_outside, tension
        ),
        bead_length=length,
        bead_outside=outside,
        tension=TENSION,
        along=along,
        source=GEOMETRY,
    )


_ONE = count("beads across", lambda part: 1)
_ALONG = count("beads along", _along_of)
_MIXED_WIDE = _of_sides(
    "unit across", _largest("length", _across_mix), _largest("outside", _side_mix), _ONE
)
_MIXED_RISE = _of_sides(
    "unit along", _mean("length", _side_mix), _mean("outside", _across_mix), _ALONG
)


def _plain(part: Part) -> bool:
    """Whether its units are squares of four alike beads, woven with one needle over its width."""
    told = any(part.has(field) for field in ("loop", "sides", "needles", "one_for"))
    return not told and flat.across_of(part) > 1


def _either(plain: Formula, other: Formula) -> Formula:
    return lambda part, ask: (plain if _plain(part) else other)(part, ask)


def thread_by_units(
    passes: Callable[[Part], float],
    corners: Callable[[Part], float],
    steps: Callable[[Part], float],
    side: str | Formula = SQUARE,
) -> Formula:
    """Thread of units that take so many passes and corners each, with steps to the next row.

    `side` is the side of a unit of one bead, as the hand draws it: looser work takes more thread.
    """
    return formula(
        "thread",
        "mm",
        lambda units, rows, passes, corners, steps, bead_length, side, share: (
            (
                (units * passes + steps * rows) * bead_length
                + (units * corners + steps * rows) * thread_paths.corner(bead_length, side)
            )
            * share
        ),
        units=flat.beads(across=flat.across_of, each_row=flat.change_of),
        rows="rows",
        passes=count("passes", passes),
        corners=count("corners", corners),
        steps=count("steps", steps),
        bead_length=making.bead("length"),
        side=side,
        share=making.thread_share(thread_paths.WALKED),
    )


_THREAD = thread_by_units(
    lambda part: passes(loop_of(part), needles_of(part)),
    lambda part: corners(needles_of(part)),
    lambda part: steps(flat.widest_of(part), loop_of(part)),
)


def _face(part: Part) -> Face:
    sides = "sides" if part.has("sides") else ""
    return Face(flat.across_of(part), flat.counts_of(part), loop=loop_of(part), sides=sides)


RIGHT_ANGLE = Stitch(
    name="right-angle weave",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        flat.width(_either(SQUARE, _MIXED_WIDE), _largest("outside", _side_mix), _lines),
        flat.growth(_either(SQUARE, _MIXED_RISE), _mean("outside", _across_mix), steps_less=0),
        _THREAD,
        flat.beads(
            beads,
            listed_beads,
            across=flat.across_of,
            each_row=flat.change_of,
            along=_along_of,
        ),
    ),
    refuses=refuses,
    passes=3,
    how="Each unit is a ring of beads that shares a side with the one before; the thread turns a"
    " corner after every bead and never crosses the middle",
    held_against="no published figure: units to the inch are not printed where we could look, and"
    " how far the corners gape is a maker's own, so measure ten units",
    look=Weave(Pattern.SQUARES, _face, "rows", thread=Thread.ROUND),
)
