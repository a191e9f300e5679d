"""What stands near a part: in the run, and what hangs from it or carries it."""

from __future__ import annotations

from pages import keeper
from wellstrung.report.pages.at_place import near

PLAN = """\
plan: 1
title: Two drops
piece: necklace
parts:
  left: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}
  right: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}
  bar: {kind: connector, length: 18 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm}}
  shell: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
  star: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
run: [left, bar, right]
hung:
  - {part: shell, from: left}
  - {part: star, from: right}
"""


def test_what_hangs_elsewhere_is_not_near() -> None:
    result = keeper().check_text(PLAN)
    assert result.ask is not None, [remark.says for remark in result.remarks]
    plan = result.ask.plan
    assert near(plan, frozenset({"shell"})) == {"shell", "left"}
    assert near(plan, frozenset({"left"})) == {"left", "bar", "shell"}
    assert near(plan, frozenset({"bar"})) == {"left", "bar", "right"}
