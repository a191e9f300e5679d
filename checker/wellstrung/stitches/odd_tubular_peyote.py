"""Tubular peyote, odd count: the ring does not close on itself, and the rounds become a spiral.

Columns, sizes and thread are those of even tubular peyote. A round here is once about the tube: N/2
beads, so that two of them put one bead on each of the N columns.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import making
from wellstrung.stitches.tubular_peyote import PEYOTE

#: Three columns are a triangle without room for a needle: common practice, no source.
_FEWEST = 5


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An odd ring of five or more, counted in the ring: its rounds are not whole."""
    yield from making.counts_around(part, count=7)
    if part.has("each_round"):
        twice = 2 * part.count("each_round")
        yield (
            f"`{part.name}` counts {part.count('each_round')} a round, a ring of {twice}, and odd"
            f" tubular peyote needs an odd ring: write `around: {max(twice - 1, _FEWEST)}`, or"
            " `stitch: tubular peyote`",
            part.place_of("each_round"),
        )
    elif part.has("around"):
        yield from _ring(part, part.count("around"))


def _ring(part: Part, ring: int) -> Iterator[tuple[str, Place]]:
    place = part.place_of("around")
    if ring < _FEWEST:
        instead = making.so_many("around", _FEWEST)
        yield making.too_few(part, f"{ring} beads", place, instead)
    elif ring % 2 == 0:
        yield (
            f"`{part.name}` has {ring} beads around, and odd tubular peyote needs an odd ring:"
            f" write `around: {ring - 1}` or `around: {ring + 1}`, or `stitch: tubular peyote`",
            place,
        )


ODD_PEYOTE = Stitch(
    name="odd tubular peyote",
    quantities=PEYOTE.quantities,
    refuses=refuses,
    held_against="no published figure of a size with an odd ring: print has 7 of 6/0 around (`Easy"
    " peyote tube`); the form is held where even peyote is, and against a tube of 12 over"
    " insulated 6 AWG wire (`Good question`, Bead&Button 2004), which it meets only roughly",
    look=PEYOTE.look,
)
