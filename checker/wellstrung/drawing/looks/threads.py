"""What is seen of the thread between the beads of woven work, by the look of its stitch."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.faces import Cloth, Laid
from wellstrung.model.looks import Thread

#: a straight piece of thread, by two spots along and across
Piece = tuple[Spot, Spot]
#: the thinnest warp that is drawn, mm
_THIN = 0.1


def _lines(cloth: Cloth) -> int:
    """How many warps or cords lie side by side."""
    return 2 if cloth.look.thread is Thread.EDGES else cloth.widest + 1


def warp_of(cloth: Cloth) -> float:
    """How thick each warp is, mm: what the beads of the widest row leave of the width."""
    left = cloth.width - cloth.widest * cloth.bead[0]
    return max(left / _lines(cloth), _THIN)


def pieces(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    """Every piece of thread between the beads of some rows."""
    if cloth.look.thread in _SEEN:
        yield from _SEEN[cloth.look.thread](cloth, rows)


def _warps(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    steps = _lines(cloth) - 1
    step = (cloth.width - warp_of(cloth)) / steps
    first, last = rows[0][0], rows[-1][0]
    for number in range(steps + 1):
        across = (number - steps / 2) * step
        yield (first.along - first.reach, across), (last.along + last.reach, across)


def _bridges(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    for row in rows[:-1]:
        edge = row[0].along + row[0].long / 2
        yield (edge, row[0].across), (edge, row[-1].across)


def _links(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    half = cloth.bead[0] / 2
    for row, beyond in pairwise(rows):
        for one in row[: len(beyond)]:
            for side in (-half, half):
                yield (one.along, one.across + side), (beyond[0].along, one.across + side)


def _rungs(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    for row, beyond in pairwise(rows):
        for end, way in ((0, -1), (-1, 1)):
            one, other = row[end], beyond[end]
            yield (
                (one.along, one.across + way * one.long / 2),
                (other.along, other.across + way * other.long / 2),
            )


def _round(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    """From the ends of each bead along to the ends of the beads across on either side of it."""
    half, outside = cloth.bead[0] / 2, cloth.bead[1]
    side = (cloth.width - outside) / cloth.widest
    lines = [one for row in rows for one in row if one.turn]
    there = {(round(one.along, 2), round(one.across, 2)) for one in lines}
    reach = (cloth.length - outside) / cloth.rows / 2
    for one in (one for row in rows for one in row if not one.turn and not one.end_on):
        for way in (-1, 1):
            line = one.along + way * reach
            for aside in (-1, 1):
                if (round(line, 2), round(one.across + aside * side / 2, 2)) in there:
                    end = one.across + aside * (side / 2 - half)
                    yield (one.along + way * half, one.across), (line, end)


def _sides(cloth: Cloth, rows: list[list[Laid]]) -> Iterator[Piece]:
    """From each shared bead, which lies across, to those beside it in the row before."""
    shared = [[one for one in row if one.shared] for row in rows]
    for row, before in pairwise(shared):
        for one in row:
            for aside in (-1, 1):
                beside = [old for old in before if (old.across - one.across) * aside > 0]
                if beside:
                    old = min(beside, key=lambda old: abs(old.across - one.across))
                    yield (one.along, one.across), (old.along, old.across)


_SEEN: dict[Thread, Callable[[Cloth, list[list[Laid]]], Iterator[Piece]]] = {
    Thread.WARPS: _warps,
    Thread.EDGES: _warps,
    Thread.BRIDGES: _bridges,
    Thread.LINKS: _links,
    Thread.RUNGS: _rungs,
    Thread.ROUND: _round,
    Thread.SIDES: _sides,
}
