"""Woven and braided work: bead by bead, or as an outline with bands where beads are too small."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import islice

from msgspec.structs import replace

from wellstrung.drawing.looks.beads import lay
from wellstrung.drawing.looks.breaks import left_out
from wellstrung.drawing.looks.cabochons import bezelled
from wellstrung.drawing.looks.edgings import added
from wellstrung.drawing.looks.faces import Cloth, Laid, rows_of
from wellstrung.drawing.looks.listed import each_named
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.looks.threads import pieces, warp_of
from wellstrung.drawing.pen import Pen
from wellstrung.model.beads import bead_rows, beads_of_loop
from wellstrung.model.item import Missing
from wellstrung.model.looks import Braided, Thread, Weave
from wellstrung.model.parts import Part

#: no more beads of a part are drawn one by one
MOST_BEADS = 1200
_MOST_BANDS, _MOST_CORDS, _MOST_WARPS = 200, 200, 100
#: of a braid from one crossing to the next, in parts of how wide a cord lies; how far a cord leans,
#: rad: judged by eye, no source
_CROSSING, _LEAN = 0.85, 0.7


def worked(
    pen: Pen,
    sizes: Sizes,
    part: Part,
    length: float,
    start: float = 0.0,
    *,
    flat: bool = False,
    most: int = MOST_BEADS,
) -> None:
    """A stretch of a rope, a band or a braid from `start` on, bead by bead; a tube as if `flat`.

    Of `most` beads; where there are more the rows at both ends, and a break between.
    """
    width, of = sizes.across(part), sizes.named(part, sizes.breadth(part))
    look = part.stitch.look if part.stitch is not None else None
    cloth = cloth_of(sizes, part, look, start, start + length) if isinstance(look, Weave) else None
    # the rows of a stretch are counted with those that may reach into it: its length decides too
    all_seen = cloth is None or cloth.beads <= most or length <= cloth.reach_of(most)
    ends = length if all_seen or cloth is None else cloth.reach_of(most // 2)
    seen = cloth is not None and ends > 0
    pen.box(0, length, width, "cloth seen" if seen else "cloth", of_width=of)
    if isinstance(look, Braided):
        _braided(pen, look.warps(part), length, width)
    elif cloth is not None and ends == length:
        _beads(pen, sizes, part, replace(cloth, flat=flat), start, length)
    elif cloth is not None:
        for first in (0.0, length - ends) if seen else ():
            at = start + first
            stretch = replace(cloth, flat=flat).between(at, at + ends)
            _beads(pen.moved(first), sizes, part, stretch, at, ends)
        pen.box(ends, length - 2 * ends, width, "cloth")
        count = round(sizes.known(part, "beads", cloth.beads))
        left_out(pen, ends, length - ends, width / 2 + 1.0, count)


def whole(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """All of a rope, a band or a braid; the more that are alike, the fewer beads of each."""
    worked(pen, sizes, part, length, most=MOST_BEADS // max(sizes.times_hung(part), 1))


def banded(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A worked part as an outline with bands of a round length, for where beads are too small."""
    width, band = sizes.across(part), band_of(length)
    pen.box(0, length, width, sizes.from_afar(part), of_length=sizes.named(part, "length"))
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


def _beads(pen: Pen, sizes: Sizes, part: Part, cloth: Cloth, start: float, length: float) -> None:
    """The beads of the face that is seen, in the order in which they are woven."""
    rows: list[list[Laid]] = []
    named: list[tuple[Laid, str]] = []
    for row in each_named(sizes, part, cloth) or _named(sizes, part, cloth):
        mine = [(replace(one, along=one.along - start), name) for one, name in row]
        mine = [(one, name) for one, name in mine if one.lies_in(length)]
        named += mine
        rows.append([one for one, _ in mine])
    if cloth.look.thread is Thread.CORDS:
        _braided(pen, 4 * cloth.face.columns, length, cloth.width)
    _thread(pen, cloth, [row for row in rows if row])
    for one, name in sorted(named, key=lambda bead: bead[0].depth):
        lay(pen, sizes, name, one, as_seen=cloth.is_round)
    for one, name in added(sizes, part, cloth, named, start):
        if one.lies_in(length):
            lay(pen, sizes, name, one, as_seen=False)


def _named(sizes: Sizes, part: Part, cloth: Cloth) -> Iterator[list[tuple[Laid, str]]]:
    """The beads of each row with their names, picked up one after another, or loop by loop."""
    names, loop = sizes.sequence(part, first=cloth.before), beads_of_loop(part)
    for row in rows_of(cloth):
        if loop and cloth.loop:
            yield [(one, loop[one.picked]) for one in row]
            continue
        yield [(one, _name(sizes, part, one) or next(names)) for one in row]
        if cloth.look.is_round:  # as many lie behind
            next(islice(names, len(row), len(row)), None)


def _name(sizes: Sizes, part: Part, one: Laid) -> str:
    """The name of a bead that is not one of the sequence; empty where it is."""
    if one.named_by:
        return part.text(one.named_by)
    return sizes.core(part) if one.core else ""


def _thread(pen: Pen, cloth: Cloth, rows: list[list[Laid]]) -> None:
    """The thread that is seen between the beads, under them; warps as thick as they are."""
    if cloth.widest > _MOST_WARPS:
        return
    if rows and cloth.look.thread in (Thread.WARPS, Thread.EDGES):
        for (start, across), (end, _) in pieces(cloth, rows):
            pen.box(start, end - start, warp_of(cloth), "warp", across=across)
    elif rows:
        pen.strokes(list(pieces(cloth, rows)), "thread")


def cloth_of(sizes: Sizes, part: Part, look: Weave, start: float, end: float) -> Cloth | None:
    """The face of a part, with the rows that a stretch of it may show.

    None where the plan does not count them.
    """
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
    width, bead = sizes.as_woven(part), sizes.mean_bead(part)
    loop = tuple(map(sizes.bead, beads_of_loop(part)))
    return Cloth(look, face, count, whole, width, bead, loop=loop).between(start, end)


def _braided(pen: Pen, warps: int, length: float, width: float) -> None:
    """Cords that cross: half of them in front, those beside each other leaning to each other."""
    columns = max(warps // 4 * 2, 2)
    step = width / columns
    pitch = max(step * _CROSSING, length * columns / _MOST_CORDS)
    reach = 0.6 * step
    for number in range(int((length - 2 * reach) / pitch) + 1):
        for column in range(columns):
            across = (column - (columns - 1) / 2) * step
            lean = _LEAN * (1 if column % 2 else -1)
            pen.oval(reach + number * pitch, 1.25 * step, 0.75 * step, "cord", across, lean)


def pouch(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Laid flat: it adds its width to the run and hangs below it, or down an upright one."""
    tall = sizes.known(part, "length", UNKNOWN)
    if not pen.upright:
        x, y = pen.at(length / 2)
        pen = Pen(pen.canvas, x, y, upright=True)
    worked(pen, sizes, part, tall, flat=True)


def bezel(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front: the beads of one round about the stone that they hold."""
    if part.has("stone", "shape") or part.has("stone", "width"):
        bezelled(pen, sizes, part, length)
        return
    outside = sizes.known(part, "outside", length)
    stone = sizes.known(part, "stone", outside * 0.8)
    middle = length / 2
    pen.disc(middle, outside, "frame", sizes.named(part, "outside"))
    beads, away = part.count("around", default=0) // 2, (outside + stone) / 4
    each, thick = 2 * math.pi * away / max(beads, 1), (outside - stone) / 2
    rounds = bead_rows(part, "beads")
    # none where the ring is less than the stone, or where they are too many to be told apart
    for number in range(beads if 0 < beads <= MOST_BEADS and thick > 0 else 0):
        turn = 2 * math.pi * number / beads
        along, across = middle + away * math.cos(turn), away * math.sin(turn)
        place = Laid(along, across, each, thick, turn + math.pi / 2)
        row = rounds[len(rounds) // 2]
        lay(pen, sizes, row[number % len(row)], place, as_seen=False)
    pen.disc(middle, stone, "stone")
