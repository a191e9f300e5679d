"""How rows of different counts lie on each other, in beads: geometry of this project."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def asides(counts: Sequence[int]) -> tuple[float, ...]:
    """How far aside of the middle each row lies, in beads, where beads hang between two others.

    One bead more or fewer keeps the middle; as many, or two more, lie half a bead aside, and the
    next such row lies back again. Geometry, worked out for this project.

    >>> asides([2, 3, 4, 4, 4, 3])
    (0.0, 0.0, 0.0, 0.5, 0.0, 0.0)
    """
    lie = [0.0]
    for before, now in pairwise(counts):
        lie.append(lie[-1] if (now - before) % 2 else 0.5 - lie[-1])
    return tuple(lie)


def on_columns(counts: Sequence[int]) -> tuple[float, ...]:
    """The same where every bead lies in a column of the first row's, or beside one (geometry).

    >>> on_columns([4, 3, 4])
    (0.0, 0.5, 0.0)
    """
    return tuple((count - counts[0]) % 2 / 2 for count in counts)


def staggered(counts: Sequence[int]) -> float:
    """Beads that the width of rows holds that lie aside of each other (geometry).

    >>> staggered([8, 7, 6]), staggered([8, 8])
    (8.0, 8.5)
    """
    lie = list(zip(asides(counts), counts, strict=True))
    return max(at + count / 2 for at, count in lie) - min(at - count / 2 for at, count in lie)
