"""How much stock a cutting list surely needs, by column generation.

Lengths are whole numbers of one unit, as `cutting_stock` has them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

#: Rounds, and steps a round, beyond which the bound takes too long.
_ROUNDS, _MOST_STEPS = 400, 20_000


def least_stock(
    sizes: Sequence[int], wanted: Sequence[int], lengths: Sequence[int], beyond: int
) -> int:
    """Stock that the pieces surely need, by column generation (Gilmore and Gomory 1961).

    Every round has a value for each size. The pieces together are worth so much, and one length
    holds at most so much for what it costs: divided, that bounds the stock (Farley 1990), whatever
    the values are. Both from memory.

    >>> least_stock(sizes=[30], wanted=[2], lengths=[50], beyond=0)
    100
    """
    costs = [length - beyond for length in lengths]
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
