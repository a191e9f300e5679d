"""Ropes and braids against the few figures that print has; each test names its page.

Bead sizes are those of the trade table `beads`; the figures are those of `stitch_facts`.
"""

from __future__ import annotations

import pytest

from ropes import checked
from wellstrung import tables
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity


def printed(name: str) -> float:
    return tables.load("stitch_facts").row(name).cell("figure").value


def of(host: Host, rope: str, what: str) -> Quantity:
    result = checked(host, rope)
    assert result.readable and not result.count("error"), result.remarks
    return result.quantities[f"rope.{what}"]


CROCHET = "kind: woven rope, stitch: slip-stitch bead crochet"


def test_crochet_15_cm_of_11_around_takes_165_cm(installed: Host) -> None:
    """`How many beads in a beads crochet project?`: 15 cm x 11 = 165 cm, and 10 cm more."""
    strung = of(installed, f"{CROCHET}, around: 11, beads: lot, length: 15 cm", "strung")
    assert strung.middle == pytest.approx(1650)
    ratio = strung.middle / (150 * 11)
    assert ratio == printed("crocheted rope, strung length per finished length and bead around")


def test_crochet_4_ft_strung_are_over_800_beads(installed: Host) -> None:
    """`Bead crochet`: 4 ft, over 800 beads, about 8 in; the beads and 6 around are inferred."""
    rope = f"{CROCHET}, around: 6, beads: lot, length: 8 in"
    strung, beads = (of(installed, rope, what) for what in ("strung", "beads"))
    assert strung.middle == pytest.approx(4 * 12 * 25.4)
    assert 800 < beads.middle < 850
    per_inch = printed("crocheted rope, 6 around, size like 11/0, beads per inch")
    assert beads.likely.low <= 8 * per_inch <= beads.likely.high


def test_crochet_of_48_beads_an_inch_is_not_six_around(installed: Host) -> None:
    """`Bead crochet...`: 48 of 11/0 to an inch, beads around not told: only three around fit."""
    per_inch = printed("crocheted rope of 11/0, beads per inch")
    fitting = [
        around
        for around in range(3, 10)
        for beads in [
            of(installed, f"{CROCHET}, around: {around}, beads: lot, length: 1 in", "beads")
        ]
        if beads.worst.low <= per_inch <= beads.worst.high
    ]
    assert fitting == [3]


def test_braid_20_in_takes_10_in_on_each_of_8_warps(installed: Host) -> None:
    """`Tip #6: how many tubes of seed beads`: 20 in, 10 in on each warp, 80 in in all."""
    rope = "kind: braid, stitch: 8-warp beaded braid, beads: lot, length: 20 in"
    strung, beads = (of(installed, rope, what) for what in ("strung", "beads"))
    assert strung.middle == pytest.approx(10 * 25.4)
    row = "braid on 8 warps, finished length per strung length of a warp"
    assert 20 * 25.4 / strung.middle == pytest.approx(printed(row))
    in_all = beads.middle * tables.load("beads").row("round 11/0 Japanese").cell("length").value
    assert in_all == pytest.approx(80 * 25.4)


@pytest.mark.parametrize("length", ["18 in", "20 in", "22 in", "24 in"])
def test_eight_cords_of_60_in_are_enough_for_a_necklace(length: str, installed: Host) -> None:
    """`Kumihimo instructions for blind braiders`: 60 in each; the multiple of 3 is from memory."""
    rope = f"kind: braid, stitch: 8-warp beaded braid, beads: lot, length: {length}"
    assert of(installed, rope, "cord").worst.low <= 60 * 25.4


def test_peyote_tube_of_12_over_insulated_6_awg_wire(installed: Host) -> None:
    """`Good question`, Bead&Button April 2004: 4 of 6/0 and 8 of 8/0 in the ring.

    Its bore passes the bare wire, and likely an insulation of 0.7 mm too; one of 1 mm needs the
    loosest of the range (how thick insulation is: from memory).
    """
    rope = "kind: woven rope, stitch: tubular peyote, around: 12, rounds: 20"
    found = of(installed, f"{rope}, beads: {{six: 4, eight: 8}}", "inside")
    bare = 0.127 * 92 ** ((36 - 6) / 39)  # ASTM B258
    assert 0 < found.middle - bare < 2 * 1.0 < found.worst.high - bare
    assert found.likely.high - bare > 2 * 0.7
    bore = printed("peyote tube of 4 6/0 and 8 8/0 in the ring, inside")
    assert found.likely.low <= bore <= found.likely.high


def test_herringbone_of_rope_length_takes_45_g(installed: Host) -> None:
    """`Herringbone necklace`: 3 x 15 g of 11/0; ropes start with 6 to 12, on a weak page.

    Six around in 45 g are as long as a rope-length necklace, 30 to 45 in, or a little longer.
    """
    rope = "kind: woven rope, stitch: tubular herringbone, around: 6, beads: lot"
    least, most = (of(installed, f"{rope}, length: {inches} in", "mass") for inches in (30, 45))
    bought = printed("herringbone necklace of rope length, 11/0")
    assert least.likely.high < bought
    assert most.likely.low < bought < most.likely.high


def test_spiral_of_16_stitches_is_a_touch_over_an_inch(installed: Host) -> None:
    """`Estimating and adjusting part 2`: 11/0 core; whether the start's beads count is not told."""
    per_inch = printed("spiral rope of 11/0, stitches per inch")
    rope = "kind: woven rope, stitch: spiral rope, core_bead: lot, outer: [lot, lot, lot]"
    rise = of(installed, f"{rope}, rounds: 100", "rise")
    with_start = of(installed, f"{rope}, rounds: {per_inch:.0f}", "length")
    assert per_inch * rise.middle < 1.02 * 25.4 < with_start.middle
    assert per_inch * rise.likely.high > 25.4 and with_start.likely.low < 1.04 * 25.4
