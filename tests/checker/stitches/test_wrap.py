"""Ladders between two cords: against rows sewn one by one, and a printed bracelet."""

from __future__ import annotations

import math

import pytest

import bands
from wellstrung.judging.checker import Checker
from wellstrung.lists.cutting import listed
from wellstrung.plugins.host import Host
from wellstrung.stitches import wrap

PLAN = bands.PLAN.replace(
    "beads:\n",
    "wearer: {wrist: 17 cm}\nbeads:\n"
    "  facet: {type: other, outside: 4 mm, length: 4 mm, hole: 1 mm, per_gram: 10}\n",
)
LADDER = "beads: facet, stitch: ladder between cords, cords: {outside: 2 mm, type: leather}"


def test_seven_inches_of_four_millimetre_beads_take_45(installed: Host) -> None:
    found = bands.middles(installed, f"{LADDER}, across: 1, length: 7 in", PLAN)
    assert round(found["beads"]) == pytest.approx(45, abs=1)
    assert found["thickness"] == 4
    assert found["width"] == pytest.approx(4 * 1.05 + 2 * 2)


def test_cords_of_a_printed_bracelet(installed: Host) -> None:
    """24 in round the wrist: two cords, each cut 36 in; another page cuts 3.5 in more than that."""
    found = bands.found(installed, f"{LADDER}, across: 1, length: 24 in", PLAN)
    low, high = found["band.cord"].worst
    assert low <= 27.5 * 25.4 + 3 and high >= 36 * 25.4 - 3
    assert found["band.cord_in_all"].middle == 2 * found["band.cord"].middle


def test_thread_by_following_the_needle() -> None:
    """Through both beads, all but round the cord, back, as far round the other, and a step on."""
    path = 2 * 2 * 4 + 2 * 0.95 * math.pi * 2 + 4 / 2
    assert 2 * wrap.thread_per_bead(4, 4, 2, across=2) == pytest.approx(path)


def test_thread_of_printed_bracelets() -> None:
    """18 beads of 8 mm took 10 ft less 3 1/2, doubled, with knots and a wrapping at both ends.

    A kit for one wrap of beads of 4 mm between cords of 1.5 mm has 4 1/2 ft.
    """
    taken, used = 18 * wrap.thread_per_bead(8, 8, 2, across=1), (10 - 3.5) / 2 * 304.8
    assert 2 * 100 < used - taken < 2 * 250  # what is left for either end
    kit = 38 * wrap.thread_per_bead(4, 4, 1.5, across=1)
    assert 2 * 150 < 4.5 * 304.8 - kit < 2 * 350


def test_each_wrap_goes_round_the_wrist(installed: Host) -> None:
    once = bands.found(installed, f"{LADDER}, across: 1, length: 18 cm", PLAN)
    thrice = bands.found(installed, f"{LADDER}, across: 1, wraps: 3, length: 54 cm", PLAN)
    assert thrice["piece.inside"].middle == pytest.approx(once["piece.inside"].middle)


def test_what_it_refuses(installed: Host) -> None:
    assert bands.refused(
        installed, "beads: facet, stitch: ladder between cords, across: 1, rows: 5", PLAN
    ) == ["`band` does not say how thick its two cords are: write `cords: {outside: 2 mm}`"]
    (says,) = bands.refused(
        installed, "beads: facet, stitch: ladder, cords: {outside: 2 mm}, across: 1, rows: 5", PLAN
    )
    assert says == "`band` has `cords`, which ladder stitch does not use: take it out"


def test_its_cords_hold_the_clasp(installed: Host) -> None:
    """Its thread needs no tail to sew the clasp on, and the cords are cut with loop and knots."""
    fields = (
        f"{LADDER}, wraps: 3, length: 53 cm, thread: {{type: fused, rating: 8 lb, tail: 16 cm}}"
    )
    plan = PLAN.replace(
        "run: [band]",
        "  end: {kind: clasp, type: button and loop, closed_length: 2 cm}\n"
        "run: [end.a, band, end.b]",
    ).replace("BAND", fields)
    result = Checker(installed, keep=True).check_text(plan)
    assert not [one for one in result.remarks if one.rule == "tail-allowance"]
    assert result.ask is not None
    (cord,) = [one for one in listed([result.ask.quantities]).lengths if one.what == "cord"]
    assert cord.count == 2 and cord.notes == ("loop and knots included",)
