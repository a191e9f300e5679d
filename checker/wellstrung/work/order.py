"""An order of the steps that works, as near to the written one as there is.

The steps stand as records of what each must wait for; a search finds the order in which the fewest
steps have been moved. Counting and a search, worked out for this project; times are minutes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

from msgspec import Struct

#: Up to here an order is looked for: 2^12 sets of steps done, at most, each with its waits.
MOST_OPEN = 12
#: What `end` of a wait stands for: not a step, but the end of all of them.
END = -1


class Wait(NamedTuple):
    """At least so many minutes from the end of one step to the beginning of another, or to END.

    It holds only where the first stands before the other.
    """

    first: int
    then: int
    least: float


class Doing(Struct, frozen=True):
    """One step: the minutes that pass in it, and the steps that must be done before it.

    `mix` names what is stirred for it, and `joints` says how many it glues; steps in a row with
    the same mix share one stirring, good for `most` joints, unless a step stirs its `own`.
    """

    passes: float = 0.0
    after: frozenset[int] = frozenset()
    mix: str = ""
    joints: float = 0.0
    own: bool = False
    most: float = math.inf


class _State(NamedTuple):
    """Steps done, the last of them that was not moved, minutes since joints, the mix in hand."""

    done: frozenset[int]
    kept: int
    since: tuple[tuple[int, float], ...]
    mix: str
    joints: float


def order_that_works(steps: Sequence[Doing], waits: Sequence[Wait] = ()) -> tuple[int, ...] | None:
    """The order with the fewest steps moved that keeps every need, or None where there is none.

    Of orders with as few moved, one that leaves the first steps as they are.

    >>> order_that_works([Doing(), Doing(after=frozenset({2})), Doing()])
    (0, 2, 1)
    >>> order_that_works([Doing(after=frozenset({1})), Doing(after=frozenset({0}))]) is None
    True
    """
    glues = sorted({wait.first for wait in waits})
    start = _State(frozenset(), -1, (), "", 0.0)
    if not _any_order(steps, waits, glues, start):
        return None
    heap: list[tuple[int, tuple[int, ...], _State]] = [(0, (), start)]
    seen: set[_State] = set()
    while heap:
        moved, order, state = heappop(heap)
        if state in seen:
            continue
        seen.add(state)
        if _is_over(steps, waits, state):
            return order
        for index, after in _next(steps, waits, glues, state):
            heappush(heap, (moved + (after.kept != index), (*order, index), after))
    return None


def _any_order(
    steps: Sequence[Doing], waits: Sequence[Wait], glues: Sequence[int], start: _State
) -> bool:
    """Whether there is an order at all: the same search, quicker where moves are not counted."""
    seen, left = {start}, [start]
    while left:
        state = left.pop()
        if _is_over(steps, waits, state):
            return True
        after = {one._replace(kept=-1) for _, one in _next(steps, waits, glues, state)} - seen
        seen |= after
        left += after
    return False


def _is_over(steps: Sequence[Doing], waits: Sequence[Wait], state: _State) -> bool:
    done = len(state.done) == len(steps)
    return done and all(_waited(wait, state) for wait in waits if wait.then == END)


def _next(
    steps: Sequence[Doing],
    waits: Sequence[Wait],
    glues: Sequence[int],
    state: _State,
) -> Iterator[tuple[int, _State]]:
    """Every step that may come now: kept where it stands behind the last kept one, or moved."""
    for index, step in enumerate(steps):
        if index in state.done or not step.after <= state.done:
            continue
        if not all(_waited(wait, state) for wait in waits if wait.then == index):
            continue
        same = bool(step.mix) and step.mix == state.mix and not step.own
        joints = step.joints + (state.joints if same else 0.0)
        if same and joints > step.most:
            continue
        done = state.done | {index}
        since = tuple((glue, minutes + step.passes) for glue, minutes in state.since)
        if index in glues:
            since = tuple(sorted((*since, (index, 0.0))))
        yield index, _State(done, state.kept, since, step.mix, joints)
        if index > state.kept:
            yield index, _State(done, index, since, step.mix, joints)


def _waited(wait: Wait, state: _State) -> bool:
    since = dict(state.since)
    return wait.first not in since or since[wait.first] >= wait.least - 1e-6


def open_steps(steps: Sequence[Doing]) -> int:
    """How many steps could change places with another.

    >>> open_steps([Doing(), Doing(after=frozenset({0})), Doing(after=frozenset({0}))])
    2
    """
    before: list[set[int]] = [set(step.after) for step in steps]
    for middle in range(len(steps)):  # what is before what is before it is before it too
        for needed in before:
            if middle in needed:
                needed |= before[middle]
    everything = range(len(steps))
    return sum(
        any(a != b and a not in before[b] and b not in before[a] for b in everything)
        for a in everything
    )


def moved(order: Sequence[int]) -> int:
    """How many steps of an order do not stand as written: all but the longest row that does.

    >>> moved((0, 2, 1)), moved((2, 0, 1)), moved((0, 1, 2))
    (1, 1, 0)
    """
    best: list[int] = []
    for at, index in enumerate(order):
        best.append(1 + max((best[b] for b in range(at) if order[b] < index), default=0))
    return len(order) - max(best, default=0)
