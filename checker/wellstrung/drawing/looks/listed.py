"""Woven work whose beads have their places, column, round, side, unit or daisy, and sizes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import accumulate
from sys import maxsize

from msgspec.structs import replace

from wellstrung.drawing.looks.faces import Cloth, Laid, rows_of
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.model.beads import COLUMN, ROUND, SIDE, UNIT, bead_of_unit, daisy_of, listed_for
from wellstrung.model.looks import Pattern
from wellstrung.model.parts import Part

#: after so many rounds columns that differ have wound on by two: judged by eye, no source
_WINDS_AFTER = 4


def each_named(sizes: Sizes, part: Part, cloth: Cloth) -> Iterator[list[tuple[Laid, str]]] | None:
    """The beads of each row with names and sizes of their own; None where any lies anywhere."""
    if columns := listed_for(part, COLUMN):
        return _by_column(sizes, columns, cloth)
    if cloth.look.shifts:
        names = [*sizes.repeat(part), *part.texts("outer")]
        if cloth.look.pattern is Pattern.COLUMNS:  # two rounds go once round
            names = [name for name in names for _ in range(2)]
        return _by_column(sizes, names, cloth)
    if cloth.look.pattern is Pattern.DAISIES:
        return _by_daisy(sizes, part, cloth)
    if rounds := listed_for(part, ROUND):
        return _by_round(sizes, rounds, replace(cloth, first=0, stop=maxsize))
    if listed_for(part, SIDE) or listed_for(part, UNIT):
        return _by_unit(sizes, part, replace(cloth, first=0, stop=maxsize))
    return None


def _by_unit(sizes: Sizes, part: Part, cloth: Cloth) -> Iterator[list[tuple[Laid, str]]]:
    """Sides of units by their place; of a bead for each unit, each rises and spreads by its own."""
    length, outside = cloth.length, cloth.bead[1]
    units = listed_for(part, UNIT) or ("",)
    across = {name: math.hypot(*sizes.bead(name)) if name else 1.0 for name in units}
    rises = [across[units[row % len(units)]] for row in range(cloth.rows)]
    starts = list(accumulate(rises, initial=0.0))
    share, uniform = (length - outside) / starts[-1], (length - outside) / cloth.rows
    for line, beads in enumerate(rows_of(cloth)):
        row, laid, number = min(line, cloth.rows - 1), [], 0
        for one in beads:
            side = None if one.turn else number
            number += side is not None
            name, of = bead_of_unit(part, line, side), row if side is not None else max(line - 1, 0)
            part_way = (one.along - outside / 2) / uniform - line
            along = outside / 2 + share * (starts[line] + part_way * rises[row])
            placed = replace(one, along=along, across=one.across * rises[of] / max(rises))
            laid.append((_sized(sizes, cloth, placed, name), name))
        yield laid


def _by_column(
    sizes: Sizes, names: Sequence[str], cloth: Cloth
) -> Iterator[list[tuple[Laid, str]]]:
    every = 2 if cloth.look.pattern is Pattern.COLUMNS else 1
    for row, beads in zip(cloth.span(), rows_of(cloth), strict=False):
        wound = cloth.look.shifts * row or 2 * (row // _WINDS_AFTER)
        first = wound + row % every
        named = [names[(first + every * number) % len(names)] for number in range(len(beads))]
        yield [
            (_sized(sizes, cloth, one, name), name) for one, name in zip(beads, named, strict=True)
        ]


def _by_daisy(sizes: Sizes, part: Part, cloth: Cloth) -> Iterator[list[tuple[Laid, str]]]:
    """Petals by turns, and then the middle of each daisy."""
    middle = daisy_of(part)[1]
    petals = [name for name in sizes.repeat(part) if name != middle] or [middle]
    for row, beads in zip(cloth.span(), rows_of(cloth), strict=False):
        first = row * (len(beads) - 1)
        named = [petals[(first + n) % len(petals)] for n in range(len(beads) - 1)] + [middle]
        yield [
            (_sized(sizes, cloth, one, name), name) for one, name in zip(beads, named, strict=True)
        ]


def _by_round(sizes: Sizes, names: Sequence[str], cloth: Cloth) -> Iterator[list[tuple[Laid, str]]]:
    """Each round rises by its own bead, and is as wide as its bead makes it."""
    named = [names[row % len(names)] for row in range(cloth.rows)]
    along = 0 if cloth.look.along else 1
    rises = [sizes.bead(name)[along] for name in named]
    share = cloth.length / (sum(rises) or 1.0)
    starts = [start * share for start in accumulate(rises, initial=0.0)]
    # how wide a ring is goes by the size of its beads round it
    widths = {name: sizes.bead(name)[1 - along] for name in names}
    widest = max(widths.values())
    uniform = cloth.length / cloth.rows
    for row, beads in enumerate(rows_of(cloth)):
        name = named[min(row, cloth.rows - 1)]
        stretch, narrow = rises[row] * share / uniform, widths[name] / widest
        yield [
            (
                replace(
                    _sized(sizes, cloth, one, name),
                    along=starts[row] + (one.along - row * uniform) * stretch,
                    across=one.across * narrow,
                ),
                name,
            )
            for one in beads
        ]


def _sized(sizes: Sizes, cloth: Cloth, one: Laid, name: str) -> Laid:
    """A bead as much larger or smaller than the mean as its own bead is."""
    (length, outside), (long, wide) = sizes.bead(name), cloth.bead
    sized = replace(one, long=one.long * length / long, wide=one.wide * outside / wide)
    return sized.within(cloth.length, cloth.width)
