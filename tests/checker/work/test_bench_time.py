"""Bench time: by hand, against every order there is, and from a plan's own steps."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wellstrung_schemas as schemas
from wellstrung.derived.of_plan import Quantities
from wellstrung.model.build import build
from wellstrung.model.parts import Missing, Plan
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading.bench import read_text
from wellstrung.reading.settings import RATE_SPREAD, RATES, Bench
from wellstrung.work import work_time
from wellstrung.work.bench_time import (
    MOST_OPEN,
    Schedule,
    Task,
    as_written,
    beading_time,
    class_time,
    earliest,
    finish_in,
    hands_on,
    longest_path,
    open_steps,
)
from wellstrung.work.times import TIMES

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


def minute_by_minute(
    tasks: list[Task], order: tuple[int, ...], session: int, between: int, whole: set[int]
) -> int:
    """The same told by a clock that ticks: what hands do in each minute of class."""
    left = {index: tasks[index].hands for index in order}
    ends: dict[int, float] = {}
    clock = taught = 0
    queue = [index for index in order if tasks[index].hands]

    def settle() -> None:
        for index, task in enumerate(tasks):
            if not task.hands and index not in ends and all(n in ends for n in task.needs):
                ends[index] = max((ends[n] for n in task.needs), default=0) + task.rest

    settle()
    while queue:
        index = queue[0]
        into = clock % (session + between)
        if into >= session:
            clock += session + between - into
            continue
        ready = all(need in ends and ends[need] <= clock for need in tasks[index].needs)
        fresh = left[index] == tasks[index].hands
        no_room = index in whole and fresh and into > 0 and into + left[index] > session
        clock, taught = clock + 1, taught + 1
        if not ready or no_room:
            continue
        left[index] -= 1
        if not left[index]:
            ends[index] = clock + tasks[index].rest
            settle()
            queue.pop(0)
    return taught


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_class_time_is_what_a_clock_tells(data: st.DataObject) -> None:
    tasks = data.draw(works())
    session = data.draw(st.sampled_from([3, 7, 10]))
    between = data.draw(st.sampled_from([1, 5, 30]))
    whole = data.draw(st.sets(st.integers(0, len(tasks) - 1)))
    order = tuple(range(len(tasks)))
    counted = minute_by_minute(tasks, order, session, between, whole)
    assert class_time(tasks, order, session, between, whole) == counted


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


# --- a plan's own steps


WORK = """\
work:
  - {do: weave, part: rope}
  - {do: slide, part: carrier, onto: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: wait, time: 24 h}
  - {do: cut, part: drop, every: 8}
  - {do: hang, part: drop, from: frame, by: small}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: close ring, part: small, joins: [cap, toggle.a]}
  - {do: wear}
supplies:
"""


@pytest.fixture
def planned(collar: str, installed: Host) -> Callable[..., Plan]:
    """The collar with other work, by a bench."""

    def plan(work: str = WORK, bench: str = "bench: 1") -> Plan:
        head, _, rest = collar.partition("work:\n")
        text = head + work + rest.partition("supplies:\n")[2]
        settings, faults = read_text(bench, "bench.yaml", installed.stitches)
        assert settings is not None, faults
        read = parser.read_text(text, "plan.yaml")
        made, wrong = build(read, installed.kinds, installed.stitches, settings)
        assert made is not None, wrong
        return made

    return plan


def asked(plan: Plan) -> Quantities:
    """The quantities of a plan with the times that `work` brings."""
    return Quantities(plan, {time.name: time for time in TIMES})


OWN = (
    "bench: 1\nrates: {tubular peyote: 10 beads per min, glue: 4 min, slide: 1 min, cut: 2 min,"
    " hang: 3 min, close ring: 1 min}"
)


def test_hands_by_the_rates_of_the_bench(planned: Callable[..., Plan]) -> None:
    ask = asked(planned(bench=OWN))
    beads = ask.get("rope.beads").middle
    # weave, slide, 2 joints, 7 pieces cut, 7 hung, 1 frame (two rings of two eyes), 3 rings
    by_hand = beads / 10 + 1 + 2 * 4 + 7 * 2 + 7 * 3 + 1 * 3 + 3 * 1
    assert ask.get("piece.bench_time").middle == pytest.approx(by_hand)
    assert ask.get("piece.student_time").middle == pytest.approx(2 * by_hand)
    assert ask.get("piece.finish_as_written").middle == pytest.approx(by_hand + 1440)
    # the fringe is cut and hung on its frame while the glue cures
    early = ask.get("piece.finish_earliest")
    assert early.middle == pytest.approx(by_hand + 1440 - 7 * 2 - 7 * 3)
    assert early.working()[-1].endswith("[steps in the order 1, 2, 3, 4, 5, 6, 7, 8, 9]")


def test_what_each_step_needs(planned: Callable[..., Plan]) -> None:
    needs = [task.needs for task in work_time.tasks(planned(), [1.0] * 9)]
    assert needs == [
        (),  # weave
        (0,),  # slide: the rope
        (0, 1),  # glue: the rope and what is on it
        (0, 1, 2),  # the wait for the joint
        (),  # cut the fringe
        (4,),  # hang it from the frame, which is not yet on the rope
        (0, 1, 2, 3, 4, 5),  # the frame on the rope, when the joint has cured
        (0, 1, 2, 3, 4, 5, 6),
        (0, 1, 2, 3, 4, 5, 6, 7),  # to wear is about all of it
    ]


def test_a_wait_for_nothing_that_is_glued_holds_up_everything(
    planned: Callable[..., Plan],
) -> None:
    work = (
        "work:\n  - {do: weave, part: rope}\n  - {do: wait, time: 1 h}\n"
        "  - {do: cut, part: drop}\nsupplies:\n"
    )
    assert [task.needs for task in work_time.tasks(planned(work), [1, 0, 1])] == [(), (0,), (1,)]


def test_a_second_wait_is_for_the_same_joint(planned: Callable[..., Plan]) -> None:
    work = (
        "work:\n  - {do: glue, part: cap, to: rope, with: glue}\n  - {do: wait, time: 1 h}\n"
        "  - {do: wait, time: 23 h}\n  - {do: cut, part: drop}\nsupplies:\n"
    )
    found = work_time.tasks(planned(work), [1, 0, 0, 1])
    assert [task.needs for task in found] == [(), (0,), (0, 1), ()]
    assert [task.rest for task in found] == [0, 60, 1380, 0]


def test_what_is_written_beats_the_rate(planned: Callable[..., Plan]) -> None:
    work = "work:\n  - {do: weave, part: rope, takes: 4 h}\n  - {do: pack}\nsupplies:\n"
    ask = asked(planned(work, "bench: 1\npaces: {maker: 1.5, student: 3}"))
    time = ask.get("piece.bench_time")
    assert time.middle == 240 + 1.5 * RATES["pack"].value, "a pace is for rates only"
    assert ask.get("piece.student_time").middle == 3 * time.middle
    assert any("written `4 h`" in line for line in time.working())


def test_a_rate_from_memory_is_doubtful_and_one_of_the_bench_is_not(
    planned: Callable[..., Plan],
) -> None:
    work = "work:\n  - {do: pack}\n  - {do: measure, part: rope}\nsupplies:\n"
    ask = asked(planned(work, "bench: 1\nrates: {pack: 6 min}"))
    time = ask.get("piece.bench_time")
    assert [cause.name for cause in time.causes] == ["rate of measure"]
    off = RATE_SPREAD * RATES["measure"].value
    assert time.worst == pytest.approx((time.middle - off, time.middle + off))
    assert "write `rates: {measure: 4 min}` in bench.yaml" in time.causes[0].cure
    assert any("pack = 6 min; bench.yaml:2, written `6 min`" in line for line in time.working())


def test_rings_are_counted_where_they_are_closed(planned: Callable[..., Plan]) -> None:
    lines = {
        "{do: close ring, part: small, joins: [cap, toggle.b]}": 4,
        "{do: close ring, part: small}": 7,
        "{do: close ring, part: carrier, around: rope}": 1,
        "{do: hang, part: frame, times: 2}": 2,
        "{do: hang, part: frame}": 1,
        "{do: cut, part: drop}": 7,
        "{do: finish thread, part: rope}": 2,
        "{do: finish thread, part: rope, ends: 4}": 4,
    }
    work = "work:\n" + "".join(f"  - {line}\n" for line in lines) + "supplies:\n"
    plan = planned(work)
    assert [work_time.times_done(plan, step) for step in plan.steps] == list(lines.values())


def test_without_steps_or_beads_there_is_no_time(planned: Callable[..., Plan]) -> None:
    with pytest.raises(Missing, match="`work`, the steps in their order"):
        asked(planned("supplies:\n")).get("piece.bench_time")
    with pytest.raises(Missing):
        asked(planned("work:\n  - {do: string, part: cap}\nsupplies:\n")).get("piece.bench_time")


def test_every_verb_has_a_rate_or_takes_no_hands() -> None:
    for verb in schemas.verbs():
        rate = {"weave": "weaving", "string": "stringing"}.get(verb, verb)
        assert rate in RATES or verb in ("wait", "wear"), verb
    assert Bench().rates is RATES and all("from memory" in rate.reason for rate in RATES.values())
