"""Two-hole beads strung side by side on two lines, one through each of their holes.

The band is as wide as a bead is across its holes, and a row, one bead, adds what the bead is long.
Peyote of two-hole beads is `flat peyote`. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import formula, hand, measurable
from wellstrung.model.beads import bead_mix
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making

#: Beads on a line do not sit face to face: as strung beads have it, trade table `bead_strands`.
_SITS = (1.0, 1.01, 1.02)


def thread_per_bead(rise: float) -> float:
    """Line that one bead takes, mm: a line through each of its two holes (counting).

    >>> thread_per_bead(5.0)
    10.0
    """
    return 2 * rise


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """One two-hole bead across."""
    yield from flat.refuses(part, "two-hole stringing", uses=(), narrow=True)
    for name in bead_mix(part):
        bead = part.beads.get(name)  # one that is unknown is answered by itself
        if bead is not None and bead.family is not None and not bead.two_hole:
            yield (
                f"`{bead.name}` has one hole, and `{part.name}` is strung on two lines: take"
                f" two-hole beads, or write `stitch: ladder`",
                part.place_of("beads"),
            )
    if part.has("across") and part.count("across") > 1:
        yield (
            f"`{part.name}` is {part.count('across')} across, and two lines carry one bead across:"
            " write `across: 1`, or `stitch: flat peyote`",
            part.place_of("across"),
        )


_RISE = formula(
    "rise",
    "mm",
    lambda bead, sits: bead * sits,
    bead=making.bead("length"),
    sits=hand(
        "how close the beads sit",
        _SITS,
        source="0 to 2 % over the bead's size: trade table `bead_strands`",
        cure="string 5 cm of {part}, count, write the bead's `measured: {length: ...}`",
    ),
)

TWO_HOLE = Stitch(
    name="two-hole strung",
    makes=flat.BAND,
    columns="beads",
    quantities=flat.band(
        measurable("width", making.bead("outside")),
        flat.growth(_RISE, "length"),
        # the lines lie straight, so that they are as long as the work
        formula(
            "thread",
            "mm",
            lambda beads, rise: beads * thread_per_bead(rise),
            beads="beads",
            rise="rise",
            source="counting: a line through either hole",
        ),
    ),
    refuses=refuses,
    passes=1,
    how="String every bead on two lines, one through each hole, and draw both alike",
    held_against="no published figure: 5 mm tiles (5.0 x 5.0 x 1.9 mm, from memory) are 36 on 7 in",
    look=Weave(Pattern.ROWS, flat.face, "rows", along=True),
)
