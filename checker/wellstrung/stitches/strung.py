"""Strands: beads strung close, knotted between, or spaced along a line.

Held against print: 4, 6, 8 and 10 mm rounds on a 16 in strand, see `STRUNG.held_against`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    GEOMETRY,
    constant,
    count,
    formula,
    hand,
    measurable,
    product,
    size,
    written_or,
)
from wellstrung.formulas.arithmetic import most, sqrt
from wellstrung.model.beads import bead_mix
from wellstrung.model.looks import Strung
from wellstrung.model.parts import Formula, Part, Stitch
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


def grouped_length(beads: float, bead_length: float, spacing: float, group: float) -> float:
    """Length of a strand, mm, of groups of beads with bare line between two groups (counting).

    >>> grouped_length(beads=9, bead_length=4.0, spacing=25.0, group=3)
    86.0
    """
    return beads * bead_length + most(0, beads / group - 1) * spacing


def grouped_beads(length: float, bead_length: float, spacing: float, group: float) -> float:
    """How many beads in groups make a length, mm: `grouped_length` the other way round.

    Counting.

    >>> grouped_beads(length=86.0, bead_length=4.0, spacing=25.0, group=3)
    9.0
    """
    return group * (length + spacing) / (group * bead_length + spacing)


def knot_path(cord: float) -> float:
    """Cord that one overhand knot takes up, mm: about twelve times its thickness.

    The tightest open trefoil takes about ten diameters (from memory), a hand ties it looser:
    10..14, middle 12.

    >>> knot_path(0.5)
    6.0
    """
    return _KNOT_PATH * cord


_KNOT_PATH = 12


def as_one(line: float, lines: float) -> float:
    """Thickness of lines that are knotted together, mm: of one cord with as much in it.

    Geometry: their areas added. Doubled silk knots as a cord 1.4 times as thick.

    >>> round(as_one(0.5, lines=2), 2)
    0.71
    """
    return line * sqrt(lines)


#: A tight overhand between two beads keeps them this many cords apart: common practice.
_TIGHT = (1.25, 1.7, 2.2)
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
        hand(
            "how tight the knots are",
            _TIGHT,
            source="1.25..2.2 x the cord, where makers differ: common practice, no source",
            cure="tie ten test knots, measure, write `knot_adds: ...` in {part}",
        ),
    ),
)
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
    lambda length, passes, beads, cord, share: (
        passes * (length + most(0, beads - 1) * knot_path(cord) * share)
    ),
    length="length",
    passes=_PASSES,
    beads="beads",
    cord=_CORD,
    share=making.thread_share(),
    source="10..14 cords a knot: from memory, measure ten of yours",
)


def _in_repeats(part: Part) -> float:
    return part.count("repeats") * sum(bead_mix(part).values())


def _strand(
    between: Formula, thread: Formula = _THREAD, *, grouped: bool = False
) -> dict[str, Formula]:
    """What every strand gives, by what lies between its beads, or between `grouped` ones."""
    gap = {"spacing": between, "group": _GROUP} if grouped else {"between": between}
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
        gap,
        beads="beads",
        bead_length=_BEAD_LENGTH,
        source=f"counting, {GEOMETRY}",
    )
    return {
        "outside": measurable("outside", making.fattest),
        "length": written_or(making.WOVEN_LENGTH, ("length",), otherwise=by_beads),
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
        if field != "spacing":
            yield from _refuses_groups(part)
        if not part.has(*field.split(".")) and not (known and field != "spacing"):
            yield (
                f"`{part.name}` does not say its `{field}`: write `{example}`",
                part.place_of("stitch"),
            )

    return refuses


def _refuses_groups(part: Part) -> Iterator[tuple[str, Place]]:
    why = "only a spaced strand has bare line between groups"
    yield from making.unwanted(part, ("group",), why, "`stitch: spaced`")


STRUNG = Stitch(
    name="strung",
    quantities=_strand(_NOTHING),
    asides={"between": _NOTHING},
    refuses=_refuses_groups,
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
    quantities=_strand(_SPACING, grouped=True),
    asides={"between": _MEAN_SPACING},
    refuses=_needs("spacing", "spacing: 25 mm"),
    held_against="no published figure: it is counting",
    makes="strand",
    look=Strung(in_groups=True),
)
STITCHES = (STRUNG, KNOTTED, SPACED)
