"""Cutting list: pieces from the lengths on hand, so that as little as can be is cut into.

One-dimensional cutting stock. Lengths are mm; inside they are whole micrometres, so that what fits
fits. Between two pieces a cut loses `lost`: a saw's kerf, or the links of a chain that are cut
through or skipped (then pieces and lengths are the insides of their links, without the two end
walls). The cut behind the last piece of a length costs nothing.

When not every piece can be had the longest go short: if any so many fit, so do as many of the
shortest.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wellstrung.formulas.cutting_bound import least_stock

#: Ways to fill a length that are tried before the best plan found so far is given, proved or not.
STEPS = 100_000


class Cut(NamedTuple):
    """A length on hand by its place in the list, its pieces, longest first, and what is left."""

    on_hand: int
    length: float
    pieces: tuple[float, ...]
    left: float


class CutPlan(NamedTuple):
    """What is cut from which length, and what could not be had.

    `used` adds up the lengths cut into, and no plan for the same pieces cuts into less than
    `at_least`. `proved` says that no plan gives more pieces, and none as many from less.
    """

    cuts: tuple[Cut, ...]
    missing: tuple[float, ...]
    used: float
    at_least: float
    proved: bool


def cut(
    pieces: Sequence[float],
    on_hand: Sequence[float],
    lost: float = 0.0,
    *,
    ends: float = 0.0,
    steps: int = STEPS,
) -> CutPlan:
    """Cut the pieces from the lengths on hand; the same lists always give the same plan.

    `lost` is between two pieces, `ends` what a length loses at both its ends together.

    The search fills one length after another, the longest piece left over first, worked out for
    this project; its bound is by column generation, Gilmore and Gomory 1961 (from memory).

    >>> plan = cut([5, 4, 4, 3, 2, 2], [10, 10, 10])
    >>> [one.pieces for one in plan.cuts], plan.used, plan.proved
    ([(5.0, 3.0, 2.0), (4.0, 4.0, 2.0)], 20.0, True)
    >>> [cut([33, 33, 33], [100], kerf).missing for kerf in (0.5, 0.6)]
    [(), (33.0,)]
    """
    for length in (*pieces, *on_hand):
        if not (math.isfinite(length) and _micrometres(length) > 0):
            raise ValueError(f"a length must be above nothing to be cut, not {length:g} mm")
    if not (math.isfinite(lost) and lost >= 0):
        raise ValueError(f"a cut cannot lose {lost:g} mm")
    kerf = _micrometres(lost)
    # a piece and the cut behind it, a length and the cut behind its last piece: no cut is special
    wanted = sorted(_micrometres(piece) + kerf for piece in pieces)
    beyond = kerf - _micrometres(ends)
    stock = [_micrometres(length) + beyond for length in on_hand]
    had, no_more = len(wanted), True
    search = _Search(wanted, stock, beyond, steps)
    if search.best is None:
        had, no_more = _most(wanted, stock, beyond, steps)
        search = _Search(wanted[:had], stock, beyond, steps)
    assert search.best is not None
    return CutPlan(
        tuple(_cuts(search.best, stock, kerf, beyond)),
        tuple((piece - kerf) / _MICRO for piece in reversed(wanted[had:])),
        search.used / _MICRO,
        search.at_least / _MICRO,
        no_more and search.proved,
    )


_MICRO = 1000
#: Ways to fill one length that are compared; more are only met with many small pieces.
_MOST_WAYS = 1_000
#: Different sizes beyond which the bound by columns takes too long.
_MOST_SIZES = 40
#: Different totals of the lengths on hand beyond which any length is taken for one.
_MOST_TOTALS = 2_000


#: A length cut into, and the pieces it gives.
_Filled = tuple[int, tuple[int, ...]]


class _Way(NamedTuple):
    """One length filled: room left over, which length, and counts of each size from `first` on."""

    room: int
    length: int
    first: int
    counts: tuple[int, ...]


def _micrometres(length: float) -> int:
    return round(length * _MICRO)


def _most(wanted: Sequence[int], stock: Sequence[int], beyond: int, steps: int) -> tuple[int, bool]:
    """How many pieces can be had, and whether one more surely cannot; all of them cannot."""
    low, high, no_more = 0, len(wanted), False
    while low < high:
        middle = (low + high + 1) // 2
        search = _Search(wanted[:middle], stock, beyond, steps, any_plan=True)
        if search.best is not None:
            low = middle
        else:
            high, no_more = middle - 1, search.proved
    return low, no_more


def _cuts(filled: Sequence[_Filled], stock: Sequence[int], kerf: int, beyond: int) -> Iterator[Cut]:
    """Each filled length as the first on hand of its size that is not cut into yet."""
    free: dict[int, list[int]] = {}
    for number, length in reversed(list(enumerate(stock))):
        free.setdefault(length, []).append(number)
    for length, pieces in filled:
        yield Cut(
            free[length].pop(),
            (length - beyond) / _MICRO,
            tuple((piece - kerf) / _MICRO for piece in pieces),
            max(0, length - sum(pieces) - kerf) / _MICRO,
        )


class _Search:
    """The least stock for all pieces. Each piece has one cut added, each length `beyond`."""

    def __init__(
        self,
        pieces: Sequence[int],
        stock: Sequence[int],
        beyond: int,
        steps: int,
        *,
        any_plan: bool = False,
    ) -> None:
        self.beyond, self.steps, self.any_plan = beyond, steps, any_plan
        self.sizes, self.wanted = _counted(pieces)
        long_enough = [length for length in stock if length > 0]
        self.lengths, self.whole = _counted(long_enough)
        self.totals = _totals([length - beyond for length in long_enough])
        #: the lengths cut into, and what of; None as long as no plan is found
        self.best: list[_Filled] | None = None
        self.used: float = math.inf
        self.at_least = self._round_up(self._by_length(sum(pieces)))
        if self.at_least <= self.totals[-1]:
            for longest_first in (False, True):
                self._keep(_first_fit(pieces, sorted(stock, reverse=longest_first)))
        if not self._settled() and len(self.sizes) <= _MOST_SIZES:
            columns = least_stock(self.sizes, self.wanted, self.lengths, beyond)
            self.at_least = max(self.at_least, self._round_up(columns))
        exhausted = self._settled() or self._fill()
        self.proved = exhausted or self.used <= self.at_least
        if self.proved and self.best is not None:
            self.at_least = self.used

    def _settled(self) -> bool:
        """Whether there is nothing left to look for."""
        if self.any_plan and self.best is not None:
            return True
        return self.at_least >= self.used or self.at_least > self.totals[-1]

    def _keep(self, plan: list[_Filled] | None) -> None:
        if plan is not None:
            used = sum(length - self.beyond for length, _ in plan)
            if used < self.used:
                self.best, self.used = plan, used

    def _by_length(self, pieces: int) -> int:
        """Stock that pieces of this length together surely need."""
        return min(
            (-(-pieces * (length - self.beyond) // length) for length in self.lengths),
            default=pieces,
        )

    def _round_up(self, least: int) -> int:
        """The least total of whole lengths on hand that is not below `least`; itself if none is."""
        at = bisect_left(self.totals, least)
        return self.totals[at] if at < len(self.totals) else least

    def _fill(self) -> bool:
        """Fill one length after another, and go back for other ways; False if steps ran out."""
        exhaustive = True
        seen: set[tuple[tuple[int, ...], tuple[int, ...]]] = set()
        wanted, whole, plan = self.wanted, self.whole, list[_Filled]()
        open_ways: list[Iterator[_Way]] = []
        taken: list[_Way] = []
        while True:
            state = (tuple(wanted), tuple(whole))
            if not any(wanted):
                self._keep(list(plan))
                if self._settled():
                    return True
                open_ways.append(iter(()))
            elif state in seen or self._hopeless(plan):
                open_ways.append(iter(()))
            else:
                seen.add(state)
                ways, all_of_them = self._ways()
                exhaustive = exhaustive and all_of_them
                open_ways.append(iter(ways))
            while (way := next(open_ways[-1], None)) is None:
                open_ways.pop()
                if not open_ways:
                    return exhaustive
                self._take(taken.pop(), -1)
                plan.pop()
            if self.steps <= 0:
                return False
            self._take(way, 1)
            taken.append(way)
            plan.append(self._filled(way))

    def _take(self, way: _Way, times: int) -> None:
        self.whole[way.length] -= times
        for size, count in enumerate(way.counts, way.first):
            self.wanted[size] -= times * count

    def _filled(self, way: _Way) -> _Filled:
        counts = enumerate(way.counts, way.first)
        pieces = tuple(self.sizes[size] for size, count in counts for _ in range(count))
        return self.lengths[way.length], pieces

    def _hopeless(self, plan: Sequence[_Filled]) -> bool:
        """Whether no way to go on from here can be better than the best plan."""
        used = sum(length - self.beyond for length, _ in plan)
        pieces = sum(map(int.__mul__, self.sizes, self.wanted))
        if pieces > sum(map(int.__mul__, self.lengths, self.whole)):
            return True
        return self._round_up(used + self._by_length(pieces)) >= self.used

    def _ways(self) -> tuple[list[_Way], bool]:
        """Ways to fill one length with the longest piece left over, fullest first.

        Only those to which no piece can be added: one that is less full never saves stock.
        """
        first = next(size for size, count in enumerate(self.wanted) if count)
        ways: list[_Way] = []
        all_of_them = True
        for length, number in enumerate(self.whole):
            if number:
                for room, counts in self._patterns(first, self.lengths[length]):
                    ways.append(_Way(room, length, first, counts))
                    if len(ways) >= _MOST_WAYS:
                        all_of_them = False
                        break
        ways.sort(key=lambda way: (way.room, way.length, [-count for count in way.counts]))
        return ways, all_of_them and self.steps > 0

    def _patterns(self, first: int, length: int) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Counts of each size from `first` on that fill the length, and the room left."""
        if self.sizes[first] > length:
            return
        stack: list[tuple[int, tuple[int, ...]]] = [(length, ())]
        while stack and self.steps > 0:
            self.steps -= 1
            room, counts = stack.pop()
            size = first + len(counts)
            if size == len(self.sizes):
                spare = zip(self.sizes[first:], self.wanted[first:], counts, strict=True)
                if all(piece > room or wanted == count for piece, wanted, count in spare):
                    yield room, counts
                continue
            most = min(self.wanted[size], room // self.sizes[size])
            for count in range(0 if counts else 1, most + 1):
                stack.append((room - count * self.sizes[size], (*counts, count)))


def _counted(lengths: Sequence[int]) -> tuple[list[int], list[int]]:
    """The different lengths, longest first, and how many there are of each."""
    counts = Counter(lengths)
    return (sizes := sorted(counts, reverse=True)), [counts[size] for size in sizes]


def _totals(lengths: Sequence[int]) -> Sequence[int]:
    """Every total of some of the lengths, in order; of too many, any length up to them all."""
    totals = {0}
    for length in lengths:
        totals |= {total + length for total in totals}
        if len(totals) > _MOST_TOTALS:
            return range(sum(lengths) + 1)
    return sorted(totals)


def _first_fit(pieces: Sequence[int], stock: Sequence[int]) -> list[_Filled] | None:
    """Each piece, longest first, from the first length it fits; None if one fits none."""
    room, cut_from = list(stock), [list[int]() for _ in stock]
    for piece in sorted(pieces, reverse=True):
        at = next((at for at, left in enumerate(room) if piece <= left), None)
        if at is None:
            return None
        room[at] -= piece
        cut_from[at].append(piece)
    return [
        (length, tuple(pieces)) for length, pieces in zip(stock, cut_from, strict=True) if pieces
    ]
