"""The edges of a woven band: the holes of their beads are eyes."""

from __future__ import annotations

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host

CHECKER = Checker(host.load(), quantities=True)
PLAN = """plan: 1
title: Panel
piece: brooch
beads:
  pebble: {type: other, outside: 4 mm, length: 3 mm, hole: 1.5 mm}
  grain: {type: other, outside: 3 mm, length: 2 mm, hole: 0.9 mm}
parts:
  panel: {kind: woven band, stitch: brick, beads: [pebble, grain], across: 5, rows: 4}
  ring: {kind: jump ring, outside: 12 mm, wire: 1.2 mm, closing: open}
  charm: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm}}
run: [panel]
hung:
  - {part: charm, from: {part: panel, eyes: last edge}, by: ring, times: 5}
"""


def remarked(text: str) -> list[tuple[str, str]]:
    result = CHECKER.check_text(text)
    assert not result.failures
    return [(remark.rule, remark.level) for remark in result.remarks if remark.level != "caution"]


def test_a_ring_has_to_pass_the_smallest_hole_at_the_edge() -> None:
    assert ("ring-through-eye", "error") in remarked(PLAN)
    thin = remarked(PLAN.replace("wire: 1.2 mm", "wire: 0.5 mm"))
    assert "ring-through-eye" not in dict(thin)


def test_a_band_that_hangs_does_not_hang_by_its_edge() -> None:
    """A ring that holds a band is sewn on or goes round it: no bead's hole is judged."""
    by_edge = "part: charm, from: {part: panel, eyes: last edge}"
    text = PLAN.replace(by_edge, "part: panel, from: charm")
    found = dict(remarked(text.replace("run: [panel]\n", "").replace("times: 5", "times: 1")))
    assert "ring-through-eye" not in found and "ring-count" not in found


def test_the_edges_are_in_no_list_of_quantities() -> None:
    assert not [name for name in CHECKER.check_text(PLAN).quantities if " edge." in name]
