"""What each step depends on, and the order that follows, from a plan's own steps."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from running import ROOT
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.checker import Checker
from wellstrung.model.build import build
from wellstrung.model.plan import Plan
from wellstrung.plugins import host
from wellstrung.reading import parser, tree
from wellstrung.reading.settings import Bench
from wellstrung.rulebook import Ask, Remedy
from wellstrung.testing.cases import changed
from wellstrung.work.dependencies import for_order, for_times
from wellstrung.work.schedule import END, overlapping
from wellstrung.work.search import earliest, nearest

HOST = host.load()
CHECKER = Checker(HOST, trials=0)
COLLAR = (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")


def planned(text: str) -> Plan:
    plan, faults = build(parser.read_text(text, "plan.yaml"), HOST.kinds, HOST.stitches, Bench())
    assert plan is not None, faults
    return plan


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


@pytest.mark.parametrize("measurings", [60, 550], ids=["looked at", "too many to look at"])
def test_a_search_that_stops_is_reported(measurings: int) -> None:
    # each of many measurings may come anywhere, and no wait is long enough for both joints
    steps = MUDDLED.replace("time: 24 h", "time: 23 h").splitlines(keepends=True)
    steps[-1:] = ["  - {do: measure, part: frame, takes: 1 min}\n"] * measurings + steps[-1:]
    plan = planned(COLLAR.replace(WORK, "".join(steps)))
    assert not plan.steps[-1].has("part")
    [one] = Ask(plan, Quantities(plan)).in_order(Remedy("weave first"))
    assert one.text == (
        "weave first; the search for an order that works stopped after it had looked at a step"
        " 300,000 times"
    )
    assert not one.edits


@pytest.mark.parametrize(
    ("counts", "joints"),
    [("joints: 2", 2), ("joints: 12, mixes: 2", 6), ("joints: 4, mixes: 4", 1)],
)
def test_the_joints_of_a_step_are_parted_over_its_mixes(counts: str, joints: int) -> None:
    plan = planned(COLLAR.replace("joints: 2", counts))
    assert for_order(Quantities(plan)).tasks[2].joints == joints


#: a carrier that passes no cap, two glue steps that may share a mix, thread finished at both ends
BUSY = """\
  - {do: weave, part: rope}
  - {do: finish thread, part: rope}
  - {do: slide, part: carrier, onto: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 1}
  - {do: finish thread, part: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 1}
  - {do: wait, time: 24 h}
  - {do: cut, part: drop, every: 8}
  - {do: hang, part: drop, from: frame, by: small}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: close ring, part: small}
  - {do: wear}
""".splitlines(keepends=True)
ORDERED = {
    "capped-too-soon", "closed-already", "cure-time", "finish-before-glue", "pot-life",
    "step-parts",
}  # fmt: skip


@st.composite
def muddles(draw: st.DrawFn) -> list[int]:
    """The written order with up to three steps moved."""
    order = list(range(len(BUSY)))
    place = st.integers(0, len(BUSY) - 1)
    for _ in range(draw(st.integers(0, 3))):
        order.insert(draw(place), order.pop(draw(place)))
    # no rule asks that a ring is slid on before it carries
    assume(order.index(2) < order.index(9))
    return order


def reported(plan: str) -> set[str]:
    """The rules of the order that a plan does not keep."""
    return {remark.rule for remark in CHECKER.check_text(plan).remarks} & ORDERED


@settings(max_examples=200)
@given(muddles(), st.booleans())
def test_in_the_fastest_order_every_joint_cures(order: list[int], two: bool) -> None:
    lines = [BUSY[index] for index in order]
    if two:  # the joint glued later may be the one that cures first
        at = next(index for index, line in enumerate(lines) if "do: glue" in line)
        lines[at] = lines[at].replace("with: glue", "with: quick")
    head, _, rest = COLLAR.partition("work:\n")
    parts = head.replace("parts:\n", "parts:\n  quick: {kind: adhesive, type: cyanoacrylate}\n")
    ask = Quantities(planned(f"{parts}work:\n{''.join(lines)}{rest[rest.index('supplies:') :]}"))
    work = for_times(ask, [1.0] * len(lines))
    times = overlapping(work, earliest(work).order)
    for lag in for_order(ask).lags:
        if lag.then == END or max(lag.first, *lag.given, -1) < lag.then:
            until = times.finish if lag.then == END else times.starts[lag.then]
            assert until >= times.starts[lag.first] + 1 + lag.least


@pytest.mark.slow
@settings(max_examples=60)
@given(muddles(), st.sampled_from(["", ", usable: 4 min"]))
def test_an_order_works_just_where_the_rules_of_the_order_hold(order: list[int], glue: str) -> None:
    changes = {
        "outside: 16 mm, wire: 16 AWG": "outside: 13 mm, wire: 16 AWG",
        "type: two-part epoxy": f"type: two-part epoxy{glue}",
    }
    head, _, rest = changed(COLLAR, changes).partition("work:\n")
    rest = rest[rest.index("supplies:") :]

    def text(order: list[int]) -> str:
        return f"{head}work:\n{''.join(BUSY[index] for index in order)}{rest}"

    plan = planned(text(order))
    found = nearest(for_order(Quantities(plan)))
    assert found.order is not None and (found.cost == 0) == (not reported(text(order)))
    assert not reported(text([order[index] for index in found.order]))
