"""Thread in holes and knots against printed figures (copies seen).

Holes: a page on wrap bracelets (a 0.5 mm hole with two threads in it refuses a 0.4 mm needle), a
bead shop's page on choosing thread (nylon D passes an 11/0 three times, no more) and a page on
smallest beads (fewer than five passes). Knots: tests of rope (Plymouth Cordage 1946, Day 1970,
Dent/USDA 1964, as cited by Jacobson), sutures (Naleway 2015). How thick needles and nylon are is
from memory (trade tables `needles` and `threads`); print has the limits alone.
"""

from __future__ import annotations

import pytest

from wellstrung import tables
from wellstrung.formulas.thread import (
    hole_needed,
    passes_possible,
    strength_left,
    threads,
)
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

FACTS = tables.load("stitch_facts")
BEADS = tables.load("beads")
NEEDLES = tables.load("needles")
KNOTS = tables.load("knots")
STRAND = """\
plan: 1
title: Pearls
piece: necklace
beads: {{pearl: {{type: other, outside: {pearl} mm, length: {pearl} mm}}}}
parts: {{strand: {{kind: strand, stitch: knotted, beads: pearl, length: 60 in, thread: {thread}}}}}
run: [strand]
"""


def test_two_threads_in_a_hole_of_half_a_millimetre_refuse_a_needle() -> None:
    """0.51 mm is needed with thread of 0.2 mm; the empty hole lets the needle in."""
    assert hole_needed(needle=0.4, thread=0.2, there=2) == pytest.approx(0.51, abs=0.005)
    assert passes_possible(hole=0.5, needle=0.4, thread=0.2) == 2


def test_nylon_d_passes_an_11_three_times_and_no_more() -> None:
    """Needle 10, hole 0.70 mm: 0.65 mm for the third pass, 0.72 mm for the fourth."""
    needle = NEEDLES.row("beading 10").cell("wire").value
    nylon = tables.load("threads").row("nylon D").cell("diameter").value
    hole = BEADS.row("round 11/0 Czech").cell("hole").value
    assert (needle, nylon, hole) == (0.46, 0.28, 0.70)
    assert hole_needed(needle, nylon, there=2) == pytest.approx(0.65, abs=0.01)
    assert hole_needed(needle, nylon, there=3) == pytest.approx(0.72, abs=0.005)
    printed = tables.load("threads").row("nylon D").cell("passes").value
    assert passes_possible(hole, needle, nylon) == printed == 3


@pytest.mark.parametrize("bead", ["round 15/0 Japanese", "round 15/0 Czech", "round 13/0 Czech"])
def test_the_smallest_beads_take_fewer_than_five_passes(bead: str) -> None:
    """In the smallest hole of the table, with needle 12 and nylon B.

    The nominal 0.6 mm hole of Japanese 15/0 gives just five.
    """
    needle = NEEDLES.row("beading 12").cell("wire").value
    nylon = tables.load("threads").row("nylon B").cell("diameter").value
    hole = BEADS.row(bead).cell("hole")
    fewer_than = FACTS.row("passes of a smallest bead").cell("figure").value
    assert 1 <= passes_possible(hole.low, needle, nylon) < fewer_than == 5
    assert passes_possible(0.6, needle, nylon) == 5


def test_a_working_length_of_two_yards_with_tails_of_ten_inches() -> None:
    """Two yards and tails of 10 in (a bead magazine of 2004, copy seen) leave 52 in."""
    yards, tail = 2 * 914.4, 254.0
    assert threads(52 * 25.4, yards, tail) == 1
    assert threads(52 * 25.4 + 1, yards, tail) == 2


@pytest.mark.parametrize(
    ("knot", "per_cent"),
    [
        ("overhand", 45),
        ("reef", 45),
        ("sheepshank", 45),
        ("figure eight", 48),
        ("bowline", 60),
        ("anchor bend", 70),
        ("timber hitch", 70),
        ("clove hitch", 75),
        ("two half hitches", 75),
        ("clinch in monofilament", 80),
        ("short splice", 90),
        ("eye splice", 95),
        ("any other knot", 50),
    ],
)
def test_a_line_of_100_n_with_a_knot(knot: str, per_cent: float) -> None:
    assert strength_left(100, KNOTS.row(knot).cell("left").value) == pytest.approx(per_cent)


def test_an_overhand_may_cost_65_per_cent_in_nylon() -> None:
    assert strength_left(100, KNOTS.row("overhand").cell("left").low) == pytest.approx(100 - 65)


@pytest.mark.parametrize(("pearl", "silk", "lines"), [(6, 0.4, 1), (7, 0.5, 1), (8, 0.4, 2)])
def test_a_knotted_strand_of_60_in_took_107_in(
    pearl: float, silk: float, lines: int, installed: Host
) -> None:
    """`Knotted pearls not so easy`: 10 ft of silk, 13 in left; pearls and silk are not stated."""
    thread = f"{{type: silk, outside: {silk} mm}}, passes: {lines}"
    text = STRAND.format(pearl=pearl, thread=thread)
    found = Checker(installed, quantities=True).check_text(text).quantities
    used = found["strand.thread"].likely
    assert used.low / lines < 107 * 25.4 < used.high / lines


def test_an_overhand_takes_what_print_has_and_no_more_than_the_tightest_ring() -> None:
    """1/4 in of 0.8 mm waxed cord on one page (copy seen), which is taken as the least.

    The tightest trefoil spliced to a ring is 32.74 radii long (an encyclopedia) or 32.86 (Starostin
    and van der Heijden, J. Phys. Conf. Ser. 544, 012007): copies seen. In an open line the knot is
    drawn from both ends, takes less, and is tied looser by hand.
    """
    takes, adds = (KNOTS.row("overhand").cell(what) for what in ("takes", "adds"))
    assert takes.low == pytest.approx(25.4 / 4 / 0.8, abs=0.1)
    for ring in (32.74 / 2, 32.86 / 2):
        assert takes.value + adds.value < ring
        assert takes.high + adds.high == pytest.approx(ring, rel=0.03)


def test_a_figure_eight_takes_more_by_as_much_as_the_tightest_ring_of_it() -> None:
    """21.0 lines to 16.4: that of the figure eight is from memory, no copy was seen."""
    eight, one = (KNOTS.row(knot).cell("takes") for knot in ("figure eight", "overhand"))
    for end in ("low", "value", "high"):
        assert getattr(eight, end) == pytest.approx(getattr(one, end) * 21.04 / 16.37, abs=0.1)


def test_a_figure_eight_is_as_wide_as_an_overhand_or_wider_up_to_two() -> None:
    """`Stopper knots` has it no wider, `Figure 8 Knot` wider and below a double overhand."""
    eight, one, two = (
        KNOTS.row(knot).cell("across") for knot in ("figure eight", "overhand", "double overhand")
    )
    assert one.low == eight.low and one.value <= eight.value < eight.high == two.value


@pytest.mark.parametrize(("cord", "taken"), [(1.5, 30), (3, 50), (5, 60)])
def test_a_square_knot_over_cords_takes_what_is_printed(cord: float, taken: float) -> None:
    """`How to Calculate the Right Amount of Cord` (copy seen): 3, 5 and 6 cm of either cord."""
    cell = KNOTS.row("square over two cords").cell("takes")
    assert cell.low <= taken / cord <= cell.high


def test_ten_inches_are_enough_for_a_sliding_knot_of_square_knots(installed: Host) -> None:
    """`How to Make Cord Bracelet Adjustable` (copy seen): 4 to 6 square knots, 10 in of cord."""
    text = """\
plan: 1
title: Cord
piece: bracelet
beads: {pearl: {type: other, outside: 6 mm, length: 6 mm}}
parts:
  row: {kind: strand, stitch: strung, beads: pearl, count: 20, thread: {type: nylon, outside: 1 mm}}
  slider: {kind: clasp, type: sliding knots, sliding: {ends: 8 cm, knots: 1, turns: TURNS}}
run: [slider.a, row, slider.b]
"""
    few, many = (
        Checker(installed, quantities=True)
        .check_text(text.replace("TURNS", str(turns)))
        .quantities["slider.cord"]
        .likely
        for turns in (4, 6)
    )
    assert few.low < 254 < many.high and few.high == pytest.approx(260)


def test_a_suture_of_56_1_n_breaks_at_34_3_n_knotted() -> None:
    """61 % is left; the shares of rope, an overhand's 45 %, do not promise more than that."""
    left = KNOTS.row("knotted suture").cell("left").value
    assert strength_left(56.1, left) == pytest.approx(34.3, abs=0.1)
    assert strength_left(56.1, KNOTS.row("overhand").cell("left").value) < 34.3
    assert strength_left(56.1, KNOTS.row("any other knot").cell("left").value) < 34.3
