"""Pouch, bezel, slide clasp and ribbon ends: what each measures, carries and refuses."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from running import ROOT
from wellstrung.judging.checker import Checker
from wellstrung.kinds import bezel, pouch
from wellstrung.plugins.host import Host
from wellstrung.stitches import tubular_peyote as peyote

PLAN = (ROOT / "tests" / "rules" / "woven.yaml").read_text(encoding="utf-8")
sizes = st.floats(0.8, 4.5)


def quantities(installed: Host, *changes: tuple[str, str]) -> dict[str, float]:
    text = PLAN
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    result = Checker(installed, quantities=True).check_text(text)
    assert result.readable and not result.failures, result.remarks
    return {name: value.middle for name, value in result.quantities.items()}


@given(st.floats(12, 60), st.floats(1, 5))
def test_a_tube_laid_flat_by_walking_round_its_middle_line(outside: float, wall: float) -> None:
    """The way round the middle of the wall stays: a circle, or two faces with two folds."""
    flat = pouch.laid_flat(outside, wall)
    faces, folds = 2 * (flat - 2 * wall), math.pi * wall
    assert faces + folds == pytest.approx(math.pi * (outside - wall))


def test_a_pouch(installed: Host) -> None:
    found = quantities(installed)
    assert found["pouch.width"] == pytest.approx(pouch.laid_flat(found["pouch.outside"], 1.6))
    assert found["pouch.width_inside"] == pytest.approx(math.pi * found["pouch.inside"] / 2)
    assert found["pouch.thickness"] == pytest.approx(3.2)
    assert found["pouch.length"] == pytest.approx(48 * 0.8)
    assert found["pouch.along"] == found["pouch.width"]
    assert found["pouch.beads"] == 48 * 24


def test_a_pouch_of_herringbone_is_half_its_stacks_wide(installed: Host) -> None:
    found = quantities(
        installed, ("pouch, stitch: tubular peyote", "pouch, stitch: tubular herringbone")
    )
    assert found["pouch.width"] == pytest.approx(24 * 1.6, rel=0.06)
    assert found["pouch.beads"] == 48 * 48


def test_what_a_pouch_measures_beats_the_model(installed: Host) -> None:
    tube = quantities(installed, ("rounds: 48,", "rounds: 48, measured: {outside: 22 mm},"))
    assert tube["pouch.width"] == pytest.approx(pouch.laid_flat(22, 1.6))
    face = quantities(installed, ("rounds: 48,", "rounds: 48, measured: {width: 30 mm},"))
    assert face["pouch.width"] == 30 and face["pouch.width_inside"] == pytest.approx(26.8)


@given(st.integers(3, 60).map(lambda half: 2 * half), sizes, sizes, st.floats(1.0, 1.1))
def test_a_ring_for_a_stone_is_the_inside_the_other_way_round(
    ring: int, length: float, outside: float, tension: float
) -> None:
    inside = peyote.inside(peyote.pitch(length, tension), ring, outside)
    if inside > 0:
        assert bezel.ring_for(inside, length, outside, tension) == pytest.approx(ring)


def test_rings_that_print_gives() -> None:
    """Between the tightest and the loosest hand lies what was printed, and not what was too much.

    12 mm in cylinders of 11/0 from 32; a donut of 45 mm in rounds of 11/0 from 96, where 102 were
    too many with beads of the middle length.
    """
    for stone, length, outside, printed in ((12, 1.3, 1.6, 32), (45, 1.45, 2.1, 96)):
        least = bezel.ring_for(stone, length, outside, 1.10)
        most = bezel.ring_for(stone, length, outside, 1.00)
        assert least < printed < most
    assert bezel.ring_for(45, 1.45, 2.1, 1.05) < 98


@given(st.lists(sizes, min_size=2, max_size=12))
def test_a_strip_by_laying_its_rounds(outsides: list[float]) -> None:
    """Each round lies a quarter of its own bead and of the one before from that one's middle."""
    middle = [0.0]
    for before, after in pairwise(outsides):
        middle.append(middle[-1] + before / 4 + after / 4)
    reach = middle[-1] + outsides[-1] / 2 + outsides[0] / 2
    assert bezel.strip(outsides, 1.05) == pytest.approx(reach)


def test_a_bezel(installed: Host) -> None:
    found = quantities(installed)
    assert found["setting.inside"] == pytest.approx(peyote.inside(1.365, 36, 1.6))
    assert (
        found["setting.outside"]
        == found["setting.width"]
        == pytest.approx(found["setting.inside"] + 3.2)
    )
    assert found["setting.rounds"] == 7 and found["setting.beads"] == 7 * 18
    assert found["setting.length"] == pytest.approx(
        bezel.strip([1.5, 1.5, 1.6, 1.6, 1.6, 1.5, 1.5], 1.05)
    )
    assert found["setting.around_least"] < 36 < found["setting.around_most"]
    stone, beads = 1.6, 4 * 18 / 265 + 3 * 18 / 200
    assert found["setting.mass"] == pytest.approx(stone + beads, rel=0.02)


def test_clasps_that_take_a_band(installed: Host) -> None:
    found = quantities(installed)
    assert found["slide.a.along"] == 12 and found["slide.b.along"] == 0
    assert found["clamp.a.along"] == 24 - 2 * 4 and found["clamp.b.along"] == 0


def test_beads_along_their_edges_carry_a_fringe(installed: Host) -> None:
    """As many as there are columns on a face of a pouch, or beads in a round of a bezel."""
    hung = """hung:
  - {part: leg, from: {part: pouch, eyes: bottom edge}, by: thread, times: 24}
  - {part: leg, from: {part: pouch, eyes: top edge}, by: thread, times: 48}
  - {part: leg, from: {part: pouch, eyes: corners}, by: thread, times: 2}
  - {part: leg, from: {part: setting, eyes: edge}, by: thread, times: 18}
"""
    leg = "  leg: {kind: bead drop, beads: spray, count: 5}\nrun:"
    right = PLAN.replace("run:", leg, 1) + hung
    checker = Checker(installed)

    def counted(text: str) -> list[str]:
        result = checker.check_text(text)
        assert result.readable, result.remarks
        return [remark.says for remark in result.remarks if remark.rule == "fringe-count"]

    assert counted(right) == []
    for eyes, times in (("bottom edge", 24), ("top edge", 48), ("corners", 2), ("edge", 18)):
        line = f"eyes: {eyes}}}, by: thread, times: {times}"
        more = right.replace(line, line.replace(str(times), str(times + 1)))
        assert f"which has {times}: 1 has no eye" in counted(more)[0]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "pouch, stitch: tubular peyote",
            "pouch, stitch: brick",
            "`brick` makes a woven band, and `pouch` is a pouch: write `kind: woven band`, or"
            " another stitch",
        ),
        (
            "bezel, stitch: tubular peyote",
            "bezel, stitch: tubular herringbone",
            "`tubular herringbone` makes a woven rope, and `setting` is a bezel: write `kind: woven"
            " rope`, or another stitch",
        ),
        (
            "around: 36",
            "around: 35",
            "`setting` has 35 beads around, and even tubular peyote needs an even ring: write"
            " `around: 34` or `around: 36`, or `stitch: odd tubular peyote`",
        ),
        ("reed, reed, reed,", "reed, read, reed,", "there is no bead called `read`: write `reed`"),
    ],
)
def test_what_they_refuse(installed: Host, old: str, new: str, says: str) -> None:
    assert PLAN.count(old) == 1
    result = Checker(installed).check_text(PLAN.replace(old, new))
    assert [remark.says for remark in result.remarks] == [says]


def test_a_clasp_that_grips_needs_no_long_tail(installed: Host) -> None:
    """A tail that sews a clasp on is longer; glue and jaws hold without thread."""
    thread = "warp: 0.2 mm, thread: {type: fused, rating: 6 lb, tail: 16 cm}"
    sewn = PLAN.replace("warp: 0.2 mm", thread)
    glued = sewn.replace("tube: {length: 20 mm}", "tube: {length: 20 mm, slot: 2.4 mm}")
    clamped = sewn.replace("[slide.a, band, slide.b]", "[clamp.a, band, clamp.b]")
    checker = Checker(installed)
    for text, short in ((sewn, True), (glued, False), (clamped, False)):
        spoken = {remark.rule for remark in checker.check_text(text).remarks}
        assert ("tail-allowance" in spoken) is short


GLUED = (
    PLAN.replace("tube: {length: 20 mm}", "tube: {length: 20 mm, slot: 2.4 mm}").replace(
        "run:", "  glue: {kind: adhesive, type: two-part epoxy}\nrun:"
    )
    + """work:
  - {do: weave, part: band}
  - {do: finish thread, part: band}
  - {do: glue, part: slide, to: band, with: glue, joints: 2}
  - {do: wait, time: 24 h}
  - {do: wear}
"""
)


def test_a_clasp_glued_to_a_band_has_to_cure(installed: Host) -> None:
    """Its joint is judged as any glued joint; only the bore of a cap does not come into it."""
    checker = Checker(installed)
    result = checker.check_text(GLUED)
    held = {kept.rule for kept in result.held}
    assert {"cure-time", "finish-before-glue"} <= held and "glue-gap" not in held
    early = checker.check_text(GLUED.replace("time: 24 h", "time: 20 min"))
    assert [remark.says for remark in early.remarks if remark.rule == "cure-time"] == [
        "`slide` is glued in step 3 and worn in step 5, 20 min later, but `glue` needs 24 h to cure"
        " fully"
    ]


def test_thread_ends_closed_into_the_slot_of_a_clasp(installed: Host) -> None:
    finish = "  - {do: finish thread, part: band}\n"
    late = GLUED.replace(finish, "").replace("  - {do: wait", finish + "  - {do: wait")
    spoken = [r.says for r in Checker(installed).check_text(late).remarks]
    assert (
        "the thread ends of `band` are finished in step 3, but the glue of step 2 has closed the"
        " band in"
    ) in spoken


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "to: band, with",
            "to: pouch, with",
            "`pouch` is a pouch, and `to` of `glue` takes a woven band",
        ),
        (
            "glue, part: slide",
            "glue, part: pouch",
            "`pouch` is a pouch, and `part` of `glue` takes a brooch pin, an end cap or a clasp",
        ),
    ],
)
def test_what_glue_takes(installed: Host, old: str, new: str, says: str) -> None:
    assert GLUED.count(old) == 1
    spoken = [r.says for r in Checker(installed).check_text(GLUED.replace(old, new)).remarks]
    assert says in spoken
