"""An order that works: by hand, against every order there is, and from a plan's own steps."""

from __future__ import annotations

import math
from itertools import permutations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from running import ROOT
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.checker import Checker
from wellstrung.model.build import build
from wellstrung.plugins import host
from wellstrung.plugins.host import Host
from wellstrung.reading import parser, tree
from wellstrung.reading.settings import Bench
from wellstrung.rulebook import Ask, Remedy
from wellstrung.testing import changed
from wellstrung.work import needs
from wellstrung.work.order import (
    END,
    MOST_OPEN,
    Doing,
    Wait,
    moved,
    open_steps,
    order_that_works,
)

HOST = host.load()
CHECKER = Checker(HOST)
COLLAR = (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")


def works(steps: list[Doing], waits: list[Wait], order: tuple[int, ...]) -> bool:
    """Whether an order keeps every need, told without the search: step by step with a clock."""
    at = {index: place for place, index in enumerate(order)}
    if any(at[need] > at[index] for index, step in enumerate(steps) for need in step.after):
        return False
    begins, clock = {}, 0.0
    for index in order:
        begins[index] = clock
        clock += steps[index].passes
    for first, then, least in waits:
        begin = clock if then == END else begins[then]
        over = begins[first] + steps[first].passes
        if (then == END or at[first] < at[then]) and begin - over < least:
            return False
    in_hand, joints = "", 0.0
    for index in order:
        step = steps[index]
        same = bool(step.mix) and step.mix == in_hand and not step.own
        joints = step.joints + (joints if same else 0)
        if same and joints > step.most:
            return False
        in_hand = step.mix
    return True


@st.composite
def benches(draw: st.DrawFn) -> tuple[list[Doing], list[Wait]]:
    """Small works, with needs that may go either way and even in a circle."""
    count = draw(st.integers(1, 6))
    steps, waits = [], []
    for index in range(count):
        others = [other for other in range(count) if other != index]
        after = draw(st.sets(st.sampled_from(others), max_size=2)) if others else set()
        mix = draw(st.sampled_from(["", "", "epoxy"]))
        steps.append(
            Doing(
                draw(st.sampled_from([0, 0, 1, 5])),
                frozenset(after),
                mix,
                draw(st.integers(1, 2)) if mix else 0,
                draw(st.booleans()),
                draw(st.sampled_from([2, 3, math.inf])),
            )
        )
    for _ in range(draw(st.integers(0, 2))):
        first = draw(st.integers(0, count - 1))
        then = draw(st.sampled_from([END, *(other for other in range(count) if other != first)]))
        waits.append(Wait(first, then, draw(st.sampled_from([1, 5, 6]))))
    return steps, waits


@settings(max_examples=400, deadline=None)
@given(benches())
def test_no_other_order_works_with_fewer_steps_moved(
    bench: tuple[list[Doing], list[Wait]],
) -> None:
    steps, waits = bench
    good = [order for order in permutations(range(len(steps))) if works(steps, waits, order)]
    found = order_that_works(steps, waits)
    if not good:
        assert found is None
    else:
        assert found in good
        assert moved(found) == min(moved(order) for order in good)
        # of those, the one that leaves the first steps as they are
        assert found == min(good, key=lambda order: (moved(order), order))


@settings(max_examples=200, deadline=None)
@given(st.permutations(range(7)))
def test_moved_is_the_least_that_has_to_be_taken_out(order: list[int]) -> None:
    kept = max(
        sum(mask >> at & 1 for at in range(7))
        for mask in range(2**7)
        if (row := [order[at] for at in range(7) if mask >> at & 1]) == sorted(row)
    )
    assert moved(order) == 7 - kept


def test_two_steps_that_need_each_other_have_no_order() -> None:
    assert order_that_works([Doing(after=frozenset({1})), Doing(after=frozenset({0}))]) is None


def test_a_wait_is_brought_forward_to_where_it_serves() -> None:
    # weave, glue, hang, wait a day, wear: hang after the wait
    steps = [
        Doing(),
        Doing(after=frozenset({0})),
        Doing(after=frozenset({0})),
        Doing(1440),
        Doing(after=frozenset({0, 1, 2, 3})),
    ]
    assert order_that_works(steps, [Wait(1, 2, 120), Wait(1, 4, 1440)]) == (0, 1, 3, 2, 4)


def test_steps_in_one_row_are_not_open() -> None:
    row = [Doing(after=frozenset({index - 1}) if index else frozenset()) for index in range(30)]
    assert open_steps(row) == 0
    assert open_steps([Doing()] * MOST_OPEN) == MOST_OPEN


WORK = """\
work:
  - {do: weave, part: rope}
  - {do: slide, part: carrier, onto: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: wait, time: 24 h}
  - {do: cut, part: drop, every: 8}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: wear}
"""
MUDDLED = """\
work:
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: hang, part: drop, from: frame, by: small}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: slide, part: carrier, onto: rope}
  - {do: weave, part: rope}
  - {do: close ring, part: small}
  - {do: cut, part: drop, every: 8}
  - {do: wait, time: 24 h}
  - {do: wear}
"""


def test_a_muddled_plan_is_offered_an_order_that_works(checker: Checker, collar: str) -> None:
    text = collar.replace(WORK, MUDDLED)
    offered = [r for r in checker.check_text(text).remarks if "an order that works" in r.remedy]
    assert [(remark.rule, remark.remedy) for remark in offered] == [
        (
            "cure-time",
            "an order that works: 5 weave, 1 glue, 4 slide, 7 cut, 2 hang, 8 wait, 3 hang,"
            " 6 close ring, 9 wear",
        )
    ]
    mended = tree.replaced(text, [(edit.place, edit.new) for edit in offered[0].edits])
    assert [r.says for r in checker.check_text(mended).remarks if r.level != "caution"] == []


def test_too_many_steps_to_look_through_are_told(installed: Host, collar: str) -> None:
    measured = "".join("  - {do: measure, part: frame}\n" for _ in range(14))
    text = collar.replace(WORK, MUDDLED.replace("  - {do: wait", f"{measured}  - {{do: wait"))
    read = parser.read_text(text, "plan.yaml")
    plan, _ = build(read, installed.kinds, installed.stitches, Bench())
    assert plan is not None
    (told,) = Ask(plan, Quantities(plan)).in_order(Remedy("weave first"))
    assert told.text == (
        "weave first; 22 steps can change places, too many to look for an order that works"
    )
    assert not told.edits


@pytest.mark.parametrize("count", [MOST_OPEN])
def test_the_most_that_is_looked_through_takes_little_time(count: int) -> None:
    last = Doing(after=frozenset({0}))
    steps = [*[Doing()] * (count - 1), last]
    assert order_that_works(steps, [Wait(0, END, 60)]) is None


#: a carrier that passes no cap, two glue steps that share a mix, thread finished at either end
BUSY = """\
work:
  - {do: weave, part: rope}
  - {do: finish thread, part: rope}
  - {do: slide, part: carrier, onto: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 1}
  - {do: glue, part: cap, to: rope, with: glue, joints: 1}
  - {do: wait, time: 24 h}
  - {do: cut, part: drop, every: 8}
  - {do: hang, part: drop, from: frame, by: small}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: close ring, part: small}
  - {do: wear}
"""
ORDERED = {"capped-too-soon", "cure-time", "finish-before-glue", "pot-life", "step-parts"}


@st.composite
def muddles(draw: st.DrawFn) -> list[int]:
    """The written order with up to three steps moved."""
    order = list(range(11))
    for _ in range(draw(st.integers(0, 3))):
        order.insert(draw(st.integers(0, 10)), order.pop(draw(st.integers(0, 10))))
    return order


@settings(max_examples=120, deadline=None)
@given(muddles(), st.sampled_from(["", ", usable: 4 min"]))
def test_an_order_works_just_where_the_rules_have_nothing_to_say(
    order: list[int], glue: str
) -> None:
    assume(order.index(2) < order.index(8))  # no rule asks that a ring is slid on before it carries
    changes = {
        "outside: 16 mm, wire: 16 AWG": "outside: 13 mm, wire: 16 AWG",
        "type: two-part epoxy": f"type: two-part epoxy{glue}",
    }
    head, _, rest = changed(COLLAR, changes).partition("work:\n")
    steps = BUSY.splitlines(keepends=True)[1:]
    work = "".join(steps[index] for index in order)
    text = f"{head}work:\n{work}{rest[rest.index('supplies:') :]}"
    plan, _ = build(parser.read_text(text, "plan.yaml"), HOST.kinds, HOST.stitches, Bench())
    assert plan is not None
    records, waits = needs.records(plan, Quantities(plan))
    said = {remark.rule for remark in CHECKER.check_text(text).remarks if remark.rule in ORDERED}
    as_it_stands = tuple(range(len(order)))
    assert works(list(records), list(waits), as_it_stands) == (not said), said
