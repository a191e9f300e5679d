"""What thickness costs round a wrist: three printed forms of one geometry.

strung length = wrist + ease + pi x thickness (`Bracelet length versus wrist size`), inner
circumference + 3.14 x thickness (`Calculating length of metal for bangles`), and `add three beads`
(`How do you determine the correct bracelet length?`): copies seen, trade table `bracelet_eases`.
"""

from __future__ import annotations

import math

import pytest

from wellstrung.derived.piece import inside_length


@pytest.mark.parametrize("bead", [4, 6, 8, 10, 12])
def test_wrist_ease_and_pi_times_thickness(bead: float) -> None:
    wrist, ease = 165.0, 19.05  # 3/4 in, a comfortable fit
    strung = wrist + ease + math.pi * bead
    assert inside_length(strung, bead) == pytest.approx(wrist + ease)


@pytest.mark.parametrize("bead", [4, 6, 8, 10, 12])
def test_three_beads_more_are_nearly_pi_beads(bead: float) -> None:
    """The printed rule of thumb leaves 0.14 of a bead less than the geometry."""
    assert inside_length(180 + 3 * bead, bead) == pytest.approx(180 - 0.1416 * bead, abs=1e-3)


def test_metal_of_a_bangle() -> None:
    """2.5 in inside of metal 2 mm thick: (63.5 + 2) x pi = 205.8 mm of metal."""
    assert inside_length((63.5 + 2) * math.pi, 2) == pytest.approx(63.5 * math.pi)
