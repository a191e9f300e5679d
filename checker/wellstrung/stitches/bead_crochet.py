"""Slip-stitch bead crochet: beads strung before the start, so many around, hooked in a spiral.

Finished beads stand on end as in tubular herringbone, so a round adds a bead's length and takes as
many bead lengths of the strung thread as there are beads around. That count is printed (see
`CROCHET.held_against`); the outside is geometry worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, formula
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import making
from wellstrung.stitches.tubular_herringbone import quantities


def strung(beads: float, bead_length: float) -> float:
    """Length of beads to string before the start, mm, without any to spare (counting).

    >>> strung(800, 1.5)
    1200.0
    """
    return beads * bead_length


def thread_per_bead(bead_length: float, bead_outside: float) -> float:
    """Thread for one bead, mm: once through it, and a loop as high as the bead is wide.

    Counted for this project; how far a hook draws its loops is the hand's, +/- 35 %.

    >>> thread_per_bead(1.5, 2.0)
    5.5
    """
    return bead_length + 2 * bead_outside


#: How the beads lie, against circles that touch: ± 10 %, no print of a diameter.
_SETTLE = (0.90, 1.0, 1.10)
#: A round against a bead's length: print has them equal; a hook draws 5 % tighter or looser.
_RISE = (0.95, 1.0, 1.05)
_THREAD_SHARE = 0.35
#: Two around make no tube: common practice, no source.
_FEWEST = 3


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Three around or more, odd or even: the rounds are a spiral anyway."""
    yield from making.counts_around(part, count=6, fewest=_FEWEST)


CROCHET = Stitch(
    name="slip-stitch bead crochet",
    quantities={
        **quantities(_SETTLE, _RISE),
        "strung": formula(
            "strung",
            "mm",
            strung,
            beads="beads",
            bead_length=making.bead("length"),
            source=f"strung = finished x beads around, trade table `stitch_facts`; {GEOMETRY}",
        ),
        "thread": making.thread(thread_per_bead, share=_THREAD_SHARE),
    },
    refuses=refuses,
    held_against="15 cm of 11 around takes 165 cm strung: `How many beads in a beads crochet"
    " project?`, copy seen, and 4 ft strung are over 800 beads for about 8 in: `Bead crochet`;"
    " a page that counts 48 beads of 11/0 to an inch of rope, half of that, does not say how many"
    " go around",
    passes=1,
    # on their side, each round tucked half a bead into the one before; how far they lean as drawn
    # is from memory
    look=Weave(
        Pattern.STEPS, making.front(making.around_of), "rounds", is_round=True, leans=(60.0,)
    ),
)
