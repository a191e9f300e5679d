"""Rings against the worked example and the coefficients that print has (copies seen).

Eye hook: a worked example, which takes the lever arm to the neutral axis where the formulas take it
to the middle of the section. Closed ring: handbooks of mechanics. What was worked out here is in
`tests/checker/formulas/test_ring_strength.py`.
"""

from __future__ import annotations

import math

import pytest

from wellstrung.formulas.rings import closed_moments, curved_stresses, neutral_radius


def test_the_eye_hook_as_printed() -> None:
    """800 lb at 3.125 in on 1.25 in: 15.8 and -10.5 ksi, rounded."""
    neutral = neutral_radius(3.125, 1.25)
    assert neutral == pytest.approx(3.09343, abs=6e-6)
    stresses = curved_stresses(800, 800 * neutral, 3.125, 1.25)
    assert stresses == pytest.approx((15.8e3, -10.5e3), rel=4e-3)


def test_a_closed_thin_ring_by_the_handbooks() -> None:
    """Under the pull P R / pi, a quarter round P R (1/2 - 1/pi)."""
    under, aside = closed_moments(1, 1, 1e-4)
    assert (under, aside) == pytest.approx((-1 / math.pi, 0.5 - 1 / math.pi), abs=1e-7)
