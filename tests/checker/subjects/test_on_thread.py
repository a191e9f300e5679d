"""What hangs by thread alone, what breaks a line, and which beads cut it."""

from __future__ import annotations

import pytest

from wellstrung.derived.of_plan import Quantities
from wellstrung.model import build
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading.settings import Bench
from wellstrung.subjects import on_thread

PLAN = """
plan: 1
title: Threads that carry
piece: necklace
beads:
  seed: {type: round, size: 11/0, make: Japanese}
  bugle: {type: other, outside: 2 mm, length: 6 mm, hole: 0.7 mm, per_gram: 30}
  crystal: {type: other, outside: 4 mm, length: 4 mm, hole: 0.9 mm, per_gram: 12, edges: sharp}
  stone: {type: other, outside: 4 mm, length: 4 mm, hole: 0.9 mm, per_gram: 12}
parts:
  one: {kind: strand, stitch: strung, beads: [seed, crystal], count: 40, passes: 2, thread: {type: flexible wire, outside: 0.48 mm}}
  two: {kind: strand, stitch: knotted, beads: stone, count: 40, thread: {type: silk, size: "2"}}
  band: {kind: woven band, stitch: flat peyote, across: 8, beads: seed, length: 5 cm, thread: {type: nylon, size: D}}
  leg: {kind: bead drop, beads: [seed, bugle], turn: seed, thread: {type: fused, rating: 5 lb}}
  thin: {kind: strand, stitch: strung, beads: seed, count: 40, thread: {type: flexible wire, size: 0.015 in}}
  odd: {kind: strand, stitch: strung, beads: seed, count: 40, thread: {type: flexible wire, outside: 0.47 mm}}
  short: {kind: bead drop, beads: [bugle, seed], thread: {type: elastic, outside: 0.7 mm}}
  crimp: {kind: crimp, inside: 1 mm, length: 2 mm}
  clasp: {kind: clasp, type: hook, a: {eye: {hole: 2 mm, wire: 1 mm}}, b: {eye: {hole: 2 mm, wire: 1 mm}}, closed_length: 20 mm}
run: [clasp.a, crimp, one, crimp, two, band, clasp.b]
hung:
  - {part: leg, from: {part: band, eyes: first edge}, by: thread, passes: 2, times: 8}
  - {part: crimp, from: two, by: thread}
work:
  - {do: sew, part: band, to: clasp, passes: 3}
"""  # noqa: E501


@pytest.fixture(scope="module")
def plan(installed: Host) -> Plan:
    read = parser.read_text(PLAN, "plan.yaml")
    made, faults = build.build(read, installed.kinds, installed.stitches, Bench())
    assert made is not None, faults
    return made


def test_every_thread_that_alone_carries_a_weight_is_found_once(plan: Plan) -> None:
    found = [
        (join.thread.name, join.held.name if join.held else "", join.lines, join.knot)
        for join in on_thread.find(plan)
    ]
    assert found == [
        ("one", "", 2, ""),  # whole from crimp to crimp
        ("two", "", 1, "overhand"),
        ("leg", "leg", 2, "any other knot"),
        ("two", "crimp", 1, "any other knot"),  # a crimp has no thread of its own
        ("band", "", 3, "any other knot"),  # a strand beside the band is no clasp
    ]


def test_what_breaks_a_line_is_its_rating_or_what_the_tables_say(plan: Plan) -> None:
    ask = Quantities(plan)
    breaking = {
        name: ask.of(plan.parts[name], "breaking") for name in ("one", "thin", "two", "band", "leg")
    }
    # .019 in by its 0.48 mm; silk 150 x 0.45^2; nylon D by its size; 5 lb as the spool says
    middles = {name: quantity.middle for name, quantity in breaking.items()}
    expected = {"one": 115.65, "thin": 88.96, "two": 30.4, "band": 26.69, "leg": 5 * 4.4482216}
    assert middles == pytest.approx(expected, rel=1e-6)
    assert breaking["one"].worst == pytest.approx((115.65 * 0.8, 115.65 * 1.2))
    for unknown in ("short", "odd"):  # elastic has no rating, and no wire is sold 0.47 mm thick
        with pytest.raises(Missing, match=rf"`thread\.rating` of `{unknown}`"):
            ask.of(plan.parts[unknown], "breaking")


def test_edges_are_told_by_the_plan_by_the_type_or_by_the_shape(plan: Plan) -> None:
    told = {name: on_thread.edges_of(bead) for name, bead in plan.beads.items()}
    assert told == {"seed": "smooth", "bugle": "sharp", "crystal": "sharp", "stone": ""}


@pytest.mark.parametrize(
    ("part", "bead", "smooth"),
    [
        ("one", "crystal", True),  # a strand repeats: seed, crystal, seed
        ("leg", "bugle", True),  # seed above, the turn bead below
        ("short", "bugle", False),  # nothing above the first bead of a drop
        ("band", "seed", False),  # woven work lies in no order
    ],
)
def test_a_bead_lies_between_smooth_ones(plan: Plan, part: str, bead: str, smooth: bool) -> None:
    assert on_thread.between_smooth(plan, plan.parts[part], plan.beads[bead]) is smooth


def test_only_sharp_beads_without_smooth_neighbours_are_bare(plan: Plan) -> None:
    bare = {
        name: [bead.name for bead in on_thread.bare_edges(plan, part)]
        for name, part in plan.parts.items()
        if part.takes("thread")
    }
    assert bare == {
        "one": [],
        "two": [],
        "band": [],
        "leg": [],
        "thin": [],
        "odd": [],
        "short": ["bugle"],
    }
