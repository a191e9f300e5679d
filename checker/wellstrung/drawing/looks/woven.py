"""Woven and braided work: bead by bead, or as an outline with bands where beads are too small."""

from __future__ import annotations

import math
from itertools import islice

from wellstrung.drawing.looks.faces import Cloth, rows_of
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.item import Missing
from wellstrung.model.looks import Braided, Weave
from wellstrung.model.parts import Part

#: no more beads of a part are drawn one by one
MOST_BEADS = 1500
_MOST_BANDS = 200
#: how much of its place a bead fills, so that neighbours can be seen apart
_FILLED = 0.96
#: how far a bead may reach over the ends of a stretch that it still counts to, mm
_LEEWAY = 0.02


def worked(pen: Pen, sizes: Sizes, part: Part, length: float, start: float = 0.0) -> None:
    """A stretch of a rope, a band or a braid from `start` on, bead by bead."""
    width = sizes.across(part)
    pen.box(0, length, width, "cloth", of_width=sizes.named(part, sizes.breadth(part)))
    look = part.stitch.look if part.stitch is not None else None
    if isinstance(look, Braided):
        _braided(pen, length, width)
    elif isinstance(look, Weave):
        _beads(pen, sizes, part, look, start, length)


def banded(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A worked part as an outline with bands of a round length, for where beads are too small."""
    width, band = sizes.across(part), band_of(length)
    pen.box(0, length, width, "cloth", of_length=sizes.named(part, "length"))
    for number in range(1, int(length // band), 2):
        pen.box(number * band, band, width, "band")


def band_of(length: float) -> float:
    """How long a band is, mm: 10, or more noughts where that would be too many.

    >>> band_of(397.0), band_of(50_000.0)
    (10.0, 1000.0)
    """
    band = 10.0
    while length / band > _MOST_BANDS:
        band *= 10
    return band


def _beads(pen: Pen, sizes: Sizes, part: Part, look: Weave, start: float, length: float) -> None:
    """The beads of the face that is seen, in the order in which they are woven.

    None where they are too many, or where the plan does not count them.
    """
    cloth = _cloth(sizes, part, look, start, start + length)
    if cloth is None:
        return
    beads = sizes.sequence(part)
    for row in rows_of(look.pattern, cloth):
        for one in row:
            at, half = one.along - start, one.long / 2 - _LEEWAY
            if half <= at <= length - half:
                size = one.long * _FILLED, one.wide * _FILLED
                pen.oval(at, *size, sizes.look(next(beads)), one.across, one.turn)
        if look.is_round:  # as many lie behind
            next(islice(beads, len(row), len(row)), None)


def _cloth(sizes: Sizes, part: Part, look: Weave, start: float, end: float) -> Cloth | None:
    """The face of a part, with the rows that a stretch of it may show."""
    whole = sizes.known(part, "length", end)
    try:
        face = look.face(part)
        rows = sizes.ask.of(part, look.rows or "beads").middle
    except Missing:
        return None
    if not look.rows:
        rows /= face.columns * (1 + look.is_round)
    count = round(rows)
    if not count or not whole:
        return None
    width, bead = sizes.across(part), sizes.bead(next(sizes.sequence(part)))
    # a row may lie aslant, as far along as the work is wide
    first, stop = (int(count * at / whole) for at in (start - width, end))
    cloth = Cloth(face, count, whole, width, bead, max(first - 1, 0), stop + 2)
    drawn = len(cloth.span()) * face.columns * face.loop
    return cloth if drawn <= MOST_BEADS else None


def _braided(pen: Pen, length: float, width: float) -> None:
    """Cords that cross: a row of slanted strokes."""
    step = width / 2
    for number in range(int(length / step)):
        start = number * step
        for side in (-width / 2, width / 2):
            pen.line([(start, -side), (min(start + step, length), side)], "thread")


def pouch(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Laid flat: it adds its width to the run and hangs below it, or down an upright one."""
    tall = sizes.known(part, "length", UNKNOWN)
    if not pen.upright:
        x, y = pen.at(length / 2)
        pen = Pen(pen.canvas, x, y, upright=True)
    worked(pen, sizes, part, tall)


def bezel(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front: the beads of one round about the stone that they hold."""
    outside = sizes.known(part, "outside", length)
    stone = sizes.known(part, "stone", outside * 0.8)
    middle = length / 2
    pen.disc(middle, outside, "frame", sizes.named(part, "outside"))
    beads, away = part.count("around", default=0) // 2, (outside + stone) / 4
    each = min((outside - stone) / 2, 2 * math.pi * away / max(beads, 1)) * _FILLED
    rounds = part.texts("beads")
    for number in range(beads if each > 0 else 0):  # none where the ring is less than the stone
        turn = 2 * math.pi * number / beads
        tone = sizes.look(rounds[len(rounds) // 2])
        pen.disc(middle + away * math.cos(turn), each, tone, across=away * math.sin(turn))
    pen.disc(middle, stone, "stone")
