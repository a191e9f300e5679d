"""Loops of beads about a core of beads: round it, or to its left and right."""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from wellstrung.drawing.looks.laid import Laid
from wellstrung.model.looks import Face

#: how far the ends of a loop go down into its core, in parts of how far the loop lies from the
#: middle: judged by eye, no source
_DOWN = 0.3


class Core(Struct, frozen=True):
    """The work about a core: what is counted on its face, all its rows and those to lay, its size.

    `bead` is the length and the outside of an outer bead.
    """

    face: Face
    rows: int
    span: range
    length: float
    width: float
    bead: tuple[float, float]


def coils(cloth: Core) -> Iterator[list[Laid]]:
    """Core beads along the middle; each loop lies beside the one before, a little further round."""
    face = cloth.face
    each = cloth.length / (cloth.rows - 1 + face.core)
    length, outside = cloth.bead
    away = max((cloth.width - outside) / 2, outside / 2)
    thick = max(cloth.width - 2 * outside, 0.2 * cloth.width)
    beside = outside / away  # a loop lies so far round the core from the one before, rad
    for row in cloth.span:
        beads = [
            Laid((number + 0.5) * each, 0.0, each, thick, core=True)
            for number in range(row + face.core - 1 if row else 0, row + face.core)
        ]
        for number in range(face.loop):
            share = (number + 0.5) / face.loop
            around = beside * (row + share - 0.5)
            # the ends of a loop go down into the core
            from_core = away * (1 - _DOWN * abs(2 * share - 1) ** 2)
            slope = from_core * math.cos(around) * beside / (face.core * each)
            at, across = (row + face.core * share) * each, from_core * math.sin(around)
            lean, near = math.atan(slope), math.cos(around)
            beads.append(Laid(at, across, length, outside, lean, near))
        yield beads


def wings(cloth: Core) -> Iterator[list[Laid]]:
    """Core beads along the middle; a loop bows out to the left of each and one to the right.

    Each loop lies over the one before it.
    """
    face = cloth.face
    each = cloth.length / (cloth.rows - 1 + face.core)
    length, outside = cloth.bead
    out = (cloth.width - outside) / 2
    thick = min(max(cloth.width - 2 * outside, 0.2 * cloth.width), 1.6 * each)
    for row in cloth.span:
        beads = [
            Laid((number + 0.5) * each, 0.0, each, thick, core=True, depth=-1)
            for number in range(row + face.core - 1 if row else 0, row + face.core)
        ]
        for side in (-1, 1):
            for number in range(face.loop):
                # half a round from where the loop leaves the core to where it comes back
                turn = math.pi * (number + 0.5) / face.loop
                along = (row + face.core * (0.5 - 0.5 * math.cos(turn))) * each
                across = side * (outside / 2 + (out - outside / 2) * math.sin(turn))
                slope = math.atan2(
                    (out - outside / 2) * math.cos(turn), face.core * each / 2 * math.sin(turn)
                )
                one = Laid(along, across, length, outside, side * slope, row)
                beads.append(one.within(cloth.length, cloth.width))
        yield beads
