"""Strands: laid out bead by bead, and back again; mixes, knots and what a plan must say."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung import tables
from wellstrung.derived.drops import drops_on_knots
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import strung
from wellstrung.subjects.counts import placed

sizes = st.floats(0.8, 20.0)
PLAN = """\
plan: 1
title: Swatch
piece: necklace
beads:
  pearl: {type: other, outside: 6 mm, measured: {length: 6 mm}, hole: 0.7 mm, per_gram: 3.3}
  kelp: {type: other, outside: 3 mm, measured: {length: 2 mm}, hole: 1 mm, per_gram: 35}
parts:
  line: {kind: strand, stitch: strung, beads: pearl, length: 42 cm, thread: {outside: 0.5 mm}}
run: [line]
"""


@given(st.integers(1, 200), sizes, st.floats(0, 30))
def test_a_strand_laid_out_bead_by_bead(beads: int, bead: float, between: float) -> None:
    at = 0.0
    for number in range(beads):
        at += bead + (between if number else 0.0)
    assert strung.length_of(beads, bead, between) == pytest.approx(at)
    assert strung.beads_for(at, bead, between) == pytest.approx(beads)


@pytest.mark.parametrize("size", [4, 6, 8, 10])
def test_rounds_on_sixteen_inches(size: int) -> None:
    """Printed counts of round beads on 16 in: trade table `bead_strands`, several pages."""
    printed = tables.load("bead_strands").row(f"round {size} mm").cell("per_16_inches")
    most, least = (strung.beads_for(16 * 25.4, size * sits, 0.0) for sits in (1.0, 1.02))
    assert least <= printed.high and printed.low <= most
    assert round(strung.beads_for(16 * 25.4, size * 1.01, 0.0)) in range(
        round(printed.low), round(printed.high) + 1
    )


def checked(installed: Host, old: str = "", new: str = "") -> PlanResult:
    return Checker(installed, quantities=True).check_text(PLAN.replace(old, new) if old else PLAN)


def quantities(installed: Host, old: str = "", new: str = "") -> dict[str, float]:
    result = checked(installed, old, new)
    assert not result.failures
    return {name: round(value.middle, 2) for name, value in result.quantities.items()}


def test_strung(installed: Host) -> None:
    assert quantities(installed) == {
        "line.outside": 6.0,
        "line.length": 420.0,
        "line.beads": 69.31,  # 420 / (6 x 1.01)
        "line.mass": 21.0,
        "line.thread": 420.0,
        "line.along": 420.0,
        "piece.length": 420.0,
        "piece.inside": 401.15,
        "piece.mass": 21.0,
        "piece.thickest_line": 0.7,
    }


def test_knots_lie_between_the_beads(installed: Host) -> None:
    found = quantities(installed, "strung, beads: pearl, length: 42 cm", KNOTTED)
    # 9 knots of 1.7 x 0.5 mm between ten beads of 6 x 1.01 mm
    assert found["line.knot"] == 0.85
    assert found["line.length"] == pytest.approx(10 * 6.06 + 9 * 0.85, abs=0.01)
    assert found["line.thread"] == pytest.approx(found["line.length"] + 9 * 12 * 0.5, abs=0.01)


KNOTTED = "knotted, beads: pearl, count: 10"


def test_a_printed_knot_is_one_that_can_be(installed: Host) -> None:
    """A knot in 0.8 mm waxed cord takes 1/4 in (`7 Top Cord Knotting Tips and Tricks`, excerpt)."""
    old = "strung, beads: pearl, length: 42 cm, thread: {outside: 0.5 mm}"
    new = "knotted, beads: pearl, count: 101, thread: {outside: 0.8 mm}"
    found = checked(installed, old, new).quantities
    length, line = found["line.length"].middle, found["line.thread"].likely
    assert (line.low - length) / 100 <= 6.35 + 0.05
    assert (line.low - length) / 100 > 5.5
    assert 9.6 < (line.high - length) / 100 < 13


def test_ten_test_knots_beat_the_model(installed: Host) -> None:
    found = quantities(
        installed, "strung, beads: pearl, length: 42 cm", KNOTTED + ", knot_adds: 0.8 mm"
    )
    assert found["line.knot"] == 0.8


def test_beads_along_a_bare_line(installed: Host) -> None:
    spaced = "spaced, beads: pearl, count: 5, spacing: 20 mm"
    found = quantities(installed, "strung, beads: pearl, length: 42 cm", spaced)
    assert found["line.length"] == pytest.approx(5 * 6.06 + 4 * 20, abs=0.01)


def test_beads_in_groups_along_a_bare_line(installed: Host) -> None:
    """Five stations of three: four stretches of line, and as many beads for the same length."""
    old = "strung, beads: pearl, length: 42 cm"
    counted = quantities(
        installed, old, "spaced, beads: pearl, count: 15, spacing: 25 mm, group: 3"
    )
    assert counted["line.length"] == pytest.approx(15 * 6.06 + 4 * 25, abs=0.01)
    long = "spaced, beads: pearl, length: 190.9 mm, spacing: 25 mm, group: 3"
    assert quantities(installed, old, long)["line.beads"] == pytest.approx(15, abs=0.01)


HELD = """spaced, beads: pearl, count: 15, spacing: 25 mm, group: 3, bare_ends: 4 cm, held_by: """
HOLDERS = """
  stop: {kind: crimp, inside: 0.7 mm, outside: 1.3 mm, length: 1 mm, mass: 10 mg}
  glue: {kind: adhesive, type: superglue}
run: [line]
work:
  - string line
"""


@pytest.mark.parametrize(
    ("held", "longer", "more_line"),
    [("stop", 10 * 1, 0), ("knots", 10 * 0.85, 10 * 12 * 0.5), ("glue", 0, 0)],
)
def test_what_holds_beads_apart(
    installed: Host, held: str, longer: float, more_line: float
) -> None:
    """Five stations: ten crimps or knots lie in the strand, a drop of glue in the bead."""
    text = PLAN.replace("strung, beads: pearl, length: 42 cm", HELD + held)
    result = Checker(installed, quantities=True).check_text(text.replace("run: [line]", HOLDERS))
    assert not result.failures
    found = {name: value.middle for name, value in result.quantities.items()}
    long = 15 * 6.06 + 4 * 25 + 2 * 40 + longer
    assert found["line.length"] == pytest.approx(long, abs=0.01)
    assert found["line.thread"] == pytest.approx(long + more_line, abs=0.01)
    assert result.ask is not None
    counts, drops = placed(result.ask.plan), ask_drops(result)
    assert counts.get("stop", 0) == (10 if held == "stop" else 0)
    assert drops == pytest.approx(10 * 0.03 if held == "glue" else 0)


def test_each_crimp_beside_beads_has_its_cover(installed: Host) -> None:
    text = PLAN.replace("strung, beads: pearl, length: 42 cm", HELD + "stop")
    covered = HOLDERS.replace("mass: 10 mg}", "mass: 10 mg, cover: ball}\n  ball: crimp cover 3 mm")
    result = Checker(installed, keep=True).check_text(text.replace("run: [line]", covered))
    assert result.ask is not None
    assert placed(result.ask.plan)["ball"] == 10
    assert not [one for one in result.remarks if one.rule == "part-use" and "ball" in one.parts]


def ask_drops(result: PlanResult) -> float:
    """The glue of all the drops, ml."""
    assert result.ask is not None
    drops = drops_on_knots(result.ask.plan.parts["glue"], result.ask.quantities)
    return drops.middle if drops is not None else 0.0


@pytest.mark.parametrize("beads", ["[3 kelp, 2 pearl, 3 kelp]", "{mirror: [3 kelp, 2 pearl]}"])
def test_graduated_beads_add_up_exactly(installed: Host, beads: str) -> None:
    """The middle is listed once; so many of a bead count as if each was written."""
    repeats = "" if "mirror" in beads else ", repeats: 1"
    found = quantities(installed, "beads: pearl, length: 42 cm", f"beads: {beads}{repeats}")
    assert found["line.beads"] == 8
    assert found["line.length"] == pytest.approx((6 * 2 + 2 * 6) * 1.01, abs=0.01)


def test_a_bead_that_strands_share_weighs_and_counts_by_its_share(installed: Host) -> None:
    mixed = PLAN.replace("beads: pearl, length: 42 cm", "beads: [pearl, kelp], repeats: 20")
    shared = mixed.replace("per_gram: 3.3", "per_gram: 3.3, shared: 2")
    checker = Checker(installed, quantities=True)
    alone, met = (checker.check_text(text).quantities for text in (mixed, shared))
    assert met["line.length"].middle == alone["line.length"].middle
    less = alone["line.mass"].middle - met["line.mass"].middle
    assert less == pytest.approx(10 / 3.3, abs=0.01)


def test_a_mirrored_strand_may_be_strung_more_than_once(installed: Host) -> None:
    mirrored = "beads: {mirror: [3 kelp, pearl]}, repeats: 2"
    assert quantities(installed, "beads: pearl, length: 42 cm", mirrored)["line.beads"] == 14


@pytest.mark.parametrize("mix", ["[pearl, kelp, kelp]", "{pearl: 1, kelp: 2}"])
def test_a_mix_counts_each_bead_by_its_share(installed: Host, mix: str) -> None:
    found = quantities(installed, "beads: pearl, length: 42 cm", f"beads: {mix}, repeats: 20")
    assert found["line.beads"] == 60
    assert found["line.length"] == pytest.approx(20 * (6 + 2 + 2) * 1.01, abs=0.01)
    assert found["line.mass"] == pytest.approx(20 / 3.3 + 40 / 35, abs=0.01)
    assert found["line.outside"] == 6.0


def test_a_second_pass_takes_the_line_again(installed: Host) -> None:
    assert quantities(installed, "length: 42 cm", "length: 42 cm, passes: 2")["line.thread"] == 840


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "strung, beads: pearl, length: 42 cm",
            "spaced, beads: pearl, length: 42 cm",
            "`line` does not say its `spacing`: write `spacing: 25 mm`",
        ),
        (
            "strung, beads: pearl, length: 42 cm, thread: {outside: 0.5 mm}",
            "knotted, beads: pearl, length: 42 cm",
            "`line` does not say its `thread.outside`: write `thread: {type: silk, outside:"
            " 0.5 mm}`",
        ),
        (
            "strung, beads: pearl, length: 42 cm",
            "strung, beads: pearl, length: 42 cm, group: 3",
            "`line` has `group`, and only a spaced strand has bare line between its beads: take it"
            " out, or write `stitch: spaced`",
        ),
        (
            "strung, beads: pearl, length: 42 cm",
            "spaced, beads: pearl, length: 42 cm, spacing: 25 mm, held_by: knots",
            "what holds the beads of `line` is counted, and so are its beads: write `count` in"
            " place of `length`, as in `count: 21`",
        ),
        (
            "beads: pearl,",
            "beads: [pearl, perl],",
            "there is no bead called `perl`: write `pearl`",
        ),
        (
            "kind: strand, stitch: strung, beads: pearl, length: 42 cm, thread: {outside: 0.5 mm}",
            "kind: woven rope, stitch: strung, beads: pearl, length: 42 cm, around: 6",
            "`strung` makes a strand, and `line` is a woven rope: write `kind: strand`, or another"
            " stitch",
        ),
    ],
)
def test_what_a_plan_must_say(installed: Host, old: str, new: str, says: str) -> None:
    text = new.replace("thread: {outside: 0.5 mm}", "").replace(", }", "}")
    assert [r.says for r in checked(installed, old, text).remarks if says[:20] in r.says] == [says]


def test_more_of_anything_makes_a_strand_longer() -> None:
    assert strung.length_of(11, 6, 1) > strung.length_of(10, 6, 1)
    assert strung.length_of(10, 6.1, 1) > strung.length_of(10, 6, 1)
    assert strung.length_of(10, 6, 1.1) > strung.length_of(10, 6, 1)
    assert strung.length_of(0, 6, 1) == 0


def test_a_stated_bead_may_be_longer_and_a_measured_one_is_as_measured(installed: Host) -> None:
    """2 % of its size either way, as strands in print come out."""
    stated = "pearl: {type: other, outside: 6 mm, length: 6 mm"
    measured = "pearl: {type: other, outside: 6 mm, measured: {length: 6 mm}"
    assert measured in PLAN
    counted = ("strung, beads: pearl, length: 42 cm", "strung, beads: pearl, count: 66")
    found = [
        Checker(installed, quantities=True)
        .check_text(PLAN.replace(measured, bead).replace(*counted))
        .quantities["line.length"]
        for bead in (stated, measured)
    ]
    low, high = (66 * 6.06 * (1 - math.hypot(*off)) for off in ((0.1 / 6, 0.01), (0.01,)))
    assert [length.likely.low for length in found] == pytest.approx([low, high], rel=1e-3)


@pytest.mark.parametrize("knot", ["double overhand", "figure eight"])
def test_a_larger_knot_adds_and_takes_more(knot: str, installed: Host) -> None:
    def strand(more: str) -> dict[str, Quantity]:
        text = PEARLS.replace("stitch: knotted", f"stitch: knotted{more}")
        return dict(Checker(installed, quantities=True).check_text(text).quantities)

    one, larger = strand(""), strand(f", knot: {knot}")
    for name in ("strand.knot", "strand.length", "strand.thread"):
        assert larger[name].middle > one[name].middle, name
    assert strand(", knot: overhand")["strand.knot"].likely == one["strand.knot"].likely
    measured = strand(f", knot: {knot}, knot_adds: 1.2 mm")["strand.knot"]
    assert measured.middle == 1.2


@pytest.mark.parametrize(
    ("stitch", "says"),
    [
        (
            "strung",
            "that is the knot between its beads, which only a knotted strand has: take it out, or"
            " write `stitch: knotted`; the knot that ties it off is a step, `knot strand`",
        ),
        (
            "spaced, spacing: 2 cm",
            "nothing of it is knotted: take it out, or write `held_by: knots`",
        ),
    ],
)
def test_a_knot_where_none_is_tied_is_refused(stitch: str, says: str, installed: Host) -> None:
    text = PEARLS.replace("stitch: knotted", f"stitch: {stitch}, knot: overhand")
    [slip] = Checker(installed).check_text(text).remarks
    assert slip.says == f"`strand` has `knot`, and {says}"


PEARLS = """\
plan: 1
title: Pearls
piece: necklace
beads: {pearl: {type: other, outside: 6 mm, length: 6 mm}}
parts: {strand: {kind: strand, stitch: knotted, beads: pearl, count: 60, thread: silk No. 4}}
run: [strand]
"""
