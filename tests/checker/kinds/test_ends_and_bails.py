"""Bead tip, bail and ear post: what each measures, weighs and counts, and how they are joined."""

from __future__ import annotations

import pytest

from running import ROOT
from wellstrung.judging.checker import Checker
from wellstrung.model.build import build
from wellstrung.plugins import host
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading.settings import Bench
from wellstrung.subjects import counts

PLAN = (ROOT / "tests" / "rules" / "tips.yaml").read_text(encoding="utf-8")
CRIMPED = PLAN.replace("covers: double overhand", "covers: small")
EARRINGS = """plan: 1
title: Posts
piece: earrings
makes: 2
parts:
  post:
    kind: ear post
    wire: 20 AWG
    length: 11 mm
    pad: 6 mm
    eye: {hole: 2 mm, wire: 0.8 mm, opens: no}
    drop: 5 mm
    mass: 0.3 g
  ring: {kind: jump ring, inside: 3 mm, wire: 0.8 mm, closing: open, mass: 0.05 g}
  charm: {kind: pendant, top_eyes: {count: 1, hole: 2 mm, wire: 1 mm, opens: no}, mass: 2 g}
run: [post, ring]
hung:
  - {part: charm, from: ring}
"""


def quantities(text: str, installed: Host) -> dict[str, float]:
    result = Checker(installed, quantities=True).check_text(text)
    assert not result.failures and result.quantities
    return {name: value.middle for name, value in result.quantities.items()}


def test_a_tip_adds_its_length_less_the_wall_of_its_loop(installed: Host) -> None:
    found = quantities(PLAN, installed)
    assert found["tip.along"] == pytest.approx(8 - 0.7)
    # hook 24 - 2 walls, rings 2 x 3.4, tips 2 x 7.3, and beads that sit up to 2 % apart
    assert found["piece.length"] == pytest.approx(22 + 6.8 + 14.6 + 65 * 6 * 1.01)


def test_a_tip_weighs_and_counts_the_crimp_in_it(installed: Host) -> None:
    knotted, crimped = quantities(PLAN, installed), quantities(CRIMPED, installed)
    assert crimped["tip.mass"] == pytest.approx(0.1 + 0.05)
    assert crimped["piece.mass"] == pytest.approx(knotted["piece.mass"] + 2 * 0.05)


@pytest.mark.parametrize(("text", "counted"), [(PLAN, None), (CRIMPED, 2)])
def test_what_is_placed(text: str, counted: int | None) -> None:
    brought = host.load()
    plan, faults = build(
        parser.read_text(text, "plan.yaml"), brought.kinds, brought.stitches, Bench()
    )
    assert plan is not None, faults
    placed = counts.placed(plan)
    assert placed.get("small") == counted
    assert placed["tip"] == 2 and placed["bail"] == 1 and placed["charm"] == 1


def test_a_bail_weighs_with_what_hangs_from_it(installed: Host) -> None:
    light = quantities(PLAN.replace("mass: 0.8 g", "mass: 0.3 g"), installed)
    assert quantities(PLAN, installed)["piece.mass"] == pytest.approx(light["piece.mass"] + 0.5)


def test_a_post_adds_from_its_middle_to_its_eye_and_a_pad_adds_nothing(installed: Host) -> None:
    found = quantities(EARRINGS, installed)
    assert found["post.along"] == pytest.approx(5 - 0.8)
    assert found["piece.mass"] == pytest.approx(0.3 + 0.05 + 2)
    padded = EARRINGS.replace(
        "    eye: {hole: 2 mm, wire: 0.8 mm, opens: no}\n    drop: 5 mm\n", ""
    )
    assert quantities(padded, installed)["post.along"] == 0


def rules_at(text: str, part: str) -> set[str]:
    result = Checker(host.load()).check_text(text)
    assert result.readable and not result.failures
    kept = {kept.rule for kept in result.held if part in kept.parts}
    return kept | {remark.rule for remark in result.remarks if part in remark.parts}


def test_the_eye_of_a_post_takes_its_ring_like_any_other() -> None:
    assert {"ring-through-eye", "ring-room", "no-way-in"} <= rules_at(EARRINGS, "post")


def test_the_loop_of_a_tip_takes_its_ring_and_its_crimp_is_used() -> None:
    assert {"ring-through-eye", "ring-room", "no-way-in", "tip-cover"} <= rules_at(PLAN, "tip")
    # with a knot in the tip the crimp of this plan has no use
    unused = Checker(host.load()).check_text(PLAN).remarks
    assert [remark.parts for remark in unused if remark.rule == "part-use"] == [("small",)]
    assert "part-use" not in {
        remark.rule for remark in Checker(host.load()).check_text(CRIMPED).remarks
    }


def test_the_foot_of_a_bail_is_linked_with_what_it_carries_and_not_with_the_strand() -> None:
    meetings = [
        kept.parts
        for kept in Checker(host.load()).check_text(PLAN).held
        if kept.rule == "no-way-in" and "bail" in kept.parts
    ]
    assert meetings == [("charm", "bail")]


def test_the_prongs_of_a_pinch_bail_open() -> None:
    closed = PLAN.replace("wire: 1 mm, opens: yes}, mass: 0.8 g", "wire: 1 mm}, mass: 0.8 g")
    unjudged = Checker(host.load()).check_text(closed).unjudged
    assert ("bail",) in [entry.parts[-1:] for entry in unjudged if entry.rule == "no-way-in"]
    pinched = closed.replace("type: loop", "type: pinch")
    assert "no-way-in" not in {
        entry.rule for entry in Checker(host.load()).check_text(pinched).unjudged
    }


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "covers: double overhand",
            "covers: ring",
            "`ring` is a jump ring, and `covers` takes a crimp, `overhand`, `double overhand` or"
            " `figure eight`",
        ),
        (
            "{part: bail, from: strand}",
            "{part: bail, from: strand, by: ring}",
            "`bail` is a bail, which goes round `strand` itself: take `by` out, or say what hangs"
            " from the bail in a line of its own",
        ),
        (
            "{part: bail, from: strand}",
            "{part: bail, from: tip}",
            "`tip` is a bead tip, and the bail `bail` goes round a rope, a strand or a chain"
            " piece: name one of those, or hang a ring there",
        ),
    ],
)
def test_names_that_do_not_fit(installed: Host, old: str, new: str, says: str) -> None:
    assert PLAN.count(old) == 1
    result = Checker(installed).check_text(PLAN.replace(old, new))
    assert [remark.says for remark in result.remarks] == [says]


@pytest.mark.parametrize(
    ("knot", "needed"),
    [
        ("figure 8", "`figure eight`"),
        ("surgeon", "one of `overhand`, `double overhand`, `figure eight`, `small`"),
    ],
)
def test_a_knot_that_is_not_known_is_answered_with_those_that_are(
    knot: str, needed: str, installed: Host
) -> None:
    text = PLAN.replace("covers: double overhand", f"covers: {knot}")
    [slip] = Checker(installed).check_text(text).remarks
    assert slip.needed == needed
