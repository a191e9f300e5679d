"""The best order: by hand, and against every order there is."""

from __future__ import annotations

import math
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.work.schedule import END, InARow, Lag, Task, Work, in_a_row, overlapping
from wellstrung.work.search import MOST_LOOKS, Found, earliest, nearest


def task(hands: float = 0, rest: float = 0, after: tuple[int, ...] = ()) -> Task:
    return Task(hands, rest, frozenset(after))


# --- the fastest order


def test_two_joints_by_hand_where_hands_and_not_the_longest_chain_decide() -> None:
    # two joints of 10 min that cure 15 min, each followed by 10 min of work:
    # joint, joint, 5 min of nothing (until 25), work, work: 45, though the longest chain takes 35
    pair = (task(10, 15), task(10, 15), task(10, after=(0,)), task(10, after=(1,)))
    assert earliest(Work(pair)) == Found((0, 1, 2, 3), 45, stopped=False)
    assert overlapping(Work(pair), (0, 2, 1, 3)).finish == 10 + 15 + 10 + 10 + 15 + 10


def test_the_longest_wait_goes_first() -> None:
    work = Work((task(10, 5), task(10, 100)))
    assert earliest(work) == Found((1, 0), 110, stopped=False)
    assert overlapping(work).finish == 120


def test_a_wait_takes_no_hands() -> None:
    # the wait is for task 0; tasks 2 and 3 go on at once
    work = Work((task(5), task(0, 30, (0,)), task(10), task(10)))
    assert earliest(work) == Found((0, 1, 2, 3), 35, stopped=False)


def test_a_load_is_put_off_until_the_joint_has_cured() -> None:
    # glue, load at once, and an hour of other work: the order that is first lets the joint cure
    work = Work((task(5), task(3, after=(0,)), task(60)), (Lag(0, 1, 120), Lag(0, END, 1440)))
    found = earliest(work)
    assert found == Found((0, 1, 2), 1445, stopped=False), "as good as any: the day decides"
    assert overlapping(work, found.order).starts[1] == 125
    shorter = Work(work.tasks, (Lag(0, 1, 120),))
    assert earliest(shorter) == Found((0, 2, 1), 128, stopped=False)


def test_a_task_is_written_after_what_it_needs() -> None:
    with pytest.raises(ValueError, match="task 0 needs a task that does not stand before it"):
        earliest(Work((task(1, after=(1,)), task(1))))


def by_trying(work: Work) -> float:
    """The least finish over every order of all tasks, by a clock of its own."""
    best = math.inf
    for order in permutations(work.written):
        ends: dict[int, float] = {}
        made: dict[int, float] = {}
        clock = 0.0
        for index in order:
            one = work.tasks[index]
            lags = [lag for lag in work.lags if lag.then == index]
            if any(need not in ends for need in one.after):
                break
            waits = [ends[need] for need in one.after]
            waits += [made[lag.first] + lag.least for lag in lags]
            begin = max(waits, default=0.0)
            if one.hands > 0:
                begin = max(begin, clock)
                clock = begin + one.hands
            made[index] = begin + one.hands
            ends[index] = made[index] + one.rest
        else:
            worn = [made[lag.first] + lag.least for lag in work.lags if lag.then == END]
            best = min(best, max([*ends.values(), *worn]))
    return best


@st.composite
def written(draw: st.DrawFn) -> Work:
    """Small works in an order that keeps all needs, with lags to what needs the first."""
    tasks: list[Task] = []
    lags: list[Lag] = []
    for index in range(draw(st.integers(1, 6))):
        needs = draw(st.sets(st.integers(0, index - 1), max_size=2)) if index else set()
        lags += [Lag(need, index, draw(st.sampled_from([3, 9, 30]))) for need in needs
                 if draw(st.booleans())]  # fmt: skip
        if draw(st.sampled_from([0, 0, 0, 1])):
            lags.append(Lag(index, END, draw(st.sampled_from([5, 20]))))
        hands = draw(st.sampled_from([0, 1, 2, 3, 5, 8]))
        tasks.append(task(hands, draw(st.sampled_from([0, 0, 1, 4, 7, 20])), tuple(needs)))
    return Work(tuple(tasks), tuple(lags))


@settings(max_examples=150)
@given(written(), st.sampled_from([0, 100, MOST_LOOKS]))
def test_no_order_is_over_before_the_earliest(work: Work, looks: int) -> None:
    found, best = earliest(work, looks), by_trying(work)
    finish = overlapping(work, found.order).finish
    assert found.cost <= best <= finish <= overlapping(work).finish
    if not found.stopped:
        assert found.cost == best == finish
    assert not found.stopped or looks < MOST_LOOKS


def test_past_its_limit_the_search_gives_a_good_order_and_a_bound() -> None:
    # what is best is plain where each of many tasks is like the others
    loose = Work((task(1, 100),) * 13)
    assert earliest(loose) == Found(loose.written, 113, stopped=False)
    pairs = [task(5 + index, 20 + 9 * (index * 5 % 7)) for index in range(6)]
    pairs += [task(4 + 2 * index, 11 * (index % 3), (index,)) for index in range(6)]
    work = Work(tuple(pairs))
    best = earliest(work)
    assert not best.stopped and best.cost == overlapping(work, best.order).finish
    early = earliest(work, looks=500)
    assert early.stopped and early.cost <= best.cost <= overlapping(work, early.order).finish
    assert overlapping(work, early.order).finish < overlapping(work).finish


def test_a_work_too_long_to_look_through_keeps_its_order() -> None:
    work = Work((task(1, 100),) * 600)
    assert len(work.tasks) ** 2 > MOST_LOOKS
    assert earliest(Work((*work.tasks, task(0, 1000)))).order == (*work.written, 600)
    assert nearest(work).stopped


# --- the order nearest to the one written


def works(work: Work, order: tuple[int, ...]) -> bool:
    """Whether an order keeps every need, by a clock and not by the search."""
    at = {index: place for place, index in enumerate(order)}
    if any(at[need] > at[index] for index, one in enumerate(work.tasks) for need in one.after):
        return False
    begins, clock = {}, 0.0
    for index in order:
        begins[index] = clock
        clock += work.tasks[index].hands + work.tasks[index].rest
    for first, then, least, others in work.lags:
        begin = clock if then == END else begins[then]
        over = begins[first] + work.tasks[first].hands
        before = all(then == END or at[one] < at[then] for one in (first, *others))
        if before and begin - over < least:
            return False
    in_hand, joints = "", 0.0
    for index in order:
        one = work.tasks[index]
        same = bool(one.mix) and one.mix == in_hand and not one.own
        joints = one.joints + (joints if same else 0)
        if same and joints > one.most:
            return False
        in_hand = one.mix
    return True


def moved(order: tuple[int, ...]) -> int:
    """How many tasks have to be taken out of an order until the others stand as written."""
    count = len(order)
    rows = ([order[at] for at in range(count) if mask >> at & 1] for mask in range(2**count))
    return count - max(len(row) for row in rows if row == sorted(row))


@st.composite
def muddled(draw: st.DrawFn) -> Work:
    """Small works, with needs that may go either way and even in a circle."""
    count = draw(st.integers(1, 6))
    tasks, lags = [], []
    for index in range(count):
        others = [other for other in range(count) if other != index]
        after = draw(st.sets(st.sampled_from(others), max_size=2)) if others else set()
        mix = draw(st.sampled_from(["", "", "epoxy"]))
        tasks.append(
            Task(
                draw(st.sampled_from([0, 0, 1, 5])),
                0 if mix else draw(st.sampled_from([0, 0, 6])),
                frozenset(after),
                mix,
                draw(st.sampled_from([0.5, 1, 2])) if mix else 0,
                draw(st.booleans()) if mix else False,
                2 if mix else math.inf,
            )
        )
    for _ in range(draw(st.integers(0, 2))):
        first = draw(st.integers(0, count - 1))
        then = draw(st.sampled_from([END, *(other for other in range(count) if other != first)]))
        given = frozenset(draw(st.sets(st.integers(0, count - 1), max_size=1))) - {then}
        lags.append(Lag(first, then, draw(st.sampled_from([1, 5, 6])), given))
    return Work(tuple(tasks), tuple(lags))


@pytest.mark.slow
@settings(max_examples=400)
@given(muddled())
def test_no_other_order_works_with_fewer_tasks_moved(work: Work) -> None:
    good = [order for order in permutations(work.written) if works(work, order)]
    found = nearest(work)
    assert not found.stopped
    if not good:
        assert found.order is None
    else:
        # of those with as few moved, the one that leaves the first tasks as they are
        assert found.order == min(good, key=lambda order: (moved(order), order))
        assert found.cost == moved(found.order)


@pytest.mark.slow
@settings(max_examples=200)
@given(muddled(), st.data())
def test_an_order_is_walked_as_it_is_judged(work: Work, data: st.DataObject) -> None:
    order = tuple(data.draw(st.permutations(work.written)))
    way = InARow(work)
    state, fine = way.beginning(), True
    for index in order:
        fine = fine and way.works(state, index)
        way.take(state, index)
    assert (fine and way.works(state, END)) == works(work, order)
    assert state.free == in_a_row(work, order).finish


def test_two_tasks_that_need_each_other_have_no_order_however_many_others_there_are() -> None:
    circle = (task(after=(1,)), task(after=(0,)))
    assert nearest(Work(circle)) == Found(None, math.inf, stopped=False)
    assert nearest(Work((*circle, *[task()] * 100))) == Found(None, math.inf, stopped=False)


def test_a_wait_is_brought_forward_to_where_it_serves() -> None:
    # weave, glue, hang, wait a day, wear: hang after the wait
    tasks = (
        task(),
        task(after=(0,)),
        task(after=(0,)),
        task(0, 1440),
        task(after=(0, 1, 2, 3)),
    )
    work = Work(tasks, (Lag(1, 2, 120), Lag(1, 4, 1440)))
    assert nearest(work) == Found((0, 1, 3, 2, 4), 1, stopped=False)


def test_joints_in_a_row_share_a_mix_for_as_many_as_it_is_good_for() -> None:
    pair = (Task(5, mix="epoxy", joints=1, most=2),) * 2
    assert nearest(Work(pair)) == Found((0, 1), 0, stopped=False)
    assert nearest(Work((*pair, pair[0]))) == Found(None, math.inf, stopped=False)


def test_where_no_wait_is_long_enough_that_is_seen_at_once() -> None:
    work = Work((*[task(1)] * 30, task(0, 10)), (Lag(0, END, 60), Lag(3, END, 20)))
    assert nearest(work, looks=1000) == Found(None, math.inf, stopped=False)


def test_past_its_limit_the_search_has_no_order() -> None:
    count = 12
    work = Work((*(task(after=(index + 1,)) for index in range(count)), task()))
    order = tuple(range(count, -1, -1))
    assert nearest(work) == Found(order, count, stopped=False)
    assert nearest(work, looks=200).stopped
