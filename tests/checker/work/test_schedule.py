"""Times of the work: by hand, against a clock that ticks, and work that cannot be."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.work.schedule import END, Lag, Meetings, Task, Work, in_a_row, overlapping


def task(hands: float = 0, rest: float = 0, after: tuple[int, ...] = ()) -> Task:
    return Task(hands, rest, frozenset(after))


#: A collar: weave, glue the caps, let them cure for a day, cut and hang a fringe, hang it, close.
COLLAR = Work(
    (
        task(300),
        task(15, after=(0,)),
        task(0, 1440, (1,)),
        task(20),
        task(35, after=(3,)),
        task(5, after=(2, 4)),
        task(5, after=(5,)),
    )
)


def test_a_collar_by_hand() -> None:
    assert in_a_row(COLLAR).starts == (0, 300, 315, 1755, 1775, 1810, 1815)
    assert in_a_row(COLLAR).finish == 380 + 1440
    # weave and glue, then the day; the fringe is made in it; hang and close after it
    times = overlapping(COLLAR)
    assert times.starts == (0, 300, 315, 315, 335, 1755, 1760)
    assert times.over == (300, 315, 1755, 335, 370, 1760, 1765)
    assert times.finish == times.hands == 1765


def test_a_lag_is_waited_for_where_tasks_overlap_and_not_in_a_row() -> None:
    work = Work((task(5), task(10), task(30)), (Lag(0, 1, 60), Lag(0, END, 200), Lag(2, 1, 99)))
    assert in_a_row(work).starts == (0, 5, 15)
    assert in_a_row(work).finish == 45
    assert overlapping(work, (0, 1, 2)).starts == (0, 65, 75), "the first holds, the last does not"
    assert overlapping(work, (0, 1, 2)).finish == 205, "the work ends when the joint has cured"
    assert overlapping(work, (0, 1, 2)).hands == 105
    assert overlapping(work, (0, 2, 1)).starts == (0, 134, 5)


def test_a_lag_begins_when_hands_stop_and_not_when_the_rest_is_over() -> None:
    work = Work((task(5, 50), task(1)), (Lag(0, 1, 20),))
    assert overlapping(work).starts == (0, 25)


def test_no_work_takes_no_time() -> None:
    assert in_a_row(Work(())) == overlapping(Work(())) == ((), (), 0, 0)
    assert overlapping(Work((task(), task(0, 5, (0,))))).finish == 5


@pytest.mark.parametrize(
    "tasks",
    [
        [task(-1)],
        [task(1, -1)],
        [task(float("inf"))],
        [task(float("nan"))],
        [task(1, after=(1,))],
        [task(1, after=(-1,))],
    ],
)
def test_tasks_that_cannot_be_are_refused(tasks: list[Task]) -> None:
    with pytest.raises(ValueError, match="task 0"):
        Work(tuple(tasks))


@pytest.mark.parametrize("lag", [Lag(1, 0, 5), Lag(0, 1, 5), Lag(END, 0, 5)])
def test_a_lag_to_no_task_is_refused(lag: Lag) -> None:
    with pytest.raises(ValueError, match="task that is not there"):
        Work((task(1),), (lag,))


@pytest.mark.parametrize("order", [(0,), (0, 0), (1, 0), (0, 2)])
def test_an_order_that_cannot_be_is_refused(order: tuple[int, ...]) -> None:
    with pytest.raises(ValueError, match=r"order names|stands before"):
        overlapping(Work((task(1), task(1, after=(0,)))), order)


@st.composite
def works(draw: st.DrawFn) -> Work:
    """Small works with waits of every size against the hands."""
    tasks: list[Task] = []
    for index in range(draw(st.integers(1, 6))):
        needs = draw(st.sets(st.integers(0, index - 1), max_size=2)) if index else set()
        hands = draw(st.sampled_from([0, 1, 2, 3, 5, 8]))
        tasks.append(task(hands, draw(st.sampled_from([0, 0, 1, 4, 7, 20])), tuple(needs)))
    lags = [
        Lag(first, then, draw(st.sampled_from([2, 6, 30])))
        for then in range(1, len(tasks))
        for first in draw(st.sets(st.integers(0, then - 1), max_size=1))
    ]
    return Work(tuple(tasks), tuple(lags))


def minute_by_minute(work: Work, session: int, between: int, whole: set[int]) -> tuple[int, int]:
    """Minutes of class, and when all is over, by a clock that ticks."""
    ends: dict[int, float] = {}
    made: dict[int, float] = {}
    clock = taught = worked = 0
    queue = [index for index in work.written if work.tasks[index].hands]

    def ready(index: int) -> float | None:
        """When a task can start, as far as is known; None while a need is not done."""
        if any(need not in ends for need in work.tasks[index].after):
            return None
        waits = [made[lag.first] + lag.least for lag in work.lags
                 if lag.then == index and lag.first in made]  # fmt: skip
        return max([ends[need] for need in work.tasks[index].after] + waits, default=0)

    def settle(before: int) -> None:
        """What takes no hands starts by itself, in its turn."""
        for index in work.written:
            start = ready(index)
            if not work.tasks[index].hands and index not in ends and index < before:
                assert start is not None
                ends[index], made[index] = start + work.tasks[index].rest, start

    while queue:
        index = queue[0]
        settle(index)
        into = clock % (session + between)
        if into >= session:
            clock += session + between - into
            continue
        start, left = ready(index), work.tasks[index].hands - worked
        no_room = index in whole and not worked and into > 0 and into + left > session
        clock, taught = clock + 1, taught + 1
        if start is None or start > clock - 1 or no_room:
            continue
        worked += 1
        if worked == work.tasks[index].hands:
            ends[index], made[index] = clock + work.tasks[index].rest, clock
            worked = 0
            queue.pop(0)
    settle(len(work.tasks))
    return taught, int(max(ends.values()))


@pytest.mark.slow
@settings(max_examples=300)
@given(st.data())
def test_times_are_those_of_a_clock_that_ticks(data: st.DataObject) -> None:
    work = data.draw(works())
    session = data.draw(st.sampled_from([3, 7, 10]))
    between = data.draw(st.sampled_from([1, 5, 30]))
    whole = data.draw(st.sets(st.integers(0, len(work.tasks) - 1)))
    times = overlapping(work, meetings=Meetings(session, between, frozenset(whole)))
    assert (times.hands, max(times.over)) == minute_by_minute(work, session, between, whole)
    alone = overlapping(work)
    assert (alone.hands, max(alone.over)) == minute_by_minute(work, 10**6, 1, set())
