"""The drawn piece: its sizes are the report's, its parts are named, its remarks are marked."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest

from pages import ALL, Area, bounds, checked, keeper, looks, parsed, words_of
from running import ROOT, SAMPLES, SHARED
from wellstrung.drawing import Figure
from wellstrung.drawing.piece import PAPER, drawings
from wellstrung.model.parts import Role

COLLAR = SHARED / "slack_tide_collar.yaml"
ORLA = SHARED / "lantern_collar.yaml"


def close_up(figures: list[Figure]) -> ElementTree.Element:
    return parsed(figures[-1].svg)


def size_of(shape: ElementTree.Element) -> float | None:
    """The size on the side that a shape draws; of a path by its points, of a ring its outside."""
    side = shape.get("data-side", "width")
    if shape.tag.endswith("circle"):
        return 2 * float(shape.get("r", ""))
    if shape.tag.endswith("rect"):
        return float(shape.get(side, ""))
    if " a " in shape.get("d", ""):
        radius = re.search(r" a ([\d.]+) ", shape.get("d", ""))
        assert radius is not None
        return 2 * float(radius[1])
    points = [float(n) for n in re.findall(r"-?[\d.]+(?:e-\d+)?", shape.get("d", ""))]
    along = points[0::2] if side == "width" else points[1::2]
    return max(along) - min(along)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_every_shape_that_draws_a_quantity_has_its_size(path: Path) -> None:
    result = checked(path)
    told: set[str] = set()
    for figure in drawings(result):
        for shape in parsed(figure.svg).iter():
            name = shape.get("data-quantity")
            if name is not None:
                told.add(name)
                assert size_of(shape) == pytest.approx(result.quantities[name].middle, rel=1e-3)
    assert len(told) >= 2


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_drawing_fits_on_a_page_and_states_its_scale(path: Path) -> None:
    for figure in drawings(checked(path)):
        tree = parsed(figure.svg)
        width, height = (
            float(tree.get(side, "").removesuffix("mm")) for side in ("width", "height")
        )
        assert width <= PAPER[0] and height <= PAPER[1]
        scale = float(tree.get("data-scale", ""))
        bar = looks(tree, "bar")[0]
        said = f"{float(bar.get('width', '')):g} mm, "
        [words] = [words for words, _ in words_of(tree) if words.startswith(said)]
        stated = re.search(r"(\d+) : (\d+)", words)
        numbers = (int(stated[1]), int(stated[2])) if stated else (1, 1)
        assert scale == pytest.approx(numbers[0] / numbers[1], rel=1e-4)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_no_words_lie_over_other_words(path: Path) -> None:
    for figure in drawings(checked(path)):
        words = words_of(parsed(figure.svg))
        for index, (_, one) in enumerate(words):
            assert not any(one.meets(other) for _, other in words[index + 1 :])


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_every_part_of_run_and_fringe_is_named_close_up(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    plan = result.ask.plan
    names = {part.name for entry in plan.run for part in entry.parts}
    names |= {line.part.name for line in plan.hung}
    names |= {line.by.name for line in plan.hung if line.by is not None}
    figure = drawings(result)[-1]
    said = " | ".join(words for words, _ in words_of(parsed(figure.svg)))
    for name in names:
        assert name in said and name in figure.alt


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_every_remark_about_a_drawn_part_is_marked_by_its_number(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    plan = result.ask.plan
    drawn = {part.name for entry in plan.run for part in entry.parts}
    drawn |= {line.part.name for line in plan.hung}
    drawn |= {line.by.name for line in plan.hung if line.by is not None}
    expected = {
        number for number, remark in enumerate(result.numbered, 1) if drawn & set(remark.parts)
    }
    for figure in drawings(result):
        marks = [int(shape.text or "") for shape in looks(parsed(figure.svg), "number")]
        assert expected <= set(marks) and set(marks) == set(figure.remarks)
        assert len(marks) == len(set(marks))


def test_a_remark_on_the_whole_piece_is_marked_at_the_end_of_the_ruler() -> None:
    figure = drawings(checked(SAMPLES / "class" / "talan_knotted_strand.yaml"))[0]
    tree = parsed(figure.svg)
    [ruler] = looks(tree, "ruler")
    mark = next(shape for shape in looks(tree, "mark") if shape.tag.endswith("circle"))
    assert float(mark.get("cx", "")) > float(ruler.get("width", ""))
    assert ruler.get("data-quantity") == "piece.length"


def test_the_ruler_shows_the_window_that_is_wanted() -> None:
    tree = parsed(drawings(checked(COLLAR))[0].svg)
    [wanted] = looks(tree, "wanted")
    assert (float(wanted.get("x", "")), float(wanted.get("width", ""))) == (450, 20)


def test_each_thing_hung_is_drawn_as_often_as_it_hangs() -> None:
    """Seven drops of six links each by a small ring, two carriers on edge round the rope."""
    result = checked(COLLAR)
    tree = close_up(drawings(result))
    rings = [s for s in looks(tree, "metal") if s.get("data-quantity") == "small.outside"]
    assert len(rings) == 3 + 4 + 7
    carriers = [s for s in looks(tree, "metal") if s.get("data-quantity") == "carrier.outside"]
    assert len(carriers) == 2
    links = {"5": 0, "12": 0}
    for path in looks(tree, "metal"):
        found = re.match(r"M \S+ \S+ h (\S+) a (\S+) \S+ 0 0 1 \S+ \S+ v (\S+)", path.get("d", ""))
        if found:
            height = f"{2 * float(found[2]) + float(found[3]):g}"
            links[height] = links.get(height, 0) + 1
    assert links["12"] == 21 and links["5"] >= 21


def test_a_drop_without_an_eye_hangs_beyond_the_last() -> None:
    tree = close_up(drawings(checked(ORLA)))
    rings = [s for s in looks(tree, "metal") if s.get("data-quantity") == "small.outside"]
    heights = [float((s.get("d") or "").split()[2]) for s in rings]
    hung = [s for s, height in zip(rings, heights, strict=True) if height > 5]
    assert len(hung) == 6, "six drops hang from five eyes, and all six are drawn"


def test_the_legs_of_a_tassel_hang_over_each_other_as_thick_as_they_are_together() -> None:
    result = checked(ROOT / "tests/ordinary/tassel_on_ring.yaml")
    thick = result.quantities["tassel.bundle"].middle
    assert result.quantities["tassel.beads"].middle == 35
    columns: dict[float, list[Area]] = {}
    for bead in looks(close_up(drawings(result)), "b0"):
        columns.setdefault(round(bounds(bead).left, 3), []).append(bounds(bead))
    legs = [column for column in columns.values() if len(column) > 1]  # one alone is in the key
    assert [len(leg) for leg in legs] == [34] * 14
    assert legs[-1][0].right - legs[0][0].left == pytest.approx(thick, abs=1.0)


def test_the_legs_of_a_fringe_in_layers_are_spread_along_an_edge() -> None:
    legs = "{part: leg, from: {part: band, eyes: bottom edge}, by: thread, times: %s}"
    result = keeper().check_text(
        "plan: 1\ntitle: Cuff\npiece: bracelet\nbeads: {kelp: 11/0 cylinder, gull: 11/0 cylinder}\n"
        "parts:\n"
        "  band: {kind: woven band, stitch: flat peyote, beads: kelp, across: 6, length: 50 mm}\n"
        "  leg: {kind: bead drop, beads: gull, count: 5}\n"
        f"run: [band]\nhung: [{legs % 5}, {(legs % 10)[:-1]}, layer: 2, over: 20 mm}}]\n"
    )
    lefts = Counter(round(bounds(bead).left, 2) for bead in looks(close_up(drawings(result)), "b1"))
    columns = sorted(left for left, beads in lefts.items() if beads == 5)
    assert len(columns) == 15
    assert columns[-1] - columns[0] == pytest.approx(4 * 10.0, abs=0.01)
    steps = [round(b - a, 1) for a, b in pairwise(columns[2:-2])]
    assert steps == [2.0] * 4 + [1.0] * 2 + [2.0] * 4


def test_of_very_many_things_some_are_drawn_and_the_caption_says_so() -> None:
    text = COLLAR.read_text(encoding="utf-8").replace(
        "by: small, times: 7", "by: small, times: 400"
    )
    figure = drawings(keeper().check_text(text))[-1]
    rings = [
        shape for shape in looks(parsed(figure.svg), "metal")
        if shape.get("data-quantity") == "small.outside"
    ]  # fmt: skip
    assert len(rings) == 3 + 4 + 60
    assert "Drawn of many: 60 of 400 drop." in figure.caption


def test_what_hangs_from_several_of_one_part_is_named_once() -> None:
    text = COLLAR.read_text(encoding="utf-8").replace(
        "by: carrier, times: 2", "by: carrier, times: 6"
    )
    figure = drawings(keeper().check_text(text))[-1]
    words = [words for words, _ in words_of(parsed(figure.svg))]
    assert sum(one.startswith("drop") for one in words) == 1


@pytest.mark.parametrize("length", ["60 m", "9000 m"])
def test_however_long_a_piece_is_its_drawing_fits_on_a_page(length: str) -> None:
    text = COLLAR.read_text(encoding="utf-8").replace("length: 39.7 cm", f"length: {length}")
    figures = drawings(keeper().check_text(text))
    assert len(figures) == 2
    for figure in figures:
        assert float(parsed(figure.svg).get("width", "").removesuffix("mm")) <= PAPER[0]
        assert len(figure.svg) < 200_000


def test_a_very_long_chain_is_an_outline() -> None:
    text = COLLAR.read_text(encoding="utf-8").replace("{bar: 3}", "{bar: 300}")
    figure = drawings(keeper().check_text(text))[-1]
    assert len(figure.svg) < 60_000 and "drop" in figure.alt


def test_a_part_whose_size_the_plan_leaves_open_is_dashed() -> None:
    tree = close_up(drawings(checked(COLLAR)))
    assert looks(tree, "open-size"), "the frame has neither width nor height"
    text = COLLAR.read_text(encoding="utf-8").replace(
        "    mass: 9 g\n", "    mass: 9 g\n    width: 42 mm\n    height: 14 mm\n"
    )
    told = keeper().check_text(text)
    assert not looks(close_up(drawings(told)), "open-size")


def test_longer_strands_sag_below_the_shortest_and_meet_at_both_ends() -> None:
    result = checked(SAMPLES / "ebb_line_three_strand.yaml")
    tree = parsed(drawings(result)[0].svg)
    curves = [
        [float(n) for n in re.findall(r"-?[\d.]+(?:e-\d+)?", shape.get("d", ""))]
        for shape in looks(tree, "thread")
    ]
    depths = sorted(max(curve[1::2]) for curve in curves)
    assert depths[0] < 1 < depths[1] < depths[2]
    assert len({round(curve[0], 1) for curve in curves}) == 1
    assert len({round(curve[-2], 1) for curve in curves}) == 1


def test_earrings_hang_down() -> None:
    result = checked(SAMPLES / "spindrift_earrings.yaml")
    [figure] = drawings(result)
    beads = looks(parsed(figure.svg), "bead")
    assert figure.alt.startswith("Spindrift earrings, from the top down: hook")
    lowest = max(bounds(bead).bottom for bead in beads)
    assert result.ask is not None
    hung = sum(
        line.times * result.quantities[f"{line.part.name}.beads"].middle
        for line in result.ask.plan.hung
    )
    panel = result.quantities["panel.beads"].middle
    assert lowest > 30 and hung + 0.8 * panel < len(beads) < hung + 1.2 * panel


def test_what_a_plan_says_cannot_become_markup() -> None:
    text = COLLAR.read_text(encoding="utf-8")
    text = text.replace("Slack Tide collar", '"</svg><script>alert(1)</script>"')
    text = text.replace("carrier", "'<b>ring'").replace("onto: rope", "onto: rope")
    for figure in drawings(keeper().check_text(text)):
        assert "<script>" not in figure.svg and "<b>" not in figure.svg
        assert "<script>alert(1)</script>" in figure.alt


def test_there_is_no_drawing_of_what_is_no_plan() -> None:
    assert drawings(keeper().check_text("plan: 1\n")) == []
    assert drawings(keeper().check_text(": : :")) == []


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_beads_lie_within_the_part_that_they_are_woven_into(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    if any(line.on_thread for line in result.ask.plan.hung):
        return
    woven = [e.part for e in result.ask.plan.run if e.part.kind.role in (Role.ROPE, Role.BAND)]
    tree = close_up(drawings(result))
    tops = [float(cloth.get("y", "")) for cloth in looks(tree, "cloth")]
    assert bool(tops) == bool(woven)
    names = {part.name for part in woven}
    for one in (one for one in tree.iter() if one.get("data-part") in names):
        assert all(bounds(bead).top >= min(tops) - 0.05 for bead in looks(one, "bead"))
