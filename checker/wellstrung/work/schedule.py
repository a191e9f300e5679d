"""The scheduler: when each step of the work starts and is over, and what is wrong with an order.

Steps are tasks for one pair of hands. There are two ways through them:

- *in a row*: each task starts when the one before it is over, its rest included. So the rules read
  a plan. Nothing waits longer than the plan says, and an order can have problems: a task before one
  that it needs, a joint loaded before it has cured, a mix used after it has gelled.
- *overlapping*: what rests (cures, dries) takes no hands, and whatever does not need it goes on.
  A task starts as soon as hands and needs allow, cure times included, so it is never too early.

`search` finds the best order for either. Counting, worked out for this project; times are minutes.
"""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from msgspec import Struct
from msgspec.structs import replace

#: What a lag names instead of a task when it runs until the end of the work.
END = -1
#: Minutes by which a wait may fall short: what adding up floats loses.
SLACK = 1e-6


class Task(Struct, frozen=True):
    """One step: `hands` minutes of work, then `rest` minutes that pass by themselves.

    `after` are the tasks that must be over, rest included, before it starts. `mix` names what is
    stirred for it and `joints` says how many it glues. Tasks in a row with the same mix share one
    stirring, which is good for `most` joints, unless a task stirs its `own`.
    """

    hands: float = 0.0
    rest: float = 0.0
    after: frozenset[int] = frozenset()
    mix: str = ""
    joints: float = 0.0
    own: bool = False
    most: float = math.inf


class Lag(NamedTuple):
    """The least minutes from the end of the hands of one task to the start of another, or END.

    It holds only where the first comes before the other, and all of those `given` do.
    """

    first: int
    then: int
    least: float
    given: frozenset[int] = frozenset()


class Work(Struct, frozen=True):
    """The tasks of a piece in the order written, and the lags between them.

    Raises ValueError for times that cannot pass and for tasks that are not there.
    """

    tasks: tuple[Task, ...]
    lags: tuple[Lag, ...] = ()

    def __post_init__(self) -> None:
        there = range(len(self.tasks))
        for index, task in enumerate(self.tasks):
            if not (0 <= task.hands < math.inf and 0 <= task.rest < math.inf):
                raise ValueError(f"task {index} has times that cannot pass")
            if not all(need in there for need in task.after):
                raise ValueError(f"task {index} needs a task that is not there")
        for lag in self.lags:
            if lag.first not in there or (lag.then not in there and lag.then != END):
                raise ValueError(f"{lag} names a task that is not there")

    @property
    def written(self) -> tuple[int, ...]:
        """The order as written."""
        return tuple(range(len(self.tasks)))

    def ordered(self, order: Sequence[int] | None) -> Sequence[int]:
        """An order, or the one as written; ValueError where it is not one of all tasks."""
        if order is not None and sorted(order) != list(self.written):
            raise ValueError("an order names every task once")
        return self.written if order is None else order

    def taking(self, hands: Sequence[float]) -> Work:
        """The same work with other minutes of hands."""
        each = zip(self.tasks, hands, strict=True)
        return Work(tuple(replace(task, hands=minutes) for task, minutes in each), self.lags)


class Meetings(NamedTuple):
    """A class that meets for `session` minutes, with `between` minutes from one to the next.

    What cures goes on curing between meetings. A task in `whole` is not put down half done.
    """

    session: float
    between: float
    whole: frozenset[int] = frozenset()

    def held(self, clock: float) -> float:
        """Minutes of class held by that time of the clock."""
        meeting, into = divmod(clock, self.session + self.between)
        return meeting * self.session + min(into, self.session)

    def clock(self, held: float) -> float:
        """The time of the clock when so many minutes of class have been held."""
        return held + max(0, math.ceil(held / self.session) - 1) * self.between

    def start(self, index: int, hands: float, ready: float) -> float:
        """When a task can start, in minutes of class."""
        into = ready % self.session
        waits = index in self.whole and into > 0 and into + hands > self.session
        return ready + self.session - into if waits else ready


class Times(NamedTuple):
    """When each task starts and is over, rest included, task by task, and when all of it is.

    `hands` is when hands stop. With meetings, it and the starts are minutes of class.
    """

    starts: tuple[float, ...]
    over: tuple[float, ...]
    finish: float
    hands: float


def in_a_row(work: Work, order: Sequence[int] | None = None) -> Times:
    """Each task after the one before it is over; in the order written, or in another.

    >>> in_a_row(Work((Task(5, rest=60), Task(10), Task(30)))).starts
    (0.0, 65.0, 75.0)
    """
    state = InARow(work).walk(order)
    starts = tuple([start for start in state.starts if start is not None])
    over = tuple([end for end in state.over if end is not None])
    return Times(starts, over, state.free, state.free)


def overlapping(
    work: Work, order: Sequence[int] | None = None, meetings: Meetings | None = None
) -> Times:
    """Each task as soon as hands and needs allow, taken in the order written, or in another.

    Raises ValueError for an order with a task before one that it needs.

    >>> work = Work((Task(5, rest=60), Task(10, after=frozenset({0})), Task(30)))
    >>> overlapping(work, (0, 2, 1)).starts, overlapping(work, (0, 2, 1)).finish
    ((0.0, 65.0, 5.0), 75.0)
    >>> overlapping(Work((Task(100), Task(30))), meetings=Meetings(120, 1440)).hands
    130.0
    >>> overlapping(Work((Task(100), Task(30))), None, Meetings(120, 1440, frozenset({1}))).hands
    150.0
    """
    return InOrder(work, order).times([task.hands for task in work.tasks], meetings)


class State(Struct):
    """The beginning of an order, with all that what follows depends on.

    `free` is when hands are free. Of the tasks taken, so many were `moved`, and `kept` is the last
    that was not.
    """

    order: list[int]
    starts: list[float | None]
    over: list[float | None]
    free: float = 0.0
    mix: str = ""
    joints: float = 0.0
    moved: int = 0
    kept: int = -1

    def copy(self) -> State:
        """The same beginning, to go on from in another way."""
        return State(
            self.order[:], self.starts[:], self.over[:], self.free, self.mix, self.joints,
            self.moved, self.kept,
        )  # fmt: skip


#: A task that was taken, its rest where that is not waited for, and the least minutes after it.
Gate = tuple[int, float, float]


class Way(ABC):
    """What both ways through the work share."""

    def __init__(self, work: Work) -> None:
        self.work, self.tasks = work, work.tasks
        self.lags_to: dict[int, list[Lag]] = {}
        for lag in work.lags:
            self.lags_to.setdefault(lag.then, []).append(lag)

    def beginning(self) -> State:
        """Nothing done."""
        return State([], [None] * len(self.tasks), [None] * len(self.tasks))

    @abstractmethod
    def take(self, state: State, index: int) -> State:
        """Go on with a task: the state is changed, and given back."""

    def walk(self, order: Sequence[int] | None = None) -> State:
        """The state after all of an order; ValueError where that is not one of all tasks."""
        state = self.beginning()
        for index in self.work.ordered(order):
            self.take(state, index)
        return state

    def left(self, state: State) -> list[int]:
        """The tasks that were not yet taken."""
        return [index for index, over in enumerate(state.over) if over is None]

    def ready(self, state: State, index: int) -> float:
        """When the tasks taken so far allow a task, or the END."""
        return _latest(self.gates(state, index), state.over)

    def gates(self, state: State, index: int) -> list[Gate]:
        """All that the tasks taken so far hold a task back by, or the END."""
        needs = self.work.written if index == END else self.tasks[index].after
        found = [(need, 0.0, 0.0) for need in needs if state.over[need] is not None]
        begun = [lag for lag, _ in self.begun(state, index)]
        return found + [(lag.first, self.tasks[lag.first].rest, lag.least) for lag in begun]

    def begun(self, state: State, index: int) -> Iterator[tuple[Lag, float]]:
        """The lags to a task, or the END, that have begun, and when."""
        for lag in self.lags_to.get(index, ()):
            over = state.over[lag.first]
            if over is not None and all(state.over[one] is not None for one in lag.given):
                yield lag, over - self.tasks[lag.first].rest

    def _taken(self, state: State, index: int, start: float, over: float) -> State:
        state.order.append(index)
        state.starts[index], state.over[index] = start, over
        return state


class InARow(Way):
    """Each task when the one before it is over."""

    def take(self, state: State, index: int) -> State:
        """Go on with a task, be it too early or not."""
        task, start = self.tasks[index], state.free
        state.joints = task.joints + (state.joints if self._shares(state, task) else 0.0)
        state.mix, state.free = task.mix, start + task.hands + task.rest
        return self._taken(state, index, start, state.free)

    def works(self, state: State, index: int) -> bool:
        """Whether a task, or the END, may come now: nothing too early, uncured or gelled."""
        if any(state.free - made < lag.least - SLACK for lag, made in self.begun(state, index)):
            return False
        if index == END:
            return True
        task = self.tasks[index]
        if any(state.over[need] is None for need in task.after):
            return False
        return not self._shares(state, task) or state.joints + task.joints <= task.most

    def _shares(self, state: State, task: Task) -> bool:
        return bool(task.mix) and task.mix == state.mix and not task.own


class Overlapping(Way):
    """Each task as soon as hands, needs and lags allow; every mix is stirred as the plan has it."""

    def take(self, state: State, index: int) -> State:
        """Go on with a task; raises ValueError where it needs one that was not taken."""
        task = self.tasks[index]
        for need in sorted(task.after):
            if state.over[need] is None:
                raise ValueError(f"task {index} stands before task {need}, which it needs")
        ready = self.ready(state, index)
        start, state.free, clock = _timed(index, task.hands, state.free, ready)
        return self._taken(state, index, start, clock + task.rest)


class InOrder:
    """Overlapping, in one order, for a time that is asked for many minutes of hands.

    What holds back each task depends on the order alone, so it is found once.
    Raises ValueError for an order with a task before one that it needs.
    """

    def __init__(self, work: Work, order: Sequence[int] | None = None) -> None:
        way, self._gates = Overlapping(work), list[tuple[int, float, list[Gate]]]()
        state = way.beginning()
        for index in work.ordered(order):
            self._gates.append((index, work.tasks[index].rest, way.gates(state, index)))
            way.take(state, index)
        self._last = way.gates(state, END)

    def times(self, hands: Sequence[float], meetings: Meetings | None = None) -> Times:
        """The times when each task takes so many minutes of hands."""
        starts, over, free = [0.0] * len(hands), [0.0] * len(hands), 0.0
        for index, rest, gates in self._gates:
            ready = _latest(gates, over)
            starts[index], free, clock = _timed(index, hands[index], free, ready, meetings)
            over[index] = clock + rest
        return Times(tuple(starts), tuple(over), _latest(self._last, over), free)


def _timed(
    index: int, hands: float, free: float, ready: float, meetings: Meetings | None = None
) -> tuple[float, float, float]:
    """When a task starts that may from `ready` on, when hands are free, and the clock then."""
    if not hands:
        return ready, free, ready
    if meetings is None:
        start = max(free, ready)
        return start, start + hands, start + hands
    start = meetings.start(index, hands, max(free, meetings.held(ready)))
    return start, start + hands, meetings.clock(start + hands)


def _latest(gates: Sequence[Gate], over: Sequence[Any]) -> float:
    latest = 0.0
    for first, rest, least in gates:  # quicker than a list for the one or two that most tasks have
        end = over[first] - rest + least
        if end > latest:
            latest = end
    return latest
