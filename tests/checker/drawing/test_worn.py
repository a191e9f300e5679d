"""The piece as it is worn and as it hangs: its course, its fringe, its legend."""

from __future__ import annotations

import math
import re
from collections import Counter
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pages import ALL, box_of, checked, keeper, looks, parsed, words_of
from running import ROOT, SAMPLES, SHARED
from wellstrung.drawing.piece import course, drawings, worn
from wellstrung.drawing.piece.course import Course
from wellstrung.model.parts import Role

COLLAR = SHARED / "slack_tide_collar.yaml"
ROUND = {"necklace", "bracelet", "anklet", "lariat"}


def things(tree: ElementTree.Element, part: str) -> list[ElementTree.Element]:
    return [one for one in looks(tree, "thing") if one.get("data-part") == part]


def curved(path: Path) -> ElementTree.Element:
    figure = worn(checked(path))
    assert figure is not None
    return parsed(figure.svg)


def long(way: Course) -> float:
    return sum(math.dist(one, other) for one, other in pairwise(way.spots))


@given(length=st.floats(60, 3000), neck=st.floats(150, 600))
def test_a_course_is_as_long_as_the_piece(length: float, neck: float) -> None:
    ways = (course.oval(length), course.on_neck(length, neck), course.over_neck(length, neck))
    for way in ways[: 3 if length > 200 else 2]:
        assert long(way) == pytest.approx(length, rel=1e-3)
        assert way.along[-1] == pytest.approx(length, rel=1e-3)
    for way in ways[:2]:
        assert math.dist(way.bend(0.0, 0.0), way.bend(way.along[-1] * 0.999999, 0.0)) < 0.1
        left, right = way.bend(length * 0.25, 0.0), way.bend(length * 0.75, 0.0)
        assert left[0] < 0 < right[0] and left[1] == pytest.approx(right[1], abs=0.5)


def test_across_counts_outwards_all_the_way_round() -> None:
    way = course.on_neck(470.0, 360.0)
    for at in range(0, 470, 10):
        near, far = way.bend(at, -2.0), way.bend(at, 2.0)
        assert math.hypot(far[0], far[1] - 80) > math.hypot(near[0], near[1] - 80)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_piece_that_goes_round_is_drawn_as_it_is_worn(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    plan = result.ask.plan
    figure = worn(result)
    assert (figure is not None) == (plan.piece in ROUND)
    if figure is None:
        return
    tree = parsed(figure.svg)
    drawn = {one.get("data-part") for one in looks(tree, "thing")}
    assert {part.name for part in plan.in_run} | {line.part.name for line in plan.hung} <= drawn
    assert len(figure.svg) < 160_000 and not looks(tree, "number")
    dashed = [one for one in tree if one.tag.endswith("g") for one in one if one.get("class")]
    assert figure.alt.endswith(figure.caption) and dashed


def test_the_neck_of_the_wearer_is_drawn_dashed_and_named() -> None:
    figure = worn(checked(COLLAR))
    assert figure is not None and figure.caption == "As it is worn, round the dashed neck of 36 cm."
    [neck] = [one for one in looks(parsed(figure.svg), "hidden") if one.tag.endswith("path")][:1]
    spots = [float(n) for n in re.findall(r"-?[\d.]+(?:e-?\d+)?", neck.get("d", ""))]
    assert (max(spots[::2]) - min(spots[::2])) * math.pi == pytest.approx(360, rel=0.01)
    text = COLLAR.read_text(encoding="utf-8").replace("wearer: {age: adult, neck: 36 cm}\n", "")
    figure = worn(keeper().check_text(text))
    assert figure is not None and figure.caption == "As it is worn."


def test_the_clasp_lies_behind_and_what_hangs_hangs_lowest() -> None:
    tree = curved(COLLAR)
    rope = box_of(things(tree, "rope")[0])
    clasp = [box_of(one) for one in things(tree, "toggle")]
    assert all(box.bottom < rope.top + 30 for box in clasp)
    drops = [box_of(one) for one in things(tree, "drop")]
    assert len(drops) == 7 and all(box.bottom > rope.bottom for box in drops)
    middle = sum((box.left + box.right) / 2 for box in drops) / 7
    assert abs(middle) < 8, "its ends differ by a link"


def test_the_longer_strands_hang_lower_and_meet_behind() -> None:
    tree = curved(SAMPLES / "ebb_line_three_strand.yaml")
    boxes = [box_of(things(tree, name)[0]) for name in ("inner", "middle", "outer")]
    assert boxes[0].bottom + 5 < boxes[1].bottom and boxes[1].bottom + 5 < boxes[2].bottom
    assert max(box.top for box in boxes) - min(box.top for box in boxes) < 4


def test_a_band_is_seen_from_its_edge_where_it_is_bent() -> None:
    tree = curved(SAMPLES / "sea_wall_band.yaml")
    [band] = things(tree, "band")
    [cloth] = list(band)
    spots = [float(n) for n in re.findall(r"-?[\d.]+(?:e-?\d+)?", cloth.get("d", ""))]
    assert max(spots[1::2]) - min(spots[1::2]) < 70, "the band is 20 mm wide and under 2 mm thick"
    outline = list(zip(spots[::2], spots[1::2], strict=True))
    assert max(math.dist(one, other) for one, other in pairwise(outline)) < 5, "it bends smoothly"
    for half in map(box_of, things(tree, "slide")):
        assert 0 < half.bottom - half.top < 8, "what closes it is seen from its edge too"


def test_a_pouch_hangs_lowest_on_its_loop() -> None:
    tree = curved(SAMPLES / "driftnet_pouch.yaml")
    pouch, rope = box_of(things(tree, "pouch")[0]), box_of(things(tree, "rope")[0])
    assert pouch.bottom > rope.bottom and abs(pouch.left + pouch.right) < 4


def test_a_pendant_is_drawn_upright() -> None:
    [figure] = drawings(checked(SAMPLES / "pilot_light_pendant.yaml"))
    tree = parsed(figure.svg)
    bail, setting = (box_of(things(tree, name)[0]) for name in ("bail", "setting"))
    assert bail.top < setting.top and bail.bottom < setting.bottom
    assert abs(bail.left + bail.right - setting.left - setting.right) < 1
    assert figure.alt.startswith("Pilot Light pendant, from the top down: bail")


def test_every_leg_of_a_fringe_is_drawn_at_its_length() -> None:
    for path in (SAMPLES / "quay_lamp_necklace.yaml", ROOT / "tests" / "ordinary" / "tassels.yaml"):
        result = checked(path)
        assert result.ask is not None
        for line in result.ask.plan.hung:
            if not line.on_thread or line.part.kind.role in (Role.BAIL,):
                continue
            for figure in drawings(result):
                legs = [box_of(one) for one in things(parsed(figure.svg), line.part.name)]
                assert len(legs) == line.times
                if line.part.has("count") and line.times > 1 and "ray" in line.part.name:
                    heights = Counter(round(leg.bottom - leg.top, 1) for leg in legs)
                    assert sorted(heights.values()) == [1, 2, 2, 2], "it goes up and down again"


def test_a_leg_for_which_the_edge_has_no_bead_hangs_beyond_the_last() -> None:
    """Ten drops hang from an edge of nine beads: the remark on their count is seen."""
    [figure] = drawings(checked(SAMPLES / "class" / "elowen_earrings.yaml"))
    drops = [box_of(one) for one in things(parsed(figure.svg), "drop")]
    panel = box_of(things(parsed(figure.svg), "panel")[0])
    beyond = [box for box in drops if (box.left + box.right) / 2 > panel.right]
    assert (len(drops), len(beyond)) == (10, 1)


def test_the_fringe_of_a_bezel_hangs_about_its_middle_and_follows_its_rim() -> None:
    tree = parsed(drawings(checked(SAMPLES / "quay_lamp_necklace.yaml"))[1].svg)
    lamp = box_of(things(tree, "lamp")[0])
    rays = sorted((box_of(one) for one in things(tree, "ray")), key=lambda box: box.left)
    middle = (rays[0].left + rays[-1].right) / 2
    assert middle == pytest.approx((lamp.left + lamp.right) / 2, abs=0.2)
    assert rays[0].top < rays[3].top > rays[-1].top
    assert rays[3].top == pytest.approx(lamp.bottom, abs=0.5)


LEGEND = {
    "solder": "soldered",
    "slit": "open, not soldered",
    "open-size": "size not given",
    "broken": "cut short here",
}


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_the_legend_names_what_a_drawing_has_and_nothing_else(path: Path) -> None:
    for figure in drawings(checked(path)):
        tree = parsed(figure.svg)
        [body] = [one for one in tree if one.tag.endswith("g") and one.get("id")]
        said = {words for words, _ in words_of(tree)} & set(LEGEND.values())
        assert said == {words for look, words in LEGEND.items() if looks(body, look)}


WRAP = """\
plan: 1
title: Wrap
piece: bracelet
wearer: {wrist: 16 cm}
beads: {spray: 4 mm round}
parts:
  band:
    {kind: woven band, stitch: ladder between cords, beads: spray, rows: 134, wraps: 3,
     cords: {outside: 2 mm, type: leather}, thread: nylon D}
  clasp: lobster 12 mm
run: [clasp.a, band, clasp.b]
"""


def test_what_goes_round_the_wrist_three_times_is_drawn_in_three_turns() -> None:
    figure = worn(keeper().check_text(WRAP))
    assert figure is not None
    [band] = things(parsed(figure.svg), "band")
    box = box_of(band)
    # an oval of a third of the length, and two turns 10 mm lower each
    assert box.right - box.left < 72 and 60 < box.bottom - box.top < 90
    assert course.coil(540.0, 3).along[-1] == pytest.approx(540.0, abs=0.1)


def test_the_halves_of_a_clasp_meet_where_a_piece_goes_round_three_times() -> None:
    figure = worn(keeper().check_text(WRAP))
    assert figure is not None
    first, second = (box_of(one) for one in things(parsed(figure.svg), "clasp"))
    across = max(first.left, second.left) - min(first.right, second.right)
    down = max(first.top, second.top) - min(first.bottom, second.bottom)
    assert across < 2 and down < 2  # they touch, or lie over each other
    open_, shut = course.coil(540.0, 3), course.coil(540.0, 3, meets=True)
    assert shut.along[-1] == pytest.approx(540.0, abs=0.1)
    assert math.dist(open_.spots[0], open_.spots[-1]) == pytest.approx(30.0)
    assert math.dist(shut.spots[0], shut.spots[-1]) == pytest.approx(0.0, abs=1e-6)


STRANDS = """\
plan: 1
title: Two lines
piece: bracelet
wearer: {wrist: 16 cm}
beads: {spray: 4 mm round}
parts:
  inner: {kind: strand, stitch: strung, beads: spray, length: 14 cm, thread: silk No. 4}
  outer: {kind: strand, stitch: strung, beads: spray, length: 15 cm, thread: silk No. 4}
  gimp: {kind: french wire, size: medium}
  bar: end bar 2 loops
  cone: {kind: cone, bore: 9 mm, hole: 2 mm, depth: 8 mm, length: 14 mm}
  ring: 5 mm jump ring 20 AWG
  clasp: lobster 12 mm
"""
BARS = "run: [clasp.a, ring, bar, gimp, {strands: [inner, outer]}, gimp, bar, ring, clasp.b]\n"
CONES = "run: [clasp.a, ring, cone, {strands: [inner, outer]}, cone, ring, clasp.b]\n"


def test_strands_at_loops_of_their_own_are_worn_beside_each_other() -> None:
    figure = worn(keeper().check_text(STRANDS + BARS))
    assert figure is not None
    tree = parsed(figure.svg)
    [inner], [outer] = things(tree, "inner"), things(tree, "outer")
    assert len(things(tree, "gimp")) == 4  # one for each loop of either bar
    assert box_of(outer).left < box_of(inner).left - 2
    assert box_of(outer).right > box_of(inner).right + 2


@pytest.mark.parametrize(
    ("gathered", "run"),
    [
        ("  band: {kind: woven band, stitch: square, beads: spray, across: 2, rows: 30}\n",
         "run: [clasp.a, ring, bar, band, bar, ring, clasp.b]\n"),
        ("", BARS),
    ],
)  # fmt: skip
def test_the_loops_of_an_end_bar_face_what_it_gathers_at_both_ends(gathered: str, run: str) -> None:
    result = keeper().check_text(STRANDS + gathered + run)
    assert result.ask is not None
    bars = [one for one in result.ask.plan.run if one.part.name == "bar"]
    assert [one.turned for one in bars] == [False, True]


def test_strands_leave_their_cones_by_the_wide_end() -> None:
    whole = parsed(drawings(keeper().check_text(STRANDS + CONES))[0].svg)
    [outer], cones = things(whole, "outer"), [box_of(one) for one in things(whole, "cone")]
    for bead in outer[1:]:
        at = box_of(bead)
        within = any(cone.left < at.left and at.right < cone.right for cone in cones)
        assert not within or at.bottom <= max(cone.bottom for cone in cones)


def test_a_cone_on_a_hung_wire_lies_over_the_ends_of_its_tassel() -> None:
    plan = """\
plan: 1
title: Tassel
piece: necklace
beads: {spray: 11/0 round Japanese}
parts:
  strand: {kind: strand, stitch: strung, beads: spray, length: 50 cm, thread: nylon D}
  cone: {kind: cone, bore: 10 mm, hole: 2 mm, depth: 8 mm, length: 14 mm}
  pin:
    {kind: wire link, type: eye pin, wire: 20 AWG, loops: wrapped, loop: {hole: 3 mm},
     length: 60 mm, over: cone}
  legs: {kind: tassel, legs: 8, beads: spray, count: 20, thread: nylon D}
  bail: 6 mm jump ring 18 AWG
run: [strand]
run_is: loop
hung:
  - {part: bail, from: strand}
  - {part: pin, from: bail}
  - {part: legs, from: pin, by: thread}
"""
    result = keeper().check_text(plan)
    tree = parsed(drawings(result)[0].svg)
    [cone], legs = things(tree, "cone"), [box_of(one) for one in things(tree, "legs")]
    over = box_of(cone)
    assert len(legs) == 8 and all(over.top < leg.top < over.bottom < leg.bottom for leg in legs)
    assert not any(remark.parts == ("cone",) for remark in result.numbered)


@pytest.mark.parametrize("length", [0.0, 0.5, 1e6])
def test_a_course_of_any_length_has_spots(length: float) -> None:
    for way in (
        course.oval(length), course.on_neck(length, 360.0), course.over_neck(length, 360.0),
        course.coil(length, 3),
    ):  # fmt: skip
        assert all(math.isfinite(one) for one in way.bend(length / 2, 1.0))
