"""The best order of the work, by one search: the nearest that works, and the fastest.

The search is best first (A*) over the beginnings of an order. It goes on with the beginning that
has the lowest bound on its cost. In a row the cost is the number of tasks moved: those moved so
far, and those passed over that are still to come. Overlapping it is the finish: the soonest that
the tasks left allow, by the longest chain of tasks that wait for each other, and by the hands that
they take. Of two beginnings with the same tasks done it drops the one that is better in nothing
that still matters. So the first whole order that it reaches is a best one.

It counts how often it looks at a task, and stops after `MOST_LOOKS`. `nearest` then has no order;
`earliest` has the best that it knows, and the finish that no order can beat as far as is proved.
Worked out for this project.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from heapq import heappop, heappush
from itertools import count
from typing import Any, NamedTuple

from wellstrung.work.schedule import END, SLACK, InARow, Overlapping, State, Work

#: How often a search looks at a task, or at what one waits for, before it stops.
MOST_LOOKS = 300_000


class Found(NamedTuple):
    """An order, or None where there is none; its cost, or one that no order is below.

    `stopped` says that the search ended at its limit, before it was sure.
    """

    order: tuple[int, ...] | None
    cost: float
    stopped: bool


def nearest(work: Work, looks: int = MOST_LOOKS) -> Found:
    """The order in a row that works with the fewest tasks moved.

    Of orders with as few moved, one that leaves the first tasks as they are.

    >>> from wellstrung.work.schedule import Task
    >>> nearest(Work((Task(), Task(after=frozenset({2})), Task())))
    Found(order=(0, 2, 1), cost=1, stopped=False)
    >>> nearest(Work((Task(after=frozenset({1})), Task(after=frozenset({0}))))).order is None
    True
    """
    if len(work.tasks) ** 2 > looks:
        return Found(None, 0, stopped=True)
    return _best(_Nearest(work), looks)


def earliest(work: Work, looks: int = MOST_LOOKS) -> Found:
    """The overlapping order that finishes first; its cost is a finish that no order can beat.

    A task has to be written after those that it needs; else raises ValueError.

    >>> from wellstrung.work.schedule import Task
    >>> earliest(Work((Task(5, rest=60), Task(10, after=frozenset({0})), Task(30))))
    Found(order=(0, 2, 1), cost=75.0, stopped=False)
    """
    aim = _Earliest(work)
    known = min((aim.walk(), aim.dive(looks)), key=aim.cost)
    found = _best(aim, looks, below=aim.cost(known) - SLACK)
    if found.order is not None:
        return found
    proved = found.cost if found.stopped else aim.cost(known)
    return Found(tuple(known.order), proved, found.stopped)


def _best(aim: _Nearest | _Earliest, looks: int, below: float = math.inf) -> Found:
    """The order of the lowest cost, where that is below a known one."""
    state, number = aim.beginning(), count()
    cost = aim.cost(state)
    heap = [(cost, state.order, next(number), state)] if cost < below else []
    known: dict[tuple[frozenset[int], str], list[tuple[Any, ...]]] = {}
    looks -= len(state.over) ** 2
    lags = len(aim.work.lags)
    while heap and looks > 0:
        cost, order, _, state = heappop(heap)
        left = aim.left(state)
        if not left:
            return Found(tuple(order), cost, stopped=False)
        waits = (max(state.free, aim.ready(state, index)) for index in (*left, END))
        marks = (*aim.rank(state), *waits)
        others = known.setdefault((frozenset(left), state.mix), [])
        if any(all(a <= b for a, b in zip(other, marks, strict=True)) for other in others):
            continue
        others.append(marks)
        looks -= lags
        for after in aim.following(state):
            looks -= len(left)
            bound = max(cost, aim.cost(after))
            if bound < below:
                heappush(heap, (bound, after.order, next(number), after))
    return Found(None, heap[0][0] if heap else below, stopped=bool(heap))


class _Nearest(InARow):
    """In a row; the cost is the number of tasks moved."""

    def __init__(self, work: Work) -> None:
        super().__init__(work)
        self.needs = _all_needs(work)
        self.in_a_circle = any(index in needs for index, needs in enumerate(self.needs))
        self.passes = [task.hands + task.rest for task in self.tasks]

    def following(self, state: State) -> Iterator[State]:
        """Each task that may come now: kept where it stands behind the last kept, or moved."""
        if self.in_a_circle or self._falls_short(state):
            return
        for index in self.left(state):
            if not self.works(state, index):
                continue
            after = self.take(state.copy(), index)
            after.moved += 1
            if None not in after.over and not self.works(after, END):
                continue
            yield after
            if index > state.kept:
                kept = after.copy()
                kept.moved, kept.kept = state.moved, index
                yield kept

    def cost(self, state: State) -> float:
        """Tasks moved, and those left that stand before a kept one and so have to be."""
        return state.moved + state.over[: state.kept + 1].count(None)

    def rank(self, state: State) -> tuple[Any, ...]:
        """Of orders with as few moved the first is better, and a mix with fewer joints."""
        return (state.moved, state.order), state.kept, state.joints

    def _falls_short(self, state: State) -> bool:
        """Whether all that is left is over before a joint can have cured."""
        left = sum(self.passes[index] for index in self.left(state))
        for lag in self.lags_to.get(END, ()):
            over = state.over[lag.first]
            passed = left - self.tasks[lag.first].hands
            if over is not None:
                passed = left + state.free - over + self.tasks[lag.first].rest
            if passed < lag.least - SLACK:
                return True
        return False


class _Earliest(Overlapping):
    """Overlapping; the cost is when all is over."""

    def __init__(self, work: Work) -> None:
        super().__init__(work)
        for index, task in enumerate(self.tasks):
            if any(need >= index for need in task.after):
                raise ValueError(f"task {index} needs a task that does not stand before it")
        self.tails = _tails(work)
        #: what takes hands, first those with most to wait for behind them
        self.by_tail = sorted(
            (index for index, task in enumerate(self.tasks) if task.hands),
            key=lambda index: -self.tails[index],
        )

    def dive(self, looks: int) -> State:
        """A whole order: of the tasks that can start soonest, the one with most behind it."""
        if len(self.tasks) ** 2 > looks:
            return self.walk()
        state = self.beginning()
        while can := self._next(state):
            starts = {index: max(state.free, self.ready(state, index)) for index in can}
            self.take(state, min(can, key=lambda index: (starts[index], -self.tails[index])))
        return state

    def following(self, state: State) -> Iterator[State]:
        """Each task that can come now."""
        return (self.take(state.copy(), index) for index in self._next(state))

    def _next(self, state: State) -> list[int]:
        """The tasks whose needs are taken; what takes no hands takes no turn, and goes first."""
        over, tasks = state.over, self.tasks
        can = [
            i for i in self.left(state) if all(over[need] is not None for need in tasks[i].after)
        ]
        idle = [index for index in can if not tasks[index].hands]
        return idle[:1] or can

    def cost(self, state: State) -> float:
        """The soonest finish left: of each chain of tasks, and of all that takes hands."""
        soonest, hands = self.ready(state, END), state.free
        for index in self.left(state):
            task, start = self.tasks[index], self.ready(state, index)
            if task.hands:
                start = max(start, state.free)
            soonest = max(soonest, start + task.hands + self.tails[index])
        for index in self.by_tail:
            if state.over[index] is None:
                hands += self.tasks[index].hands
                soonest = max(soonest, hands + self.tails[index])
        return soonest

    def rank(self, state: State) -> tuple[Any, ...]:
        """When hands are free."""
        return (state.free,)


def _all_needs(work: Work) -> list[set[int]]:
    """What each task needs, directly or not."""
    found = [set(task.after) for task in work.tasks]
    for middle in work.written:
        for needs in found:
            if middle in needs:
                needs |= found[middle]
    return found


def _tails(work: Work) -> list[float]:
    """The least minutes from the end of each task's hands until all that waits for it is over."""
    tails = [task.rest for task in work.tasks]
    for lag in work.lags:
        if lag.then == END:
            tails[lag.first] = max(tails[lag.first], lag.least)
    for index in reversed(work.written):
        behind = work.tasks[index].hands + tails[index]
        for need in work.tasks[index].after:
            tails[need] = max(tails[need], work.tasks[need].rest + behind)
        for lag in work.lags:
            if lag.then == index and lag.first in work.tasks[index].after:
                tails[lag.first] = max(tails[lag.first], lag.least + behind)
    return tails
