"""Tubular square stitch: against beads laid end to end round a ring, and what it refuses."""

from __future__ import annotations

import math

import pytest

import ropes
from wellstrung.plugins.host import Host

ROPE = "kind: woven rope, stitch: tubular square, beads: seed"


def test_a_ring_of_beads_end_to_end(installed: Host) -> None:
    found = ropes.quantities(installed, f"{ROPE}, around: 8, rounds: 50")
    across = 1.5 * 1.05 / math.tan(math.pi / 8)
    assert found["outside"] == pytest.approx(across + 2, abs=0.01)
    assert found["inside"] == pytest.approx(across - 2, abs=0.01)
    assert found["rise"] == 2
    assert (found["beads"], found["length"]) == (400, 100)
    assert found["thread"] == pytest.approx(400 * (3 * 1.5 + 1.5 * 2) + 50 * (1.5 + 2))


def test_it_is_as_wide_as_peyote_and_half_as_quick(installed: Host) -> None:
    peyote = ropes.quantities(installed, f"{ROPE}, around: 12, length: 10 cm".replace(
        "tubular square", "tubular peyote"))  # fmt: skip
    square = ropes.quantities(installed, f"{ROPE}, around: 12, length: 10 cm")
    assert square["outside"] == peyote["outside"]
    assert square["beads"] == pytest.approx(peyote["beads"])


@pytest.mark.parametrize("said", ["square", "square stitch", "tubular square stitch"])
def test_words_of_the_trade(installed: Host, said: str) -> None:
    rope = f"{ROPE}, around: 8, length: 10 cm".replace("tubular square", said)
    assert ropes.checked(installed, rope).readable


def test_two_beads_are_no_ring(installed: Host) -> None:
    result = ropes.checked(installed, f"{ROPE}, around: 2, length: 10 cm")
    assert [one.says for one in result.remarks if one.level in ("slip", "error")] == [
        "`rope` has 2 beads around, too few to close a ring: write `around: 3` or more"
    ]
