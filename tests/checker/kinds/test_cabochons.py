"""Stones sewn down on a backing: their outlines, counts and sizes, and how they are drawn."""

from __future__ import annotations

import math

import pytest

from pages import keeper, looks, parsed
from wellstrung.drawing.piece import drawings
from wellstrung.formulas import stones
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.lists.kit import kit
from wellstrung.report.pages.steps import instructions, steps

PLAN = """
plan: 1
title: Harbour lamp
piece: pendant
beads:
  kelp: {{type: cylinder, size: 11/0}}
  gull: {{type: round, size: 11/0, make: Japanese}}
parts:
  lamp: {{kind: embroidered cabochon, stone: {{{stone}, mass: 8 g}}, {more}}}
run: [lamp]
"""
ROWS = "beads: [kelp, [kelp, kelp, gull]], bezel: [kelp, [gull, kelp]], edge_row: gull"


def of(stone: str, more: str = ROWS) -> PlanResult:
    result = keeper().check_text(PLAN.format(stone=stone, more=more))
    assert not result.failures and result.quantities
    return result


def middle(result: PlanResult, what: str) -> float:
    return result.quantities[f"lamp.{what}"].middle


def walked(points: list[tuple[float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in zip(points, points[1:] + points[:1], strict=True))


def test_the_way_round_an_oval_is_that_of_walking_it() -> None:
    turns = [2 * math.pi * n / 100_000 for n in range(100_000)]
    path = walked([(20 * math.cos(t), 15 * math.sin(t)) for t in turns])
    assert stones.round_perimeter(40.0, 30.0) == pytest.approx(path, rel=1e-5)


def test_the_way_round_and_the_area_of_a_pear_by_its_points() -> None:
    tip, touch = 30 - 10, math.acos(10 / 20)
    turns = [touch + (2 * math.pi - 2 * touch) * n / 20_000 for n in range(20_001)]
    points = [(tip, 0.0), *((10 * math.cos(t), 10 * math.sin(t)) for t in turns)]
    assert stones.pear_perimeter(30.0, 20.0) == pytest.approx(walked(points), rel=1e-5)
    crossed = zip(points, points[1:] + points[:1], strict=True)
    area = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in crossed)) / 2
    assert stones.pear_area(30.0, 20.0) == pytest.approx(area, rel=1e-5)


def test_rows_hold_as_many_beads_as_their_middle_lines_are_long() -> None:
    found = of("outside: 12 mm")
    base = math.pi * (12 + 1.6) / (1.3 * 1.05)
    # print: 32 cylinders of 11/0 round 12 mm (`Bead Weaving Techniques: Beaded Bezels`, excerpt)
    assert middle(found, "base") == pytest.approx(base) == pytest.approx(32, rel=0.03)
    second = math.pi * (12 + 2 * 1.6 + 2.1) / (((1.3 + 1.3 + 1.45) / 3) * 1.05)
    assert middle(found, "row_2") == pytest.approx(second)
    assert middle(found, "backing_length") == pytest.approx(12 + 2 * (1.6 + 2.1 + 0.5))
    edge = math.pi * middle(found, "backing_length") / 2.1
    assert middle(found, "edging_beads") == pytest.approx(edge)
    assert middle(found, "beads") == pytest.approx(base + second + base + edge)
    kelp, gull = base + second * 2 / 3 + base * 3 / 4, second / 3 + base / 4 + edge
    assert middle(found, "mass") == pytest.approx(8 + kelp / 200 + gull / 110)


@pytest.mark.parametrize(
    ("stone", "around"),
    [
        ("shape: oval, outside: 30 mm, width: 20 mm", stones.round_perimeter(30.0, 20.0)),
        ("shape: square, outside: 20 mm, corner: 2 mm", 8 * 8 + 4 * math.pi),
        ("shape: pear, outside: 30 mm, width: 20 mm", stones.pear_perimeter(30.0, 20.0)),
    ],
)
def test_every_shape_has_its_way_round_and_is_drawn(stone: str, around: float) -> None:
    found = of(stone)
    assert middle(found, "perimeter") == pytest.approx(around)
    tree = parsed(drawings(found)[-1].svg)
    gull = len(looks(tree, "b1"))
    edge, second = middle(found, "edging_beads"), middle(found, "row_2")
    assert gull == pytest.approx(edge + second / 3 + middle(found, "base") / 4, abs=6)


def test_several_beads_in_one_round_of_a_bezel_share_it() -> None:
    ring = "{kind: bezel, stitch: tubular peyote, around: 36, beads: [kelp, [kelp, gull], kelp],"
    text = PLAN.format(stone="outside: 14 mm", more=ROWS)
    head, _, tail = text.partition("  lamp: ")
    lamp = f"  lamp: {ring} stone: {{outside: 14 mm, edge: 1 mm, mass: 2 g}}}}"
    found = keeper().check_text(head + lamp + tail[tail.index("\n") :])
    assert not found.failures
    beads = middle(found, "beads")
    assert beads == 54
    assert middle(found, "mass") == pytest.approx(2 + beads * 5 / 6 / 200 + beads / 6 / 110)


GLUED = """\
  glue: {kind: adhesive, type: contact cement}
run: [lamp]
work:
  - {do: glue, part: lamp, to: foundation, with: glue}
  - {do: wait, time: 3 h}
  - {do: weave, part: lamp}
  - {do: glue, part: lamp, to: backing, with: glue}
"""


def glued(steps: str = "") -> PlanResult:
    text = PLAN.format(stone="outside: 40 mm, width: 30 mm", more=ROWS)
    return keeper().check_text(text.replace("run: [lamp]\n", steps or GLUED))


def test_a_stone_takes_a_film_of_glue_under_it_and_one_behind_what_is_sewn() -> None:
    """By hand: the area of the oval, and of the backing of 48.4 x 38.4 mm, by 0.1 mm."""
    found = glued()
    stone, backing = math.pi / 4 * 40 * 30, math.pi / 4 * 48.4 * 38.4
    out = middle(found, "rows_wide") + 0.5
    assert 40 + 2 * out == pytest.approx(48.4)
    assert middle(found, "glue_on_foundation") == pytest.approx(stone * 0.1 / 1000)
    assert middle(found, "glue_on_backing") == pytest.approx(backing * 0.1 / 1000, rel=0.05)
    assert found.quantities["glue.needed"].middle == pytest.approx(middle(found, "glue"))


def test_what_a_step_glues_it_to_is_one_of_its_layers() -> None:
    for wrong, says in (
        ("to: foundation, ", "step `glue` lacks `to`: write `to: foundation` or `to: backing`"),
        ("", "the stone of `lamp` is glued to its foundation or its backing"),
    ):
        steps = GLUED.replace(wrong, "") if wrong else GLUED.replace("to: backing", "to: lamp")
        (slip,) = glued(steps).remarks
        assert slip.says.startswith(says), slip.says


def test_the_steps_glue_the_stone_before_it_is_sewn_and_its_backing_after() -> None:
    found = glued()
    down, _, sewn, back = (" | ".join(one.says) for one in instructions(found))
    assert "mark the stone in its middle" in down and "leave its rim free" in down
    assert "nothing may be sewn to it for 2 h" in down
    assert "glue" not in sewn and "cut no thread" in sewn
    assert "over the threads" in back


def test_the_lists_have_the_stone_and_what_it_is_sewn_on_as_the_steps_cut_them() -> None:
    """By hand: 48.4 x 38.4 mm with rows and seam, and 10 mm left all round while it is sewn."""
    found = glued()
    sheets = {
        "stone of lamp": "stone, outside 40 mm, width 30 mm",
        "foundation of lamp": "foundation, 68 x 58 mm or larger",
        "backing of lamp": "backing, 48 x 38 mm or larger",
    }
    asked = understood([found])
    bought = {one.name: (one.describes, one.buy) for one in shopping.needed(asked, 3)}
    given = {one.name: (one.describes, one.in_all) for one in kit(asked[0]).findings}
    for name, words in sheets.items():
        assert bought[name] == (words, 3) and given[name] == (words, 1)
    assert all(f"{name}: {words}" in steps(found) for name, words in sheets.items())
    down, *_, back = (" | ".join(one.says) for one in instructions(found))
    assert "68 x 58 mm or larger" in down and "48 x 38 mm" in back


@pytest.mark.parametrize("layer", ["foundation", "backing"])
def test_a_sheet_of_unknown_size_is_listed_without_it(layer: str) -> None:
    text = PLAN.format(stone="shape: round, outside: 40 mm", more=ROWS)
    result = keeper().check_text(text.replace(", make: Japanese", ""))
    (line,) = [
        one for one in shopping.needed(understood([result])) if one.name == f"{layer} of lamp"
    ]
    assert (line.describes, line.buy) == (layer, 1)


def test_a_stone_is_called_by_its_shape() -> None:
    (asked,) = understood([of("shape: pear, outside: 40 mm, width: 25 mm")])
    (stone,) = [one for one in shopping.needed([asked]) if one.name == "stone of lamp"]
    assert stone.describes == "pear stone, outside 40 mm, width 25 mm"


def test_the_beads_of_a_stone_are_held_against_packs_of_several_lots(checker: Checker) -> None:
    result = checker.check_text(
        "plan: 1\ntitle: Lots\npiece: pendant\nbeads:\n  fern: {type: cylinder, size: 11/0}\n"
        "parts:\n  stone:\n    kind: embroidered cabochon\n"
        "    stone: {outside: 18 mm, mass: 4.5 g}\n    beads: [fern]\n"
        "    top_eyes: {count: 1, hole: 3 mm, wire: 1.4 mm}\n"
        "    thread: {type: fused, rating: 6 lb}\n"
        "run: [stone]\nsupplies:\n  - {bead: fern, count: 30}\n  - {bead: fern, count: 20}\n"
    )
    assert not result.failures
    assert "one-lot" in {remark.rule for remark in result.remarks}
