"""Thread walked through a model of the work, bead by bead, in the order in which it is sewn.

Beads are laid out where the stitch puts them, and the walk goes through their holes one after
another. Its length is measured twice: along the middles of the holes, as a loose thread lies, and
drawn taut, the shortest way through holes as wide as they are. A hand lies between the taut thread
and a third of the way to the loose one.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wellstrung import tables
from wellstrung.formulas import thread

THREAD = 0.15
ALONG, UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)
Point = tuple[float, float, float]
Floats = NDArray[np.float64]


class Bead(NamedTuple):
    """Sizes of a bead, mm."""

    length: float
    outside: float
    hole: float


def bead_of(name: str) -> Bead:
    row = tables.load("beads").row(name)
    return Bead(*(row.cell(what).value for what in ("length", "outside", "hole")))


NAMES = [
    *(f"round {size}/0 Japanese" for size in (15, 11, 8, 6)),
    *(f"round {size}/0 Czech" for size in (13, 11, 8, 6)),
    *(f"cylinder {size}/0" for size in (15, 11, 10, 8)),
]
BEADS = {name: bead_of(name) for name in NAMES}


@dataclass
class Walk:
    """A thread on its way: points that it passes, the hole's direction there, and beads passed."""

    bead: Bead
    points: list[Point] = field(default_factory=list)
    holes: list[Point] = field(default_factory=list)
    steps: list[float] = field(default_factory=list)
    passed: Counter[Hashable] = field(default_factory=Counter)

    def through(self, name: Hashable, middle: Point, along: Point, ahead: int) -> None:
        """Through a bead whose hole lies `along`, forwards (1) or backwards (-1)."""
        half = self.bead.length / 2 * ahead
        for sign in (-1, 1):
            x, y, z = (m + sign * half * a for m, a in zip(middle, along, strict=True))
            self._to((x, y, z), along)
        self.passed[name] += 1

    def round_a_thread(self, spot: Point) -> None:
        """Under a thread of the row below, or round a warp: no hole, so no room either."""
        self._to(spot, (0.0, 0.0, 0.0))

    def _to(self, spot: Point, along: Point) -> None:
        if self.points:
            self.steps.append(math.dist(self.points[-1], spot))
        self.points.append(spot)
        self.holes.append(along)

    @property
    def middle(self) -> float:
        """Length along the middles of the holes."""
        return math.fsum(self.steps)

    @property
    def taut(self) -> float:
        """Length of the shortest thread through all holes in that order."""
        return taut([self])[0]


def taut(walks: Sequence[Walk]) -> list[float]:
    """Length of the shortest thread through all holes in order, of walks with as many points.

    Every point moves about its hole's end, within what the thread leaves free. Points are
    moved in turn to the weighted mean of their neighbours, which never lengthens the thread.
    """
    rest = np.array([walk.points for walk in walks])
    hole = np.array([walk.holes for walk in walks])
    free = np.array([[(walk.bead.hole - THREAD) / 2] for walk in walks])
    free = np.where(hole.any(axis=2), free, 0.0)
    spots = rest.copy()
    for turn in range(300):
        at = slice(1 + turn % 2, -1, 2)
        before, after = spots[:, turn % 2 : -2 : 2], spots[:, 2 + turn % 2 :: 2]
        near, far = (1 / (_long(spots[:, at] - one) + 1e-9) for one in (before, after))
        moved = (before * near + after * far) / (near + far) - rest[:, at]
        moved -= (moved * hole[:, at]).sum(axis=2, keepdims=True) * hole[:, at]
        share = free[:, at, None] / np.maximum(_long(moved), 1e-12)
        spots[:, at] = rest[:, at] + moved * np.minimum(1, share)
    return [float(length) for length in _long(np.diff(spots, axis=1)).sum(axis=(1, 2))]


def _long(ways: Floats) -> Floats:
    long: Floats = np.sqrt((ways * ways).sum(axis=2, keepdims=True))
    return long


def to_and_fro(count: int, row: int) -> Sequence[int]:
    """Columns in the order of a row, every other row back again."""
    return range(count) if row % 2 else range(count - 1, -1, -1)


def loop_of(
    bead: Bead, core: int, outer: int
) -> Iterator[tuple[float, float, tuple[float, float]]]:
    """Offset, height and direction (out, up) of the beads of a loop, from the top down."""
    span, strung = core * bead.length, outer * bead.length
    if strung <= span:
        for at in range(outer):
            yield bead.outside, span * (1 - (at + 0.5) / outer), (0.0, 1.0)
        return
    # half the angle of an arc as long as the beads over this span
    low, high = 0.0, math.pi
    for _ in range(60):
        half = (low + high) / 2
        low, high = (half, high) if math.sin(half) / half > span / strung else (low, half)
    radius = strung / (2 * half)
    beside = bead.outside / 2 - radius * math.cos(half)
    for at in range(outer):
        angle = half * (1 - 2 * (at + 0.5) / outer)
        spot = (beside + radius * math.cos(angle), span / 2 + radius * math.sin(angle))
        yield (*spot, (-math.sin(angle), math.cos(angle)))


def held(walked: Iterable[tuple[Walk, int, float]], share: float) -> str:
    """Thread over formula, from taut to a third of the way to loose, and loose; all within."""
    low, high, loose = [], [], []
    alike = defaultdict[int, list[tuple[Walk, float]]](list)
    for walk, beads, formula in walked:
        alike[len(walk.points)].append((walk, beads * formula))
    for group in alike.values():
        lengths = taut([walk for walk, _ in group])
        for (walk, formula), drawn in zip(group, lengths, strict=True):
            close, middle = drawn / formula, walk.middle / formula
            low.append(close)
            high.append(close + (middle - close) / 3)
            loose.append(middle)
    assert min(low) >= 1 - share - 0.005
    assert max(high) <= 1 + share + 0.005
    assert max(loose) <= 1 + thread.WALKED_WORST[1] + 0.005
    return f"{min(low):.2f}..{max(high):.2f}, {max(loose):.2f}"
