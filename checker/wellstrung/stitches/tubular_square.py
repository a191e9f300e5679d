"""Tubular square stitch: rounds of beads end to end, each bead sewn to the one below it.

A round is a ring of as many beads as the one before, and lies straight on it: no half bead aside,
as in peyote. All of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import GEOMETRY, count, formula, measurable
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas import thread_turns
from wellstrung.model.looks import Pattern, Thread, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making, tubular_peyote

#: fewer beads end to end are no ring
_FEWEST = 3


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """A ring of three or more, any number: every round has as many."""
    yield from making.counts_around(part, count=8, fewest=_FEWEST)


_SIZES = {
    "pitch": flat.pitch(along_hole=True),
    "ring": count("ring", making.around_of),
    "bead_outside": making.bead("outside"),
}

TUBULAR_SQUARE = Stitch(
    name="tubular square",
    columns="beads",
    quantities={
        what: measurable(what, formula(what, "mm", function, _SIZES, source=GEOMETRY))
        for what, function in (
            ("outside", tubular_peyote.outside),
            ("inside", tubular_peyote.inside),
        )
    }
    | {
        **making.growth(flat.pitch(along_hole=False)),
        "beads": making.beads_by_round(making.around_of, "counting: a bead a column a round"),
        "mass": making.mass,
        "thread": making.thread(
            thread_paths.square,
            share=thread_paths.WALKED,
            turn=thread_turns.square_close,
        ),
    },
    refuses=refuses,
    passes=3,
    how="Close the first round to a ring; each bead is sewn to the bead below it, and each round is"
    " closed before the next",
    held_against="no published figure: a ring of as many columns as tubular peyote has is as wide",
    look=Weave(
        Pattern.ROWS,
        making.front(making.around_of),
        "rounds",
        is_round=True,
        thread=Thread.LINKS,
    ),
)
