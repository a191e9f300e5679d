"""What stands at a place, and near a part: in the run, and what hangs from it or carries it."""

from __future__ import annotations

import pytest

from pages import keeper
from wellstrung.model.plan import Plan
from wellstrung.report.pages.at_place import named_at, near, users

PLAN = """\
plan: 1
title: Two drops
piece: necklace
beads: {kelp: {type: round, size: 8/0, make: Japanese}, gull: {type: round, size: 6/0}}
parts:
  left: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}
  right: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}
  bar: {kind: connector, length: 18 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm}}
  shell: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
  line: {kind: strand, stitch: strung, beads: [kelp], length: 4 cm, thread: flexible wire 0.38 mm}
  star: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
run: [left, bar, right, line]
hung:
  - {part: shell, from: left}
  - {part: star, from: right}
"""


@pytest.fixture(scope="module")
def plan() -> Plan:
    result = keeper().check_text(PLAN)
    assert result.ask is not None, [remark.says for remark in result.remarks]
    return result.ask.plan


def test_what_names_a_bead_is_at_its_place(plan: Plan) -> None:
    assert users(plan, "kelp") == {"line"} and not users(plan, "gull")
    kelp, gull = (plan.beads[name].node.place for name in ("kelp", "gull"))
    assert (list(named_at(plan, kelp)), list(named_at(plan, gull))) == (["line"], [])


def test_what_hangs_elsewhere_is_not_near(plan: Plan) -> None:
    assert near(plan, frozenset({"shell"})) == {"shell", "left"}
    assert near(plan, frozenset({"left"})) == {"left", "bar", "shell"}
    assert near(plan, frozenset({"bar"})) == {"left", "bar", "right"}
