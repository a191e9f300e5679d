"""Daisy chain and St. Petersburg chain: against units laid bead by bead, and a printed thread."""

from __future__ import annotations

import math

import pytest

import bands
from wellstrung.formulas import thread
from wellstrung.plugins.host import Host
from wellstrung.stitches import chains


def test_daisies_touch_and_are_as_wide_as_their_ring(installed: Host) -> None:
    found = bands.middles(
        installed, "beads: {seed: 8, tube: 1}, stitch: daisy chain, across: 1, loop: 8, rows: 30"
    )
    assert found["beads"] == 270
    assert found["length"] == pytest.approx(29 * found["rise"] + found["width"])
    # the middles of the holes lie on an octagon of sides as long as a petal, whatever lies in it
    outside, length = 2.1, 1.45
    ring = length * 1.05 * (1 + math.sqrt(2))
    assert found["width"] == pytest.approx(ring + outside)
    assert found["rise"] == pytest.approx(ring * math.cos(math.pi / 8) + outside)


@pytest.mark.parametrize("across", [1, 2])
def test_columns_of_saint_petersburg_chain_laid_bead_by_bead(installed: Host, across: int) -> None:
    """Each stands beside the one before it, two beads on; the chain lies straight."""
    found = bands.middles(
        installed, f"beads: seed, stitch: Saint Petersburg chain, across: {across}, rows: 40"
    )
    long, wide = 1.45 * 1.05, 2.1
    step = math.hypot(wide, 2 * long)
    along, aside = 2 * long / step, wide / step  # of the chain, by the columns
    corners = [
        (x * aside + y * along, x * along - y * aside) for x in (0, wide) for y in (0, 6 * long)
    ]
    reach = max(x for x, _ in corners) - min(x for x, _ in corners)
    single = max(y for _, y in corners) - min(y for _, y in corners)
    shared = long * aside + wide * along  # the bead where two chains meet
    assert found["width"] == pytest.approx(across * single - (across - 1) * shared)
    assert found["length"] == pytest.approx(39 * step + reach)
    assert found["beads"] == {1: 242, 2: 444}[across]
    told = bands.middles(
        installed,
        f"beads: seed, stitch: St. Petersburg chain, across: {across},"
        f" length: {found['length']} mm",
    )
    assert told["rows"] == pytest.approx(40)


def test_thread_of_a_printed_bracelet(installed: Host) -> None:
    """7 in of single chain with a tail of 6 in: five feet."""
    found = bands.middles(
        installed, "beads: seed, stitch: Saint Petersburg chain, across: 1, length: 7 in"
    )
    assert found["thread"] + 2 * 152 == pytest.approx(5 * 304.8, rel=0.15)


def test_thread_of_a_daisy_by_following_the_needle() -> None:
    """As printed: two, two of the daisy before, two, six, all eight, two, the middle, two back."""
    path = (2 + 2 + 2 + 6 + 8 + 2 + 1 + 2) * 1.45 + 4.8 * 2.1
    assert 9 * thread.daisy(1.45, 2.1, 8) == pytest.approx(path)
    assert 9 * thread.daisy(1.45, 2.1, 8, rings=1) == pytest.approx(path - 8 * 1.45)


def test_a_ring_may_be_passed_once_or_twice(installed: Host) -> None:
    """Print calls the second time round optional, so that less by a quarter is likely too."""
    band = "beads: {seed: 8, tube: 1}, stitch: daisy chain, across: 1, loop: 8, rows: 30"
    found = bands.found(installed, band)["band.thread"]
    rings = next(cause for cause in found.causes if cause.name.endswith("round its rings"))
    assert found.at({rings: -1}) == pytest.approx(0.75 * found.middle, rel=0.03)
    assert found.at({rings: 1}) == found.middle


def test_thread_of_a_column_by_following_the_needle() -> None:
    """Four picked up, two of them again, one above, three back, one below, two up: thirteen."""
    path = (4 + 2 + 1 + 3 + 1 + 2) * 1.45 + 3.5 * 2.1
    assert 6 * thread.petersburg(1.45, 2.1, 1) == pytest.approx(path)
    assert 11 * thread.petersburg(1.45, 2.1, 2) == pytest.approx(2 * path)
    assert chains.chain_beads(1, 2) - chains.chain_beads(0, 2) == 11


def test_chevrons_laid_bead_by_bead(installed: Host) -> None:
    """Ten beads, then six: each stitch goes through the last edge bead of the other side."""
    band = "beads: seed, stitch: chevron stitch, loop: 10"
    found = bands.middles(installed, f"{band}, rows: 40")
    long, wide = 1.45 * 1.05, 2.1
    edges = {1: [0.0, long, 2 * long], -1: [long / 2]}  # where the first triangle's beads lie
    legs = 2 * 3
    for stitch in range(1, 40):
        side = -1 if stitch % 2 else 1
        edges[side] += [edges[side][-1] + n * long for n in (1, 2, 3)]
        legs += 3
    assert found["beads"] == legs + sum(map(len, edges.values())) == 244
    ends = [at for side in edges.values() for at in side]
    assert found["length"] == pytest.approx(max(ends) - min(ends) + long)
    leg = math.hypot(found["width"] - wide, found["rise"])
    assert leg == pytest.approx(3 * long + wide)
    told = bands.middles(installed, f"{band}, length: {found['length']} mm")
    assert told["rows"] == pytest.approx(40)


def test_thread_of_a_stitch_of_chevron_chain_by_following_the_needle(installed: Host) -> None:
    """Six picked up and one more passed; not far from print of longer loops with two needles.

    A printed chain of loops of 12 takes thread of four times its length, and 14 in.
    """
    assert 6 * thread.chevron(1.45, 2.1, 3) == pytest.approx(7 * 1.45 + 1.5 * 2.1)
    found = bands.middles(installed, "beads: seed, stitch: chevron chain, loop: 10, length: 7 in")
    assert found["thread"] + 2 * 6 * 25.4 == pytest.approx((4 * 7 + 14) * 25.4, rel=0.3)


@pytest.mark.parametrize(
    "stitch", ["daisy chain, loop: 6", "Saint Petersburg chain", "chevron chain, loop: 10"]
)
def test_what_is_narrow_is_one_across_where_the_plan_does_not_say(
    installed: Host, stitch: str
) -> None:
    band = f"beads: seed, stitch: {stitch}, rows: 5"
    assert bands.middles(installed, band) == bands.middles(installed, f"{band}, across: 1")


def test_a_daisy_repeats_its_petals_and_one_middle(installed: Host) -> None:
    band = "beads: [seed, tube, seed, seed], stitch: daisy chain, loop: 6, rows: 5"
    assert bands.refused(installed, band) == [
        "`band` repeats 4 beads, and a daisy takes 7: write its petals and one middle, as"
        " `beads: {seed: 6, tube: 1}`"
    ]


@pytest.mark.parametrize("stitch", ["flat peyote", "brick", "loom", "netting, loop: 5"])
def test_other_bands_say_how_many_go_across(installed: Host, stitch: str) -> None:
    [says] = bands.refused(installed, f"beads: seed, stitch: {stitch}, rows: 5")
    assert says == "`band` does not say how many go across: write `across: 12`"


@pytest.mark.parametrize(
    ("band", "says"),
    [
        (
            "stitch: daisy chain, across: 1, rows: 5",
            ["`band` does not say how many petals a daisy has: write `loop: 8`"],
        ),
        (
            "stitch: daisy chain, across: 1, loop: 7, rows: 5",
            [
                "`band` has `loop: 7`, and the petals of a daisy are an even ring of 6 or more:"
                " write `loop: 8`"
            ],
        ),
        (
            "stitch: daisy chain, across: 2, loop: 6, rows: 5",
            [
                "`band` is 2 across, and daisies of a chain follow each other in one line: write"
                " `across: 1`"
            ],
        ),
        (
            "stitch: chevron chain, rows: 5",
            ["`band` does not say how many beads its first triangle has: write `loop: 10`"],
        ),
        (
            "stitch: chevron chain, loop: 9, rows: 5",
            [
                "`band` has `loop: 9`, and a triangle of chevron chain has 4 beads at its edges and"
                " two legs alike, of 2 or more: write `loop: 10`"
            ],
        ),
        (
            "stitch: chevron chain, across: 2, loop: 10, rows: 5",
            [
                "`band` is 2 across, and chevrons of a chain follow each other in one line: write"
                " `across: 1`"
            ],
        ),
        (
            "stitch: Saint Petersburg chain, across: 3, rows: 5",
            [
                "`band` is 3 across, and a St. Petersburg chain is single or double: write"
                " `across: 2`"
            ],
        ),
        (
            "stitch: Saint Petersburg chain, across: 1, loop: 5, rows: 5",
            ["`band` has `loop`, which St. Petersburg chain does not use: take it out"],
        ),
    ],
)
def test_what_they_refuse(installed: Host, band: str, says: list[str]) -> None:
    assert bands.refused(installed, f"beads: seed, {band}") == says
