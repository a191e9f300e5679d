"""Chains of small units as they lie: daisies, and columns aslant."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.drawing.looks.coils import Core
from wellstrung.drawing.looks.laid import Laid


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
