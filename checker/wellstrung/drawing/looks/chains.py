"""Work of small units as it lies: daisies, columns aslant, legs between two edges, and combs."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from wellstrung.drawing.looks.coils import Core
from wellstrung.drawing.looks.laid import Laid
from wellstrung.model.looks import Pattern


def daisies(cloth: Core) -> Iterator[list[Laid]]:
    """A ring of petals for each row, their holes round it, and then the bead in its middle."""
    each, petals = (cloth.length - cloth.width) / max(cloth.rows - 1, 1), cloth.face.loop
    length, outside = cloth.bead
    away = max(cloth.width - outside, outside) / 2
    for row in cloth.span:
        middle = cloth.width / 2 + row * each
        beads = []
        for number in range(petals):
            around = 2 * math.pi * (number + 0.5) / petals
            spot = middle + away * math.cos(around), away * math.sin(around)
            beads.append(Laid(*spot, length, outside, around + math.pi / 2))
        yield [*beads, Laid(middle, 0.0, length, outside, math.pi / 2, 1.0)]


def slants(cloth: Core) -> Iterator[list[Laid]]:
    """Columns of six beads for each row, aslant; those of a second chain lie the other way."""
    length, outside = cloth.bead
    chains, lean = cloth.face.columns, math.atan2(outside, 2 * length)
    reach = 3 * length * math.cos(lean) + outside / 2 * math.sin(lean)
    step = (cloth.length - 2 * reach) / max(cloth.rows - 1, 1)
    aslant, along = length * math.sin(lean), length * math.cos(lean)
    for row in cloth.span:
        beads = []
        for chain in range(chains):
            side = 1 if chain else -1
            off = 2.5 * aslant * side * (chains - 1)
            for number in range(chain, 6):  # the first of a second chain is shared
                at = number - 2.5
                across = off + side * at * aslant
                beads.append(
                    Laid(reach + row * step + at * along, across, length, outside, side * lean)
                )
        yield beads


def chevrons(cloth: Core) -> Iterator[list[Laid]]:
    """Three beads of an edge for each row and a leg to the other edge, edge about with edge.

    The first row begins with a bead of the other edge, and a leg from there.
    """
    length, outside = cloth.bead
    step = cloth.length / (cloth.rows + 1)
    each, edge = 2 * step / 3, (cloth.width - outside) / 2

    def corner(number: int) -> tuple[float, float]:
        """Where the last bead of an edge's three lies; the one that the chain begins with is 0."""
        return each + number * step, edge if number % 2 else -edge

    def leg(start: tuple[float, float], end: tuple[float, float]) -> Iterator[Laid]:
        along, across = end[0] - start[0], end[1] - start[1]
        long, turn = math.hypot(along, across), math.atan2(across, along)
        for number in range(cloth.face.loop):
            share = 0.5 + (number - (cloth.face.loop - 1) / 2) * length / long
            spot = start[0] + along * share, start[1] + across * share
            yield Laid(*spot, length, outside, turn, -1)

    for row in cloth.span:
        last = corner(row + 1)
        along_edge = [Laid(last[0] - n * each, last[1], length, outside) for n in (2, 1, 0)]
        back = leg(last, corner(row))
        if row:
            yield [*along_edge, *back]
            continue
        first = corner(0)
        out = leg(first, (max(along_edge[0].along, outside / 2), last[1]))
        yield [Laid(*first, length, outside), *out, *along_edge, *back]


def combs(cloth: Core) -> Iterator[list[Laid]]:
    """Hexagons side by side, each row half of one aside, with a bead on each side of theirs."""
    (length, outside), across = cloth.bead, cloth.face.columns
    half = (cloth.width - outside) / (2 * across + (cloth.rows > 1))
    # the first and the last row reach beyond the sides on which their beads lie aslant
    rise = (cloth.length - math.hypot(length, math.sqrt(3) * outside) / 2) / cloth.rows
    lean, first = math.atan2(half, rise / 3), (cloth.length - (cloth.rows - 1) * rise) / 2

    def zigzag(along: float, left: float, sides: Iterable[int], *, up: bool) -> Iterator[Laid]:
        for side in sides:
            turn = lean if (side % 2 == 0) is up else -lean
            yield Laid(along, left + (side + 0.5) * half, length, outside, turn)

    for row in cloth.span:
        aside = half / 2 * (1 if row % 2 else -1) if cloth.rows > 1 else 0.0
        at, left = first + row * rise, aside - across * half
        # a later row lies on the sides of the one before, and has one more at its end
        below = (2 * across - 1 if row % 2 else 0,) if row else range(2 * across)
        yield [
            *zigzag(at - rise / 2, left, below, up=False),
            *(Laid(at, left + 2 * n * half, length, outside) for n in range(across + 1)),
            *zigzag(at + rise / 2, left, range(2 * across), up=True),
        ]


UNITS = {
    Pattern.DAISIES: daisies,
    Pattern.SLANTS: slants,
    Pattern.CHEVRONS: chevrons,
    Pattern.COMBS: combs,
}
