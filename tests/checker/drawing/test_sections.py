"""Sections: every size drawn is the quantity's, what does not fit is hatched and numbered."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable, Iterator
from functools import cache, lru_cache
from itertools import combinations
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from running import ROOT, SAMPLES
from turns import ALL_OF_THEM, some
from wellstrung.drawing import Figure
from wellstrung.drawing.piece import drawings
from wellstrung.drawing.sections import sections
from wellstrung.formulas.circles import container
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.rulebook import RingHolds, RingThroughEye, RopeInCap
from wellstrung.subjects.find import times_made
from wellstrung.testing.cases import Case, cases, changed

SHEETS = sorted((ROOT / "checker" / "wellstrung" / "drawing").glob("*.css"))
SVG = "{http://www.w3.org/2000/svg}"
PLANS = sorted(SAMPLES.rglob("*.yaml"))
RIGHT = sorted(SAMPLES.glob("*.yaml"))
#: the rules whose fits are drawn
DRAWN = (
    "cap-bore", "cap-depth", "chain-cut", "clasp-eye", "cone-bundle", "core-in-rope", "crimp-bore",
    "fringe-spread", "hole-passes", "link-clearance", "needle-pass", "pin-in-bead",
    "ring-around-rope", "ring-reach", "ring-room", "ring-through-eye", "string-in-hole",
    "toggle-bar", "toggle-swing",
)  # fmt: skip
MISFITS = [
    case
    for rule in DRAWN
    for file in sorted((ROOT / "tests" / "rules").rglob(f"{rule}*.yaml"))
    for case in cases(file)
    if case.expect in ("error", "warning")
]


@pytest.fixture(scope="module")
def keeping(installed: Host) -> Checker:
    return Checker(installed, quantities=True, trials=0)


class Sectioned(NamedTuple):
    result: PlanResult
    figures: list[Figure]


#: a plan's text, or its file, checked and drawn
Draws = Callable[[str | Path], Sectioned]


@pytest.fixture(scope="module")
def sectioned(keeping: Checker) -> Draws:
    """A plan checked and drawn, once for all tests that look at it."""

    @cache
    def of(plan: str | Path) -> Sectioned:
        text = plan if isinstance(plan, str) else plan.read_text(encoding="utf-8")
        result = keeping.check_text(text)
        return Sectioned(result, sections(result))

    return of


def root(figure: Figure) -> ElementTree.Element:
    return parsed(figure.svg)


@lru_cache(100)
def parsed(svg: str) -> ElementTree.Element:
    return ElementTree.fromstring(svg)


def shapes(figure: Figure, tag: str) -> list[ElementTree.Element]:
    return list(root(figure).iter(SVG + tag))


def at(shape: ElementTree.Element, name: str) -> float:
    return float(shape.get(name, "nan"))


def looks(shape: ElementTree.Element) -> set[str]:
    return set(shape.get("class", "").split())


def has(figure: Figure, look: str) -> bool:
    """Whether it is drawn somewhere, the key aside."""
    return any(
        look in looks(shape) and "swatch" not in looks(shape) for shape in root(figure).iter()
    )


def clashes(figure: Figure) -> bool:
    return "does not fit" in figure.svg


def titled(figures: list[Figure], words: str) -> Figure:
    (found,) = (figure for figure in figures if words in figure.title)
    return found


def drawn_for(number: int, figures: list[Figure]) -> Figure:
    """The figure of a remark, the first of several beads of one line; others may name it."""
    found = [figure for figure in figures if f"(remark {number}, " in figure.caption]
    assert all(number in one.remarks for one in found)
    assert len({one.title for one in found}) == len(found)
    return found[0]


def measured(shape: ElementTree.Element) -> float:
    """What a shape that names a quantity measures: a circle its diameter, a line its length."""
    if shape.tag == SVG + "circle":
        return 2 * at(shape, "r")
    assert shape.tag == SVG + "line"
    return math.hypot(at(shape, "x2") - at(shape, "x1"), at(shape, "y2") - at(shape, "y1"))


def assert_right(figures: list[Figure], result: PlanResult) -> None:
    """What holds of every figure: well formed, to scale, legible, and as large as it says."""
    assert result.ask is not None
    for figure in figures:
        drawing = root(figure)
        assert drawing.get("role") == "img" and drawing.get("class") == "drawing section"
        assert drawing[0].text == figure.title and drawing[1].text == figure.caption
        assert figure.caption.startswith("found: ") and figure.alt.endswith(figure.caption)
        scale = float(drawing.get("data-scale", ""))
        (bar,) = (box for box in shapes(figure, "rect") if looks(box) == {"bar"})
        assert 16 <= at(bar, "width") * scale <= 40
        for words in shapes(figure, "text"):
            assert at(words, "font-size") * scale >= 2.5 * (1 - 1e-4)
        for shape in drawing.iter():
            name = shape.get("data-quantity")
            if name is not None:
                value = result.ask.get(name).middle
                # a coordinate is written with six figures
                ends = (float(shape.get(key, 0)) for key in ("x1", "x2", "y1", "y2", "r"))
                far = max(abs(end) for end in ends)
                assert measured(shape) == pytest.approx(value, rel=2e-5, abs=2e-5 * far), name
                if name in result.quantities:
                    assert result.quantities[name].middle == value


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_the_sections_of_a_sample_plan(path: Path, sectioned: Draws) -> None:
    result, figures = sectioned(path)
    assert figures and not result.failures
    assert_right(figures, result)
    assert any("data-quantity" in figure.svg for figure in figures)
    for figure in figures:
        assert float(root(figure).get("width", "").removesuffix("mm")) <= 185  # of an A4 page
        assert float(root(figure).get("height", "").removesuffix("mm")) <= 150


@pytest.mark.parametrize("path", RIGHT, ids=lambda path: path.stem)
def test_what_is_right_has_no_mark_and_no_clash(path: Path, sectioned: Draws) -> None:
    for figure in sectioned(path).figures:
        assert figure.remarks == ()
        assert not has(figure, "mark") and not clashes(figure)


@pytest.mark.parametrize("case", some(MISFITS, 2), ids=str)
def test_a_misfit_is_drawn_with_the_number_of_its_remark(case: Case, sectioned: Draws) -> None:
    result, figures = sectioned(case.text)
    assert_right(figures, result)
    for number, remark in enumerate(result.numbered, 1):
        if remark.rule == case.rule:
            figure = drawn_for(number, figures)
            flags = [words.text for words in shapes(figure, "text") if "number" in looks(words)]
            assert str(number) in flags
            assert remark.needed in figure.caption
            assert all(name in figure.title + figure.caption for name in remark.parts[:1])
    marked = [bool(figure.remarks) for figure in figures]
    assert marked == sorted(marked, reverse=True), "misfits first"


@pytest.mark.parametrize("case", [case for case in MISFITS if case.expect == "error"], ids=str)
def test_what_cannot_go_together_is_hatched_as_such(case: Case, sectioned: Draws) -> None:
    """But for a bar that falls out and a chain that is cut wrong, where nothing collides."""
    result, figures = sectioned(case.text)
    for number, remark in enumerate(result.numbered, 1):
        if remark.rule == case.rule and remark.level == "error":
            figure = drawn_for(number, figures)
            assert clashes(figure) == (case.rule not in ("toggle-bar", "chain-cut"))


#: a change of the collar, the figure it shows in, and by how much it just fits and just does not
EDGES: list[tuple[str, str, str, str]] = [
    ("bore: 10 mm", "rope `rope` in cap", "bore: 9.82 mm", "bore: 9.7 mm"),
    # 9.8 round the rope and 1.5 of the eye beside it
    ("outside: 16 mm, wire: 16 AWG", "ring `carrier` holding the rope",
     "inside: 11.32 mm, wire: 1 mm", "inside: 11.2 mm, wire: 1 mm"),
    # 1.024 of wire, and 1.974 - sqrt(1.974^2 - 0.25) = 0.064 of its bend over an eye of 1 mm
    ("bottom_eyes: {count: 7, hole: 1.6 mm", "ring `small` through the bottom eyes",
     "bottom_eyes: {count: 7, hole: 1.1 mm", "bottom_eyes: {count: 7, hole: 1.06 mm"),
    # 1.024 and 0.8 of wire along a link of 0.8 mm wire
    ("loop: {length: 5 mm", "wires in the first link",
     "loop: {length: 3.44 mm", "loop: {length: 3.4 mm"),
    # a link 4.4 mm wide
    ("hole: 1.6 mm, wire: 1 mm", "fringe on",
     "hole: 1.6 mm, wire: 1 mm, spacing: 4.42 mm", "hole: 1.6 mm, wire: 1 mm, spacing: 4.35 mm"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "title", "fits", "does_not"), EDGES)
def test_the_hatching_begins_where_the_sizes_meet(
    old: str, title: str, fits: str, does_not: str, collar: str, keeping: Checker
) -> None:
    """By sums done here: at middle sizes, a little more room leaves none hatched, a little less."""
    for new, clash in ((fits, False), (does_not, True)):
        result = keeping.check_text(changed(collar, {old: new}))
        figure = titled(sections(result), title)
        assert clashes(figure) is clash, new


def packed_circles(figures: list[Figure]) -> Iterator[list[tuple[float, float, float]]]:
    """The round things of each figure that packs some in a round hole about its middle."""
    for figure in figures:
        if " holding " in figure.title or " in cone " in figure.title:
            held = [one for one in shapes(figure, "circle") if looks(one) & {"held", "metal"}]
            yield [(at(one, "cx"), at(one, "cy"), at(one, "r")) for one in held]


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_packed_things_touch_and_do_not_overlap(path: Path, sectioned: Draws) -> None:
    for held in packed_circles(sectioned(path).figures):
        outer = container([2 * r for *_, r in held]) / 2
        for (ax, ay, a), (bx, by, b) in combinations(held, 2):
            assert math.hypot(ax - bx, ay - by) >= a + b - 1e-3
        assert all(math.hypot(x, y) + r <= outer + 1e-3 for x, y, r in held)


def test_joins_alike_are_drawn_once_and_counted(collar: str, keeping: Checker) -> None:
    result = keeping.check_text(collar)
    assert result.ask is not None
    made = times_made(result.ask.plan)
    parts = result.ask.plan.parts
    counts = {
        "rope in cap": sum(n for join, n in made.items() if isinstance(join, RopeInCap)),
        "wires of small": sum(
            n
            for join, n in made.items()
            if isinstance(join, RingThroughEye) and join.ring is parts["small"]
        ),
        "between two rings": made[
            RingHolds(parts["small"].key.place, parts["small"], None, (), (parts["small"],) * 2)
        ],
    }
    # both caps; an eye at either end of both rows of rings and seven rings through two eyes each;
    # one of three rings and two of four lie between two others
    assert counts == {"rope in cap": 2, "wires of small": 18, "between two rings": 3}
    titles = [figure.title for figure in sections(result)]
    assert titles.count("rope `rope` in cap `cap`, 2 times") == 1
    assert "ring `small` holding 2 more of its kind, 3 times" in titles
    assert "ring `small` through the bottom eyes of `frame`, 7 times" in titles


def test_an_eye_that_holds_two_rings_is_drawn_with_both(collar: str, keeping: Checker) -> None:
    """A charm hung from the cap's eye, in which the ring of the run lies already."""
    hung = "hung:\n  - {part: frame, from: {part: cap, eyes: eye}, by: small, times: 2}"
    text = changed(collar, {"hung:\n  - {part: frame, from: rope, by: carrier, times: 2}": hung})
    result = keeping.check_text(
        text.replace("hole: 2.4 mm, wire: 1.2 mm}}\n", "hole: 2 mm, wire: 1.2 mm}}\n", 1)
    )
    figure = titled(sections(result), "through the eye of `cap`")
    wires = [one for one in shapes(figure, "circle") if looks(one) == {"metal"}]
    assert len(wires) == 2 and clashes(figure)  # two wires of 1.02 mm in a hole of 2 mm
    assert len(figure.remarks) == 1


def test_errors_stand_before_warnings_and_these_before_the_rest(
    collar: str, keeping: Checker
) -> None:
    both = {"bore: 10 mm": "bore: 8 mm", "length: 24 mm": "length: 30 mm"}
    result = keeping.check_text(changed(collar, both))
    levels = {number: remark.level for number, remark in enumerate(result.numbered, 1)}
    order = [[levels[number] for number in figure.remarks] for figure in sections(result)]
    assert order[:2] == [["error"], ["warning"]] and not any(order[2:])


def test_what_a_deeper_remark_explains_names_that_remark(collar: str, keeping: Checker) -> None:
    """A wire too thick for an eye also leaves the ring no room: the eye's remark alone is given."""
    thick = {"outside: 16 mm, wire: 16 AWG": "outside: 16 mm, wire: 3.4 mm"}
    result = keeping.check_text(changed(collar, thick))
    assert result.numbered[0].rule == "ring-through-eye"
    assert result.numbered[0].affects == ("ring-room",)
    eye, room, *rest = sections(result)
    assert (eye.remarks, room.remarks) == ((1,), (1,))
    assert "holding the rope" in room.title and clashes(room)
    assert room.caption.endswith("; remark 1 comes first")
    assert not any(figure.remarks for figure in rest)


def test_a_number_is_framed_by_its_level(collar: str, keeping: Checker) -> None:
    error = sections(keeping.check_text(changed(collar, {"bore: 10 mm": "bore: 8 mm"})))[0]
    wide = {"bore: 10 mm, depth: 7 mm, outside: 11.5": "bore: 12 mm, depth: 7 mm, outside: 13.5"}
    warning = sections(keeping.check_text(changed(collar, wide)))[0]
    assert any("mark" in looks(one) for one in shapes(error, "circle"))
    assert not any("mark" in looks(one) for one in shapes(warning, "circle"))
    assert any("mark" in looks(one) for one in shapes(warning, "rect"))


def test_sizes_keep_the_spelling_of_their_author(collar: str, keeping: Checker) -> None:
    result = keeping.check_text(changed(collar, {"bore: 10 mm": "bore: 13/32 in"}))
    figure = titled(sections(result), "in cap")
    assert "bore 13/32 in (10.32 mm)" in figure.caption
    assert "bore 13/32 in (10.32 mm)" in [words.text for words in shapes(figure, "text")]


@pytest.mark.parametrize(
    ("old", "title"),
    [
        ("bore: 10 mm, ", "in cap"),
        (", wire: 16 AWG", "carrier"),
        ("outside: 16 mm, wire: 2 mm, ", "toggle"),
        ("hole: 1.6 mm, ", "fringe"),
    ],
)
def test_a_fit_that_lacks_a_value_is_left_out(
    old: str, title: str, collar: str, keeping: Checker
) -> None:
    spaced = changed(collar, {"hole: 1.6 mm": "spacing: 6 mm, hole: 1.6 mm"})
    whole = [figure for figure in sections(keeping.check_text(spaced)) if title in figure.title]
    less = keeping.check_text(changed(spaced, {old: ""}))
    assert len([figure for figure in sections(less) if title in figure.title]) < len(whole)


def test_a_cap_of_unknown_depth_is_drawn_from_the_front(collar: str, keeping: Checker) -> None:
    result = keeping.check_text(changed(collar, {"depth: 7 mm, ": ""}))
    figure = titled(sections(result), "in cap")
    assert "depth" not in figure.svg and "cap.bore" in figure.svg


def test_without_a_plan_there_is_nothing_to_draw(checker: Checker, keeping: Checker) -> None:
    assert sections(checker.check_file(RIGHT[0])) == []
    assert sections(keeping.check_text("plan: 1")) == []


#: a palette of all tones, and a ring that was closed
EIGHT_BEADS = (
    "plan: 1\ntitle: Eight beads\npiece: bracelet\nbeads:\n"
    + "".join(f"  {name}: {{type: round, size: 6/0, make: Japanese}}\n" for name in "abcdefgh")
    + """
parts:
  side: {kind: strand, stitch: strung, beads: [a, b, c, d, e, f, g, h], count: 24}
  ring: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: closed}
  cubes: {kind: woven rope, stitch: cubic right-angle weave, beads: a, rounds: 12}
run: [ring, side, cubes]
"""
)


@pytest.mark.slow
def test_the_style_sheets_and_the_drawings_know_the_same_classes(sectioned: Draws) -> None:
    first = {case.rule: case.text for case in reversed(MISFITS)}
    drawn: set[str] = set()
    long_bars = {case.text for case in MISFITS if case.rule == "toggle-bar"}
    plans: list[str | Path] = [EIGHT_BEADS, *first.values(), *long_bars, *PLANS]
    for plan in plans:
        result, figures = sectioned(plan)
        for figure in (*figures, *drawings(result)):
            trees = [ElementTree.fromstring(one) for one in (figure.svg, figure.narrow) if one]
            each = (one for tree in trees for one in tree.iter())
            shapes = (one for one in each if not one.tag.endswith("}g"))
            drawn |= {look for shape in shapes for look in looks(shape)}
    sheets = "".join(sheet.read_text(encoding="utf-8") for sheet in SHEETS)
    css = re.sub(r"/\*.*?\*/|\{[^{}]*\}", "", sheets, flags=re.S)
    beads = {look for look in drawn if re.fullmatch(r"b\d+", look)}  # have their own colour
    assert drawn - beads - {"words", "label", "measured"} == set(
        re.findall(r"\.([a-z][a-z0-9-]*)", css)
    )


NAMES = st.text(
    st.characters(codec="utf-8", exclude_characters=".", exclude_categories=("C", "Z")),
    min_size=1,
    max_size=12,
) | st.sampled_from(["<script>alert(1)</script>", "a&b", "]]>", "\"'", "--><b>", "`", "{x}", "%s"])


@pytest.mark.slow
@settings(
    max_examples=20 if ALL_OF_THEM else 12,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(rope=NAMES, cap=NAMES)
def test_names_cannot_become_markup(rope: str, cap: str, collar: str, keeping: Checker) -> None:
    names = {
        old: json.dumps(f"{new} {old}", ensure_ascii=False)
        for old, new in (("rope", rope), ("cap", cap))
    }
    # the names of parts, not the words of their kinds
    part = re.compile(r"(?<!woven )\brope\b|(?<!end )\bcap\b")
    text = part.sub(lambda name: names[name[0]], collar)
    result = keeping.check_text(text)
    assert result.ask is not None, result.remarks
    figures = sections(result)
    assert_right(figures, result)
    figure = titled(figures, " in cap ")
    assert f"`{rope} rope` in cap `{cap} cap`" in figure.title
    assert {shape.tag for shape in root(figure).iter()} <= {
        SVG + tag for tag in ("svg", "title", "desc", "path", "circle", "rect", "line", "text")
    }


SIZES = st.floats(-3, 5).map(lambda power: 10**power)


@pytest.mark.slow
@settings(
    max_examples=20 if ALL_OF_THEM else 12,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(bore=SIZES, inside=SIZES, wire=SIZES, link=SIZES, hole=SIZES, bar=SIZES, spacing=SIZES)
def test_no_size_breaks_a_drawing_or_leaves_the_page(
    bore: float, inside: float, wire: float, link: float, hole: float, bar: float, spacing: float,
    collar: str, keeping: Checker,
) -> None:  # fmt: skip
    text = changed(
        collar,
        {
            "bore: 10 mm": f"bore: {bore:f} mm",
            "outside: 11.5 mm": f"outside: {bore + 2:f} mm",
            "outside: 6 mm, wire: 18 AWG": f"inside: {inside:f} mm, wire: {wire:f} mm",
            "length: 5 mm, width: 4.4 mm": f"length: {link + 1.6:f} mm, width: 4.4 mm",
            "hole: 1.6 mm": f"hole: {hole:f} mm, spacing: {spacing:f} mm",
            "length: 24 mm": f"length: {bar:f} mm",
        },
    )
    result = keeping.check_text(text)
    assert not result.failures and result.ask is not None, result.remarks
    figures = sections(result)
    assert len(figures) > 10
    assert_right(figures, result)
    for figure in figures:
        drawing = root(figure)
        assert float(drawing.get("width", "").removesuffix("mm")) < 260
        assert float(drawing.get("height", "").removesuffix("mm")) < 220
        assert all(at(circle, "r") > 0 for circle in shapes(figure, "circle"))
        assert not re.search(r"[ \"](nan|-?inf)[ \"]", figure.svg)
