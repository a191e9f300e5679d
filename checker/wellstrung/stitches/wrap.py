"""Ladder between cords: rows of beads sewn between two cords, as in a bracelet of several wraps.

A row lies across; the thread goes through its beads below the cords and back above them, round
each. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, measurable, product, size
from wellstrung.derived.declared import constant as fixed
from wellstrung.formulas.arithmetic import most, pi
from wellstrung.formulas.thread import WALKED
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making

#: What each cord has beyond the beads, for the loop, the knots and the button, mm: half of 7 in and
#: 12 in (two pages on such bracelets, copies seen), and between them.
_ENDS = 90.0, 200.0, 305.0


def between(across: float, column: float, cord: float) -> float:
    """Width over all, mm: a row of beads, and a cord on either side.

    Geometry.

    >>> between(1, 4.2, 2.0)
    8.2
    """
    return across * column + 2 * cord


def thread_per_bead(bead_length: float, bead_outside: float, cord: float, across: float) -> float:
    """Thread for one bead, mm: twice through its row, all but round a cord at both ends, a step.

    A hole lies as high as the middles of the cords, so the thread goes from below a cord round it
    and back into the hole above: (2 across l + 1.9 pi cord + 0.5 d) / across, +/- 12 %. Counted
    passes, walked through a model. Held against print: 18 beads of 8 mm took 6 1/2 ft, doubled,
    with knots and a wrapping at both ends (`Stones and Leather`, copy seen): 0.99 m, of which this
    is 0.57 m between cords of 2 mm; 4 1/2 ft are ample for a kit of 4 mm and cords of 1.5 mm
    (`Leather Wrap Bracelets`, excerpt seen): 0.72 m, and the tails.

    >>> round(thread_per_bead(4, 4, 2, 1), 1)
    21.9
    """
    return (2 * across * bead_length + 1.9 * pi * cord + 0.5 * bead_outside) / across


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Cords that have a thickness."""
    yield from flat.refuses(part, "a ladder between cords", uses=("cords",), narrow=True)
    if not part.has("cords", "outside"):
        yield (
            f"`{part.name}` does not say how thick its two cords are: write `cords: {{outside: 2"
            " mm}`",
            part.key.place,
        )


def _ends(part: Part, ask: Quantities) -> Quantity:
    low, middle, high = _ENDS
    cure = f"make the loop and the knots of `{part.name}` in a scrap of its cord, and measure it"
    cause = Cause("ends of the cords", f"`{part.name}`", cure)
    spreads = [Spread(cause, middle - low, high - middle)]
    return leaf(f"{part.name}.ends", middle, "mm", spreads, source="two pages, copies seen")


_CORD = size("cords", "outside")
_ACROSS = count("across", flat.across_of)
WRAP = Stitch(
    name="ladder between cords",
    makes=flat.BAND,
    columns="beads",
    quantities={
        **flat.band(
            measurable(
                "width",
                formula(
                    "width",
                    "mm",
                    between,
                    across=_ACROSS,
                    column=flat.pitch(along_hole=True),
                    cord=_CORD,
                    source=GEOMETRY,
                ),
            ),
            flat.growth(flat.pitch(along_hole=False), "outside"),
            formula(
                "thread",
                "mm",
                lambda beads, share, **sizes: beads * thread_per_bead(**sizes) * share,
                beads="beads",
                share=making.thread_share(WALKED),
                bead_length=making.bead("length"),
                bead_outside=making.bead("outside"),
                cord=_CORD,
                across=_ACROSS,
            ),
        ),
        "thickness": measurable(
            "thickness",
            formula(
                "thickness",
                "mm",
                lambda bead, cord: most(bead, cord),
                bead=making.bead("outside"),
                cord=_CORD,
                source=GEOMETRY,
            ),
        ),
        # to cut for each cord: as long as the beads, and what both its ends take
        "cord": formula(
            "cord", "mm", lambda length, ends: length + ends, length="length", ends=_ends
        ),
        "cord_in_all": product("cord in all", "mm", fixed("cords", 2.0), "cord"),
    },
    refuses=refuses,
    held_against="7 in of beads of 4 mm between two cords of 2 mm takes 45 (`Leather and Bead Wrap"
    " Bracelet`, copy seen): 44.5; cords for 24 in are 36 in each there, here 27.5 to 36",
    look=Weave(Pattern.ROWS, flat.face, "rows", thread=Thread.EDGES),
)
