"""Very many beads are summed up by a break mark and a count: a drawing has its bounds."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from pages import checked, keeper, looks, parsed, words_of
from running import SAMPLES
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.strung import bead_places, leg, strung
from wellstrung.drawing.looks.woven import worked
from wellstrung.drawing.pen import Pen
from wellstrung.drawing.piece import drawings
from wellstrung.model.parts import Role

#: no part has more shapes than this in one drawing
MOST = 3_000
PLAN = """
plan: 1
title: Very many
piece: necklace
beads:
  reed: {{type: round, size: 11/0, make: Japanese, colour: reed green}}
  sand: {{type: round, size: 8/0, make: Japanese, colour: sand}}
parts:
  work: {part}
{more}
"""
RUN, MANY = "run: [work]", 10_000
BAND, ROPE = "kind: woven band, beads: [sand, reed]", "kind: woven rope, beads: [sand, reed]"
ROUND = "{kind: woven rope, stitch: tubular peyote, beads: reed, around: 8, length: 12 cm}"
PARTS = {
    "strand": f"{{kind: strand, stitch: strung, beads: [sand, reed], repeats: {MANY}}}",
    "strand by share": "{kind: strand, stitch: strung, beads: {sand: 9999, reed: 1}, count: 10000}",
    "knotted": (
        f"{{kind: strand, stitch: knotted, beads: [sand, reed], repeats: {MANY}, thread: {{type:"
        " silk, outside: 0.5 mm}}"
    ),
    "long band": f"{{{BAND}, stitch: loom, across: 20, rows: 10000}}",
    "wide band": f"{{{BAND}, stitch: loom, across: 10000, rows: 20}}",
    "wide and long": f"{{{BAND}, stitch: square, across: 300, rows: 300}}",
    "brick": f"{{{BAND}, stitch: brick, across: 10000, rows: 10000}}",
    "right-angle weave": f"{{{BAND}, stitch: right-angle weave, across: 120, rows: 10000}}",
    "netting": f"{{{BAND}, stitch: netting, across: 40, loop: 31, rows: 10000}}",
    "rope": f"{{{ROPE}, stitch: tubular herringbone, around: 6, rounds: 10000}}",
    "thick rope": f"{{{ROPE}, stitch: tubular peyote, around: 1000, rounds: 10000}}",
    "crochet": f"{{{ROPE}, stitch: slip-stitch bead crochet, around: 40, rounds: 10000}}",
    "cubes": f"{{{ROPE}, stitch: cubic right-angle weave, rounds: 10000}}",
    "spiral": (
        "{kind: woven rope, stitch: spiral rope, core_bead: sand, outer: {reed: 400}, rounds: 9999}"
    ),
    "braid": "{kind: braid, stitch: plain braid, cord: {outside: 1 mm}, length: 400 m}",
    "beaded braid": (
        "{kind: braid, stitch: 8-warp beaded braid, beads: sand, cord: {outside: 1 mm},"
        " length: 100 m}"
    ),
}


def shapes(tree: ElementTree.Element) -> int:
    return sum(1 for one in tree.iter() if not one.tag.endswith("}g"))


def sizes_of(part: str, more: str = RUN) -> Sizes:
    result = keeper().check_text(PLAN.format(part=part, more=more))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    return Sizes(result.ask)


@pytest.mark.parametrize("name", PARTS)
def test_a_drawing_of_very_many_beads_has_its_bounds(name: str) -> None:
    result = keeper().check_text(PLAN.format(part=PARTS[name], more=RUN))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    figures = drawings(result)
    assert figures
    for figure in figures:
        assert shapes(parsed(figure.svg)) < MOST


@pytest.mark.parametrize("name", PARTS)
def test_drawn_whole_a_part_is_summed_up(name: str) -> None:
    """As a pouch is, or a piece that hangs: with its breaks, and the count where there is room."""
    sizes, canvas = sizes_of(PARTS[name]), Canvas(1.0)
    part = sizes.plan.parts["work"]
    length = sizes.ask.of(part, "length").middle
    if part.kind.role is Role.STRAND:
        strung(Pen(canvas), sizes, part, length, length)
    else:
        worked(Pen(canvas), sizes, part, length)
    tree = parsed(canvas.svg("t", "a", "piece"))
    assert shapes(tree) < MOST
    if "bead" in PARTS[name]:
        counted = round(sizes.ask.of(part, "beads").middle)
        assert len(looks(tree, "bead")) < counted
        assert len(looks(tree, "broken")) == 2
        assert f"{counted:,} beads" in [words for words, _ in words_of(tree)]


def test_both_ends_of_what_is_summed_up_are_drawn() -> None:
    sizes, canvas = sizes_of(PARTS["long band"]), Canvas(1.0)
    part = sizes.plan.parts["work"]
    length = sizes.ask.of(part, "length").middle
    worked(Pen(canvas), sizes, part, length)
    lefts = [float(bead.get("x", "")) for bead in looks(parsed(canvas.svg("t", "a", "p")), "bead")]
    assert len(lefts) > 400 and min(lefts) < 2 and max(lefts) > length - 4
    assert not any(0.1 * length < left < 0.9 * length for left in lefts)


def test_the_beads_of_a_stretch_are_those_that_lie_there() -> None:
    """Of a strand in two sizes by turns, wherever the stretch begins."""
    sizes = sizes_of("{kind: strand, stitch: strung, beads: [sand, reed], count: 400}")
    part = sizes.plan.parts["work"]
    whole = sizes.ask.of(part, "length").middle
    every = list(bead_places(sizes, part, whole))
    assert len(every) == 400 and not any(left for _, _, left in every)
    assert [bead for _, bead, _ in every] == ["sand", "reed"] * 200
    for start, end in ((0.0, 50.0), (100.0, 160.0), (whole - 30, whole)):
        some = list(bead_places(sizes, part, whole, start, end))
        inside = [one for one in every if start <= one[0] <= end]
        assert set(inside) <= set(some) and len(some) <= len(inside) + 2
    ends = list(bead_places(sizes, part, whole, most=10))
    assert [left for _, _, left in ends] == [number == 5 for number in range(10)]
    assert ends[:5] == every[:5]
    assert [at for at, _, _ in ends[5:]] == [at for at, _, _ in every[-5:]]
    *_, (last, bead, _) = bead_places(sizes, part, 1.2 * whole)
    assert last + sizes.bead(bead)[0] / 2 == pytest.approx(1.2 * whole), "they are spread evenly"


@pytest.mark.parametrize("kind", ["strand, stitch: strung, count: 100", f"{BAND[6:]}, rows: 100"])
def test_a_part_that_is_cut_short_close_up_ends_with_its_own_last_bead(kind: str) -> None:
    beads = f"beads: [{', '.join(['sand'] * 99)}, reed]"
    kind = kind.replace("beads: [sand, reed]", "stitch: ladder, across: 1")
    result = keeper().check_text(PLAN.format(part=f"{{kind: {kind}, {beads}}}", more=RUN))
    assert result.ask is not None, [remark.says for remark in result.remarks]
    tree = parsed(drawings(result)[1].svg)
    [body] = [one for one in tree if one.tag.endswith("}g") and one.get("id")]
    assert looks(body, "broken")
    *others, last = looks(body, "bead")
    assert "b0" in last.get("class", "") and not any("b0" in o.get("class", "") for o in others)


def test_a_very_long_leg_is_cut_short_by_a_break() -> None:
    more = f"  rope: {ROUND}\nrun: [rope]\nhung:\n  - {{part: work, from: rope, by: thread}}"
    sizes = sizes_of(f"{{kind: bead drop, beads: reed, count: {MANY}}}", more)
    canvas = Canvas(8.0)
    drawn = leg(Pen(canvas, upright=True), sizes, sizes.plan.parts["work"], 0)
    tree = parsed(canvas.svg("t", "a", "piece"))
    assert len(looks(tree, "bead")) == 100 and len(looks(tree, "broken")) == 2
    assert drawn.length < 200


@pytest.mark.parametrize(("legs", "beads"), [(7, 100), (60, 50), (150, 20)])
def test_of_many_long_legs_each_shows_its_ends(legs: int, beads: int) -> None:
    hung = f"{{part: work, from: rope, by: thread, times: {legs}}}"
    more = f"  rope: {ROUND}\nrun: [rope]\nhung:\n  - {hung}"
    sizes = sizes_of(f"{{kind: bead drop, beads: reed, count: {MANY}}}", more)
    canvas = Canvas(8.0)
    leg(Pen(canvas, upright=True), sizes, sizes.plan.parts["work"], 0)
    assert len(looks(parsed(canvas.svg("t", "a", "piece")), "bead")) == beads


def test_very_many_beads_on_a_wire_are_summed_up() -> None:
    part = f"{{kind: wire link, wire: 0.8 mm, loop: {{hole: 3 mm}}, beads: reed, count: {MANY}}}"
    ring = "  ring: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: closed}"
    plan = PLAN.format(part=part, more=f"{ring}\nrun: [work, ring]")
    for figure in drawings(keeper().check_text(plan)):
        tree = parsed(figure.svg)
        assert shapes(tree) < MOST
        assert f"{MANY:,} beads" in [words for words, _ in words_of(tree)]


def test_the_end_of_a_wide_band_is_drawn_bead_by_bead_as_its_start_is() -> None:
    """The rows before a stretch that may lie aslant into it are not beads of the stretch."""
    tree = parsed(drawings(checked(SAMPLES / "breakwater_cuff.yaml"), only=1)[0].svg)
    [band] = [one for one in looks(tree, "thing") if one.get("data-part") == "band"]
    assert [one.get("class") for one in looks(band, "cloth")] == ["cloth seen"] * 3
    assert len(looks(band, "broken")) == 4  # two breaks
