"""Strands: beads strung close, knotted between, or spaced along a line.

Held against print: 4, 6, 8 and 10 mm rounds on a 16 in strand, see `STRUNG.held_against`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.formulas.arithmetic import most
from wellstrung.model.beads import bead_mix
from wellstrung.model.parts import Part, Quantities, Stitch
from wellstrung.quantity.arithmetic import derived, exact, product
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.stitches.making import GEOMETRY


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


def knot_path(cord: float) -> float:
    """Cord that one overhand knot takes up, mm: about twelve times its thickness.

    The tightest open trefoil takes about ten diameters (from memory), a hand ties it looser:
    10..14, middle 12.

    >>> knot_path(0.5)
    6.0
    """
    return _KNOT_PATH * cord


_KNOT_PATH = 12
#: A tight overhand between two beads keeps them this many cords apart: common practice.
_KNOT = (1.25, 1.375, 1.5)
#: Strung beads do not sit face to face: rounds of 4 to 10 mm come to 100..101, 66..67, 50 and
#: 40..41 on 16 in, which is 0 to 2 % more than their size (trade table `bead_strands`).
_SITS = (1.0, 1.01, 1.02)


def _bead_length(part: Part, ask: Quantities) -> Quantity:
    """What a bead takes along the strand."""
    sits = making.hand(
        part,
        "how close the beads sit",
        *_SITS,
        source="0 to 2 % over the bead's size: trade table `bead_strands`",
        cure=f"string 5 cm of `{part.name}`, count, write the bead's `measured: {{length: ...}}`",
    )
    return product(f"{part.name}.bead", "mm", making.bead(part, ask, "length"), sits)


def _nothing(part: Part, ask: Quantities) -> Quantity:
    return exact("between", 0.0, "mm")


def _knot(part: Part, ask: Quantities) -> Quantity:
    """What a knot keeps two beads apart: as ten test knots told, or by the cord's thickness."""
    if part.has("knot_adds"):
        return part.length("knot_adds")
    return product(
        f"{part.name}.knot",
        "mm",
        ask.of(part, "line"),
        making.hand(
            part,
            "how tight the knots are",
            *_KNOT,
            source="1.25..1.5 x the cord, common practice, no source",
            cure=f"tie ten test knots, measure, write `knot_adds: ...` in `{part.name}`",
        ),
    )


def _spacing(part: Part, ask: Quantities) -> Quantity:
    return part.length("spacing")


def _per_repeat(part: Part) -> int:
    return sum(bead_mix(part).values())


def _strand(between: Callable[[Part, Quantities], Quantity]) -> dict[str, making.Formula]:
    """What every strand gives, by what lies between its beads."""

    def beads(part: Part, ask: Quantities) -> Quantity:
        if part.has("count"):
            return exact(f"{part.name}.beads", part.count("count"))
        if part.has("repeats"):
            return exact(f"{part.name}.beads", part.count("repeats") * _per_repeat(part))
        return derived(
            f"{part.name}.beads",
            "",
            beads_for,
            length=ask.of(part, "length"),
            bead_length=_bead_length(part, ask),
            between=between(part, ask),
            source=f"counting, {GEOMETRY}",
        )

    def length(part: Part, ask: Quantities) -> Quantity:
        if part.has("length"):
            return part.length("length", allowance="woven length")
        return derived(
            f"{part.name}.length",
            "mm",
            length_of,
            beads=beads(part, ask),
            bead_length=_bead_length(part, ask),
            between=between(part, ask),
            source=f"counting, {GEOMETRY}",
        )

    return {
        "outside": making.measurable("outside", _outside),
        "length": length,
        "beads": beads,
        "mass": making.mass,
        "thread": _thread,
    }


def _outside(part: Part, ask: Quantities) -> Quantity:
    """The fattest bead: it is what lies against the body."""
    sizes = [ask.of(item, "outside") for item, _ in making.beads_of(part, ask)]
    return max(sizes, key=lambda size: size.middle)


def _passes(part: Part) -> int:
    return part.count("passes", default=1)


def _thread(part: Part, ask: Quantities) -> Quantity:
    """The line through every bead, as often as it passes; tails come on top."""
    return product(
        f"{part.name}.thread",
        "mm",
        ask.of(part, "length"),
        making.count(part, "passes", _passes(part)),
        source="counting: one length for each pass",
    )


def _knotted_thread(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.thread",
        "mm",
        lambda length, passes, beads, cord, share: (
            length * passes + most(0, beads - 1) * knot_path(cord) * share
        ),
        length=ask.of(part, "length"),
        passes=making.count(part, "passes", _passes(part)),
        beads=ask.of(part, "beads"),
        cord=ask.of(part, "line"),
        share=making.thread_share(part),
        source="10..14 cords a knot: from memory, measure ten of yours",
    )


def _wants(field: str, example: str) -> Callable[[Part], Iterator[tuple[str, Place]]]:
    def refuses(part: Part) -> Iterator[tuple[str, Place]]:
        """A knot or a gap has to be known before a length can be."""
        known = part.has("knot_adds") or part.has("thread", "size") or part.has("thread", "rating")
        if not part.has(*field.split(".")) and not (known and field != "spacing"):
            yield (
                f"`{part.name}` does not say its `{field}`: write `{example}`",
                part.place_of("stitch"),
            )

    return refuses


def _refuses_nothing(part: Part) -> Iterator[tuple[str, Place]]:
    yield from ()


STRUNG = Stitch(
    name="strung",
    quantities=_strand(_nothing),
    asides={"between": _nothing},
    refuses=_refuses_nothing,
    held_against="4, 6, 8 and 10 mm rounds on 16 in: 100..101, 66..67, 50 and 40..41 printed, trade"
    " table `bead_strands`; the form gives 100.6, 67.1, 50.3 and 40.2",
    makes="strand",
)
KNOTTED = Stitch(
    name="knotted",
    quantities={**_strand(_knot), "knot": _knot, "thread": _knotted_thread},
    asides={"between": _knot},
    knot="overhand",
    refuses=_wants("thread.outside", "thread: {type: silk, outside: 0.5 mm}"),
    held_against="no published figure: what a knot adds depends on cord and hand, so ten test knots"
    " beat it",
    makes="strand",
)
SPACED = Stitch(
    name="spaced",
    quantities=_strand(_spacing),
    asides={"between": _spacing},
    refuses=_wants("spacing", "spacing: 25 mm"),
    held_against="no published figure: it is counting",
    makes="strand",
)
STITCHES = (STRUNG, KNOTTED, SPACED)
