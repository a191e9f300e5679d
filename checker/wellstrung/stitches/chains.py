"""Chains of small units: daisies side by side, slanting columns of St. Petersburg chain, chevrons.

A row is a unit: a daisy, a column, or a leg of a V with the beads of its edge. All of it is
geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.bead_sizes import mean_size
from wellstrung.derived.declared import (
    GEOMETRY,
    count,
    formula,
    hand,
    measurable,
    product,
)
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import cos, most, pi, sqrt, tan
from wellstrung.model.beads import beads_named, daisy_of
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making

_FEWEST_PETALS = 6
#: beads that a stitch of chevron chain adds to an edge, and the fewest of a first triangle
_EDGE, _FEWEST_CHEVRON = 3, 8


def daisy(pitch: float, petals: float, bead_outside: float) -> float:
    """Across a ring of petals, mm, whose holes run round it: they lie on the sides of a polygon.

    Geometry, worked out for this project.

    >>> round(daisy(1.45, 8, 2.1), 2)
    5.6
    """
    return pitch / tan(pi / petals) + bead_outside


def daisy_step(pitch: float, petals: float, bead_outside: float) -> float:
    """From one daisy to the next, mm: two petals of each lie beside two of the next.

    Geometry, worked out for this project.

    >>> round(daisy_step(1.45, 8, 2.1), 2)
    5.33
    """
    return pitch / tan(pi / petals) * cos(pi / petals) + bead_outside


def column_step(column: float, stack: float) -> float:
    """From one column of St. Petersburg chain to the next, along the chain, mm.

    Each stands beside the one before, two beads on: geometry, worked out for this project.

    >>> round(column_step(1.45, 2.1), 2)
    3.58
    """
    return sqrt(stack**2 + 4 * column**2)


def chain_width(chains: float, column: float, stack: float) -> float:
    """Width, mm: columns of six beads, aslant; two chains share the bead where they meet.

    Geometry, worked out for this project.

    >>> round(chain_width(1, 1.45, 2.1), 1), round(chain_width(2, 1.45, 2.1), 1)
    (6.8, 11.1)
    """
    return (3 + 5 * chains) * column * stack / column_step(column, stack)


def chain_beads(rows: float, chains: float) -> float:
    """Four beads of a column and one at either end; a second chain shares one of them.

    Each begins with two more. Counting (`St. Petersburg Chain`, copy seen: six, and then four
    and two a column).

    >>> chain_beads(50, 1), chain_beads(50, 2)
    (302, 554)
    """
    return rows * (1 + 5 * chains) + 2 * chains


def chevron_step(column: float, stack: float) -> float:
    """From one leg of a chevron chain to the next, along the chain, mm.

    Every three beads of an edge two legs stand on it, side by side: geometry, worked out for this
    project.

    >>> round(chevron_step(1.45, 2.1), 3)
    2.175
    """
    return most(_EDGE * column / 2, stack)


def chevron_width(leg: float, column: float, stack: float, bead_outside: float) -> float:
    """Across a chevron chain, mm: legs lean from one edge to the other, and stand on its beads.

    A leg leads from the side of one edge bead to that of another, which lies a step on. Geometry,
    worked out for this project.

    >>> round(chevron_width(3, 1.45, 2.1, 2.1), 1)
    8.2
    """
    return sqrt((leg * column + stack) ** 2 - chevron_step(column, stack) ** 2) + bead_outside


def _one(part: Part, most_across: int, words: str) -> Iterator[tuple[str, Place]]:
    if flat.across_of(part) > most_across:
        yield (
            f"`{part.name}` is {flat.across_of(part)} across, and {words}: write"
            f" `across: {most_across}`",
            part.place_of("across"),
        )


def _refuses_daisy(part: Part) -> Iterator[tuple[str, Place]]:
    """One daisy after another, each an even ring."""
    yield from flat.refuses(part, "daisy chain", uses=("loop",), narrow=True)
    yield from _one(part, 1, "daisies of a chain follow each other in one line")
    needs = f"the petals of a daisy are an even ring of {_FEWEST_PETALS} or more"
    wrong = [*_even_loop(part, _FEWEST_PETALS, "petals a daisy", needs, usual=8)]
    yield from wrong
    if not wrong and part.has("beads") and not daisy_of(part)[1]:
        mix, takes = beads_named(part, "beads"), part.count("loop") + 1
        petal, middle, *_ = mix
        yield (
            f"`{part.name}` repeats {sum(mix.values())} beads, and a daisy takes {takes}: write its"
            f" petals and one middle, as `beads: {{{petal}: {takes - 1}, {middle}: 1}}`",
            part.place_of("beads"),
        )


def _petal(what: str) -> Formula:
    """A size of a petal, the mean of several."""
    return lambda part, ask: mean_size(part, what, daisy_of(part)[0], ask)


def _middle_outside(part: Part, ask: Quantities) -> Quantity:
    return ask.of(part.beads[daisy_of(part)[1]], "outside")


def _refuses_columns(part: Part) -> Iterator[tuple[str, Place]]:
    """A single chain or a double one."""
    yield from flat.refuses(part, "St. Petersburg chain", uses=(), narrow=True)
    yield from _one(part, 2, "a St. Petersburg chain is single or double")


def _refuses_chevrons(part: Part) -> Iterator[tuple[str, Place]]:
    """One chain, which begins with a triangle of two legs alike."""
    yield from flat.refuses(part, "chevron chain", uses=("loop",), narrow=True)
    yield from _one(part, 1, "chevrons of a chain follow each other in one line")
    needs = "a triangle of chevron chain has 4 beads at its edges and two legs alike, of 2 or more"
    yield from _even_loop(part, _FEWEST_CHEVRON, "beads its first triangle", needs, usual=10)


def _even_loop(
    part: Part, fewest: int, counts: str, needs: str, *, usual: int
) -> Iterator[tuple[str, Place]]:
    """What is wrong with a `loop` that must be even and no less than the fewest."""
    if not part.has("loop"):
        says = f"`{part.name}` does not say how many {counts} has: write `loop: {usual}`"
        yield says, part.key.place
    elif (loop := part.count("loop")) < fewest or loop % 2:
        says = f"`{part.name}` has `loop: {loop}`, and {needs}: write"
        yield f"{says} `loop: {max(loop + 1, fewest)}`", part.place_of("loop")


def _petals(part: Part) -> int:
    return part.count("loop")


def _leg(part: Part) -> int:
    """Beads of a leg: the first triangle has two, an edge of three and the bead it closes in."""
    return (part.count("loop") - 1 - _EDGE) // 2


_COLUMN, _STACK = flat.pitch(along_hole=True), flat.pitch(along_hole=False)
_RING = {
    "pitch": flat.pitch(along_hole=True, bead=_petal("length")),
    "petals": count("petals", _petals),
    "bead_outside": _petal("outside"),
}
#: How often the thread goes round the petals of each daisy: print goes round again (`Make a daisy
#: flower bead necklace`), and says that this may be skipped (`Stitch Pro: Stitching Daisy Chain`;
#: copies seen). So its thread is known no better than from a third less to an eighth more.
_RINGS = hand(
    "how often the thread goes round its rings",
    (1.0, 2.0, 2.0),
    source="print goes round each ring a second time, or not",
    cure="note the thread that 5 cm of {part} takes",
)
_DAISY = formula("width", "mm", daisy, _RING, source=GEOMETRY)
_SIZES = {"column": _COLUMN, "stack": _STACK}

DAISY = Stitch(
    name="daisy chain",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        measurable("width", _DAISY),
        flat.growth(formula("rise", "mm", daisy_step, _RING, source=GEOMETRY), _DAISY),
        formula(
            "thread",
            "mm",
            lambda beads, share, **ring: beads * thread_paths.daisy(**ring) * share,
            beads="beads",
            share=making.thread_share(thread_paths.WALKED),
            bead_length=making.bead("length"),
            bead_outside=making.bead("outside"),
            petals=count("petals", _petals),
            rings=_RINGS,
        ),
        flat.beads(lambda rows, petals: rows * (petals + 1), petals=_petals),
    )
    | {
        "petals": product(
            "petals in a row", "mm", count("petals", _petals), _petal("length"), source="counting"
        ),
        "middle": _middle_outside,
    },
    refuses=_refuses_daisy,
    held_against="rings of eight with one bead in the middle, two beads beside two of the next:"
    " `Make a daisy flower bead necklace`, copy seen; no published length",
    look=Weave(Pattern.DAISIES, lambda part: Face(1, loop=_petals(part)), "rows"),
)
SAINT_PETERSBURG = Stitch(
    name="Saint Petersburg chain",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        measurable(
            "width",
            formula(
                "width",
                "mm",
                chain_width,
                _SIZES,
                chains=count("chains", flat.across_of),
                source=GEOMETRY,
            ),
        ),
        flat.growth(
            formula("rise", "mm", column_step, _SIZES, source=GEOMETRY),
            # how far a column of six reaches along the chain
            formula(
                "column along the chain",
                "mm",
                lambda column, stack: (12 * column**2 + stack**2) / column_step(column, stack),
                _SIZES,
                source=GEOMETRY,
            ),
        ),
        making.thread(thread_paths.petersburg, share=thread_paths.WALKED, chains=flat.across_of),
        flat.beads(chain_beads, chains=flat.across_of),
    ),
    refuses=_refuses_columns,
    held_against="a bracelet of 7 in, single, of 11/0, with a tail of 6 in takes 5 ft of thread"
    " (`St Petersburg Stitch Garland`, copy seen): 4.9 ft, with 6 in to end it",
    look=Weave(Pattern.SLANTS, lambda part: Face(flat.across_of(part)), "rows"),
)
CHEVRON = Stitch(
    name="chevron chain",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        measurable(
            "width",
            formula(
                "width",
                "mm",
                chevron_width,
                _SIZES,
                leg=count("leg", _leg),
                bead_outside=making.bead("outside"),
                source=GEOMETRY,
            ),
        ),
        flat.growth(
            formula("rise", "mm", chevron_step, _SIZES, source=GEOMETRY),
            # how far the first triangle reaches: the beads of its edge
            formula(
                "edge of a stitch",
                "mm",
                lambda column: _EDGE * column,
                column=_COLUMN,
                source=GEOMETRY,
            ),
        ),
        making.thread(thread_paths.chevron, share=thread_paths.WALKED, leg=_leg),
        flat.beads(lambda rows, leg: rows * (_EDGE + leg) + 1 + leg, leg=_leg),
    ),
    refuses=_refuses_chevrons,
    held_against="ten beads, and then six a stitch, from memory; worked another way, with two"
    " needles and loops of 12, it takes thread of 4 times its length and 14 in (`Chevron Chain`,"
    " copy seen): 42 in for 7 in, where this takes 41 in and the tails; no published width",
    look=Weave(Pattern.CHEVRONS, lambda part: Face(1, loop=_leg(part)), "rows"),
)
