"""Tubular herringbone, straight: an even number of stacks side by side, a bead a stack a round.

Beads stand on end, so a section across the rope shows circles on a ring, each touching the next.
Its beads may be listed, one for each column (a rope that spirals) or each round (one that swells).
The float functions are geometry worked out for this project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from wellstrung.common.places import Place
from wellstrung.derived.declared import FITTED, GEOMETRY, count, formula, hand, measurable
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most, pi, sin
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.stitches import making, tubes


def outside(bead_outside: float, stacks: float, settle: float = 1.0) -> float:
    """Outside diameter, mm, of `stacks` beads on end in a ring, each touching the next.

    `settle` is how the stacks lie: 0.90 where the pairs tilt into each other, 1.03 where thread
    keeps them apart. Geometry, worked out for this project.

    >>> round(outside(2.1, 6), 2)
    6.3
    """
    return settle * bead_outside * (1 + 1 / sin(pi / stacks))


def inside(bead_outside: float, stacks: float, settle: float = 1.0) -> float:
    """Bore, mm: the outside less a bead on either side, 0 where the stacks close it.

    Geometry, worked out for this project.

    >>> round(inside(2.1, 6), 2)
    2.1
    """
    return most(0, outside(bead_outside, stacks, settle) - 2 * bead_outside)


def rise(bead_length: float, lean: float) -> float:
    """Length that one round adds, mm: a bead's length by how the stacks lean or stretch.

    Geometry; how far they lean is the stitch's own range: see the module.

    >>> round(rise(1.45, 1.0), 3)
    1.45
    """
    return bead_length * lean


#: How the stacks lie, against circles that touch: worked out for this project, no print.
SETTLE = (0.90, 1.0, 1.03)
#: A round of straight stacks: pairs that tilt shorten it, thread between beads lengthens it.
RISE = (0.95, 1.0, 1.1)
_FEWEST = 4
#: Seen from the front the two beads of a pair tilt into each other: by 18 degrees, at which a bead
#: takes the least share of its length in `RISE`, for its cosine is 0.95.
LEANS = (18.0, -18.0)
LOOK = Weave(
    Pattern.ROWS,
    making.front(making.around_of),
    "rounds",
    is_round=True,
    along=True,
    leans=LEANS,
)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An even number of stacks, four or more: herringbone adds beads two by two."""
    yield from making.counts_around(part, count=6, columns=making.around_of)
    field = making.field_around(part)
    if not field:
        return
    stacks = making.around_of(part)
    if stacks < _FEWEST:
        instead = making.so_many(field, _FEWEST)
        yield making.too_few(part, f"{stacks} beads", part.place_of(field), instead, closes="tube")
    elif stacks % 2:
        yield (
            f"`{part.name}` has {stacks} beads around, and herringbone adds them in pairs: write"
            f" {making.so_many(field, stacks - 1, stacks + 1)}",
            part.place_of(field),
        )


def quantities(
    settle: tuple[float, float, float], lean: tuple[float, float, float]
) -> Mapping[str, Formula]:
    """What a herringbone tube gives, by how its stacks lie and lean: (low, middle, high) each."""
    settled = hand("how the stacks settle", settle, cure=making.swatch("weave"))

    def across(what: str, function: Callable[..., float]) -> tubes.Across:
        return lambda bead: formula(
            what,
            "mm",
            function,
            bead_outside=bead("outside"),
            stacks=count("stacks", making.around_of),
            settle=settled,
            source=GEOMETRY,
        )

    rise_of = formula(
        "rise",
        "mm",
        rise,
        bead_length=tubes.rising("length"),
        lean=hand(
            "how the stacks lean",
            lean,
            source=f"{lean[0]}..{lean[2]} of a bead a round, {FITTED}",
            cure="weave ten rounds of {part}, measure, write `rounds: ...`",
        ),
        source=GEOMETRY,
    )
    wide, bore = across("outside", outside), across("inside", inside)
    return {
        "outside": measurable("outside", tubes.across_tube("outside", wide)),
        "inside": measurable("inside", tubes.across_tube("inside", bore, bore=True)),
        **tubes.changing(lambda what: across(what, outside)),
        **making.growth(rise_of),
        "beads": making.beads_by_round(making.around_of, "counting: a bead a stack a round"),
        "mass": making.mass,
        "thread": making.thread(
            thread_paths.herringbone,
            share=thread_paths.WALKED,
            turn=lambda bead_length, bead_outside: bead_length,
        ),
    }


HERRINGBONE = Stitch(
    name="tubular herringbone",
    also_makes=("pouch",),
    columns="beads",
    quantities=quantities(SETTLE, RISE),
    refuses=refuses,
    held_against="no published figure of a size: print starts a rope with 6 to 12 beads, an even"
    " count (`Twisted tubular herringbone rope`, weak page), and takes 3 x 15 g of 11/0 for a"
    " necklace of rope length (`Herringbone necklace`), which 6 around reaches at 1.2 m",
    look=LOOK,
)
