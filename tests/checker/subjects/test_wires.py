"""Lines that run on through spacer bars: which strands are on one, and what is cut for it."""

from __future__ import annotations

import pytest

from pages import keeper
from wellstrung.judging.result import PlanResult
from wellstrung.lists import cutting
from wellstrung.report.pages.steps import instructions
from wellstrung.subjects.wires import wires

PLAN = """
plan: 1
title: Two rows
piece: bracelet
beads:
  pea: {{type: other, outside: 5 mm, length: 5 mm, hole: 1 mm}}
parts:
  wire: {{kind: thread, type: flexible wire, diameter: 0.4 mm}}
  one: {{kind: strand, stitch: strung, beads: pea, count: 8, thread: {{spool: wire, tail: 10 cm}}}}
  two: {{kind: strand, stitch: strung, beads: pea, count: 9, thread: {{spool: wire, tail: 10 cm}}}}
  bar: {{kind: spacer bar, thickness: 3 mm, holes: {{count: 2, hole: 1.4 mm, spacing: 6 mm}}}}
  ring: {{kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: closed}}
run: [{run}]
work:
  - {{do: string, part: one}}
"""
PAIR = "{strands: [one, two]}"


def checked(run: str) -> PlanResult:
    result = keeper().check_text(PLAN.format(run=run))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    return result


@pytest.mark.parametrize(
    ("run", "lines"),
    [
        (f"bar, {PAIR}, bar", []),  # at the ends of the piece the line ends
        (f"{PAIR}, bar, {PAIR}", ["one one, 1 bar", "two two, 1 bar"]),
        (f"{PAIR}, bar, bar, {PAIR}", ["one one, 2 bars", "two two, 2 bars"]),
        (f"{PAIR}, bar, {{strands: [two, one]}}", ["one two, 1 bar", "two one, 1 bar"]),
        (f"{PAIR}, bar, {{strands: [one, two, two]}}", []),  # one has no line to go on from
        (f"{PAIR}, ring, {PAIR}", []),
        (f"{PAIR}, bar, ring, bar, {PAIR}", []),
        ("one, bar, one, bar, one", ["one one one, 2 bars"]),
    ],
)
def test_strands_on_both_sides_of_a_bar_are_on_one_line(run: str, lines: list[str]) -> None:
    result = checked(run)
    assert result.ask is not None
    found = [
        f"{' '.join(part.name for part in one.strands)}, {len(one.bars)} bar"
        + "s" * (len(one.bars) > 1)
        for one in wires(result.ask.plan)
    ]
    assert found == lines


def test_a_line_is_cut_once_for_all_that_it_goes_through() -> None:
    result = checked(f"{PAIR}, bar, {PAIR}, bar, {PAIR}")
    assert result.ask is not None
    quantities, cuts = result.quantities, cutting.listed([result.ask], 1)
    for name in ("one", "two"):
        (cut,) = (line for line in cuts.lengths if line.part == name)
        assert cut.count == 1 and cut.notes[-1] == "through `bar`"
        strung = 3 * quantities[f"{name}.thread"].middle + 2 * 3.0  # and two bars of 3 mm
        assert cut.length == pytest.approx(strung + 2 * 100.0)
    taken = sum(line.total for line in cuts.lengths)
    assert quantities["wire.needed"].middle == pytest.approx(taken)


def test_the_steps_say_where_a_line_goes_on() -> None:
    one = instructions(checked(f"{PAIR}, bar, {PAIR}"))[0]
    assert "One line goes on through `bar`: string 2 of `one` on it, one after another" in one.says
    assert "Put each bar on all its lines before you string on" in one.says
    (mixed,) = instructions(checked(f"{PAIR}, bar, {{strands: [two, one]}}"))
    assert "One line goes on through `bar`: string `one` and `two` on it, one after another" in (
        mixed.says
    )
