"""How long the work takes: with the hands, as written, and at best when waiting is put to use.

There is one pair of hands: steps that take them come one after another. What cures or dries needs
no hands and runs in the background; it keeps waiting only what needs the joint. Counting and a
search, worked out for this project; times are minutes.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from msgspec import Struct

#: Up to here the best order is found for certain: 2^12 sets of steps done are looked at, at most.
MOST_OPEN = 12


class Task(Struct, frozen=True):
    """One step: `hands` minutes of work, then `rest` minutes that pass by themselves.

    `needs` are the indices of earlier tasks that must be over, their rest included, before it.
    """

    hands: float
    rest: float = 0.0
    needs: tuple[int, ...] = ()


class Schedule(NamedTuple):
    """An order of the tasks and when the last of them is over.

    `exact` says that no order is over earlier; `at_least` is a time that none can beat.
    """

    finish: float
    order: tuple[int, ...]
    exact: bool
    at_least: float


def beading_time(beads: float, beads_per_minute: float) -> float:
    """Minutes that weaving or stringing takes (counting).

    >>> beading_time(600, 8)
    75.0
    """
    return beads / beads_per_minute


def hands_on(tasks: Sequence[Task]) -> float:
    """Minutes that hands are at work.

    >>> hands_on([Task(20), Task(5, rest=1440), Task(10, needs=(1,))])
    35.0
    """
    return math.fsum(task.hands for task in tasks)


def as_written(tasks: Sequence[Task]) -> float:
    """Minutes until all is over, every step and every wait one after another.

    >>> as_written([Task(20), Task(5, rest=1440), Task(10, needs=(1,))])
    1475.0
    """
    return math.fsum(task.hands + task.rest for task in tasks)


def finish_in(tasks: Sequence[Task], order: Sequence[int]) -> float:
    """Minutes until all is over, each task in this order begun as soon as hands and needs allow.

    Raises ValueError for an order that leaves a task out or takes one before what it needs.

    >>> finish_in([Task(5, rest=60), Task(10, needs=(0,)), Task(30)], (0, 2, 1))
    75.0
    """
    starts = begun_in(tasks, order)
    ends = (start + task.hands + task.rest for start, task in zip(starts, tasks, strict=True))
    return max(ends, default=0.0)


def begun_in(tasks: Sequence[Task], order: Sequence[int]) -> tuple[float, ...]:
    """When each task begins, task by task, in minutes from the start; raises as `finish_in`.

    >>> begun_in([Task(5, rest=60), Task(10, needs=(0,)), Task(30)], (0, 2, 1))
    (0.0, 65.0, 5.0)
    """
    _checked(tasks)
    if sorted(order) != list(range(len(tasks))):
        raise ValueError("an order names every task once")
    over: dict[int, float] = {}
    begun = [0.0] * len(tasks)
    free = 0.0
    for index in order:
        task = tasks[index]
        if not over.keys() >= set(task.needs):
            raise ValueError(f"task {index} stands before a task that it needs")
        start = max((over[need] for need in task.needs), default=0.0)
        if task.hands:
            start = max(start, free)
            free = start + task.hands
        begun[index] = start
        over[index] = start + task.hands + task.rest
    return tuple(begun)


def class_time(
    tasks: Sequence[Task],
    order: Sequence[int],
    session: float,
    between: float,
    whole: Collection[int] = (),
) -> float:
    """Minutes of class until hands have done all tasks in this order, in meetings of one length.

    What cures goes on curing between meetings, `between` minutes each time; what is then still
    not ready is waited for in class, and what cures after the last task is not. Work is put down
    when a meeting ends and taken up in the next, but for the tasks in `whole`: such a one that
    would not be over waits for the next. Counting, worked out for this project.

    >>> class_time([Task(100), Task(30)], (0, 1), session=120, between=1440)
    130.0
    >>> class_time([Task(100), Task(30)], (0, 1), session=120, between=1440, whole=[1])
    150.0
    >>> glued = [Task(30), Task(0, 1440, (0,)), Task(20, needs=(1,))]
    >>> class_time(glued, (0, 1, 2), session=120, between=1440)
    140.0
    """
    over: dict[int, float] = {}
    done = 0.0
    for index in order:
        task = tasks[index]
        ready = max((over[need] for need in task.needs), default=0.0)
        if not task.hands:
            over[index] = ready + task.rest
            continue
        meeting, into = divmod(ready, session + between)
        done = max(done, meeting * session + min(into, session))
        begun = done % session
        if index in whole and begun > 0 and begun + task.hands > session:
            done += session - begun
        done += task.hands
        met_before = max(0, math.ceil(done / session) - 1)
        over[index] = done + met_before * between + task.rest
    return done


def longest_path(tasks: Sequence[Task]) -> tuple[float, tuple[int, ...]]:
    """The longest chain of tasks that need each other: minutes, and the tasks in it.

    With any number of hands the work would take this long (critical path, common practice).

    >>> longest_path([Task(5, rest=60), Task(10, needs=(0,)), Task(30)])
    (75.0, (0, 1))
    """
    _checked(tasks)
    over: list[float] = []
    last: list[int | None] = []
    for task in tasks:
        before = max(task.needs, key=lambda need: over[need], default=None)
        last.append(before)
        over.append((over[before] if before is not None else 0.0) + task.hands + task.rest)
    if not over:
        return 0.0, ()
    at: int | None = max(range(len(tasks)), key=lambda index: over[index])
    length, path = over[at or 0], []
    while at is not None:
        path.append(at)
        at = last[at]
    return length, tuple(reversed(path))


def open_steps(tasks: Sequence[Task]) -> int:
    """How many tasks that take hands could change places with another such task.

    >>> open_steps([Task(5), Task(5, needs=(0,)), Task(5, needs=(0,)), Task(5, needs=(1, 2))])
    2
    """
    _checked(tasks)
    before = _all_needs(tasks)
    working = [index for index, task in enumerate(tasks) if task.hands]
    return sum(
        any(a != b and a not in before[b] and b not in before[a] for b in working) for a in working
    )


def earliest(tasks: Sequence[Task]) -> Schedule:
    """The order that is over first, waits used for whatever does not need them.

    Exact for up to `MOST_OPEN` open steps; beyond, a good order with a bound that none can beat.

    >>> earliest([Task(5, rest=60), Task(10, needs=(0,)), Task(30)])
    Schedule(finish=75.0, order=(0, 2, 1), exact=True, at_least=75.0)
    """
    at_least = max(longest_path(tasks)[0], hands_on(tasks))
    orders = [tuple(range(len(tasks))), _greedy_order(tasks)]
    finish, order = min((finish_in(tasks, order), order) for order in orders)
    if finish > at_least and open_steps(tasks) <= MOST_OPEN:
        order = _best_order(tasks, finish) or order
        finish = at_least = finish_in(tasks, order)
    return Schedule(finish, order, finish <= at_least, at_least)


def _checked(tasks: Sequence[Task]) -> None:
    for index, task in enumerate(tasks):
        if not (0 <= task.hands < math.inf and 0 <= task.rest < math.inf):
            raise ValueError(f"task {index} takes no time that passes")
        if not all(0 <= need < index for need in task.needs):
            raise ValueError(f"task {index} needs a task that does not stand before it")


def _all_needs(tasks: Sequence[Task]) -> list[set[int]]:
    """What must be over before each task, directly or not."""
    before: list[set[int]] = []
    for task in tasks:
        before.append(set(task.needs).union(*(before[need] for need in task.needs)))
    return before


class _State(NamedTuple):
    """Work done so far: when hands are free, when each task was or will be over, in what order."""

    free: float
    over: tuple[float | None, ...]
    order: tuple[int, ...]


def _settled(tasks: Sequence[Task], state: _State) -> _State:
    """The state with every task begun that takes no hands and whose needs are begun."""
    over, order = list(state.over), list(state.order)
    for index, task in enumerate(tasks):  # needs stand before, so that one pass does
        if over[index] is None and not task.hands:
            ready = _ready(task, over)
            if ready is not None:
                over[index] = ready + task.rest
                order.append(index)
    return _State(state.free, tuple(over), tuple(order))


def _ready(task: Task, over: Sequence[float | None]) -> float | None:
    """When all that a task needs is over, or None where some of it is not yet begun."""
    ready = 0.0
    for need in task.needs:
        end = over[need]
        if end is None:
            return None
        ready = max(ready, end)
    return ready


def _next(tasks: Sequence[Task], state: _State) -> Iterator[_State]:
    """Every state that one more task of the hands leads to."""
    for index, task in enumerate(tasks):
        if state.over[index] is not None:
            continue
        ready = _ready(task, state.over)
        if ready is None:
            continue
        free = max(state.free, ready) + task.hands
        over = (*state.over[:index], free + task.rest, *state.over[index + 1 :])
        yield _settled(tasks, _State(free, over, (*state.order, index)))


def _matters(tasks: Sequence[Task], state: _State) -> tuple[float, ...]:
    """All of a state that bears on the finish: the less of each, the better.

    Nothing that is still to do can begin before hands are free, so earlier ends count alike.
    """
    ends = [
        max((end for need in task.needs if (end := state.over[need]) is not None), default=0.0)
        for task, done in zip(tasks, state.over, strict=True)
        if done is None
    ]
    last = max((end for end in state.over if end is not None), default=0.0)
    return tuple(max(state.free, value) for value in (state.free, last, *ends))


def _best_order(tasks: Sequence[Task], known: float) -> tuple[int, ...] | None:
    """The order that is over before `known`, the best of them, or None where there is none.

    Set by set of tasks done, keeping what no other way to the set beats and what can still win.
    """
    behind = _behind(tasks)
    start = _settled(tasks, _State(0.0, (None,) * len(tasks), ()))
    layer = {frozenset(start.order): [(_matters(tasks, start), start)]}
    for _ in range(sum(task.hands > 0 for task in tasks)):
        found: dict[frozenset[int], list[tuple[tuple[float, ...], _State]]] = {}
        for states in layer.values():
            for _, state in states:
                for after in _next(tasks, state):
                    if _soonest(tasks, after, behind) < known:
                        front = found.setdefault(frozenset(after.order), [])
                        _keep(front, _matters(tasks, after), after)
        layer = found
    done = [state for states in layer.values() for _, state in states]
    return min(done, key=lambda state: finish_in(tasks, state.order)).order if done else None


def _soonest(tasks: Sequence[Task], state: _State, behind: Sequence[float]) -> float:
    """A finish that nothing which goes on from a state can beat."""
    soonest = max((end for end in state.over if end is not None), default=0.0)
    left = [index for index, end in enumerate(state.over) if end is None]
    hands = math.fsum(tasks[index].hands for index in left)
    for index in left:
        ends = [end for need in tasks[index].needs if (end := state.over[need]) is not None]
        # what takes no hands may have begun as soon as its needs were over
        begin = max(ends, default=0.0) if not tasks[index].hands else max([state.free, *ends])
        soonest = max(soonest, begin + behind[index])
    return max(soonest, state.free + hands)


def _behind(tasks: Sequence[Task]) -> list[float]:
    """Each task's own time with the longest chain of tasks that wait for it."""
    behind = [task.hands + task.rest for task in tasks]
    for index in range(len(tasks) - 1, -1, -1):
        for need in tasks[index].needs:
            own = tasks[need].hands + tasks[need].rest
            behind[need] = max(behind[need], own + behind[index])
    return behind


def _keep(
    front: list[tuple[tuple[float, ...], _State]], matters: tuple[float, ...], state: _State
) -> None:
    """Add a state to those kept, unless one of them is as good in all that matters."""
    if any(all(a <= b for a, b in zip(kept, matters, strict=True)) for kept, _ in front):
        return
    front[:] = [
        (kept, other)
        for kept, other in front
        if not all(a <= b for a, b in zip(matters, kept, strict=True))
    ]
    front.append((matters, state))


def _greedy_order(tasks: Sequence[Task]) -> tuple[int, ...]:
    """Whatever can begin soonest, and of those the one with most behind it."""
    behind = _behind(tasks)
    state = _settled(tasks, _State(0.0, (None,) * len(tasks), ()))
    while len(state.order) < len(tasks):
        free = state.free

        def rank(
            after: _State, free: float = free, done: int = len(state.order)
        ) -> tuple[float, float]:
            index = after.order[done]
            return max(after.free - tasks[index].hands, free), -behind[index]

        state = min(_next(tasks, state), key=rank)
    return state.order
