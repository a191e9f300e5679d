"""Why a value varies, and how far."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Literal, NamedTuple


class Cause:
    """Why a value varies: `name` of `scope`; `cure` is what the maker can do about it.

    Two causes are the same when name and scope are. The spread of a plan looks causes up in
    dictionaries thousands of times, so a cause keeps its hash. Where swatches narrowed what is
    likely and not what can be, a cause is there for the `likely` range or for the `worst` `only`.
    """

    __slots__ = ("_hash", "cure", "name", "only", "scope")

    def __init__(
        self, name: str, scope: str = "", cure: str = "", only: Literal["likely", "worst", ""] = ""
    ) -> None:
        self.name = name
        self.scope = scope
        self.cure = cure
        self.only = only
        self._hash = hash((name, scope))

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return (
            isinstance(other, Cause)
            and self.name == other.name
            and self.scope == other.scope
            and self.only == other.only
        )

    def __repr__(self) -> str:
        return f"Cause({self.name!r}, {self.scope!r})"

    def __str__(self) -> str:
        return f"{self.name} of {self.scope}" if self.scope else self.name


class Hand(Cause):
    """The maker's hand: how tight, how close, how far spread."""

    __slots__ = ()


class Spread(NamedTuple):
    """How far one cause moves a leaf below and above its middle, both as distances.

    They are less than 0 where a cause that moves several leaves moves this one the other way.
    """

    cause: Cause
    down: float
    up: float


class Window(NamedTuple):
    """A range, both ends included."""

    low: float
    high: float


#: How far each cause moves a value, at its low and its high end or at all points of a scan.
Moves = dict[Cause, tuple[float, ...]]
_NO_MOVE = (0.0, 0.0)


def moves_of(spreads: Iterable[Spread]) -> Moves:
    """How far each cause of these spreads moves a value, down and up."""
    moves: Moves = {}
    for cause, down, up in spreads:
        if down or up:
            low, high = moves.get(cause, _NO_MOVE)
            moves[cause] = (low - down, high + up)
    return moves


def summed(slopes: Iterable[float], of_each: Iterable[Moves]) -> Moves:
    """The moves of several values, each times its slope, added up."""
    moves: Moves = {}
    for slope, own in zip(slopes, of_each, strict=True):
        if slope == 1 and not moves:
            moves = dict(own)
            continue
        for cause, (low, high) in own.items():
            before = moves.get(cause, _NO_MOVE)
            moves[cause] = (before[0] + slope * low, before[1] + slope * high)
    return moves


def around(
    middle: float, moves: Iterable[tuple[float, ...]], combined: Callable[..., float]
) -> Window:
    """The range about a middle in which the moves of its causes are combined, each side by itself.

    >>> around(10.0, [(-1.0, 2.0), (0.0, 3.0)], lambda *moves: sum(moves))
    Window(low=9.0, high=15.0)
    """
    down = combined(*[max(0.0, -min(ends)) for ends in moves])
    return Window(middle - down, middle + combined(*[max(0.0, max(ends)) for ends in moves]))
