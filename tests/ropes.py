"""What the tests of ropes share: a plan with one rope, checked, and beads placed in space."""

from __future__ import annotations

import math
from collections.abc import Iterable

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host

_PLAN = """\
plan: 1
title: Swatch
piece: necklace
beads:
  seed: {{type: other, outside: 2 mm, measured: {{length: 1.5 mm}}, hole: 0.8 mm, per_gram: 100}}
  fat: {{type: other, outside: 3 mm, measured: {{length: 2 mm}}, hole: 1 mm, per_gram: 40}}
  lot: {{type: round, size: 11/0, make: Japanese}}
  eight: {{type: round, size: 8/0, make: Japanese}}
  six: {{type: round, size: 6/0, make: Japanese}}
parts:
  rope: {{{rope}}}
run: [rope]
"""
#: One rope of every stitch, without its length.
EVERY_ROPE = (
    "kind: woven rope, stitch: tubular peyote, around: 10, beads: {lot: 2, eight: 1}",
    "kind: woven rope, stitch: tubular peyote, one_for: each column,"
    " beads: [lot, lot, lot, lot, eight, eight, six, six, eight, eight]",
    "kind: woven rope, stitch: tubular herringbone, around: 6, one_for: each round,"
    " beads: [lot, lot, eight, six, eight]",
    "kind: woven rope, stitch: odd tubular peyote, around: 9, beads: lot",
    "kind: woven rope, stitch: tubular herringbone, around: 6, beads: {lot: 2, eight: 1}",
    "kind: woven rope, stitch: tubular square, around: 8, beads: {lot: 2, eight: 1}",
    "kind: woven rope, stitch: twisted herringbone, around: 4, beads: lot",
    "kind: woven rope, stitch: slip-stitch bead crochet, around: 6, beads: {lot: 2, eight: 1}",
    "kind: woven rope, stitch: spiral rope, core_bead: lot, outer: [lot, eight, lot]",
    "kind: woven rope, stitch: flat spiral, core_bead: eight, outer: [lot, lot, lot, lot]",
    "kind: woven rope, stitch: Dutch spiral, beads: [lot, eight, six], outer: [lot, lot, lot]",
    "kind: woven rope, stitch: Russian spiral, around: 3, beads: [eight, lot, lot]",
    "kind: braid, stitch: 8-warp beaded braid, beads: {lot: 2, eight: 1}",
    "kind: braid, stitch: 8-warp beaded braid, beads: lot, cord: {outside: 0.5 ± 0.1 mm}",
    "kind: braid, stitch: beaded braid, warps: 16, beads: lot",
    "kind: braid, stitch: plain braid, warps: 16, cord: {outside: 2 ± 0.2 mm}",
)
Point = tuple[float, float, float]


def checked(host: Host, rope: str) -> PlanResult:
    """The result of a plan whose one part is `rope`, given as its fields."""
    return Checker(host, quantities=True).check_text(_PLAN.format(rope=rope))


def quantities(host: Host, rope: str) -> dict[str, float]:
    """The middle of everything the rope gives, rounded to two places."""
    result = checked(host, rope)
    assert result.readable and not result.failures and not result.count("error"), result.remarks
    return {
        name.removeprefix("rope."): round(value.middle, 2)
        for name, value in result.quantities.items()
        if name.startswith("rope.")
    }


def told(host: Host, rope: str) -> list[str]:
    """What is said of the rope's shape."""
    return [r.says for r in checked(host, rope).remarks if r.rule == "plan-shape"]


def apart(a: Point, b: Point) -> float:
    """How far two points are from each other."""
    return math.dist(a, b)


def across(middles: Iterable[Point], bead: float) -> float:
    """Outside diameter of beads whose middles lie round the z axis."""
    return 2 * max(math.hypot(x, y) for x, y, _ in middles) + bead
