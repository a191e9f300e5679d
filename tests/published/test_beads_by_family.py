"""Sizes, holes and counts of beads as pages print them, against what a family and a size give.

Holes and counts on a strand: `Frequently asked questions: beads in a strand, hole sizes`; bicones
to the inch: `How many beads do I need?`; rondelles: `Standard dimensions of faceted rondelles and
teardrops`; fire-polished: `Standard classifications for fire-polished rounds`; cubes: `Square
stitch bracelet`: copies seen, trade table `other_beads`. Solid balls are geometry.
"""

from __future__ import annotations

import math

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity

PLAN = """\
plan: 1
title: Strand
piece: necklace
beads: {{it: {bead}}}
parts: {{row: {{kind: strand, stitch: strung, beads: it, length: {length}}}}}
run: [row]
"""


def quantity(installed: Host, bead: str, what: str, length: str = "40 cm") -> Quantity:
    """A quantity of a bead, or of a strand of it."""
    result = Checker(installed, keep=True).check_text(PLAN.format(bead=bead, length=length))
    assert result.ask is not None
    plan = result.ask.plan
    return result.ask.of(plan.parts["row"] if what == "beads" else plan.beads["it"], what)


#: bead, what, printed least and most
PRINTED = [
    ("2 mm stone round", "hole", 0.3, 0.5),
    ("4 mm stone round", "hole", 0.4, 1.0),
    ("6 mm stone round", "hole", 0.6, 1.0),
    ("8 mm stone round", "hole", 0.6, 1.0),
    ("10 mm stone round", "hole", 1.0, 1.0),
    ("2 mm freshwater pearl", "hole", 0.3, 0.5),
    ("4 mm freshwater pearl", "hole", 0.41, 0.64),
    ("4 mm fire-polished", "outside", 3.9, 4.1),
    ("rondelle 6 mm", "length", 3.0, 4.0),
    ("rondelle 8 mm", "length", 4.0, 5.33),
    ("4 mm bicone", "length", 4.06, 4.06),
    ("bugle 1", "length", 3.0, 3.0),
    ("12 mm wood", "hole", 2.0, 4.0),
    ("3 mm cube", "per_gram", 16.7, 16.7),
]


@pytest.mark.parametrize(("bead", "what", "least", "most"), PRINTED)
def test_what_is_printed_is_in_the_range(
    installed: Host, bead: str, what: str, least: float, most: float
) -> None:
    found = quantity(installed, bead, what).worst
    assert found.low <= least + 1e-6 and most - 1e-6 <= found.high


#: rounds of stone on 15 1/2 in: the size, and the counts that a shop prints
ON_A_STRAND = [(4, 85, 102), (6, 58, 68), (8, 45, 51), (10, 37, 40), (12, 31, 33), (16, 24, 26)]


@pytest.mark.parametrize(("size", "least", "most"), ON_A_STRAND)
def test_rounds_on_a_strand(installed: Host, size: int, least: int, most: int) -> None:
    beads = quantity(installed, f"{size} mm stone round", "beads", "15 1/2 in")
    assert least <= beads.middle + 1 and beads.middle - 1 <= most


#: a solid ball with its hole, mg/mm3: the family, its size, and the density of what it is of
BALLS = [("glass pearl", 6, 2.52), ("stone round", 8, 2.65), ("freshwater pearl", 6, 2.68)]


@pytest.mark.parametrize(("family", "size", "density"), BALLS)
def test_balls_weigh_their_volume(installed: Host, family: str, size: int, density: float) -> None:
    per_gram = quantity(installed, f"{size} mm {family}", "per_gram")
    ball = math.pi / 6 * size**3 * density / 1000
    assert per_gram.middle == pytest.approx(1 / ball, rel=0.1)


#: from memory, as shops label tubes: about so many a gram
LABELS = [
    ("4 mm magatama", 20),
    ("3.4 mm drop", 20),
    ("1.8 mm cube", 86),
    ("4 mm cube", 6.8),
    ("two-hole oval 2.5 x 5 mm", 14),
    ("two-hole tile 5 mm", 12),
    ("6 mm bugle", 27),
]


@pytest.mark.parametrize(("bead", "count"), LABELS)
def test_counts_a_gram_from_memory(installed: Host, bead: str, count: float) -> None:
    found = quantity(installed, bead, "per_gram")
    assert found.middle == pytest.approx(count, rel=0.2)
    assert found.worst.low <= count <= found.worst.high


def test_the_plan_beats_the_tables(installed: Host) -> None:
    """A stated size, hole, count or material comes before those of the family."""
    bead = "{type: glass pearl, size: 6 mm, hole: 0.8 mm, length: 5.5 mm}"
    assert quantity(installed, bead, "hole").middle == 0.8
    assert quantity(installed, bead, "length").middle == 5.5
    assert quantity(installed, "{type: round, outside: 6 mm}", "length").middle == 6
    ebony = quantity(installed, "{type: wood, size: 6 mm, material: ebony}", "per_gram").middle
    assert ebony == pytest.approx(
        quantity(installed, "6 mm wood", "per_gram").middle * 0.75 / 1.22, rel=0.01
    )


def test_a_strand_that_a_shop_sells_is_so_many_beads(installed: Host) -> None:
    """66 or 67 of 6 mm on 16 in printed, trade table `bead_strands`; glass pearls are as round."""
    plan = PLAN.format(bead="6 mm glass pearl", length="40 cm")
    plan += "supplies: [{bead: it, pack: 16 in strand}]\n"
    result = Checker(installed, keep=True).check_text(plan)
    assert result.ask is not None
    on_hand = result.ask.of(result.ask.plan.beads["it"], "on_hand")
    assert on_hand.worst.low <= 66 and on_hand.worst.high >= 67
    assert on_hand.middle == pytest.approx(68, abs=1.5)
