"""Strength of rings against solid models, fibres and energy: worked out here, not printed.

What print has is in `tests/published/test_ring_strength.py`. The eyebolts are problem 3-122 of a
machine-design text (copy seen) and a variant; answers posted beside it take a straight beam, so
these were worked out as curved beams. The ring of 0.8 mm wire at 1.9 mm was also worked out as a
solid, with 48.2 MPa at its inside and -30.1 MPa at its outside for each newton.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import dblquad
from scipy.optimize import minimize_scalar

from wellstrung.formulas.rings import (
    closed_first_yield,
    closed_hinge,
    closed_moments,
    curved_stresses,
    hinge_modulus,
    neutral_radius,
    open_across_first_yield,
    open_across_hinge,
)

INSIDE, WIRE, RADIUS = 3.0, 0.8, 1.9


@pytest.mark.parametrize(
    ("pull", "radius", "wire", "neutral", "inner", "outer"),
    [
        pytest.param(800, 3.125, 1.25, 3.09343, 15.97e3, -10.65e3, id="eye hook"),
        pytest.param(300, 13, 6, 12.82456, 232.7, -145.4, id="eyebolt of 6 mm"),
        pytest.param(300, 15, 4, 14.93303, 819.0, -626.3, id="eyebolt of 4 mm"),
        pytest.param(1, RADIUS, WIRE, 1.87871, 46.8, -30.5, id="ring of 0.8 mm"),
    ],
)
def test_curved_beams(
    pull: float, radius: float, wire: float, neutral: float, inner: float, outer: float
) -> None:
    assert neutral_radius(radius, wire) == pytest.approx(neutral, abs=6e-6)
    stresses = curved_stresses(pull, pull * radius, radius, wire)
    assert stresses == pytest.approx((inner, outer), rel=1e-3)


def test_the_curved_wire_comes_near_the_solid_ring() -> None:
    inner, outer = curved_stresses(1, RADIUS, RADIUS, WIRE)
    assert (inner, outer) == pytest.approx((48.2, -30.1), rel=0.03)


def test_factors_on_the_straight_beam() -> None:
    inner, outer = curved_stresses(0, 1, RADIUS, WIRE)
    straight = 32 / (math.pi * WIRE**3)
    assert (inner / straight, -outer / straight) == pytest.approx((1.186, 0.860), abs=5e-4)


@pytest.mark.parametrize(
    ("yield_stress", "curved", "hinge"),
    [
        (100, 2.14, 4.49),
        (124, 2.65, 5.57),
        (200, 4.27, 8.98),
        (350, 7.48, 15.72),
        (450, 9.61, 20.21),
    ],
)
def test_pull_across_an_open_ring(yield_stress: float, curved: float, hinge: float) -> None:
    ring = (INSIDE, WIRE, yield_stress)
    assert open_across_first_yield(*ring) == pytest.approx(curved, abs=6e-3)
    assert open_across_hinge(*ring) == pytest.approx(hinge, abs=6e-3)
    assert open_across_hinge(*ring) == pytest.approx(yield_stress * WIRE**3 / (6 * RADIUS))


def test_a_hinge_is_the_yield_stress_over_both_halves_of_the_wire() -> None:
    moment, _ = dblquad(
        lambda y, x: abs(y),
        -WIRE / 2,
        WIRE / 2,
        lambda x: -math.sqrt(WIRE**2 / 4 - x * x),
        lambda x: math.sqrt(WIRE**2 / 4 - x * x),
    )
    assert hinge_modulus(WIRE) == pytest.approx(moment, rel=1e-6)


@pytest.mark.parametrize("wire", [0.2, 0.8, 1.6])
def test_a_closed_tight_ring_by_the_least_energy_of_its_fibres(wire: float) -> None:
    """The moment that leaves least energy in the fibres of a quarter of the ring is the true one.

    Fibre by fibre, each as long as its own radius makes it, with Winkler's stresses.
    """
    across = np.linspace(-wire / 2, wire / 2, 401)[1:-1]
    widths = 2 * np.sqrt(wire**2 / 4 - across**2)
    angles = np.linspace(0, math.pi / 2, 61)
    neutral = neutral_radius(RADIUS, wire)
    area = math.pi * wire**2 / 4

    def energy(aside: float) -> float:
        total = []
        for angle in angles:
            pull = 0.5 * math.cos(angle)
            moment = aside - 0.5 * RADIUS * (1 - math.cos(angle))
            fibres = RADIUS + across
            bent = moment / (area * (RADIUS - neutral)) * (neutral - fibres) / fibres
            total.append(float(np.trapezoid((pull / area + bent) ** 2 * widths * fibres, across)))
        return float(np.trapezoid(total, angles))

    found = minimize_scalar(energy, bounds=(0, RADIUS), method="bounded", options={"xatol": 1e-9})
    under, aside = closed_moments(1, RADIUS, wire)
    assert aside == pytest.approx(found.x, rel=2e-3)
    assert under == pytest.approx(found.x - RADIUS / 2, rel=2e-3)


@pytest.mark.parametrize("ratio", [1.0, 2.0, RADIUS / WIRE, 8.0, 40.0])
def test_a_closed_ring_yields_under_the_pull(ratio: float) -> None:
    """There its inside is pressed more than anything a quarter round is strained."""
    radius = ratio * WIRE
    under, aside = closed_moments(1, radius, WIRE)
    inner, outer = curved_stresses(0, under, radius, WIRE)
    elsewhere = [outer, *curved_stresses(0.5, aside, radius, WIRE)]
    assert -inner > max(map(abs, elsewhere))
    assert closed_first_yield(2 * radius - WIRE, WIRE, 124) == pytest.approx(124 / -inner)


def test_a_closed_ring_far_too_tight_yields_a_quarter_round() -> None:
    """Half the pull stretches each side, and its inside is the more strained."""
    radius = 0.6 * WIRE
    _, aside = closed_moments(1, radius, WIRE)
    inner, _ = curved_stresses(0.5, aside, radius, WIRE)
    assert closed_first_yield(2 * radius - WIRE, WIRE, 124) == pytest.approx(124 / inner)


def test_a_closed_ring_opens_at_four_hinges() -> None:
    """Half the pull times R is the two hinge moments of a quarter ring."""
    assert closed_hinge(INSIDE, WIRE, 124) / 2 * RADIUS == pytest.approx(
        2 * 124 * hinge_modulus(WIRE)
    )
