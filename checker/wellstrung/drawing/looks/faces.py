"""Where the beads of woven work lie on the face that is seen, row by row, by their pattern.

The drawing has as many beads as the plan counts; they are spread over the size of the part, so that
a face that was measured wider than its beads say is drawn wider.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterator, Sequence
from itertools import islice

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing.looks.chains import UNITS
from wellstrung.drawing.looks.coils import Core, coils, wings
from wellstrung.drawing.looks.laid import Laid as Laid
from wellstrung.model.looks import Face, Pattern, Thread, Weave

_ACROSS, _HALFWAY = math.pi / 2, math.pi / 4


class Cloth(Struct, frozen=True):
    """A face of whole rows over a length and a width, mm, of beads of a length and an outside.

    `look` is how its stitch lays them; round work that is pressed `flat` shows no depth. Its rows
    are worked out from `first` on, up to the one before `stop`. `loop` has the sizes of the beads
    of one loop where the plan names them all.
    """

    look: Weave
    face: Face
    rows: int
    length: float
    width: float
    bead: tuple[float, float]
    first: int = 0
    stop: int = sys.maxsize
    flat: bool = False
    loop: tuple[tuple[float, float], ...] = ()

    @property
    def is_round(self) -> bool:
        """Whether its beads turn away beside the middle."""
        return self.look.is_round and not self.flat

    def between(self, start: float, end: float) -> Cloth:
        """The same with the rows that may be seen from `start` to `end`, mm along it."""
        # a row may lie aslant, as far along as the work is wide
        first, stop = (int(self.rows * at / self.length) for at in (start - self.width, end))
        first = 0 if self.face.rows else max(first - self.face.core, 0)
        return replace(self, first=first, stop=stop + 2)

    @property
    def before(self) -> int:
        """How many beads are woven before its first row, those behind it too; of a core none.

        After the first row every second one has as many.
        """
        if not self.first:
            return 0
        begun = rows_of(replace(self, first=0, stop=3))
        base, odd, even = (
            sum(not (one.core or one.named_by) for one in row) for row in islice(begun, 3)
        )
        pairs, left = divmod(self.first - 1, 2)
        return (base + pairs * (odd + even) + left * odd) * (1 + self.look.is_round)

    @property
    def beads(self) -> int:
        """About how many beads its rows have."""
        return len(self.span()) * self._in_row

    @property
    def _in_row(self) -> int:
        """About how many beads its widest row has: of a square two or three count to it."""
        each = {
            Pattern.SQUARES: 2 + 2 * self.look.deep,
            Pattern.COILS: 1 + self.face.loop,
            Pattern.WINGS: 1 + 2 * self.face.loop,
            Pattern.DAISIES: 1 + self.face.loop,
            Pattern.SLANTS: 6,
            Pattern.CHEVRONS: 3 + self.face.loop,
        }
        lying = self.face.between * (self.widest // 2 - 1)
        return self.widest * each.get(self.look.pattern, self.face.loop) + lying

    def reach_of(self, beads: int) -> float:
        """How far whole rows of no more than so many beads reach, mm; 0 where one has more."""
        return max(beads // self._in_row - 4, 0) * self.length / self.rows

    def span(self, lines: int = 0) -> range:
        """The numbers of its rows, or of as many lines more."""
        return range(self.first, min(self.stop, self.rows + lines))

    def row_width(self, row: int) -> int:
        """Columns of a row."""
        return self.face.rows[row] if self.face.rows else self.face.columns

    @property
    def widest(self) -> int:
        """Columns of the widest row."""
        return max(self.face.rows, default=self.face.columns)

    def aside(self, row: int) -> float:
        """How far a row lies aside of the middle of the whole, in beads."""
        face = self.face
        if not face.asides:
            return 0.0
        lie = list(zip(face.asides, face.rows, strict=True))
        ends = min(at - count / 2 for at, count in lie) + max(at + count / 2 for at, count in lie)
        return face.asides[row] - ends / 2

    @property
    def cord(self) -> float:
        """How thick a cord along each edge is, mm: what the beads leave of the width."""
        left = self.width - self.widest * self.bead[0]
        return max(left / 2, 0.0) if self.look.thread is Thread.EDGES else 0.0

    @property
    def breadth(self) -> float:
        """How wide its rows reach together, in beads."""
        lie = [(self.aside(row), count) for row, count in enumerate(self.face.rows)]
        return 2 * max((at + count / 2 for at, count in lie), default=self.face.columns / 2)

    def lean(self, column: int) -> float:
        """How far the beads of a column lean, rad."""
        return math.radians(self.look.leans[column % len(self.look.leans)])


#: the beads of a face, row by row
Rows = Iterator[list[Laid]]


def rows_of(cloth: Cloth) -> Rows:
    """The beads of a face, row by row.

    >>> face = Weave(Pattern.BRICKS, Face)
    >>> cloth = Cloth(face, Face(9), rows=2, length=3.0, width=20.0, bead=(1.5, 2.1))
    >>> [len(row) for row in rows_of(cloth)]
    [9, 9]
    """
    rows = _PATTERNS[cloth.look.pattern](cloth)
    if not cloth.is_round:
        return rows
    return ([_about(cloth, one) for one in row] for row in rows)


def _about(cloth: Cloth, one: Laid) -> Laid:
    """A bead of a round face as it is seen: beside the middle it lies deeper and turns away."""
    _, outside = cloth.bead
    around = math.pi * one.across / cloth.width
    away = max((cloth.width - outside) / 2, 0.0)
    cos, sin = math.cos(around), abs(math.sin(around))
    # a hole that runs round the work is seen shorter, and then its end; one along it is not
    long = one.long * cos + outside * sin if abs(one.turn) > _HALFWAY else one.long
    seen = math.hypot(long * math.sin(one.turn), one.wide * math.cos(one.turn)) / 2
    most = max(cloth.width / 2 - seen, 0.0)
    across = min(max(away * math.sin(around), -most), most)
    return replace(one, across=across, long=long, depth=cos)


def _spread(count: int, step: float, aside: float = 0.0) -> list[float]:
    """So many places, a step apart, about the middle or a little aside of it."""
    return [(number - (count - 1) / 2) * step + aside for number in range(count)]


def _rows(cloth: Cloth) -> Rows:
    """Row on row, each a bead on from the one before, or as far as a bead that leans is long."""
    long, wide = cloth.length / cloth.rows, (cloth.width - 2 * cloth.cord) / cloth.widest
    if not cloth.look.along:
        for row in cloth.span():
            places = _spread(cloth.row_width(row), wide, cloth.aside(row) * wide)
            yield [Laid((row + 0.5) * long, across, wide, long, _ACROSS) for across in places]
        return
    if cloth.is_round:
        wide = cloth.bead[1]
    leans = [cloth.lean(column) for column in range(cloth.widest)]
    ends = max(Laid(0, 0, long, wide, lean).reach for lean in leans)
    for row in cloth.span():
        count = cloth.row_width(row)
        step, at = cloth.width / cloth.widest, ends + row * _pitch(cloth, 2 * ends)
        if cloth.face.between:
            yield list(_in_pairs(cloth, at, 2 * ends, lying=row > 0))
            continue
        drift = at * math.tan(leans[0]) % step - step / 2 if cloth.look.winds else 0.0
        yield [
            Laid(at, across, long, wide, leans[column])
            for column, across in enumerate(_spread(count, step, drift))
        ]


def _in_pairs(cloth: Cloth, at: float, long: float, *, lying: bool) -> Iterator[Laid]:
    """A row of beads on end, two by two, with those that lie across between the pairs."""
    length, outside = cloth.bead
    pairs, between = cloth.face.columns // 2, cloth.face.between
    wide = (cloth.width - (pairs - 1) * between * length) / (2 * pairs)
    across = -cloth.width / 2
    for pair in range(pairs):
        for side in (0, 1):
            place = across + (side + 0.5) * wide
            yield Laid(at, place, long, wide, cloth.lean(side))
        across += 2 * wide
        for number in range(between if lying and pair < pairs - 1 else 0):
            yield Laid(at, across + (number + 0.5) * length, length, outside, _ACROSS)
        across += between * length


def _pitch(cloth: Cloth, bead: float) -> float:
    """From row to row where the first and the last reach as far as a bead does."""
    return (cloth.length - bead) / max(cloth.rows - 1, 1)


def _bricks(cloth: Cloth) -> Rows:
    """Half a bead aside by turns; a row with one bead more or fewer lies so by itself."""
    straight = not cloth.face.rows and cloth.rows > 1
    long, wide = cloth.length / cloth.rows, cloth.width / (cloth.breadth + straight / 2)
    for row in cloth.span():
        aside = wide / 4 * (1 if row % 2 else -1) if straight else wide * cloth.aside(row)
        places = _spread(cloth.row_width(row), wide, aside)
        yield [Laid((row + 0.5) * long, across, long, wide) for across in places]


def _columns(cloth: Cloth) -> Rows:
    """A row reaches half a bead on from the one before; shaped rows are counted by their beads."""
    face, rise = cloth.face, cloth.length / (cloth.rows + 1)
    wide = cloth.width / (2 * cloth.breadth - 1 if face.rows else face.columns)
    columns = _spread(face.columns, wide)
    for row in cloth.span():
        if face.rows:
            places = _spread(cloth.row_width(row), 2 * wide, 2 * wide * cloth.aside(row))
        else:
            places = [at for n, at in enumerate(columns) if n // face.group % 2 == row % 2]
        yield [Laid((row + 1) * rise, across, wide, 2 * rise, _ACROSS) for across in places]


def _steps(cloth: Cloth) -> Rows:
    """A coil: each bead a little on from the one beside it, each row half a bead aside."""
    long, wide = cloth.bead
    columns, step = cloth.face.columns, cloth.width / cloth.face.columns
    seen = Laid(0, 0, long, wide, cloth.lean(0))
    # a coil climbs by a row each time round, and half of that is seen
    pitch = (cloth.length - 2 * seen.reach) / (cloth.rows - 0.5)
    climb = pitch / 2 / columns
    for row in cloth.span():
        aside = step / 4 * (1 if row % 2 else -1)
        at = seen.reach + row * pitch
        yield [
            replace(seen, along=at + (column + 0.25) * climb, across=across)
            for column, across in enumerate(_spread(columns, step, aside))
        ]


def _squares(cloth: Cloth) -> Rows:
    """Beads across on the lines between rows, beads along on the sides of every square.

    Rows that grow or shrink keep to the squares of the widest one.
    """
    length, outside = cloth.bead
    side, high = (cloth.width - outside) / cloth.widest, (cloth.length - outside) / cloth.rows

    def places(row: int, more: int = 0) -> list[float]:
        """The middles of a row's squares, or the lines on either side of them."""
        first = (cloth.widest - cloth.row_width(row)) // 2 - cloth.widest / 2 + (1 - more) / 2
        return [(first + number) * side for number in range(cloth.row_width(row) + more)]

    for line in cloth.span(1):
        at = outside / 2 + line * high
        widest = max(
            (row for row in (line - 1, line) if 0 <= row < cloth.rows), key=cloth.row_width
        )
        beads = [Laid(at, across, length, outside, _ACROSS) for across in places(widest)]
        if cloth.look.deep:
            beads += [
                Laid(at, across, outside, outside, depth=-1, end_on=True)
                for across in places(widest, 1)
            ]
        if line < cloth.rows:
            for number, across in enumerate(places(line, 1)):
                # of an odd loop one side has a bead more, and then the other
                along = (max(cloth.face.loop, 4) - 2 + (number + line) % 2) // 2
                step = high / along if along else high
                long = step if cloth.face.sides else min(length, step)
                beads += [
                    Laid(at + high / 2 + place, across, long, outside, named_by=cloth.face.sides)
                    for place in _spread(along, step)
                ]
        yield beads


def _loops(cloth: Cloth) -> Rows:
    """Shared beads lie across, on every other line of half meshes; straight legs lead to them."""
    meshes, leg = cloth.face.columns * (1 if cloth.is_round else 2), (cloth.face.loop - 1) // 2
    picked = cloth.loop or (cloth.bead,) * cloth.face.loop
    length, outside = picked[leg]
    edge = 0.0 if cloth.is_round else length
    half, rise = (cloth.width - edge) / meshes, (cloth.length - outside) / cloth.rows
    # of round work the last line is the first one of what lies behind
    lines = _spread(meshes + 1, half, half / 2 if cloth.is_round else 0.0)
    lean, side = math.atan2(half, rise), math.hypot(half, rise)
    for row in cloth.span(1):
        at = outside / 2 + row * rise
        beads = [
            Laid(at, lines[line], length, outside, _ACROSS, picked=leg, shared=True)
            for line in range(row % 2, meshes + 1 - cloth.is_round, 2)
        ]
        for gap in range(meshes) if row else ():
            # a leg leads down to the right, the first of its loop, or to the left, the last
            way = 1 if (gap + row) % 2 else -1
            numbers = range(leg) if way > 0 else range(2 * leg, leg, -1)
            for number, share, each in _along(numbers, picked, side):
                across = lines[gap + (way < 0)] + way * half * share
                if across > cloth.width / 2:  # it turns out of sight, as one beyond comes into it
                    across -= cloth.width
                spot, wide = (at - rise * (1 - share), across), picked[number][1]
                beads.append(Laid(*spot, each, wide, way * lean, -1, picked=number))
        yield beads


def _along(
    numbers: range, picked: Sequence[tuple[float, float]], side: float
) -> Iterator[tuple[int, float, float]]:
    """Beads of a leg in the middle of a side: number, middle in parts of the side, and length."""
    long = sum(picked[number][0] for number in numbers)
    # what a leg leaves of a side lies at its ends, where it meets the shared beads
    shrunk, at = min(side / long, 1.0), max(side - long, 0.0) / 2
    for number in numbers:
        each = picked[number][0] * shrunk
        yield number, (at + each / 2) / side, each
        at += each


def _of_units(lay: Callable[[Core], Rows]) -> Callable[[Cloth], Rows]:
    """Chains and ropes that are laid unit by unit."""
    return lambda of: lay(Core(of.face, of.rows, of.span(), of.length, of.width, of.bead))


_PATTERNS: dict[Pattern, Callable[[Cloth], Rows]] = {
    Pattern.ROWS: _rows,
    Pattern.BRICKS: _bricks,
    Pattern.COLUMNS: _columns,
    Pattern.STEPS: _steps,
    Pattern.SQUARES: _squares,
    Pattern.LOOPS: _loops,
    Pattern.COILS: _of_units(coils),
    Pattern.WINGS: _of_units(wings),
    **{unit: _of_units(lay) for unit, lay in UNITS.items()},
}
