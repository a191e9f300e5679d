"""Circles in a circle against the published best ratios and Descartes' theorem.

Equal circles: Graham, Lubachevsky, Nurmela, Östergård 1998, Kravitz 1967, Pirl 1969, Melissen 1994,
Fodor 1999-2003 as cited in the copies seen. Densities printed beside some of those come from
shortened radii (n = 3: 0.6466); recomputed, they are n / R^2.
"""

from __future__ import annotations

import math

import pytest
from scipy.optimize import minimize

from wellstrung.circles import container, equal_ratio, lower_bound

RATIOS = {
    1: 1.00000, 2: 2.00000, 3: 2.15470, 4: 2.41421, 5: 2.70130, 6: 3.00000, 7: 3.00000, 8: 3.30476,
    9: 3.61313, 10: 3.81303, 11: 3.92380, 12: 4.02960, 13: 4.23607, 14: 4.32843, 15: 4.52136,
    16: 4.61543, 17: 4.79203, 18: 4.86370, 19: 4.86370, 20: 5.12232,
}  # fmt: skip
DENSITIES = {3: 0.6462, 4: 0.6863, 8: 0.7325}
#: radii -> radius of the smallest container, not always the outer circle of Descartes' theorem
THREE = {
    (1, 1, 1): 2.154701,
    (3, 2, 1): 5.000000,
    (3, 2, 2): 5.149545,
    (1.5, 1, 1): 2.574773,
    (4, 4, 2): 8.000000,
    (0.6, 0.4, 0.4): 1.029909,
    (1 / 2, 1 / 2, 1 / 3): 1.000000,
}
#: found by numerical search, not proved
MORE = {
    (1, 1, 0.5, 0.5): 2.0,
    (1, 1, 1, 0.5): 2.161702,
    (2, 1, 1, 1): 3.170086,
    (3, 1, 1, 1, 1): 4.192044,
}


@pytest.mark.parametrize("count", RATIOS)
def test_equal_circles(count: int) -> None:
    assert equal_ratio(count) == pytest.approx(RATIOS[count], abs=5.1e-6)
    assert container([0.3] * count) == pytest.approx(0.3 * RATIOS[count], abs=2e-6)


@pytest.mark.parametrize("count", DENSITIES)
def test_densities_recomputed(count: int) -> None:
    assert count / equal_ratio(count) ** 2 == pytest.approx(DENSITIES[count], abs=5e-5)


def test_eight_strands_of_0_30_mm_need_0_9914_mm() -> None:
    assert container([0.30] * 8) == pytest.approx(0.9914, abs=5e-5)


@pytest.mark.parametrize("radii", THREE)
def test_three_circles(radii: tuple[float, float, float]) -> None:
    assert container([2 * radius for radius in radii]) == pytest.approx(2 * THREE[radii], abs=2e-6)


@pytest.mark.parametrize("bends", [(2, 2, 3), (3, 6, 7), (5, 8, 12), (18, 23, 27)])
def test_whole_number_cases_of_descartes(bends: tuple[int, int, int]) -> None:
    """Published integral cases whose third circle reaches the rim: (-1,2,2,3), (-2,3,6,7), ..."""
    k1, k2, k3 = bends
    outer = k1 + k2 + k3 - 2 * math.sqrt(k1 * k2 + k2 * k3 + k3 * k1)
    assert outer == pytest.approx(round(outer)) and outer < 0
    radii = [1 / bend for bend in bends]
    a, b, c = sorted(radii, reverse=True)
    reaches = c > a * b * (a + b) / (a * a + a * b + b * b)
    assert container([2 * r for r in radii]) == pytest.approx(
        2 * (-1 / outer if reaches else a + b)
    )


@pytest.mark.parametrize("radii", MORE)
def test_more_circles(radii: tuple[float, ...]) -> None:
    found = container([2 * radius for radius in radii])
    assert found == pytest.approx(2 * MORE[radii], abs=2e-5)
    assert found >= lower_bound([2 * radius for radius in radii]) - 1e-9


@pytest.mark.parametrize("radii", [(3.0, 2.0, 1.0), (2.0, 1.5, 1.2), (2.0, 1.0, 1.0, 1.0)])
def test_against_a_solver(radii: tuple[float, ...]) -> None:
    """The smallest container by scipy's SLSQP from several starts."""
    count = len(radii)

    def gaps(x: list[float]) -> list[float]:
        spots = [(x[2 * i], x[2 * i + 1]) for i in range(count)]
        rim = [x[-1] - radii[i] - math.hypot(*spots[i]) for i in range(count)]
        apart = [
            math.dist(spots[i], spots[j]) - radii[i] - radii[j]
            for i in range(count)
            for j in range(i)
        ]
        return rim + apart

    best = math.inf
    for start in range(8):
        angles = [2 * math.pi * i / count + 0.3 * start for i in range(count)]
        first = [c for a in angles for c in (2 * math.cos(a + start * (a > 2)), 2 * math.sin(a))]
        done = minimize(
            lambda x: x[-1],
            [*first, sum(radii)],
            constraints={"type": "ineq", "fun": gaps},
            method="SLSQP",
            options={"maxiter": 300},
        )
        if done.success and min(gaps(list(done.x))) > -1e-6:
            best = min(best, float(done.x[-1]))
    assert container([2 * radius for radius in radii]) == pytest.approx(2 * best, abs=1e-4)
