"""Strands: beads strung close, knotted between, or spaced along a line.

Held against print: 4, 6, 8 and 10 mm rounds on a 16 in strand, see `STRUNG.held_against`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.derived.coils import by_turns_or
from wellstrung.derived.declared import (
    GEOMETRY,
    constant,
    count,
    formula,
    from_table,
    hand,
    measurable,
    product,
    size,
    written_or,
)
from wellstrung.formulas.arithmetic import most
from wellstrung.formulas.knots import as_one
from wellstrung.model.beads import apart, bead_mix, held_by_crimps, holds, knot_of
from wellstrung.model.looks import Strung
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity import arithmetic
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making


def length_of(beads: float, bead_length: float, between: float) -> float:
    """Length of a strand, mm: the beads, and what lies between each two of them (counting).

    >>> length_of(beads=100, bead_length=4.0, between=0.5)
    449.5
    """
    return beads * bead_length + most(0, beads - 1) * between


def beads_for(length: float, bead_length: float, between: float) -> float:
    """How many beads make a length, mm: `length_of` the other way round.

    Counting.

    >>> beads_for(length=449.5, bead_length=4.0, between=0.5)
    100.0
    """
    return (length + between) / (bead_length + between)


def grouped_length(
    beads: float,
    bead_length: float,
    spacing: float,
    group: float,
    hold: float = 0.0,
    ends: float = 0.0,
) -> float:
    """Length of a strand, mm, of groups of beads with bare line between two groups (counting).

    A crimp or a knot on each side of a group adds its `hold`, bare line at both `ends` theirs.

    >>> grouped_length(beads=9, bead_length=4.0, spacing=25.0, group=3)
    86.0
    >>> grouped_length(beads=9, bead_length=4.0, spacing=25.0, group=3, hold=1.0, ends=40.0)
    172.0
    """
    groups = beads / group
    return beads * bead_length + 2 * groups * hold + most(0, groups - 1) * spacing + 2 * ends


def grouped_beads(
    length: float, bead_length: float, spacing: float, group: float, ends: float = 0.0
) -> float:
    """How many beads in groups make a length, mm: `grouped_length` the other way round.

    Counting, of beads that nothing holds: what does is counted, and so are its beads.

    >>> grouped_beads(length=86.0, bead_length=4.0, spacing=25.0, group=3)
    9.0
    """
    return group * (length - 2 * ends + spacing) / (group * bead_length + spacing)


#: Strung beads do not sit face to face: rounds of 4 to 10 mm come to 100..101, 66..67, 50 and
#: 40..41 on 16 in, which is 0 to 2 % more than their size (trade table `bead_strands`).
_SITS = (1.0, 1.01, 1.02)


#: what a bead takes along the strand
_BEAD_LENGTH = product(
    "bead",
    "mm",
    making.bead("length"),
    hand(
        "how close the beads sit",
        _SITS,
        source="0 to 2 % over the bead's size: trade table `bead_strands`",
        cure="string 5 cm of {part}, count, write the bead's `measured: {length: ...}`",
    ),
)
_NOTHING = constant("between", 0.0, "mm")


def _tied(name: str, column: str, cure: str) -> Formula:
    """A column of the knot that a strand is tied with, in cords, by the hand that ties it.

    What is learnt of one knot is for that knot alone.
    """

    def factor(part: Part, ask: Quantities) -> Quantity:
        row = tables.load("knots").row(knot_of(part))
        cell = row.cell(column)
        called = name if row.name == KNOTTED.knot else f"{name}, {row.name}"
        range_, cures = (cell.low, cell.value, cell.high), f"tie ten test knots, {cure}"
        return hand(called, range_, source=cell.note, cure=cures, grade=_weak(cell))(part, ask)

    return factor


def _weak(cell: tables.Cell) -> str:
    return cell.grade if cell.grade in tables.WEAK else ""


_PASSES = count("passes", lambda part: part.count("passes", default=1))
#: the cord that is knotted: every pass of the line
_CORD = formula("cord", "mm", as_one, line="line", lines=_PASSES, source=GEOMETRY)
#: what a knot keeps two beads apart: as ten test knots showed, or by the cord's thickness
_KNOT = written_or(
    size("knot_adds"),
    ("knot_adds",),
    otherwise=product(
        "knot",
        "mm",
        _CORD,
        _tied("how tight the knots are", "adds", "measure, write `knot_adds: ...` in {part}"),
    ),
)


def _hold(part: Part, ask: Quantities) -> Quantity:
    """What stands on each side of a bead or a group of a spaced strand, along it, mm."""
    if not apart(part):
        return exact(f"{part.name}.hold", 0.0, "mm")
    crimp = held_by_crimps(part)
    return _KNOT(part, ask) if crimp is None else ask.of(crimp, "length")


def _stop(part: Part, ask: Quantities) -> Quantity:
    """How wide that is across the line, mm, where the hole of a bead comes against it."""
    crimp = held_by_crimps(part)
    if crimp is not None:
        return ask.of(crimp, "outside")
    cause = Cause("how the knot lies", f"`{part.name}`", "tie one and measure across it")
    row = tables.load("knots").row(knot_of(part))
    across = from_table(f"{row.name} across", "knots", row, "across", cause)
    return arithmetic.product(f"{part.name}.stop", "mm", across, _CORD(part, ask))


_HOLDS = count("holds", holds)
#: how many cords of line one knot takes up
_TAKES = _tied("thread path", "takes", "note the thread that {part} takes")
_ENDS = written_or(size("bare_ends"), ("bare_ends",), otherwise=constant("ends", 0.0, "mm"))
_SPACING = size("spacing")
#: how many beads stand close together between two stretches of bare line
_GROUP = count("group", lambda part: part.count("group", default=1))
#: bare line a bead, on the whole
_MEAN_SPACING = formula(
    "between", "mm", lambda spacing, group: spacing / group, spacing=_SPACING, group=_GROUP
)
#: the line through every bead, as often as it passes; tails come on top
_THREAD = product("thread", "mm", "length", _PASSES, source="counting: one length for each pass")
_KNOTTED_THREAD = formula(
    "thread",
    "mm",
    lambda length, passes, beads, cord, takes: (
        passes * (length + most(0, beads - 1) * takes * cord)
    ),
    length="length",
    passes=_PASSES,
    beads="beads",
    cord=_CORD,
    takes=_TAKES,
)


#: what knots on both sides of each group take, on top
_HELD_THREAD = formula(
    "thread",
    "mm",
    lambda length, passes, knots, cord, takes: passes * (length + knots * takes * cord),
    length="length",
    passes=_PASSES,
    knots=_HOLDS,
    cord=_CORD,
    takes=_TAKES,
)


def _spaced_thread(part: Part, ask: Quantities) -> Quantity:
    """The line, with the knots where they hold the beads; crimps and glue take none of it."""
    tied = apart(part) and held_by_crimps(part) is None
    return (_HELD_THREAD if tied else _THREAD)(part, ask)


def _spaced_mass(part: Part, ask: Quantities) -> Quantity:
    """The beads, and the crimps that hold them."""
    crimp, beads = held_by_crimps(part), making.mass(part, ask)
    if crimp is None:
        return beads
    crimps = arithmetic.times(ask.of(crimp, "mass"), holds(part))
    return arithmetic.total(f"{part.name}.mass", "g", (beads, crimps))


def _in_repeats(part: Part) -> float:
    return part.count("repeats") * sum(bead_mix(part).values())


def _strand(
    between: Formula, thread: Formula = _THREAD, *, grouped: bool = False
) -> dict[str, Formula]:
    """What every strand gives, by what lies between its beads, or between `grouped` ones."""
    gap = {"spacing": between, "group": _GROUP, "ends": _ENDS} if grouped else {"between": between}
    by_length = formula(
        "beads",
        "",
        grouped_beads if grouped else beads_for,
        gap,
        length="length",
        bead_length=_BEAD_LENGTH,
        source=f"counting, {GEOMETRY}",
    )
    by_beads = formula(
        "length",
        "mm",
        grouped_length if grouped else length_of,
        {**gap, "hold": _hold} if grouped else gap,
        beads="beads",
        bead_length=_BEAD_LENGTH,
        source=f"counting, {GEOMETRY}",
    )
    return {
        "outside": measurable("outside", making.fattest),
        "length": written_or(making.WOVEN_LENGTH, ("length",), otherwise=by_turns_or(by_beads)),
        "beads": written_or(
            count("beads", lambda part: part.count("count")),
            ("count",),
            otherwise=written_or(count("beads", _in_repeats), ("repeats",), otherwise=by_length),
        ),
        "mass": making.mass,
        "thread": thread,
    }


def _needs(field: str, example: str) -> Callable[[Part], Iterator[tuple[str, Place]]]:
    def refuses(part: Part) -> Iterator[tuple[str, Place]]:
        """A knot or a gap has to be known before a length can be."""
        sold = (part.of_thread(said) for said in ("size", "rating", "outside"))
        known = part.has("knot_adds") or any(sold)
        knots = part.has("held_by") and part.text("held_by") == "knots"
        if field != "spacing":
            yield from _refuses_groups(part)
        elif part.has("knot") and not knots:
            why = "nothing of it is knotted"
            yield from making.unwanted(part, ("knot",), why, "`held_by: knots`")
        elif part.has("held_by") and part.has("length"):
            yield (
                f"what holds the beads of `{part.name}` is counted, and so are its beads: write"
                " `count` in place of `length`, as in `count: 21`",
                part.place_of("length"),
            )
        if not part.has(*field.split(".")) and not (known and field != "spacing"):
            yield (
                f"`{part.name}` does not say its `{field}`: write `{example}`",
                part.place_of("stitch"),
            )

    return refuses


def _refuses_groups(part: Part) -> Iterator[tuple[str, Place]]:
    why = "only a spaced strand has bare line between its beads"
    fields = ("group", "held_by", "bare_ends")
    yield from making.unwanted(part, fields, why, "`stitch: spaced`")


def _refuses_knots(part: Part) -> Iterator[tuple[str, Place]]:
    yield from _refuses_groups(part)
    why = "that is the knot between its beads, which only a knotted strand has"
    tied = f"`stitch: knotted`; the knot that ties it off is a step, `knot {part.name}`"
    yield from making.unwanted(part, ("knot",), why, tied)


STRUNG = Stitch(
    name="strung",
    quantities=_strand(_NOTHING),
    asides={"between": _NOTHING},
    refuses=_refuses_knots,
    held_against="4, 6, 8 and 10 mm rounds on 16 in: 100..101, 66..67, 50 and 40..41 printed, trade"
    " table `bead_strands`; the form gives 100.6, 67.1, 50.3 and 40.2",
    makes="strand",
    look=Strung(),
)
KNOTTED = Stitch(
    name="knotted",
    quantities={**_strand(_KNOT, _KNOTTED_THREAD), "knot": _KNOT},
    asides={"between": _KNOT},
    knot="overhand",
    refuses=_needs("thread.outside", "thread: {type: silk, outside: 0.5 mm}"),
    held_against="60 in of pearls took 107 in of silk (`Knotted pearls not so easy`, copy seen;"
    " pearls and silk not stated): 6 mm pearls on 0.4 mm give 103 in; ten test knots beat it",
    makes="strand",
    look=Strung(knotted=True),
)
SPACED = Stitch(
    name="spaced",
    quantities={
        **_strand(_SPACING, _spaced_thread, grouped=True),
        "mass": _spaced_mass,
        "hold": _hold,
        "stop": _stop,
        "bare": _ENDS,
    },
    asides={"between": _MEAN_SPACING},
    refuses=_needs("spacing", "spacing: 25 mm"),
    held_against="no published figure: it is counting",
    makes="strand",
    look=Strung(in_groups=True),
)
STITCHES = (STRUNG, KNOTTED, SPACED)
