"""The joins of whole plans, each with the numbers of the steps that make it."""

from __future__ import annotations

from pathlib import Path

import pytest

from pages import checked
from running import SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.model.build import build
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.reading import parser, tree
from wellstrung.reading.settings import Bench
from wellstrung.subjects import joins_made

Joins = list[tuple[str, list[int]]]

SAMPLE_JOINS: dict[str, Joins] = {
    "petrel_earrings": [("hook, ring", [5]), ("ring, wing", [3]), ("feather, wing", [2])],
    "leading_lights_bracelet": [
        ("ring, clasp, end", [3]),
        ("ring, end, clasp", [3]),
        ("end, lights", [2]),
    ],
    "landfall_pearls": [("gimp, strand", [2, 3])],
    "tide_race_bracelet": [
        ("ring, hook, cap", [6]),
        ("ring, cap, hook", [6]),
        ("cap, rope", [4]),
    ],
    "breakwater_cuff": [("closure, band", [3])],
    "ebb_line_three_strand": [
        ("ring, lobster, link", [5]),
        ("ring, link, lobster", [5]),
        ("link, cone", [4]),
    ],
    "ferry_night_pearls": [("gimp, strand", [3, 4])],
    "hawser_braid": [
        ("ring, magnet, cap", [5]),
        ("ring, cap, magnet", [5]),
        ("cap, braid", [3]),
    ],
    "slack_tide_collar": [
        ("small, toggle, cap", [10]),
        ("small, cap, toggle", [11]),
        ("cap, rope", [5]),
        ("frame, rope", [4, 9]),
        ("drop, frame", [8]),
    ],
    "quay_lamp_necklace": [
        ("button, rope", [8]),
        ("bail, rope", [7]),
        ("lamp, bail", [3]),
        ("ray, lamp", [2]),
    ],
    "sounding_line_strand": [("hook, strand", [3])],
    "spindrift_earrings": [
        ("hook, ring", [6]),
        ("ring, panel", [4]),
        ("drip leg, panel", [2]),
        ("spray leg, panel", [3]),
    ],
    "driftnet_pouch": [("pouch, rope", [6]), ("rope, pouch", [6]), ("leg, pouch", [3])],
    "heaving_line_lariat": [
        ("ring, loop, cap", [6]),
        ("cap, rope", [4]),
        ("plumb, cap", [7]),
    ],
    "pilot_light_pendant": [("bail, setting", [2])],
    "roadstead_lamp_pendant": [("ring, lamp", [2]), ("tassel, lamp", [3])],
    "chain_locker_bracelet": [("joint, hook, maille", [2]), ("joint, maille, hook", [2])],
    "sand_hopper_bracelet": [
        ("ring, lobster, tip", [3]),
        ("ring, tip, lobster", [3]),
        ("tip, strand", [2]),
    ],
    "sea_pink_bracelet": [("button, daisies", [3])],
    "sea_wall_band": [("slide, band", [3])],
    "tidepool_stretch": [("line", [2])],
}

PARTS = """\
plan: 1
title: Joins
piece: necklace
beads:
  kelp: {type: other, outside: 3 mm, length: 2 mm, hole: 1 mm, per_gram: 35}
parts:
  inner: {kind: strand, stitch: strung, beads: kelp, length: 42 cm}
  outer: {kind: strand, stitch: strung, beads: kelp, length: 45 cm}
  pearls: {kind: strand, stitch: knotted, beads: kelp, length: 45 cm, knot_adds: 1 mm}
  band: {kind: woven band, stitch: square, across: 5, beads: kelp, rows: 20}
  rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: kelp, length: 40 cm}
  cap: {kind: end cap, bore: 10 mm, eye: {hole: 2 mm, wire: 1 mm, opens: no}}
  cone: {kind: cone, bore: 10 mm}
  bare: {kind: cone, bore: 10 mm}
  link: {kind: wire link, type: link, wire: 0.6 mm, over: cone}
  crimp: {kind: crimp, inside: 1.3 mm, length: 2 mm}
  bar: {kind: spacer bar, holes: {count: 2, hole: 1 mm, spacing: 5 mm}}
  open: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: open}
  split: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: split}
  shut: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: soldered}
  soft: {kind: connector, length: 9 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm, opens: yes}}
  hard: {kind: connector, length: 9 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm, opens: no}}
  charm: {kind: pendant, top_eyes: {count: 1, hole: 2 mm, wire: 1 mm}}
  clasp: {kind: clasp, type: lobster}
  glue: {kind: adhesive, type: two-part epoxy}
"""

#: the run and what hangs, the steps, and the joins with the steps that make them
PLANS: dict[str, tuple[str, list[str], Joins]] = {
    "a row of links counts as one place": (
        "run: [clasp.a, {part: open, linked: 3}, clasp.b]",
        ["close ring, part: open"],
        [("open, clasp, clasp", [1])],
    ),
    "a split ring is put on by any step that names it": (
        "run: [hard, split, hard]",
        ["hang, part: split, from: hard"],
        [("split", [1])],
    ),
    "a split ring that no step names": (
        "run: [hard, split, hard]",
        ["hang, part: charm, from: hard"],
        [("split", [])],
    ),
    "another ring closed closes nothing here": (
        "run: [hard, open, hard]",
        ["close ring, part: split"],
        [("open, hard, hard", [])],
    ),
    "a closed ring between eyes that open": (
        "run: [soft, shut, soft]",
        ["hang, part: shut, from: soft"],
        [("soft, shut", [1]), ("shut, soft", [1])],
    ),
    "a closed ring between closed eyes is another to be closed": (
        "run: [hard, shut, hard]",
        ["hang, part: shut, from: hard"],
        [("shut, hard, hard", [])],
    ),
    "eyes that say nothing of opening": (
        "run: [clasp.a, shut, clasp.b]",
        ["weave, part: rope"],
        [],
    ),
    "two eyes, one of which opens": (
        "run: [soft, hard]",
        ["hang, part: soft, from: hard", "hang, part: soft, from: cap"],
        [("soft, hard", [1])],
    ),
    "strands go through a spacer bar": (
        "run: [{strands: [inner, outer]}, bar, {strands: [inner, outer]}]",
        ["string, part: inner"],
        [],
    ),
    "a crimp holds both its neighbours": (
        "run: [clasp.a, crimp, inner, crimp, clasp.b]",
        ["crimp, part: crimp, to: inner", "crimp, part: crimp, to: outer"],
        [("crimp, clasp", [1, 2])],
    ),
    "knots between beads tie nothing on": (
        "run: [clasp.a, pearls, clasp.b]",
        ["knot, part: pearls"],
        [("clasp, pearls", [])],
    ),
    "knots at the ends do": (
        "run: [clasp.a, inner, clasp.b]",
        ["knot, part: inner", "sew, part: clasp", "sew, part: inner, to: clasp"],
        [("clasp, inner", [1, 2, 3])],
    ),
    "a cap is sewn on where it is not glued": (
        "run: [cap, band]",
        ["sew, part: band, to: cap", "sew, part: cap, to: rope"],
        [("cap, band", [1])],
    ),
    "a cone without a wire": (
        "run: [bare, {strands: [inner, outer]}, bare]",
        ["wrap loop, part: link", "sew, part: outer, to: bare"],
        [("bare, inner, outer", [2])],
    ),
    "a cone held by its wire": (
        "run: [cone, {strands: [inner, outer]}, cone]",
        ["wrap loop, part: link"],
        [("cone, inner, outer", [1])],
    ),
    "hung by a ring that is closed around what carries it": (
        "run: [rope]\nhung:\n  - {part: charm, from: rope, by: open}",
        ["close ring, part: open, around: rope", "close ring, part: open, joins: [cap]"],
        [("charm, rope", [1])],
    ),
    "hung by a ring that is slid on": (
        "run: [rope]\nhung:\n  - {part: charm, from: rope, by: shut}",
        ["slide, part: shut, onto: rope", "slide, part: shut, onto: band"],
        [("charm, rope", [1])],
    ),
    "a loop of one band": (
        "run_is: loop\nrun: [band]",
        ["finish thread, part: band", "sew, part: band"],
        [("band", [2])],
    ),
    "no steps": ("run: [clasp.a, inner, clasp.b]", [], []),
}


def joins_of(plan: Plan) -> Joins:
    return [
        (", ".join(join.parts), [step.number for step in join.made])
        for join in joins_made.find(plan)
    ]


def built(read: tree.Read, host: Host) -> Plan:
    plan, faults = build(read, host.kinds, host.stitches, Bench())
    assert plan is not None, faults
    return plan


@pytest.mark.parametrize(
    "path",
    [*sorted(SAMPLES.glob("*.yaml")), *SHARED.glob("slack*")],
    ids=lambda path: path.stem,
)
def test_the_joins_of_a_sample(path: Path) -> None:
    ask = checked(path).ask
    assert ask is not None and joins_of(ask.plan) == SAMPLE_JOINS[path.stem]


@pytest.mark.parametrize("name", PLANS)
def test_the_joins_of_a_plan(name: str, installed: Host) -> None:
    run, steps, expected = PLANS[name]
    work = "".join(f"  - {{do: {step}}}\n" for step in steps)
    text = f"{PARTS}{run}\n" + (f"work:\n{work}" if steps else "")
    assert joins_of(built(parser.read_text(text, "plan.yaml"), installed)) == expected


def test_many_steps_that_are_missing_are_offered_at_once(checker: Checker) -> None:
    charms = "".join(
        f"  charm {n}: {{kind: pendant, top_eyes: {{count: 1, hole: 3 mm, wire: 1 mm}}}}\n"
        for n in range(15)
    )
    hung = "".join(f"  - {{part: charm {n}, from: rope, by: open}}\n" for n in range(15))
    text = f"{PARTS}{charms}run: [rope]\nhung:\n{hung}work:\n  - {{do: weave, part: rope}}\n"
    [one] = [r for r in checker.check_text(text).remarks if r.rule == "join-made"]
    assert one.says.startswith("`charm 0` hangs from `rope`, and no step hangs it there; the same")
    assert one.says.endswith("`charm 13` and `charm 14`")
    lines = [f"{{do: hang, part: charm {n}, from: rope, by: open}}" for n in range(15)]
    assert [edit.new.strip() for edit in one.edits] == [f"- {line}" for line in lines]
