"""The way round a button against the elliptic integral and the way round a stadium.

The perimeter of an ellipse is 4 a E(m), m = 1 - b^2 / a^2, E the complete elliptic integral of the
second kind: NIST Digital Library of Mathematical Functions, 19.9 and 22.13; E is taken from scipy.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from scipy.special import ellipe

from wellstrung.formulas.findings import edge


@pytest.mark.parametrize(("across", "thick"), [(12, 5), (15, 4), (10, 8), (20, 5), (13, 13)])
def test_an_oval_edge(across: float, thick: float) -> None:
    exact = 2 * across * ellipe(1 - (thick / across) ** 2)
    # two terms of the series: short by 1 % where the button is four times as wide as thick
    assert edge(across, thick, 0) == pytest.approx(exact, rel=0.012)


@pytest.mark.parametrize(("across", "thick"), [(12, 5), (15, 4), (13, 13)])
def test_a_rounded_edge_by_walking_round_it(across: float, thick: float) -> None:
    steps, straight = 20_000, across - thick
    points = []
    for n in range(steps + 1):
        angle = 2 * math.pi * n / steps
        side = straight / 2 if math.cos(angle) >= 0 else -straight / 2
        points.append((side + thick / 2 * math.cos(angle), thick / 2 * math.sin(angle)))
    walked = sum(math.dist(a, b) for a, b in pairwise(points))
    assert edge(across, thick, 1) == pytest.approx(walked, rel=1e-6)


def test_a_ball_is_a_circle_either_way() -> None:
    assert edge(10, 10, 0) == pytest.approx(10 * math.pi) == pytest.approx(edge(10, 10, 1))
