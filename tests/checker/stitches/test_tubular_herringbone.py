"""Tubular herringbone, straight and twisted: beads placed in space, counted and measured."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import Point, across, apart, checked, quantities, told
from wellstrung.plugins.host import Host
from wellstrung.stitches import tubular_herringbone as herringbone

stacks = st.integers(2, 12).map(lambda half: 2 * half)
sizes = st.floats(0.8, 4.5)


def woven(bead: float, count: int, step: float, rounds: int, turn: float = 0.0) -> list[Point]:
    """The middles of a tube's beads: stacks moved out from the axis until neighbours touch."""
    near, far = 0.0, bead * count
    for _ in range(80):  # halve until the neighbours are just a bead apart
        middle = (near + far) / 2
        ring = [math.tau * k / count for k in range(2)]
        gap = math.dist(*[(middle * math.cos(a), middle * math.sin(a)) for a in ring])
        near, far = (middle, far) if gap < bead else (near, middle)
    return [
        (
            far * math.cos(math.tau * k / count + turn * n),
            far * math.sin(math.tau * k / count + turn * n),
            n * step,
        )
        for n in range(rounds)
        for k in range(count)
    ]


@given(sizes, stacks)
def test_outside_and_bore_of_placed_beads(bead: float, count: int) -> None:
    tube = woven(bead, count, 1.0, 1)
    assert apart(tube[0], tube[1]) == pytest.approx(bead)
    assert herringbone.outside(bead, count) == pytest.approx(across(tube, bead))
    bore = 2 * min(math.hypot(x, y) for x, y, _ in tube) - bead
    assert herringbone.inside(bead, count) == pytest.approx(max(0.0, bore), abs=1e-9)


def test_settled_stacks_are_slimmer_and_the_bore_closes_first() -> None:
    assert herringbone.outside(2.0, 6, 0.9) == pytest.approx(5.4)
    assert herringbone.inside(2.0, 6, 0.9) == pytest.approx(1.4)
    assert herringbone.inside(2.0, 4, 0.8) == 0.0


@given(sizes, sizes, stacks)
def test_more_or_fatter_beads_never_make_a_slimmer_tube(a: float, b: float, count: int) -> None:
    small, large = sorted((a, b))
    assert herringbone.outside(small, count) <= herringbone.outside(large, count)
    assert herringbone.outside(a, count) < herringbone.outside(a, count + 2)


ROPE = "kind: woven rope, stitch: tubular herringbone, around: 6, beads: seed"


def test_quantities_of_a_straight_rope(installed: Host) -> None:
    tube = woven(2.0, 6, 1.5, 100)
    assert quantities(installed, f"{ROPE}, length: 15 cm") == {
        "outside": round(across(tube, 2.0), 2),
        "inside": 2.0,
        "length": 150.0,
        "rise": 1.5,
        "rounds": 100.0,
        "beads": len(tube),
        "mass": 6.0,
        "thread": 600 * (2 * 1.5 + 0.8 * 2.0) + 100 * 1.5,
        "along": 150.0,
    }


def test_the_tolerance_of_a_tube_is_the_hand_s(installed: Host) -> None:
    found = checked(installed, f"{ROPE}, rounds: 100").quantities
    assert found["rope.outside"].worst == pytest.approx((5.4, 6.18))
    assert found["rope.length"].worst == pytest.approx((142.5, 165.0))
    assert found["rope.outside"].chief_cause is not None
    assert "weave 2 cm" in found["rope.outside"].chief_cause[0].cure


def test_twisted_takes_more_beads_and_thread_for_the_same_length(installed: Host) -> None:
    straight = quantities(installed, f"{ROPE}, length: 15 cm")
    twisted = quantities(installed, f"{ROPE.replace('tubular', 'twisted')}, length: 15 cm")
    turn = math.acos(0.905)  # the lean that leaves 0.905 of a bead in the rope's length
    assert twisted["rounds"] == pytest.approx(150 / (1.5 * math.cos(turn)), abs=0.01)
    assert twisted["outside"] == straight["outside"]
    for what in ("rounds", "beads", "mass", "thread"):
        assert twisted[what] > 1.06 * straight[what]


@pytest.mark.parametrize("stitch", ["tubular", "twisted"])
def test_length_and_rounds_are_one_thing(stitch: str, installed: Host) -> None:
    rope = ROPE.replace("tubular", stitch)
    by_length = quantities(installed, f"{rope}, length: 200 mm")
    by_rounds = quantities(installed, f"{rope}, rounds: 100")
    again = quantities(installed, f"{rope}, length: {by_rounds['length']} mm")
    assert again["rounds"] == pytest.approx(100)
    assert by_length["length"] == 200.0


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            ROPE.replace("around: 6", "around: 7"),
            "`rope` has 7 beads around, and herringbone adds them in pairs: write `around: 6` or"
            " `around: 8`",
        ),
        (
            ROPE.replace("around: 6", "each_round: 5"),
            "`rope` has 5 beads around, and herringbone adds them in pairs: write `each_round: 4`"
            " or `each_round: 6`",
        ),
        (
            ROPE.replace("around: 6", "around: 3"),
            "`rope` has 3 beads around, too few to close a tube: write `around: 4` or more",
        ),
        (
            ROPE.replace("around: 6, ", ""),
            "`rope` does not say how many beads go around: write `around: 6`",
        ),
        (
            ROPE.replace(", beads: seed", ""),
            "`rope` does not say of which bead it is made: write `beads: reed`",
        ),
        (
            ROPE.replace("around: 6", "around: 6, each_round: 6"),
            "`rope` (a woven rope) has `around` and `each_round`: keep one",
        ),
    ],
)
@pytest.mark.parametrize("stitch", ["tubular", "twisted"])
def test_refusals(stitch: str, rope: str, says: str, installed: Host) -> None:
    assert told(installed, f"{rope.replace('tubular', stitch)}, length: 15 cm") == [says]
