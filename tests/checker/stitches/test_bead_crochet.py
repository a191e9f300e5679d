"""Slip-stitch bead crochet: hooked bead by bead off a strung thread, and measured."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import Point, across, checked, quantities, told
from wellstrung.plugins.host import Host
from wellstrung.stitches import bead_crochet as crochet

ROPE = "kind: woven rope, stitch: slip-stitch bead crochet, around: 5, beads: seed"


def hooked(around: int, strung: float, bead_length: float, bead: float) -> list[Point]:
    """Take bead after bead off the thread; each stands on end beside the one before, in a spiral.

    A bead and the bead one round later stand on each other, so each rises an Nth of a length.
    """
    out = bead / (2 * math.sin(math.pi / around))
    middles: list[Point] = []
    left = strung
    while left > bead_length - 1e-9:
        turn = math.tau * len(middles) / around
        rise = bead_length * len(middles) / around
        middles.append((out * math.cos(turn), out * math.sin(turn), rise))
        left -= bead_length
    return middles


@given(st.integers(3, 14), st.integers(10, 300), st.floats(0.9, 2.7))
def test_strung_is_finished_times_around(around: int, beads: int, bead: float) -> None:
    rope = hooked(around, crochet.strung(beads, bead), bead, 2.0)
    assert len(rope) == beads
    finished = rope[-1][2] - rope[0][2] + bead / around  # each bead has its Nth of the length
    assert crochet.strung(beads, bead) == pytest.approx(finished * around)


def test_quantities(installed: Host) -> None:
    rope = hooked(5, 750.0, 1.5, 2.0)
    step = math.dist(rope[0][:2], rope[1][:2])
    assert step == pytest.approx(2.0)  # neighbours touch
    assert quantities(installed, f"{ROPE}, length: 15 cm") == {
        "outside": round(across(rope, 2.0), 2),
        "inside": round(across(rope, 2.0) - 4, 2),
        "length": 150.0,
        "rise": 1.5,
        "rounds": 100.0,
        "beads": len(rope),
        "strung": 750.0,
        "mass": 5.0,
        "thread": 2750.0,
        "along": 150.0,
    }


def test_strung_is_as_sure_as_the_rounds_are(installed: Host) -> None:
    """For a given length the hook decides how much is strung; the length of a bead does not."""
    found = checked(installed, f"{ROPE.replace('seed', 'lot')}, length: 15 cm").quantities
    strung = found["rope.strung"]
    assert strung.middle == pytest.approx(750)
    assert strung.worst == pytest.approx((149 * 5 / 1.05, 151 * 5 / 0.95), rel=0.02)
    assert found["rope.thread"].worst.high > 1.3 * found["rope.thread"].middle


def test_length_and_rounds_are_one_thing(installed: Host) -> None:
    assert quantities(installed, f"{ROPE}, length: 15 cm") == quantities(
        installed, f"{ROPE}, rounds: 100"
    )


def test_more_around_takes_more_of_everything(installed: Host) -> None:
    five = quantities(installed, f"{ROPE}, length: 15 cm")
    six = quantities(installed, f"{ROPE.replace('around: 5', 'around: 6')}, length: 15 cm")
    for what in ("outside", "inside", "beads", "strung", "mass", "thread"):
        assert six[what] > five[what]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "around: 5",
            "around: 2",
            "`rope` has 2 beads around, too few to close a ring: write `around: 3` or more",
        ),
        (
            "around: 5, ",
            "",
            "`rope` does not say how many beads go around: write `around: 6`",
        ),
        (
            ", beads: seed",
            "",
            "`rope` does not say of which bead it is made: write `beads: reed`",
        ),
    ],
)
def test_refusals(old: str, new: str, says: str, installed: Host) -> None:
    assert told(installed, f"{ROPE.replace(old, new)}, length: 15 cm") == [says]
