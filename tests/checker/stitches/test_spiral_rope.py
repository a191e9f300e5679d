"""Spiral rope: woven stitch by stitch, its beads placed in space, counted and measured."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import checked, quantities, told
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.stitches import spiral_rope as spiral

counts = st.integers(1, 60)
sizes = st.floats(0.8, 4.5)
ROPE = "kind: woven rope, stitch: spiral rope, core_bead: seed, outer: [seed, fat, seed]"


def woven(
    stitches: int, at_start: int, loop: list[float], core: float, fat: float
) -> tuple[int, int, float]:
    """Weave it: core beads, outer beads, and the thread: through beads, and out to the loop.

    A loop that is strung short still spans the core beads it lies beside.
    """
    cores = outer = 0
    thread = 0.0
    for stitch in range(stitches):
        fresh = 1 if stitch else at_start
        cores += fresh
        outer += len(loop)
        thread += fresh * core + sum(loop)  # strung
        thread += fat + max(0.0, at_start * core - sum(loop))  # half a core bead out, half in
        thread += at_start * core  # and up again through the core, the fresh ones among them
    return cores, outer, thread


@given(counts, st.integers(1, 6), st.lists(sizes, min_size=2, max_size=6), sizes, sizes)
def test_beads_and_thread_by_weaving(
    stitches: int, at_start: int, loop: list[float], core: float, fat: float
) -> None:
    cores, _, thread = woven(stitches, at_start, loop, core, fat)
    assert spiral.core_beads(stitches, at_start) == cores
    assert spiral.thread_for(stitches, at_start, core, fat, sum(loop)) == pytest.approx(thread)
    assert spiral.stitches_for(cores * core, core, at_start) == pytest.approx(stitches)


@given(sizes, sizes)
def test_outside_of_beads_on_the_core(core: float, outer: float) -> None:
    """Outer beads wind round the core and touch it; the farthest two points tell the outside."""
    out = (core + outer) / 2
    middles = [(out * math.cos(k), out * math.sin(k), 0.3 * k) for k in range(0, 400)]
    assert math.hypot(*middles[0][:2]) - outer / 2 == pytest.approx(core / 2)  # they touch
    reach = max(math.hypot(x, y) + outer / 2 for x, y, _ in middles)
    assert spiral.outside(core, outer) == pytest.approx(2 * reach)


def test_quantities(installed: Host) -> None:
    cores, outer, thread = woven(97, 4, [1.5, 2.0, 1.5], 1.5, 2.0)
    assert quantities(installed, f"{ROPE}, rounds: 97") == {
        "outside": 2.0 + 2 * 3.0,  # the fattest of the loop
        "rise": round(1.5 * 1.05, 2),
        "length": round(cores * 1.575, 2),
        "rounds": 97.0,
        "core_beads": cores,
        "outer_beads": outer,
        "beads": cores + outer,
        "mass": round((cores + outer * 2 / 3) / 100 + outer / 3 / 40, 2),
        "thread": round(thread, 2),
        "along": round(cores * 1.575, 2),
    }


def test_length_and_stitches_are_one_thing(installed: Host) -> None:
    by_length = quantities(installed, f"{ROPE}, length: 157.5 mm")
    by_stitches = quantities(installed, f"{ROPE}, rounds: 97")
    assert by_length == pytest.approx(by_stitches, abs=0.0101)
    assert quantities(installed, f"{ROPE}, length: 2 mm")["rounds"] == 1.0


def test_a_start_of_its_own_and_shares_of_the_loop(installed: Host) -> None:
    shares = ROPE.replace("[seed, fat, seed]", "{seed: 2, fat: 1}")
    assert quantities(installed, f"{shares}, rounds: 97") == quantities(
        installed, f"{ROPE}, rounds: 97"
    )
    assert quantities(installed, f"{ROPE}, core_at_start: 6, rounds: 97")["core_beads"] == 102.0


def test_doubt_is_of_loops_and_of_the_core(installed: Host) -> None:
    found = checked(installed, f"{ROPE}, rounds: 97").quantities
    assert found["rope.outside"].worst == pytest.approx((0.88 * 8, 1.12 * 8))
    assert found["rope.length"].worst == pytest.approx((150, 165))
    assert found["rope.beads"].worst.low == found["rope.beads"].worst.high


def test_the_thread_of_a_core_bead_is_judged_and_no_thread_of_a_braid(installed: Host) -> None:
    """Print asks for a core hole for 4 passes; a braid's beads are on a cord."""
    rope = f"{ROPE.replace('core_bead: seed', 'core_bead: fat')}, rounds: 97"
    found = checked(installed, f"{rope}, thread: {{type: braided, outside: 0.5 mm}}")
    assert [(r.rule, r.found) for r in found.remarks if r.rule == "hole-passes"] == [
        ("hole-passes", "0.5 mm")
    ]
    braid = checked(installed, "kind: braid, stitch: 8-warp beaded braid, beads: lot, length: 9 cm")
    assert not [left for left in braid.unjudged if left.rule in ("hole-passes", "needle-pass")]


def test_more_stitches_take_more(installed: Host) -> None:
    short = quantities(installed, f"{ROPE}, rounds: 40")
    long = quantities(installed, f"{ROPE}, rounds: 41")
    for what in ("length", "beads", "mass", "thread"):
        assert long[what] > short[what]


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            ROPE.replace("core_bead: seed, ", ""),
            ["`rope` does not say which bead its core is of: write `core_bead: reed`"],
        ),
        (
            ROPE.replace(", outer: [seed, fat, seed]", ""),
            [
                "`rope` does not say which beads go into one outer loop: write"
                " `outer: [sand, sand, sand]`"
            ],
        ),
        (
            f"{ROPE}, around: 6",
            [
                "`rope` has `around`, and a spiral rope is counted by its core: take it out, or"
                " write another stitch"
            ],
        ),
        (
            f"{ROPE}, beads: seed",
            [
                "`rope` has `beads`, and a spiral rope names its `core_bead` and its `outer`: take"
                " it out, or write another stitch"
            ],
        ),
        (
            f"{ROPE}, core: yes",
            [
                "`rope` has `core`, and a spiral rope is filled by the beads of its core: take"
                " it out, or write `core_bead`, the bead of its core"
            ],
        ),
        (f"{ROPE}, core: no", []),
        (
            ROPE.replace("[seed, fat, seed]", "[fat]"),
            [
                "`rope` has one bead in its outer loop, which would lie flat on the core: write two"
                " or more, such as `outer: [sand, sand, sand]`"
            ],
        ),
        (
            ROPE.replace("seed, fat, seed", "seed, fad, seed"),
            ["there is no bead called `fad` in the plan"],
        ),
        (
            ROPE.replace("core_bead: seed", "core_bead: sead"),
            ["there is no bead called `sead`: write `seed`"],
        ),
        (
            "kind: woven rope, stitch: tubular peyote, around: 8, beads: seed, core_bead: fat",
            [
                "`rope` has `core_bead`, and only `spiral rope` takes it: take it out, or write"
                " `stitch: spiral rope`"
            ],
        ),
    ],
)
def test_refusals(rope: str, says: list[str], installed: Host) -> None:
    assert told(installed, f"{rope}, rounds: 97") == says


def test_supplies_are_counted_with_the_beads_of_the_start(installed: Host) -> None:
    """100 stitches: 103 core beads and 100 of the loop are one bead, 200 of the loop the other."""
    plan = (
        "plan: 1\ntitle: Swatch\npiece: necklace\nbeads:\n"
        "  a: {type: round, size: 8/0, make: Japanese}\n"
        "  b: {type: round, size: 11/0, make: Japanese}\nparts:\n"
        "  rope: {kind: woven rope, stitch: spiral rope, core_bead: a, outer: [b, b, a],"
        " rounds: 100}\n"
        "run: [rope]\nsupplies:\n  - {bead: a, count: 203}\n  - {bead: b, count: 200}\n"
    )
    result = Checker(installed).check_text(plan)
    left = [kept.margin for kept in result.held if kept.rule == "beads-enough"]
    assert [margin.middle for margin in left if margin is not None] == [0, 0]
