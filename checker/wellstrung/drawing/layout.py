"""Where each place of the run lies along it, and where a worked part is cut short by breaks."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct

from wellstrung.drawing.parts import UNKNOWN, Sizes
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, RunEntry

WORKED = frozenset({Role.ROPE, Role.BAND, Role.STRAND})
#: of a worked part that is cut short: how much of an end is drawn at least, and a break's gap, mm
STUB, GAP = 9.0, 5.0
#: how many points a sagging strand is drawn through
_POINTS = 100

#: a point of a curve: how far along it, and where on the page
CurvePoint = tuple[float, float, float]


class Stretch(Struct, frozen=True):
    """A place of the run as drawn: where it starts, how long it is, and how much of that is drawn.

    `turned` says that a part's outer end lies ahead, as that of a cap at the end of a rope does.
    """

    entry: RunEntry
    start: float
    length: float
    drawn: float
    turned: bool
    stub: float = STUB

    @property
    def middle(self) -> float:
        """Halfway along what is drawn."""
        return self.start + self.drawn / 2

    @property
    def cut_short(self) -> bool:
        """Whether breaks take part of it out of the drawing."""
        return self.drawn < self.length

    @property
    def breaks(self) -> tuple[float, ...]:
        """Where its breaks begin, from its start; none where all of it is drawn."""
        return (self.stub, self.drawn - self.stub - GAP) if self.cut_short else ()

    @property
    def pieces(self) -> Iterator[tuple[float, float]]:
        """The pieces in which it is drawn: from where, how long."""
        at = 0.0
        for start in (*self.breaks, self.drawn):
            yield at, start - at
            at = start + GAP


def along_run(plan: Plan, sizes: Sizes, between: dict[Part, float] | None) -> Iterator[Stretch]:
    """Every place of the run, one after another.

    `between` has what hangs from a worked part, as a width: then such a part is cut short to its
    two ends and that. None draws all of it.
    """
    start = 0.0
    for index, entry in enumerate(plan.run):
        what = f"{entry.half}.along" if entry.half else "along"
        length = entry.linked * min(sizes.known(part, what, UNKNOWN) for part in entry.parts)
        stub = max(STUB, *(2.2 * _longest_bead(sizes, part) for part in entry.parts))
        drawn = length
        if between is not None and entry.part.kind.role in WORKED:
            hung = sum(between.get(part, 0.0) for part in entry.parts)
            drawn = min(length, 2 * (stub + GAP) + max(hung + 6.0, stub))
        yield Stretch(entry, start, length, drawn, _turned(plan.run, index), stub)
        start += drawn


def _longest_bead(sizes: Sizes, part: Part) -> float:
    """Of a strand, whose beads are seen one by one."""
    if part.kind.role is not Role.STRAND:
        return 0.0
    return max((sizes.bead(bead)[0] for bead in sizes.mix(part)), default=0.0)


def _turned(run: tuple[RunEntry, ...], index: int) -> bool:
    """Whether a part's outer end lies ahead: the rope, the strands or their cone are behind it."""
    entry = run[index]
    if entry.part.kind.role is Role.CLASP:
        return index > 0
    inner = WORKED | {Role.CONE, Role.CAP}
    behind = run[index - 1].part.kind.role if index else None
    ahead = run[index + 1].part.kind.role if index + 1 < len(run) else None
    return behind in WORKED or (behind in inner and ahead not in inner)


def sagging(start: float, chord: float, length: float) -> list[CurvePoint]:
    """A curve of a length that hangs between two ends on one level.

    A parabola, near enough to how a strand hangs; its depth is found by halving.

    >>> curve = sagging(0.0, 100.0, 110.0)
    >>> round(curve[-1][0], 3), round(max(y for _, _, y in curve), 1)
    (110.0, 20.2)
    """
    low, high = 0.0, length
    for _ in range(50):
        depth = (low + high) / 2
        too_deep = _parabola(start, chord, depth)[-1][0] > length
        low, high = (low, depth) if too_deep else (depth, high)
    return _parabola(start, chord, low)


def _parabola(start: float, chord: float, depth: float) -> list[CurvePoint]:
    shares = [n / _POINTS for n in range(_POINTS + 1)]
    points = [(start + chord * share, 4 * depth * share * (1 - share)) for share in shares]
    curve: list[CurvePoint] = [(0.0, *points[0])]
    for before, after in pairwise(points):
        curve.append((curve[-1][0] + math.dist(before, after), *after))
    return curve


def point_on(curve: list[CurvePoint], along: float) -> tuple[float, float]:
    """The point of a curve at a length along it; its end where that is longer than the curve."""
    for (s0, x0, y0), (s1, x1, y1) in pairwise(curve):
        if along <= s1:
            share = (along - s0) / (s1 - s0) if s1 > s0 else 0.0
            return x0 + share * (x1 - x0), y0 + share * (y1 - y0)
    return curve[-1][1:]
