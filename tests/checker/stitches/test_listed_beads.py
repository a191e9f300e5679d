"""Tubes whose beads are listed, one for each column or each round: sizes, counts, refusals."""

from __future__ import annotations

import math

import pytest

from ropes import checked, quantities, told
from wellstrung.plugins.host import Host

PEYOTE = "kind: woven rope, stitch: tubular peyote"
HERRINGBONE = "kind: woven rope, stitch: tubular herringbone"
#: print strings 6, 2, 2, 2, 2, 2 for a ring of 16 (`Cellini spiral tutorial`, excerpt seen)
SPIRAL = (
    f"{PEYOTE}, beads: [{{repeat: 6, of: [seed]}}, {{repeat: 10, of: [fat]}}], one_for: each column"
)
#: seeds 2 mm x 1.5 mm, fat ones 3 mm x 2 mm
SWELLS = (
    "beads: [{repeat: 10, of: [seed]}, {repeat: 6, of: [fat]}, seed, seed], one_for: each round"
)


def test_a_list_for_each_column_counts_the_ring_and_makes_a_ridge(installed: Host) -> None:
    rope = quantities(installed, f"{SPIRAL}, rounds: 100")
    pitch = (6 * 1.5 + 10 * 2.0) / 16 * 1.05
    ring = pitch / math.tan(math.pi / 16)
    assert rope["outside"] == round(ring + 3.0, 2)
    assert rope["inside"] == round(ring - 3.0, 2)
    assert rope["beads"] == 800
    assert rope["mass"] == round(300 / 100 + 500 / 40, 2)
    assert "narrowest" not in rope


def test_columns_that_differ_rise_less_than_their_mean_and_no_less_than_the_least(
    installed: Host,
) -> None:
    rope = checked(installed, f"{SPIRAL}, rounds: 100").quantities["rope.rise"]
    mean = (6 * 2.0 + 10 * 3.0) / 16 / 2
    assert 1.0 < rope.middle < mean
    assert rope.worst.low < 1.0 + 0.3 * (mean - 1.0) and rope.worst.high > mean


def test_columns_of_one_size_are_a_plain_rope(installed: Host) -> None:
    plain = quantities(installed, f"{PEYOTE}, around: 12, beads: seed, length: 20 cm")
    listed = f"{PEYOTE}, beads: [{{repeat: 12, of: [seed]}}], one_for: each column, length: 20 cm"
    assert quantities(installed, listed) == plain


@pytest.mark.parametrize(
    ("rope", "wide", "narrow", "rises"),
    [
        (f"{PEYOTE}, around: 12, {SWELLS}", 2.1, 1.575, (2.0, 3.0)),
        (f"{HERRINGBONE}, around: 6, {SWELLS}", 0, 0, (1.5, 2.0)),
    ],
)
def test_a_list_for_each_round_swells_and_counts_each_bead(
    rope: str, wide: float, narrow: float, rises: tuple[float, float], installed: Host
) -> None:
    found = quantities(installed, rope)
    seed, fat = rises
    assert found["rounds"] == 18
    share = 0.5 if wide else 1.0
    assert found["length"] == pytest.approx((12 * seed + 6 * fat) * share, abs=0.05)
    assert found["beads"] == 18 * 6
    assert found["mass"] == round(12 * 6 / 100 + 6 * 6 / 40, 2)
    sizes = (3.0, 2.0)
    if wide:
        outside, narrowest = (
            pitch / math.tan(math.pi / 12) + d
            for pitch, d in zip((wide, narrow), sizes, strict=True)
        )
    else:
        outside, narrowest = (3 * d for d in sizes)
    assert found["outside"] == pytest.approx(outside, abs=0.01)
    assert found["narrowest"] == pytest.approx(narrowest, abs=0.01)
    assert found["first_end"] == found["last_end"] == found["narrowest"]


def test_a_list_of_rounds_comes_again_and_may_end_within_it(installed: Host) -> None:
    """Of thirty rounds of a list of eighteen the last has the second fat bead."""
    found = quantities(installed, f"{PEYOTE}, around: 12, {SWELLS}, rounds: 30")
    assert found["beads"] == 180
    assert found["mass"] == round((12 + 10) * 6 / 100 + (6 + 2) * 6 / 40, 2)
    assert found["last_end"] == found["outside"] > found["first_end"]


def test_a_list_of_rounds_over_a_length_takes_its_shares(installed: Host) -> None:
    by_length = quantities(installed, f"{PEYOTE}, around: 12, {SWELLS}, length: 105 mm")
    assert by_length["rounds"] == pytest.approx(105 / (21 / 18), abs=0.05)


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            f"{PEYOTE}, around: 12, beads: seed, one_for: each round, length: 5 cm",
            "`rope` has `one_for: each round` and no list of beads: write one for each round, such"
            " as `beads: [sand, sand, kelp, kelp]`",
        ),
        (
            f"{PEYOTE}, around: 14, {SPIRAL.partition(', ')[2].partition(', ')[2]}, length: 5 cm",
            "`rope` lists 16 beads, one for each column, and has `around: 14`: write `around: 16`,"
            " or list a bead for each of its columns",
        ),
        (
            f"{PEYOTE}, each_round: 6, beads: [seed, seed, fat, fat], one_for: each column,"
            " length: 5 cm",
            "`rope` lists 4 beads, one for each column, and has `each_round: 6`: write"
            " `each_round: 2`, or list a bead for each of its columns",
        ),
        (
            f"{PEYOTE}, around: 12, {SWELLS}, rounds: 9",
            "`rope` lists 18 beads, one for each round, and has `rounds: 9`: write `rounds: 18`,"
            " or list a bead for each of its rounds",
        ),
        (
            f"{PEYOTE}, {SWELLS}",
            "`rope` does not say how many beads go around: write `around: 12`",
        ),
        (
            f"{HERRINGBONE}, beads: [seed, seed, fat], one_for: each column, length: 5 cm",
            "`rope` has 3 beads around, too few to close a tube: write a list of 4 beads or more",
        ),
        (
            f"{PEYOTE}, beads: [seed, seed, fat, fat, fat], one_for: each column, length: 5 cm",
            "`rope` has 5 beads around, and even tubular peyote needs an even ring: write a list of"
            " 4 or 6 beads, or `stitch: odd tubular peyote`",
        ),
        (
            "kind: woven rope, stitch: slip-stitch bead crochet, around: 6, beads: [seed, fat],"
            " one_for: each column, length: 5 cm",
            "`rope` has `one_for`, and tubular peyote and herringbone list a bead for each round or"
            " column: take it out, or write `stitch: tubular peyote`",
        ),
    ],
)
def test_what_a_list_cannot_be(rope: str, says: str, installed: Host) -> None:
    assert told(installed, rope) == [says]


def test_a_rope_needs_its_length_unless_its_rounds_are_listed(installed: Host) -> None:
    result = checked(installed, SPIRAL)
    assert not result.readable


def test_over_a_length_nobody_knows_with_which_round_it_ends(installed: Host) -> None:
    found = quantities(installed, f"{PEYOTE}, around: 12, {SWELLS}, length: 105 mm")
    assert "last_end" not in found and found["first_end"] == found["narrowest"]
