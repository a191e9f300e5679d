"""Circles in a circle against the published best ratios and Descartes' theorem.

Equal circles: Graham, Lubachevsky, Nurmela, Östergård 1998, Kravitz 1967, Pirl 1969, Melissen 1994,
Fodor 1999-2003 as cited in the copies seen. Densities printed beside some of those come from
shortened radii (n = 3: 0.6466); recomputed, they are n / R^2.
"""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt
import pytest
from scipy.optimize import minimize

from wellstrung.formulas.circles import container, equal_ratio, lower_bound

Floats = npt.NDArray[np.float64]
STARTS = 25
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
#: three circles whose Soddy circle, the outer one of Descartes' theorem, is wider than need be
SODDY: dict[tuple[float, float, float], float] = {(3, 2, 1): 6.000000, (4, 4, 2): 8.472136}
#: bends of the outer circle and of three that touch it and each other, and that of the next circle
#: in the gap: published integral gaskets
GASKETS = [
    (-1, 2, 2, 3, 3),
    (-2, 3, 6, 7, 7),
    (-3, 5, 8, 8, 12),
    (-6, 10, 15, 19, 19),
    (-6, 11, 14, 15, 23),
    (-10, 18, 23, 27, 35),
]
#: derived (a side gap takes the small ones) or found by numerical search: no more than this is
#: needed, less is not ruled out
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


def outer_soddy(a: float, b: float, c: float) -> float:
    """Radius of the circle that three touching circles of these bends all touch from inside."""
    return -1 / (a + b + c - 2 * math.sqrt(a * b + b * c + c * a))


@pytest.mark.parametrize("radii", SODDY)
def test_the_soddy_circle_is_not_always_the_smallest(radii: tuple[float, float, float]) -> None:
    a, b, c = (1 / radius for radius in radii)
    assert outer_soddy(a, b, c) == pytest.approx(SODDY[radii], abs=1e-6)
    assert container([2 * radius for radius in radii]) == 2 * (radii[0] + radii[1])
    assert radii[0] + radii[1] < SODDY[radii]


@pytest.mark.parametrize("bends", GASKETS)
def test_integral_gaskets(bends: tuple[int, int, int, int, int]) -> None:
    outer, a, b, c, in_the_gap = bends
    assert (outer + a + b + c) ** 2 == 2 * (outer**2 + a**2 + b**2 + c**2)
    assert outer_soddy(a, b, c) == pytest.approx(-1 / outer)
    # in all six the third circle is large enough to be held by the rim
    assert container([2 / a, 2 / b, 2 / c]) == pytest.approx(-2 / outer)
    touching = {outer, a, b, c}
    assert in_the_gap in {2 * (outer + a + b + c - bend) - bend for bend in touching}


@pytest.mark.parametrize("radii", MORE)
def test_more_circles(radii: tuple[float, ...]) -> None:
    diameters = [2 * radius for radius in radii]
    assert lower_bound(diameters) <= container(diameters) <= 2 * MORE[radii] + 2e-6


@pytest.mark.parametrize("radii", [*THREE, *MORE, (2.0, 1.5, 1.2), (1.6, 1.2, 0.9, 0.7)])
def test_against_a_solver(radii: tuple[float, ...]) -> None:
    """The smallest container that SLSQP finds from several random starts."""
    assert container([2 * radius for radius in radii]) == pytest.approx(
        2 * solved(np.array(radii)), abs=1e-4
    )


def solved(radii: Floats) -> float:
    count = len(radii)
    one, other = np.triu_indices(count, 1)

    def gaps(unknown: Floats) -> Floats:
        """To the rim and between each two, squared to be smooth where centres meet."""
        spots = unknown[:-1].reshape(count, 2)
        rim = (unknown[-1] - radii) ** 2 - (spots**2).sum(axis=1)
        apart = ((spots[one] - spots[other]) ** 2).sum(axis=1) - (radii[one] + radii[other]) ** 2
        return np.concatenate([rim, apart])

    random = np.random.default_rng(1)
    most, best = float(radii.sum()), math.inf
    for _ in range(STARTS):
        done = minimize(
            lambda unknown: unknown[-1],
            [*random.uniform(-most, most, 2 * count), most],
            jac=lambda unknown: np.eye(len(unknown))[-1],
            bounds=[(None, None)] * (2 * count) + [(float(radii.max()), None)],
            constraints={"type": "ineq", "fun": gaps},
            method="SLSQP",
        )
        if gaps(done.x).min() > -1e-7:
            best = min(best, float(done.x[-1]))
    return best
