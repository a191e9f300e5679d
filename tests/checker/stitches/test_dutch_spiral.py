"""Dutch spiral: a strip of peyote and a bridge, counted round by round; how wide they make it."""

from __future__ import annotations

import math

import pytest

from ropes import checked, quantities, told
from wellstrung.plugins.host import Host

ROPE = "kind: woven rope, stitch: Dutch spiral, beads: [seed, seed, fat], outer: [seed, seed, seed]"


def test_beads_mass_and_thread_round_by_round(installed: Host) -> None:
    rope = quantities(installed, f"{ROPE}, rounds: 40")
    assert rope["beads"] == 40 * 6
    assert rope["mass"] == round(40 * (5 / 100 + 1 / 40), 2)
    strip = 2 * (1.5 + 1.5 + 2.0) + 0.49 * (2.0 + 2.0 + 3.0)  # twice through each bead, half steps
    assert rope["thread"] == pytest.approx(40 * (strip + 3 * 1.5 + 0.2 * 7 / 3), abs=0.05)


def test_its_range_is_the_hand_s_and_the_beads(installed: Host) -> None:
    found = checked(installed, f"{ROPE}, rounds: 40").quantities["rope.outside"]
    assert found.likely.low < found.middle < found.likely.high


def test_it_is_as_wide_as_two_rounds_and_a_bridge(installed: Host) -> None:
    rope = quantities(installed, f"{ROPE}, rounds: 40")
    columns = 3 * 1.5 + 2 * 2.0  # two of each bead of the strip, but one of the first
    assert rope["outside"] == round((columns * 1.05 + 4.5 * 0.9) / math.pi + 3.0, 2)
    assert rope["rise"] == round(7 / 3 / 2 * 0.92, 2)


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            ROPE.replace("[seed, seed, fat]", "fat"),
            "`rope` has 1 in a round beside its bridge, too few for a strip of peyote: list 3 or"
            " more, such as `beads: [sand, kelp, pebble]`",
        ),
        (
            ROPE.replace(", outer: [seed, seed, seed]", ""),
            "`rope` does not say which beads go into one outer loop: write"
            " `outer: [sand, sand, sand]`",
        ),
        (
            f"{ROPE}, around: 12",
            "`rope` has `around`, and a Dutch spiral is as wide as the beads that it lists: take it"
            " out, or write more `beads`",
        ),
    ],
)
def test_what_it_refuses(rope: str, says: str, installed: Host) -> None:
    assert told(installed, f"{rope}, length: 5 cm") == [says]
