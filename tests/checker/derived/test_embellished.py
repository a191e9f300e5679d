"""Picots along edges and a second layer: counted, weighed, threaded; how much wider the work is."""

from __future__ import annotations

import math

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host

PLAN = """\
plan: 1
title: Edged
piece: bracelet
beads:
  seed: {{type: other, outside: 2 mm, measured: {{length: 1.5 mm}}, hole: 0.8 mm, per_gram: 100}}
  tiny: {{type: other, outside: 1.5 mm, measured: {{length: 1.2 mm}}, hole: 0.6 mm, per_gram: 250}}
  star: {{type: other, outside: 3 mm, measured: {{length: 3 mm}}, hole: 1 mm, per_gram: 20}}
parts:
  work: {{{part}}}
run: [work]
work: [weave work]
"""
BAND = "kind: woven band, stitch: flat peyote, across: 10, beads: seed, rows: 40"
PICOTS = "edging: {beads: [tiny, star, tiny], along: both edges}"


def checked(installed: Host, part: str) -> PlanResult:
    return Checker(installed, quantities=True).check_text(PLAN.format(part=part))


def middles(installed: Host, part: str) -> dict[str, float]:
    result = checked(installed, part)
    assert result.readable and not result.failures, result.remarks
    return {
        name.removeprefix("work."): value.middle
        for name, value in result.quantities.items()
        if name.startswith(("work.", "bead."))
    }


def test_picots_go_from_one_bead_of_an_edge_to_the_next(installed: Host) -> None:
    """Forty rows of peyote have twenty beads along each long edge, with nineteen gaps between."""
    found, plain = middles(installed, f"{BAND}, {PICOTS}"), middles(installed, BAND)
    assert (found["edging.picots"], found["edging.beads"]) == (38, 114)
    assert found["beads"] == plain["beads"] == 200
    assert found["mass"] == pytest.approx(plain["mass"] + 76 / 250 + 38 / 20)
    each = 1.2 + 3 + 1.2 + 2 * 1.5 + 1.0  # its beads, down a bead of the edge and up one, a step
    assert found["thread"] == pytest.approx(plain["thread"] + 38 * each)


@pytest.mark.parametrize(
    ("along", "picots", "sides"),
    [
        ("both edges", 38, 2),
        ("top edge", 19, 1),
        ("first edge", 9, 0),
        ("all round", 38 + 9 + 9, 2),
        ("both edges, every: 2", 18, 2),
    ],
)
def test_only_picots_along_the_long_edges_make_a_band_wider(
    along: str, picots: int, sides: int, installed: Host
) -> None:
    found = middles(installed, f"{BAND}, edging: {{beads: [tiny, tiny, tiny], along: {along}}}")
    plain = middles(installed, BAND)
    assert found["edging.picots"] == picots
    wider = found["width"] - plain["width"]
    assert wider == pytest.approx(sides * found["edging.height"])
    if sides:
        assert found["woven.width"] == pytest.approx(plain["width"])


def test_how_high_a_picot_stands(installed: Host) -> None:
    """Its legs lean over the gap between two beads of the edge, and its top bead lies on them."""
    found = middles(installed, f"{BAND}, edging: {{beads: [tiny, tiny, tiny], along: both edges}}")
    leg = math.sqrt(1.2**2 - ((2.0 - 1.2) / 2) ** 2)
    assert found["edging.height"] == pytest.approx(0.95 * (leg + 1.5))


def test_a_measured_width_has_its_picots_in_it(installed: Host) -> None:
    found = middles(installed, f"{BAND}, {PICOTS}, measured: {{width: 22 mm}}")
    assert found["width"] == 22


def test_a_layer_counts_its_beads_and_makes_the_work_thicker(installed: Host) -> None:
    found = middles(installed, f"{BAND}, layer: {{beads: star, every: 4}}")
    assert found["layer.beads"] == 50
    assert found["thickness"] == found["outside"] == pytest.approx(2 + 0.8 * 3)
    assert found["mass"] == pytest.approx(2 + 50 / 20)
    rope = "kind: woven rope, stitch: tubular peyote, around: 12, beads: seed, rounds: 20"
    round_, plain = middles(installed, f"{rope}, layer: {{beads: star}}"), middles(installed, rope)
    assert round_["layer.beads"] == 120
    assert round_["outside"] == pytest.approx(plain["outside"] + 2 * 0.8 * 3)


def test_supplies_take_them_bead_by_bead(installed: Host) -> None:
    result = checked(installed, f"{BAND}, {PICOTS}, layer: {{beads: tiny, every: 4}}")
    assert result.ask is not None
    needed = {
        bead.name: result.ask.of(bead, "needed").middle for bead in result.ask.plan.beads.values()
    }
    assert needed == {"seed": 200, "tiny": 76 + 50, "star": 38}


@pytest.mark.parametrize(
    ("part", "picots"),
    [
        ("kind: pouch, stitch: tubular peyote, around: 40, rounds: 30, beads: seed", 40),
        (
            "kind: bezel, stitch: tubular peyote, around: 36, beads: [seed, seed, seed],"
            " stone: {outside: 14 mm}",
            18,
        ),
    ],
)
def test_round_edges_close(part: str, picots: int, installed: Host) -> None:
    along = "top edge" if "pouch" in part else "edge"
    found = middles(installed, f"{part}, edging: {{beads: [tiny, tiny, tiny], along: {along}}}")
    assert found["edging.picots"] == picots


def test_an_edge_that_the_work_lacks_is_refused(installed: Host) -> None:
    result = checked(installed, f"{BAND}, edging: {{beads: tiny, along: edge}}")
    assert [remark.says for remark in result.remarks] == [
        "`work` is a woven band and has no edge: write one of `both edges`, `all round`,"
        " `first edge`, `last edge`, `bottom edge`, `top edge`"
    ]


def test_a_bead_of_an_edging_must_be_in_the_palette(installed: Host) -> None:
    result = checked(installed, f"{BAND}, edging: {{beads: tinny, along: both edges}}")
    assert "tinny" in result.remarks[0].says and not result.count("warning")


def test_the_tube_of_a_slide_clasp_holds_the_picots_too(installed: Host) -> None:
    """A tube that takes the plain band is too short once picots stand out on both its sides."""
    clasp = "{kind: clasp, type: slide, closed_length: 8 mm, tube: {length: 17 mm}}"
    run = f"  bar: {clasp}\nrun: [bar.a, work, bar.b]"
    says: list[list[str]] = []
    for part in (BAND, f"{BAND}, {PICOTS}"):
        plan = PLAN.format(part=part).replace("run: [work]", run)
        result = Checker(installed).check_text(plan)
        assert result.readable, result.remarks
        says.append([r.says for r in result.remarks if r.rule == "band-clasp"])
    assert not says[0] and "out on both sides of" in says[1][0]
