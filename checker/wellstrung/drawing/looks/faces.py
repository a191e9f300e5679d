"""Where the beads of woven work lie on the face that is seen, row by row, by their pattern.

The drawing has as many beads as the plan counts; they are spread over the size of the part, so that
a face that was measured wider than its beads say is drawn wider.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterator

from msgspec import Struct

from wellstrung.model.looks import Face, Pattern

#: how far a coil of beads climbs across the face, in parts of its width
_CLIMB = 0.6


class Oval(Struct, frozen=True):
    """A bead about (along, across), so long and wide; `turn` leans it from along to across, rad."""

    along: float
    across: float
    long: float
    wide: float
    turn: float = 0.0


class Cloth(Struct, frozen=True):
    """A face of whole rows over a length and a width, mm, of beads of a length and an outside.

    Its rows are worked out from `first` on, up to the one before `stop`.
    """

    face: Face
    rows: int
    length: float
    width: float
    bead: tuple[float, float]
    first: int = 0
    stop: int = sys.maxsize

    def span(self, lines: int = 0) -> range:
        """The numbers of its rows, or of as many lines more."""
        return range(self.first, min(self.stop, self.rows + lines))

    def row_width(self, row: int) -> int:
        """Columns of a row."""
        return self.face.columns + self.face.change * row

    @property
    def widest(self) -> int:
        """Columns of the widest row, the first or the last."""
        return max(self.face.columns, self.row_width(self.rows - 1))


#: the beads of a face, row by row
Rows = Iterator[list[Oval]]


def rows_of(pattern: Pattern, cloth: Cloth) -> Rows:
    """The beads of a face, row by row.

    >>> cloth = Cloth(Face(9), rows=2, length=3.0, width=20.0, bead=(1.5, 2.1))
    >>> [len(row) for row in rows_of(Pattern.BRICKS, cloth)]
    [9, 9]
    """
    return _PATTERNS[pattern](cloth)


def _spread(count: int, step: float, aside: float = 0.0) -> list[float]:
    """So many places, a step apart, about the middle or a little aside of it."""
    return [(number - (count - 1) / 2) * step + aside for number in range(count)]


def _rows(cloth: Cloth) -> Rows:
    long, wide = cloth.length / cloth.rows, cloth.width / cloth.widest
    for row in cloth.span():
        places = _spread(cloth.row_width(row), wide)
        yield [Oval((row + 0.5) * long, across, long, wide) for across in places]


def _bricks(cloth: Cloth) -> Rows:
    """Half a bead aside by turns; a row with one bead more or fewer lies so by itself."""
    if cloth.face.change or cloth.rows == 1:
        yield from _rows(cloth)
        return
    long, wide = cloth.length / cloth.rows, cloth.width / (cloth.widest + 0.5)
    for row in cloth.span():
        places = _spread(cloth.face.columns, wide, wide / 4 * (1 if row % 2 else -1))
        yield [Oval((row + 0.5) * long, across, long, wide) for across in places]


def _columns(cloth: Cloth) -> Rows:
    """A row reaches half a bead on from the one before; shaped rows are counted by their beads."""
    face, first = cloth.face, math.ceil(cloth.face.columns / 2)
    rise = cloth.length / (cloth.rows + 1)
    widest = max(first, first + face.change * (cloth.rows - 1))
    wide = cloth.width / (2 * widest - 1 if face.change else face.columns)
    columns = _spread(face.columns, wide)
    for row in cloth.span():
        if face.change:
            places = _spread(first + face.change * row, 2 * wide)
        else:
            places = [at for n, at in enumerate(columns) if n // face.group % 2 == row % 2]
        yield [Oval((row + 1) * rise, across, 2 * rise, wide) for across in places]


def _steps(cloth: Cloth) -> Rows:
    long, wide = cloth.length / (cloth.rows + 0.5), cloth.width / cloth.face.columns
    for row in cloth.span():
        yield [
            Oval((row + 0.5 + number % 2 / 2) * long, across, long, wide)
            for number, across in enumerate(_spread(cloth.face.columns, wide))
        ]


def _squares(cloth: Cloth) -> Rows:
    """Beads across on the lines between rows, beads along on the sides of every square."""
    length, outside = cloth.bead
    side, high = (cloth.width - outside) / cloth.widest, (cloth.length - outside) / cloth.rows
    for line in cloth.span(1):
        at = outside / 2 + line * high
        beside = [cloth.row_width(row) for row in (line - 1, line) if 0 <= row < cloth.rows]
        beads = [Oval(at, across, outside, length) for across in _spread(max(beside), side)]
        if line < cloth.rows:
            beads += [
                Oval(at + high / 2, across, length, outside)
                for across in _spread(beside[-1] + 1, side)
            ]
        yield beads


def _loops(cloth: Cloth) -> Rows:
    """A row of shared beads lies across, on every other of the lines between half meshes.

    Legs of the beads between them lead there from the shared beads of the row before.
    """
    length, outside = cloth.bead
    meshes, leg = 2 * cloth.face.columns, (cloth.face.loop - 1) // 2
    half, rise = (cloth.width - length) / meshes, (cloth.length - outside) / cloth.rows
    lines = _spread(meshes + 1, half)
    lean = math.atan2(half, rise)
    for row in cloth.span(1):
        at = outside / 2 + row * rise
        shared = range(row % 2, meshes + 1, 2)
        beads = [Oval(at, lines[line], outside, length) for line in shared]
        for line in shared if row else ():
            for side in (-1, 1):
                if 0 <= line + side <= meshes:
                    for number in range(leg):
                        share = (number + 1) / (leg + 1)
                        across = lines[line] + side * half * share
                        turn = -side * lean
                        beads.append(Oval(at - rise * share, across, length, outside, turn))
        yield beads


def _coils(cloth: Cloth) -> Rows:
    """Each row climbs across the face, and lies over the one before."""
    _, outside = cloth.bead
    count, climb = cloth.face.columns, min(_CLIMB * cloth.width, cloth.length)
    step, rise = cloth.width / count, climb / count
    pitch = (cloth.length - climb) / cloth.rows
    lean, long = math.atan2(step, rise), math.hypot(step, rise)
    for row in cloth.span():
        yield [
            Oval((row + 0.5) * pitch + (number + 0.5) * rise, across, long, outside, lean)
            for number, across in enumerate(_spread(count, step))
        ]


_PATTERNS: dict[Pattern, Callable[[Cloth], Rows]] = {
    Pattern.ROWS: _rows,
    Pattern.BRICKS: _bricks,
    Pattern.COLUMNS: _columns,
    Pattern.STEPS: _steps,
    Pattern.SQUARES: _squares,
    Pattern.LOOPS: _loops,
    Pattern.COILS: _coils,
}
