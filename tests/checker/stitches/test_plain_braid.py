"""Plain braid: round cords laid in a circle, and what it refuses."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import checked, quantities, told
from wellstrung.plugins.host import Host
from wellstrung.stitches import plain_braid as braid

ROPE = "kind: braid, stitch: plain braid, cord: {outside: 2 mm}, length: 40 cm"


@given(st.floats(0.3, 4.0))
def test_eight_cords_laid_out(cord: float) -> None:
    """Seven round one: none lies in another, and the circle about them all is the outside."""
    out = cord / (2 * math.sin(math.pi / 7))
    middles = [(0.0, 0.0)] + [
        (out * math.cos(math.tau * k / 7), out * math.sin(math.tau * k / 7)) for k in range(7)
    ]
    gaps = [math.dist(a, b) for n, a in enumerate(middles) for b in middles[:n]]
    assert min(gaps) == pytest.approx(cord)
    assert braid.outside(cord, 8) == pytest.approx(2 * out + cord)


@given(st.integers(4, 19), st.floats(0.3, 4.0))
def test_more_cords_are_never_thinner_and_hold_their_own_area(warps: int, cord: float) -> None:
    assert braid.outside(cord, warps) <= braid.outside(cord, warps + 1)
    assert braid.outside(cord, warps) > cord * math.sqrt(warps)


def test_quantities(installed: Host) -> None:
    outside = round(2 + 2 / math.sin(math.pi / 7), 2)
    assert quantities(installed, ROPE) == {
        "outside": outside,
        "length": 400.0,
        "cord": 1200.0,
        "cord_in_all": 9600.0,
        "nub.outside": outside,
        "along": 400.0,
    }


def test_what_is_measured_or_said_beats_the_model(installed: Host) -> None:
    more = "warps: 16, nub: {outside: 7 mm, length: 10 mm}, measured: {outside: 8.2 mm, mass: 12 g}"
    found = quantities(installed, f"{ROPE}, {more}")
    assert (found["outside"], found["nub.outside"], found["nub.length"]) == (8.2, 7.0, 10.0)
    assert (found["mass"], found["cord_in_all"]) == (12.0, 16 * 1200.0)


def test_the_doubt_is_how_hard_it_is_pulled(installed: Host) -> None:
    found = checked(installed, ROPE).quantities["rope.outside"]
    assert found.worst == pytest.approx((0.85 * found.middle, 1.15 * found.middle))
    assert found.chief_cause is not None
    assert found.chief_cause[0].cure == (
        "braid 2 cm, measure it, write `measured: {outside: ...}` in `rope`"
    )


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "cord: {outside: 2 mm}, ",
            "",
            "`rope` does not say how thick its cord is: write `cord: {outside: 2 mm}`",
        ),
        (
            "length: 40 cm",
            "length: 40 cm, beads: seed",
            "`rope` has `beads`, and a plain braid has none: take it out, or write"
            " `stitch: 8-warp beaded braid`",
        ),
        (
            "length: 40 cm",
            "length: 40 cm, warps: 24",
            "`rope` has 24 warps, and a plain braid here has 4 to 20: write `warps: 20`, or another"
            " kind of part",
        ),
        (
            "length: 40 cm",
            "length: 40 cm, warps: 3",
            "`rope` has 3 warps, and a plain braid here has 4 to 20: write `warps: 4`, or another"
            " kind of part",
        ),
    ],
)
def test_refusals(old: str, new: str, says: str, installed: Host) -> None:
    assert told(installed, ROPE.replace(old, new)) == [says]
