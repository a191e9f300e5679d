"""A thread is one cause of doubt, on however many strands it is strung."""

from __future__ import annotations

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.quantity.arithmetic import total

PLAN = """\
plan: 1
title: Two silks
piece: necklace
beads: {gull: 4 mm glass pearl}
parts:
  inner: {kind: strand, stitch: knotted, beads: gull, length: 40 cm, thread: INNER}
  outer: {kind: strand, stitch: knotted, beads: gull, length: 43 cm, thread: OUTER}
  cone: cone 8 mm
run: [cone, {strands: [inner, outer]}, cone]
"""


def together(installed: Host, inner: str, outer: str) -> float:
    """How far both lines side by side may be off, mm."""
    plan = PLAN.replace("INNER", inner).replace("OUTER", outer)
    ask = Checker(installed, keep=True).check_text(plan).ask
    assert ask is not None
    lines = [ask.of(ask.plan.parts[name], "line") for name in ("inner", "outer")]
    both = total("both", "mm", lines)
    return both.likely.high - both.middle


def test_one_silk_on_two_strands_is_off_the_same_way_on_both(installed: Host) -> None:
    same = together(installed, "silk No. 4", "silk No. 4")
    apart = together(installed, '"silk No. 4, cream"', '"silk No. 4, grey"')
    assert round(same, 4) == 0.1  # 0.6 mm, 0.05 mm either way, on each
    assert round(apart, 4) == round(0.05 * 2**0.5, 4)  # two lots: as independent errors add
