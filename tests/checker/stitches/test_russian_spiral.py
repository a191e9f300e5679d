"""Russian spiral: a netted tube, its beads counted stitch by stitch, its rounds never too close."""

from __future__ import annotations

import math

import pytest

from ropes import checked, quantities, told
from wellstrung.plugins.host import Host

ROPE = "kind: woven rope, stitch: Russian spiral, around: 3, beads: [fat, seed, seed]"


def test_beads_mass_and_thread_stitch_by_stitch(installed: Host) -> None:
    rope = quantities(installed, f"{ROPE}, rounds: 40")
    stitches = 3 * 40
    assert rope["beads"] == 3 * stitches
    assert rope["mass"] == round(stitches / 40 + 2 * stitches / 100, 2)
    mean_long, mean_thick = (2.0 + 2 * 1.5) / 3, (3.0 + 2 * 2.0) / 3
    each = 2.0 + 2 * 1.5 + mean_long + 0.6 * mean_thick  # its beads, one of those below, its steps
    assert rope["thread"] == pytest.approx(stitches * each, abs=0.05)


def test_outside_over_its_ridge(installed: Host) -> None:
    rope = quantities(installed, f"{ROPE}, rounds: 40")
    ring = 3 * (2.0 + 2 * 1.5) * 0.87 / math.pi
    assert rope["outside"] == round(ring + 3.0, 2)
    assert rope["inside"] == round(ring - 3.0, 2)


def test_its_beads_have_room_on_the_way_round(installed: Host) -> None:
    """What the beads of a round cover is no more than a tenth above what is there."""
    rope = checked(installed, f"{ROPE}, rounds: 40").quantities
    covered = 3 * (2.0 * 3.0 + 2 * 1.5 * 2.0)
    around = 3 * (2.0 + 2 * 1.5) * 0.87
    assert covered / (around * rope["rope.rise"].middle) == pytest.approx(1 / 0.9)


def test_more_stitches_make_it_wider_and_no_longer(installed: Host) -> None:
    three, four = (
        quantities(installed, f"{ROPE.replace('around: 3', f'around: {n}')}, rounds: 40")
        for n in (3, 4)
    )
    assert four["outside"] > three["outside"] and four["rise"] == three["rise"]


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            ROPE.replace("around: 3", "around: 1"),
            "`rope` has 1 stitch around, too few to close a tube: write `around: 2` or more",
        ),
        (
            ROPE.replace("around: 3", "each_round: 9"),
            "`rope` counts 9 beads a round, and a Russian spiral counts the stitches around: write"
            " `around: 3`",
        ),
        (
            ROPE.replace("[fat, seed, seed]", "fat"),
            "`rope` has 1 in a stitch, and a Russian spiral picks up three or more: write them in"
            " their order, such as `beads: [fat, sand, sand]`",
        ),
        (
            f"{ROPE}, one_for: each column",
            "`rope` has `one_for`, and tubular peyote and herringbone list a bead for each round or"
            " column: take it out, or write `stitch: tubular peyote`",
        ),
    ],
)
def test_what_it_refuses(rope: str, says: str, installed: Host) -> None:
    assert told(installed, f"{rope}, length: 5 cm") == [says]
