"""Tubular peyote, even count: a ring of N beads is two rounds, then N/2 a round.

Its beads may be listed, one for each column (a rope that spirals) or each round (one that swells).

The float functions are geometry worked out for this project: beads lie along the sides of a polygon
whose corners are the N columns. Held against one printed figure, a peyote hoop from a ring of 50:
see `PEYOTE.held_against`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, hand, measurable
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas import thread_turns
from wellstrung.formulas.arithmetic import either, most, pi, tan
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making, tubes


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
    return making.around_of(part)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An even ring of four or more: with an odd one the rounds become a spiral, another stitch."""
    yield from making.counts_around(part, count=12, columns=ring_of)
    field = making.field_around(part)
    if not field:
        return
    ring, place = ring_of(part), part.place_of(field)
    field = "around" if field == "each_round" else field
    if ring % 2:
        yield (
            f"`{part.name}` has {ring} beads around, and even tubular peyote needs an even ring:"
            f" write {making.so_many(field, ring - 1, ring + 1)}, or `stitch: odd tubular peyote`",
            place,
        )
    elif ring < _FEWEST:
        yield making.too_few(part, f"{ring} beads", place, making.so_many(field, _FEWEST))


_TENSION = hand("thread tension", (1.0, _USUAL, _LOOSEST), cure=making.swatch("weave"))


def _counted_otherwise(part: Part) -> int:
    """The ring if the number were meant the other way: in the ring, or a round."""
    each = part.has("each_round")
    return max(part.count("each_round") if each else 2 * making.around_of(part), _FEWEST)


def _tube(
    what: str, function: Callable[..., float], ring: Callable[[Part], int] = ring_of
) -> tubes.Across:
    """A size across the tube, by the sizes of its beads."""
    return lambda bead: formula(
        what,
        "mm",
        function,
        pitch=formula(
            "pitch", "mm", pitch, bead_length=bead("length"), tension=_TENSION, source=GEOMETRY
        ),
        ring=count("ring", ring),
        bead_outside=bead("outside"),
        source=GEOMETRY,
    )


def _across(
    what: str, function: Callable[..., float], ring: Callable[[Part], int] = ring_of
) -> Formula:
    return tubes.across_tube(what, _tube(what, function, ring))


_RISE = formula(
    "rise", "mm", rise, bead_outside=tubes.rising("outside"), tension=_TENSION, source=GEOMETRY
)

_THREAD = making.thread(
    thread_paths.peyote, share=thread_paths.PEYOTE_WALKED, turn=thread_turns.peyote_step_up
)
#: an odd ring never closes, so no round steps up
_THREAD_OF_ODD = making.thread(thread_paths.peyote, share=thread_paths.PEYOTE_WALKED)


def _thread(part: Part, ask: Quantities) -> Quantity:
    return (_THREAD_OF_ODD if ring_of(part) % 2 else _THREAD)(part, ask)


PEYOTE = Stitch(
    name="tubular peyote",
    also_makes=("pouch", "bezel", "beaded bead"),
    columns="beads",
    quantities={
        "outside": measurable("outside", _across("outside", outside)),
        "inside": measurable(
            "inside", tubes.across_tube("inside", _tube("inside", inside), bore=True)
        ),
        **tubes.changing(lambda what: _tube(what, outside)),
        **making.growth(_RISE),
        "beads": making.beads_by_round(
            lambda part: ring_of(part) / 2, "counting: a ring of N is two rounds, then N/2 a round"
        ),
        "mass": making.mass,
        "thread": _thread,
    },
    refuses=refuses,
    asides={
        # as the count gives it, whatever was measured
        "as_counted.outside": _across("outside as counted", outside),
        "counted_otherwise.outside": _across(
            "outside counted otherwise", outside, _counted_otherwise
        ),
    },
    held_against="peyote hoop, ring of 50 of 11/0 and 15/0 -> about 22 mm: `Boot camp: peyote"
    " hoops`, copy seen; the form N x l / pi + d gives 22.3; of a rope that spirals print counts"
    " the ring alone (6, 2, 2, 2, 2, 2: `Cellini spiral tutorial`, excerpt seen)",
    look=Weave(Pattern.COLUMNS, making.front(ring_of), "rounds", is_round=True),
)
