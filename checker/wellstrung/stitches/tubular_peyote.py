"""Tubular peyote, even count: a ring of N beads is two rounds, then N/2 a round.

The float functions are geometry worked out for this project: beads lie along the sides of a polygon
whose corners are the N columns. Held against one printed figure, a peyote hoop from a ring of 50:
see `PEYOTE.held_against`.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import either, most, pi, tan
from wellstrung.model.parts import Part, Quantities, Stitch
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.stitches.making import GEOMETRY


def pitch(bead_length: float, tension: float) -> float:
    """The distance from column to column, mm: bead length times 1.00 (tight) to 1.10 (loose).

    Geometry; the range of tension is common practice, no source.

    >>> pitch(1.45, 1.05)
    1.5225
    """
    return bead_length * tension


def outside(pitch: float, ring: float, bead_outside: float) -> float:
    """Outside diameter, mm, of a tube with `ring` columns.

    Geometry, worked out for this project; for many columns it tends to ring x pitch / pi + d.

    >>> round(outside(1.5225, 12, 2.1), 2)
    7.78
    """
    return pitch / tan(pi / ring) + bead_outside


def inside(pitch: float, ring: float, bead_outside: float) -> float:
    """Inside diameter, mm; 0 where the beads leave no bore (below six columns).

    Geometry, worked out for this project.

    >>> inside(1.5, 4, 2.1)
    0
    """
    return either(ring < 6, 0, most(0, pitch / tan(pi / ring) - bead_outside))


def rise(bead_outside: float, tension: float) -> float:
    """Length that one round adds, mm: half a bead, more when loose (geometry of this project).

    `tension` is 1.05 at the usual tightness, which is where a round adds just half a bead.

    >>> rise(2.1, 1.05)
    1.05
    """
    return bead_outside / 2 * tension / _USUAL


_USUAL = 1.05
_LOOSEST = 1.10
_FEWEST = 4


def ring_of(part: Part) -> int:
    """Beads in the starting ring, from either way of saying it."""
    if part.has("each_round"):
        return 2 * part.count("each_round")
    return part.count("around")


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An even ring of four or more: with an odd one the rounds become a spiral, another stitch."""
    yield from making.counts_around(part, count=12)
    field = making.around_field(part)
    if not part.has(field):
        return
    ring, place = ring_of(part), part.place_of(field)
    if ring % 2:
        yield (
            f"`{part.name}` has {ring} beads around, and even tubular peyote wants an even ring:"
            f" write `around: {ring - 1}` or `around: {ring + 1}`, or `stitch: odd tubular peyote`",
            place,
        )
    elif ring < _FEWEST:
        yield (
            f"`{part.name}` has {ring} beads around, too few to close a ring: write"
            f" `around: {_FEWEST}` or more",
            place,
        )


def _tension(part: Part) -> Quantity:
    return making.hand(part, "thread tension", 1.0, _USUAL, _LOOSEST, source=GEOMETRY)


def _pitch(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.pitch",
        "mm",
        pitch,
        bead_length=making.bead(part, ask, "length"),
        tension=_tension(part),
        source=GEOMETRY,
    )


def _outside(part: Part, ask: Quantities) -> Quantity:
    return _outside_of(part, ask, "outside", ring_of(part))


def _as_counted(part: Part, ask: Quantities) -> Quantity:
    """Outside as the count gives it, whatever was measured."""
    return _outside_of(part, ask, "outside as counted", ring_of(part))


def _counted_otherwise(part: Part, ask: Quantities) -> Quantity:
    """Outside if the number were meant the other way: in the ring, or a round."""
    each = part.has("each_round")
    ring = part.count("each_round") if each else 2 * part.count("around")
    return _outside_of(part, ask, "outside counted otherwise", max(ring, _FEWEST))


def _outside_of(part: Part, ask: Quantities, name: str, ring: int) -> Quantity:
    return derived(
        f"{part.name}.{name}",
        "mm",
        outside,
        pitch=_pitch(part, ask),
        ring=making.count(part, "ring", ring),
        bead_outside=making.bead(part, ask, "outside"),
        source=GEOMETRY,
    )


def _inside(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.inside",
        "mm",
        inside,
        pitch=_pitch(part, ask),
        ring=making.count(part, "ring", ring_of(part)),
        bead_outside=making.bead(part, ask, "outside"),
        source=GEOMETRY,
    )


def _rise(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.rise",
        "mm",
        rise,
        bead_outside=making.bead(part, ask, "outside"),
        tension=_tension(part),
        source=GEOMETRY,
    )


PEYOTE = Stitch(
    name="tubular peyote",
    also_makes=("pouch", "bezel"),
    columns="beads",
    quantities={
        "outside": making.measurable("outside", _outside),
        "inside": making.measurable("inside", _inside),
        **making.growth(_rise),
        "beads": making.beads_by_round(
            lambda part: ring_of(part) / 2, "counting: a ring of N is two rounds, then N/2 a round"
        ),
        "mass": making.mass,
        "thread": making.thread(thread_paths.peyote),
    },
    refuses=refuses,
    asides={
        "as_counted.outside": _as_counted,
        "counted_otherwise.outside": _counted_otherwise,
    },
    held_against="peyote hoop, ring of 50 of 11/0 and 15/0 -> about 22 mm: `Boot camp: peyote"
    " hoops`, copy seen; the form N x l / pi + d gives 22.3",
)
