"""Flat spiral: woven stitch by stitch, its beads counted; how wide its loops make it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropes import quantities, told
from wellstrung.plugins.host import Host
from wellstrung.stitches import flat_spiral as flat

ROPE = "kind: woven rope, stitch: flat spiral, core_bead: fat, outer: [seed, seed, seed, seed]"
sizes = st.floats(0.8, 4.5)


def woven(stitches: int, start: int, core: float, thick: float, loop: float) -> tuple[int, float]:
    """Weave it: its core beads, and its thread through beads, out to each loop and up again."""
    cores, thread = 0, 0.0
    for stitch in range(stitches):
        fresh = 1 if stitch else start
        cores += fresh
        thread += fresh * core
        for _side in range(2):
            thread += loop + max(0.0, start * core - loop) + thick + start * core
    return cores, thread


def test_beads_mass_and_thread_by_weaving(installed: Host) -> None:
    rope = quantities(installed, f"{ROPE}, rounds: 50, core_at_start: 3")
    cores, thread = woven(50, 3, 2.0, 3.0, 6.0)
    assert (rope["core_beads"], rope["outer_beads"]) == (cores, 400) == (52, 400)
    assert rope["thread"] == round(thread, 2)
    assert rope["length"] == round(52 * 2.1, 2)
    assert rope["mass"] == round(52 / 40 + 400 / 100, 2)


def test_a_short_loop_lies_beside_its_core_and_a_long_one_bows_out(installed: Host) -> None:
    short = quantities(installed, f"{ROPE}, rounds: 50")
    assert short["outside"] == short["width"] == 3.0 + 2 * 2.0
    assert short["thickness"] == 3.0
    long = quantities(
        installed, f"{ROPE.replace('[seed', '[seed, seed, seed, seed, seed')}, rounds: 50"
    )
    assert long["outside"] > short["outside"]


@given(sizes, st.floats(1.01, 1.25))
def test_how_far_a_loop_bows(span: float, longer: float) -> None:
    """Against a true arc of a circle, which has that bow over that span."""
    rise = flat.bow(span * longer, span)
    radius = span**2 / 8 / rise + rise / 2
    arc = 2 * radius * math.asin(min(span / 2 / radius, 1.0))
    assert arc == pytest.approx(span * longer, rel=0.02)


@pytest.mark.parametrize(
    ("rope", "says"),
    [
        (
            ROPE.replace("core_bead: fat, ", ""),
            "`rope` does not say which bead its core is of: write `core_bead: reed`",
        ),
        (
            f"{ROPE}, around: 6",
            "`rope` has `around`, and a spiral rope is counted by its core: take it out, or write"
            " another stitch",
        ),
    ],
)
def test_what_it_refuses(rope: str, says: str, installed: Host) -> None:
    assert told(installed, f"{rope}, length: 5 cm") == [says]
