"""Cup chain: the size of its stones, how many cups a length has, and what is cut from it.

No published figure of cups to a length was found. Sizes of stones are those of one printed table,
and held against another, `PP and SS to mm conversion table`, copy seen, whose last digits differ.
"""

from __future__ import annotations

import math

import pytest

from running import ROOT
from wellstrung import tables
from wellstrung.drawing import looks
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.lists import cutting
from wellstrung.plugins.host import Host
from wellstrung.report import cuts_list

#: the other table: size, mm from and to
PRINTED = [
    ("SS 5", 1.7, 1.9), ("SS 6", 1.9, 2.1), ("SS 8", 2.3, 2.5), ("SS 9", 2.5, 2.7),
    ("SS 12", 3.0, 3.2), ("SS 16", 3.8, 4.0), ("SS 18", 4.2, 4.4), ("SS 20", 4.6, 4.8),
    ("SS 24", 5.27, 5.44), ("SS 28", 5.96, 6.14), ("SS 29", 6.14, 6.32), ("SS 34", 7.07, 7.27),
    ("SS 39", 8.16, 8.41), ("SS 40", 8.41, 8.67), ("PP 9", 1.5, 1.6), ("PP 13", 1.9, 2.0),
    ("PP 14", 2.0, 2.1), ("PP 18", 2.4, 2.5), ("PP 24", 3.0, 3.2), ("PP 31", 3.8, 4.0),
]  # fmt: skip
PLAN = """
plan: 1
title: Lamps along the slip
piece: bracelet
parts:
  front: {front}
  back: {back}
run: [front]
hung: [{{part: back, from: front, by: thread}}]
supplies: [1 m of front]
"""
CHAIN = "kind: chain, type: cup, size: 3 mm, cup: {outside: 4 mm, pitch: 4.5 mm}"


def checked(installed: Host, front: str, back: str = "4 mm jump ring 20 AWG") -> PlanResult:
    checker = Checker(installed, keep=True, quantities=True)
    result = checker.check_text(PLAN.format(front=front, back=back))
    assert result.quantities and result.ask is not None, [one.says for one in result.remarks]
    return result


@pytest.mark.parametrize(("size", "low", "high"), PRINTED)
def test_stones_have_the_sizes_of_another_table(size: str, low: float, high: float) -> None:
    found = tables.load("stone_sizes").row(size).cell("outside")
    assert (found.low, found.high) == pytest.approx((low, high), abs=0.041)


@pytest.mark.parametrize("written", ["SS12", "ss 12", "12ss", "PP24", "pp-24", "24 PP"])
def test_a_size_of_stones_is_a_length(installed: Host, written: str) -> None:
    found = checked(installed, f"{written} cup chain, 10 cups").quantities
    # 3 to 3.2 mm, in cups 1.2 to 1.4 times as wide
    assert found["front.width"].middle == pytest.approx(3.1 * 1.3)
    assert found["front.width"].worst.low == pytest.approx(3.0 * 1.2, abs=0.03)


def test_a_length_is_so_many_whole_cups(installed: Host) -> None:
    found = checked(installed, f"{{{CHAIN}, length: 15 cm}}").quantities
    # 150 = 33 x 4.5 + 1.5: a cut between two cups lies 2.25 mm off at most
    assert found["front.links"].middle == pytest.approx((150 + 0.5) / 4.5)
    assert found["front.length"].middle == 150
    assert found["front.length"].worst == pytest.approx((147.75, 152.25))


def test_so_many_cups_are_a_length(installed: Host) -> None:
    found = checked(installed, f"{{{CHAIN}, cups: 34}}").quantities
    assert found["front.links"].middle == 34
    assert found["front.length"].middle == pytest.approx(33 * 4.5 + 4)
    assert found["uncut front.needed"].middle == pytest.approx(33 * 4.5 + 4)


def test_what_is_said_alike_is_cut_from_one_chain(installed: Host) -> None:
    result = checked(installed, "3 mm cup chain, brass, 34 cups", "3 mm cup chain, brass, 5 cups")
    assert result.ask is not None
    assert [name for name in result.ask.plan.parts if name.startswith("uncut")] == ["uncut front"]
    (chain,) = cutting.listed([result.ask.quantities]).chains
    (bar,) = chain.bars
    assert [cuts_list.counted_off(piece, inches=False) for piece in bar.pieces] == [
        f"34 cups for front, then {CUT}",
        f"5 cups for back, then {CUT}",
    ]
    assert cuts_list.begins(bar) == "count cups from one end, and on from each cut"
    assert bar.lost == 0


CUT = "cut the little link behind its last cup, and trim what is left of it"


def test_a_length_is_measured_off_and_never_counted_by_an_assumed_pitch(
    installed: Host,
) -> None:
    result = checked(installed, "ss12 cup chain, 15 cm", "ss12 cup chain, 34 cups")
    assert result.ask is not None
    (chain,) = cutting.listed([result.ask.quantities]).chains
    assert [cuts_list.counted_off(piece, inches=False) for piece in chain.bars[0].pieces] == [
        f"15 cm to the nearest cup (about 34 cups) for front, then {CUT}",
        f"34 cups for back, then {CUT}",
    ]
    # each keeps its own doubt, though both are 34 cups: where the cut falls, and the pitch
    found = result.quantities
    apart = [
        found[name].likely.high - found[name].likely.low for name in ("front.length", "back.length")
    ]
    both = found["uncut front.needed"].likely
    assert both.high - both.low == pytest.approx(math.hypot(*apart), rel=0.1)


@pytest.mark.parametrize(
    ("written", "length"),
    [("cup chain, ss 12 stones, 15 cm", 150.0), ("cup chain, 15 cm", 150.0)],
)
def test_in_whatever_order_it_is_said(installed: Host, written: str, length: float) -> None:
    result = checked(installed, written, "cup chain end")
    assert result.quantities["front.length"].middle == length and not result.failures
    assert result.ask is not None
    (chain,) = cutting.listed([result.ask.quantities]).chains
    assert chain.describes == ("cup chain ss 12" if "ss" in written else "cup chain")


def test_any_chain_may_say_how_much_is_cut_of_it(installed: Host) -> None:
    found = checked(installed, "cable chain 3 mm, 15 cm").quantities
    assert found["front.length"].middle == pytest.approx(150, abs=2)


def test_a_drawing_has_each_stone_and_tabs_at_both_ends(installed: Host) -> None:
    plan = (ROOT / "sample_plans" / "leading_lights_bracelet.yaml").read_text(encoding="utf-8")
    result = Checker(installed, keep=True).check_text(plan)
    assert result.ask is not None
    sizes, drawn = Sizes(result.ask), {}
    for name in ("lights", "end"):
        canvas, part = Canvas(), result.ask.plan.parts[name]
        looks.shape_of(part).draw(Pen(canvas), sizes, part, 0.0)
        drawn[name] = canvas.svg("", "", "piece")
    assert drawn["lights"].count('class="stone"') == 2 * 38  # each with the facet on its top
    # 36 cups and 37 links between 38 cups
    assert drawn["lights"].count('class="metal"') == 38 + 37
    assert drawn["end"].count('class="metal"') == 3 + 1  # back and two tabs, and its eye
