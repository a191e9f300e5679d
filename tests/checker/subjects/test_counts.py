"""How many of each part a piece has, where what hangs carries others."""

from __future__ import annotations

from wellstrung.derived.of_plan import Quantities
from wellstrung.model import build
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading.settings import Bench
from wellstrung.subjects.counts import taken_in_all
from wellstrung.subjects.find import times_made
from wellstrung.subjects.linked import RingHolds

PLAN = """
plan: 1
title: Three rings
piece: necklace
beads: {kelp: {type: round, size: 8/0, make: Japanese}}
parts:
  rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: kelp, length: 39 cm}
  loose: {kind: jump ring, inside: 12 mm, wire: 16 AWG, closing: soldered, metal: brass}
  tag: {kind: pendant, top_eyes: {count: 1, hole: 3 mm, wire: 1 mm, opens: yes}, mass: 2 g}
run: [rope]
hung:
  - {part: loose, from: rope, times: 3}
  - {part: tag, from: loose}
"""


def test_each_of_three_rings_carries_its_tag(installed: Host) -> None:
    read = parser.read_text(PLAN, "plan.yaml")
    plan, faults = build.build(read, installed.kinds, installed.stitches, Bench())
    assert plan is not None, faults
    quantities = Quantities(plan)
    assert taken_in_all(plan) == {"rope": 1, "loose": 3, "tag": 3}
    tag, loose = plan.parts["tag"], plan.parts["loose"]
    held = {join: times for join, times in times_made(plan).items() if isinstance(join, RingHolds)}
    ((ring, times),) = held.items()
    assert (times, ring.around, [eyes.part for eyes in ring.eyes]) == (3, plan.parts["rope"], [tag])
    alone = quantities.of(loose, "mass").middle + quantities.of(tag, "mass").middle
    rope = quantities.of(plan.parts["rope"], "mass").middle
    assert round(quantities.get("piece.mass").middle, 6) == round(rope + 3 * alone, 6)
