"""Where a generated plan gets its choices from: a seeded random number or hypothesis.

Whatever is generated is written against `Choices`, so that the same code serves property tests,
which shrink, and runs that must come out alike each time.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import Protocol, TypeVar

from hypothesis import strategies as st

T = TypeVar("T")


class Choices(Protocol):
    """Picks among what is possible."""

    def whole(self, low: int, high: int) -> int:
        """A whole number from `low` to `high`, both included."""


class Seeded:
    """Choices that follow from a seed alone."""

    def __init__(self, seed: str) -> None:
        self._random = random.Random(seed)

    def whole(self, low: int, high: int) -> int:
        """A whole number from `low` to `high`, both included."""
        return self._random.randint(low, high)


class Drawn:
    """Choices that hypothesis makes, and shrinks towards the lowest number."""

    def __init__(self, draw: st.DrawFn) -> None:
        self._draw = draw

    def whole(self, low: int, high: int) -> int:
        """A whole number from `low` to `high`, both included."""
        return self._draw(st.integers(low, high))


def pick(choices: Choices, options: Sequence[T]) -> T:
    """One of the options; the first is the plainest."""
    return options[choices.whole(0, len(options) - 1)]


def chance(choices: Choices, percent: int) -> bool:
    """Whether something happens that does so in so many of a hundred plans."""
    return choices.whole(0, 99) >= 100 - percent


def between(choices: Choices, low: float, high: float, step: float) -> float:
    """A number from `low` to about `high`, in steps."""
    steps = max(0, round((high - low) / step))
    return round(low + step * choices.whole(0, steps), 4)


def some(choices: Choices, options: Sequence[T]) -> list[T]:
    """One or more of the options, in their order."""
    sure = choices.whole(0, len(options) - 1)
    return [one for n, one in enumerate(options) if n == sure or chance(choices, 40)]


def shuffled(choices: Choices, options: Sequence[T]) -> list[T]:
    """The options in another order."""
    left, order = list(options), []
    while left:
        order.append(left.pop(choices.whole(0, len(left) - 1)))
    return order
