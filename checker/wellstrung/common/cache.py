"""Answers about one plan, each worked out once.

A plan carries its cache and shares it with its parts and beads; it lives as long as the plan.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import wraps
from typing import Any, Protocol, TypeVar, TypeVarTuple, cast

Asked = TypeVarTuple("Asked")
R = TypeVar("R")

#: stands for an answer that is not there yet, since an answer may be None
_NONE = object()


class Cache:
    """Answers by the function that worked them out and what it was asked about.

    >>> cache = Cache()
    >>> def total(*beads: int) -> int:
    ...     print("counting")
    ...     return sum(beads)
    >>> cache.get(total, 2, 3) + cache.get(total, 2, 3)
    counting
    10
    """

    def __init__(self) -> None:
        self._answers: dict[tuple[object, ...], Any] = {}

    def get(self, work: Callable[[*Asked], R], *asked: *Asked) -> R:
        """`work(*asked)`, from the second time on as it was the first time; errors are not kept."""
        key = (work, *asked)
        answer = self._answers.get(key, _NONE)
        if answer is _NONE:
            answer = self._answers[key] = work(*asked)
        return cast(R, answer)

    def kept(self) -> Mapping[tuple[object, ...], Any]:
        """All answers so far, to go back to."""
        return dict(self._answers)

    def back_to(self, kept: Mapping[tuple[object, ...], Any]) -> None:
        """Forget all answers but those."""
        self._answers = dict(kept)

    def clear(self) -> None:
        """Forget all answers."""
        self._answers.clear()


class _Carries(Protocol):
    """A record with a cache: a plan, or a part or bead of it."""

    @property
    def cache(self) -> Cache: ...


T = TypeVar("T", bound=_Carries)


def cached(work: Callable[[T], R]) -> Callable[[T], R]:
    """A function of a plan, or of a part of it, whose answers the plan's cache keeps."""

    @wraps(work)
    def answered(one: T) -> R:
        return one.cache.get(work, one)

    return answered
