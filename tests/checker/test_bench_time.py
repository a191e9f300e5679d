"""Bench time: by hand, against every order there is, and from a plan's own steps."""

from __future__ import annotations

from itertools import pairwise, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.bench_time import (
    MOST_OPEN,
    Schedule,
    Task,
    as_written,
    beading_time,
    earliest,
    finish_in,
    hands_on,
    longest_path,
    open_steps,
)

#: A collar: weave, glue the caps, let them cure for a day, cut and hang a fringe, hang it, close.
COLLAR = (
    Task(300),
    Task(15, needs=(0,)),
    Task(0, rest=1440, needs=(1,)),
    Task(20),
    Task(35, needs=(3,)),
    Task(5, needs=(2, 4)),
    Task(5, needs=(5,)),
)


def test_a_collar_by_hand() -> None:
    assert hands_on(COLLAR) == 380
    assert as_written(COLLAR) == 380 + 1440
    # weave and glue, then the day; the fringe is made in it; hang and close after it
    assert longest_path(COLLAR) == (300 + 15 + 1440 + 5 + 5, (0, 1, 2, 5, 6))
    best = earliest(COLLAR)
    assert best.finish == 1765 and best.exact
    assert best.order.index(1) < best.order.index(3), "the joint first, the fringe while it cures"


def test_two_joints_by_hand_where_hands_and_not_the_longest_path_decide() -> None:
    # two joints of 10 min that cure 15 min, each followed by 10 min of work:
    # joint, joint, 5 min of nothing (until 25), work, work: 45, though the longest path has 35
    tasks = [Task(10, 15), Task(10, 15), Task(10, needs=(0,)), Task(10, needs=(1,))]
    assert longest_path(tasks)[0] == 35
    assert earliest(tasks) == Schedule(45, (0, 1, 2, 3), True, 45)
    assert finish_in(tasks, (0, 2, 1, 3)) == 10 + 15 + 10 + 10 + 15 + 10


def test_the_longest_wait_goes_first() -> None:
    tasks = [Task(10, 5), Task(10, 100)]
    assert earliest(tasks).order == (1, 0) and earliest(tasks).finish == 110
    assert finish_in(tasks, (0, 1)) == 120


def test_a_wait_takes_no_hands() -> None:
    # the wait is for task 0; tasks 2 and 3 go on at once
    tasks = [Task(5), Task(0, 30, (0,)), Task(10), Task(10)]
    assert earliest(tasks).finish == 35
    assert finish_in(tasks, (0, 1, 2, 3)) == 35


def test_nothing_to_do_takes_no_time() -> None:
    assert hands_on([]) == as_written([]) == 0
    assert longest_path([]) == (0, ())
    assert earliest([]) == Schedule(0, (), True, 0)
    assert earliest([Task(0), Task(0, 5, (0,))]).finish == 5


def test_beads_over_rate() -> None:
    assert beading_time(1890, 7) == 270


@pytest.mark.parametrize(
    "tasks",
    [
        [Task(-1)],
        [Task(1, -1)],
        [Task(float("inf"))],
        [Task(float("nan"))],
        [Task(1, needs=(0,))],
        [Task(1, needs=(1,)), Task(1)],
        [Task(1, needs=(-1,))],
    ],
)
def test_what_is_no_work_is_refused(tasks: list[Task]) -> None:
    for function in (longest_path, earliest, open_steps):
        with pytest.raises(ValueError, match=r"task 0|task 1"):
            function(tasks)


@pytest.mark.parametrize("order", [(0,), (0, 0), (1, 0), (0, 2)])
def test_an_order_that_cannot_be_is_refused(order: tuple[int, ...]) -> None:
    with pytest.raises(ValueError, match=r"order names|stands before"):
        finish_in([Task(1), Task(1, needs=(0,))], order)


@st.composite
def works(draw: st.DrawFn, most: int = 6) -> list[Task]:
    """Small works with waits of every size against the work."""
    tasks: list[Task] = []
    for index in range(draw(st.integers(1, most))):
        needs = draw(st.sets(st.integers(0, index - 1), max_size=2)) if index else set()
        hands = draw(st.sampled_from([0, 1, 2, 3, 5, 8]))
        tasks.append(Task(hands, draw(st.sampled_from([0, 0, 1, 4, 7, 20])), tuple(sorted(needs))))
    return tasks


def by_trying(tasks: list[Task]) -> float:
    """The least finish over every order of all tasks, by a clock of its own."""
    best = float("inf")
    for order in permutations(range(len(tasks))):
        ends: dict[int, float] = {}
        clock = 0.0
        for index in order:
            if any(need not in ends for need in tasks[index].needs):
                break
            begin = max([ends[need] for need in tasks[index].needs] + [0.0])
            if tasks[index].hands > 0:
                begin = clock = max(begin, clock)
                clock += tasks[index].hands
            ends[index] = begin + tasks[index].hands + tasks[index].rest
        else:
            best = min(best, max(ends.values()))
    return best


@settings(max_examples=80, deadline=None)
@given(works())
def test_no_order_is_over_before_the_earliest(tasks: list[Task]) -> None:
    best = earliest(tasks)
    assert best.exact and best.finish == by_trying(tasks) == finish_in(tasks, best.order)
    assert max(longest_path(tasks)[0], hands_on(tasks)) <= best.finish <= as_written(tasks)


def paths(tasks: list[Task], to: int) -> list[float]:
    """The length of every chain of needs that ends in a task."""
    own = tasks[to].hands + tasks[to].rest
    return [own] + [own + length for need in tasks[to].needs for length in paths(tasks, need)]


@settings(max_examples=100, deadline=None)
@given(works(9))
def test_the_longest_path_is_the_longest_of_all_paths(tasks: list[Task]) -> None:
    length, path = longest_path(tasks)
    assert length == max(max(paths(tasks, index)) for index in range(len(tasks)))
    assert length == sum(tasks[index].hands + tasks[index].rest for index in path)
    assert all(a in tasks[b].needs for a, b in pairwise(path))


def test_only_steps_that_could_change_places_are_open() -> None:
    row = [Task(1, needs=(index - 1,) if index else ()) for index in range(40)]
    assert open_steps(row) == 0 and earliest(row).finish == 40
    assert open_steps([*row, Task(1)]) == 41
    assert open_steps([*row, Task(0, 9)]) == 0, "a wait takes no hands and no place"


def test_beyond_the_bound_a_good_order_is_given_and_said_to_be_no_more() -> None:
    pairs = [Task(10, 15) for _ in range(7)]
    pairs += [Task(10, needs=(index,)) for index in range(7)]
    best = earliest(pairs)
    assert open_steps(pairs) == 14 > MOST_OPEN
    assert best.at_least == 140 and best.finish == 140 and best.exact, "as good as the bound"
    loose = earliest([Task(1, 100) for _ in range(13)])
    assert loose.finish == 113 and loose.at_least == 101
    assert not loose.exact, "13 + 100 is best, but nothing has proved it"


def test_a_search_at_the_bound_stays_short() -> None:
    pairs = [Task(5 + index, 20 + 9 * (index * 5 % 7)) for index in range(6)]
    pairs += [Task(4 + 2 * index, 11 * (index % 3), (index,)) for index in range(6)]
    assert open_steps(pairs) == MOST_OPEN
    best = earliest(pairs)
    assert best.exact and best.finish >= hands_on(pairs)
