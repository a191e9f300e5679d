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
    pieces: Sequence[float], on_hand: Sequence[float], lost: float = 0.0, *, steps: int = STEPS
) -> CutPlan:
    """Cut the pieces from the lengths on hand; the same lists always give the same plan.

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
    stock = [_micrometres(length) + kerf for length in on_hand]
    had, no_more = len(wanted), True
    search = _Search(wanted, stock, kerf, steps)
    if search.best is None:
        had, no_more = _most(wanted, stock, kerf, steps)
        search = _Search(wanted[:had], stock, kerf, steps)
    assert search.best is not None
    return CutPlan(
        tuple(_cuts(search.best, stock, kerf)),
        tuple((piece - kerf) / _MICRO for piece in reversed(wanted[had:])),
        search.used / _MICRO,
        search.at_least / _MICRO,
        no_more and search.proved,
    )


_MICRO = 1000
#: Ways to fill one length that are compared; more are only met with many small pieces.
_MOST_WAYS = 1_000
#: Different sizes, rounds, and steps a round beyond which the bound by columns takes too long.
_MOST_SIZES, _ROUNDS, _MOST_STEPS = 40, 400, 20_000
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


def _most(wanted: Sequence[int], stock: Sequence[int], kerf: int, steps: int) -> tuple[int, bool]:
    """How many pieces can be had, and whether one more surely cannot; all of them cannot."""
    low, high, no_more = 0, len(wanted), False
    while low < high:
        middle = (low + high + 1) // 2
        search = _Search(wanted[:middle], stock, kerf, steps, any_plan=True)
        if search.best is not None:
            low = middle
        else:
            high, no_more = middle - 1, search.proved
    return low, no_more


def _cuts(filled: Sequence[_Filled], stock: Sequence[int], kerf: int) -> Iterator[Cut]:
    """Each filled length as the first on hand of its size that is not cut into yet."""
    free: dict[int, list[int]] = {}
    for number, length in reversed(list(enumerate(stock))):
        free.setdefault(length, []).append(number)
    for length, pieces in filled:
        yield Cut(
            free[length].pop(),
            (length - kerf) / _MICRO,
            tuple((piece - kerf) / _MICRO for piece in pieces),
            max(0, length - sum(pieces) - kerf) / _MICRO,
        )


class _Search:
    """The least stock for all pieces. Each piece and each length has one cut added to it."""

    def __init__(
        self,
        pieces: Sequence[int],
        stock: Sequence[int],
        kerf: int,
        steps: int,
        *,
        any_plan: bool = False,
    ) -> None:
        self.kerf, self.steps, self.any_plan = kerf, steps, any_plan
        self.sizes, self.wanted = _counted(pieces)
        self.lengths, self.whole = _counted(stock)
        self.totals = _totals([length - kerf for length in stock])
        #: the lengths cut into, and what of; None as long as no plan is found
        self.best: list[_Filled] | None = None
        self.used: float = math.inf
        self.at_least = self._round_up(self._by_length(sum(pieces)))
        if self.at_least <= self.totals[-1]:
            for longest_first in (False, True):
                self._keep(_first_fit(pieces, sorted(stock, reverse=longest_first)))
        if not self._settled() and len(self.sizes) <= _MOST_SIZES:
            columns = _by_columns(self.sizes, self.wanted, self.lengths, kerf)
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
            used = sum(length - self.kerf for length, _ in plan)
            if used < self.used:
                self.best, self.used = plan, used

    def _by_length(self, pieces: int) -> int:
        """Stock that pieces of this length together surely need."""
        if not pieces:
            return 0
        shortest = self.lengths[-1] if self.lengths else 1
        return -(-pieces * (shortest - self.kerf) // shortest)

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
        used = sum(length - self.kerf for length, _ in plan)
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


def _by_columns(
    sizes: Sequence[int], wanted: Sequence[int], lengths: Sequence[int], kerf: int
) -> int:
    """Stock that the pieces surely need, by column generation (Gilmore and Gomory 1961).

    Every round has a value for each size. The pieces together are worth so much, and one length
    holds at most so much for what it costs: divided, that bounds the stock (Farley 1990), whatever
    the values are. Both from memory.
    """
    costs = [length - kerf for length in lengths]
    if not sizes or not lengths or sizes[0] > lengths[0]:
        return 0
    order = range(len(sizes))
    # to begin with, every way of cutting gives one size alone, from the longest length
    alone = [min(wanted[size], lengths[0] // sizes[size]) for size in order]
    inverse = [[1 / alone[row] if row == size else 0.0 for size in order] for row in order]
    amounts = [wanted[size] / alone[size] for size in order]
    paid = [costs[0] for _ in order]
    best = 0.0
    for _ in range(_ROUNDS):
        values = [sum(paid[row] * inverse[row][size] for row in order) for size in order]
        worth, at, column = 0.0, 0, [0 for _ in order]
        for number, length in enumerate(lengths):
            found = _fullest_worth(values, sizes, wanted, length)
            if found is None:
                return math.ceil(best * (1 - 1e-9))
            if found[0] / costs[number] > worth:
                worth, at, column = found[0] / costs[number], number, found[1]
        total = sum(max(0.0, value) * count for value, count in zip(values, wanted, strict=True))
        best = max(best, total / max(1.0, worth))
        if worth <= 1 + 1e-9:
            break
        change = [sum(inverse[row][size] * column[size] for size in order) for row in order]
        rows = [row for row in order if change[row] > 1e-9]
        if not rows:
            break
        out = min(rows, key=lambda row: amounts[row] / change[row])
        step = amounts[out] / change[out]
        pivot = [value / change[out] for value in inverse[out]]
        for row in order:
            amounts[row] -= step * change[row]
            inverse[row] = [
                old - change[row] * new for old, new in zip(inverse[row], pivot, strict=True)
            ]
        amounts[out], inverse[out], paid[out] = step, pivot, costs[at]
    return math.ceil(best * (1 - 1e-9))


def _fullest_worth(
    values: Sequence[float], sizes: Sequence[int], wanted: Sequence[int], length: int
) -> tuple[float, list[int]] | None:
    """The most value that one length can hold, and the counts; None if that takes too long."""
    order = sorted(
        (size for size in range(len(sizes)) if values[size] > 1e-12),
        key=lambda size: (-values[size] / sizes[size], size),
    )
    best, best_counts, steps = 0.0, [0] * len(sizes), 0
    stack: list[tuple[int, int, float, tuple[int, ...]]] = [(0, length, 0.0, ())]
    while stack:
        at, room, value, counts = stack.pop()
        steps += 1
        if steps > _MOST_STEPS:
            return None
        if value > best:
            best, best_counts = value, [0] * len(sizes)
            for size, count in zip(order, counts, strict=False):
                best_counts[size] = count
        if at == len(order):
            continue
        size = order[at]
        # what is left cannot be worth more than all of it at the best price still to come
        if value + room * values[size] / sizes[size] <= best * (1 + 1e-12):
            continue
        for count in range(min(wanted[size], room // sizes[size]) + 1):
            stack.append(
                (at + 1, room - count * sizes[size], value + count * values[size], (*counts, count))
            )
    return best, best_counts
