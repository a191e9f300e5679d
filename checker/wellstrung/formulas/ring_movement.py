"""How far a ring gives under a pull, as long as it springs back, and the pull that opens it so far.

Pulls in N, lengths in mm, stiffness in MPa (N/mm2), so that a rigidity is N mm2. `radius` is that
of the middle of the wire (`rings.middle_radius`).

All are for a thin ring, of which only the bending counts (Castigliano's theorem over the ring).
Wire that is thick for its ring also stretches and shears: at a middle radius of 2.4 wires an open
ring moves up to 5 % more than said here, a closed one up to a quarter more at its pulls.
"""

from __future__ import annotations

import math


def bending_rigidity(wire: float, elasticity: float) -> float:
    """Moment over curvature of round wire, N mm2: E x pi d^4 / 64 (any handbook).

    `elasticity` is Young's modulus in MPa; 75 GPa are 75 000 MPa.

    >>> round(bending_rigidity(wire=0.8, elasticity=75_000), 2)
    1507.96
    """
    return elasticity * math.pi * wire**4 / 64


def open_across_movement(pull: float, radius: float, rigidity: float) -> float:
    """How far the two pulls across an open ring, its cut at the side, move apart.

    pi / 2 x P R^3 / EI. Derived for this project by Castigliano's theorem.

    >>> round(open_across_movement(pull=10.0, radius=1.9, rigidity=1508.0), 4)
    0.0714
    """
    return math.pi / 2 * _unit(pull, radius, rigidity)


def open_across_gap(pull: float, radius: float, rigidity: float) -> float:
    """How far the cut opens when an open ring is pulled across, its cut at the side.

    (2 + pi / 2) x P R^3 / EI. Derived for this project by Castigliano's theorem.

    >>> round(open_across_gap(pull=10.0, radius=1.9, rigidity=1508.0), 4)
    0.1624
    """
    return (2 + math.pi / 2) * _unit(pull, radius, rigidity)


def open_in_line_movement(pull: float, radius: float, rigidity: float) -> float:
    """How far the two pulls on an open ring move apart when one of them is at its cut.

    Half of that pull is on each end. pi / 4 x P R^3 / EI, derived for this project by Castigliano's
    theorem.

    >>> round(open_in_line_movement(pull=10.0, radius=1.9, rigidity=1508.0), 4)
    0.0357
    """
    return math.pi / 4 * _unit(pull, radius, rigidity)


def open_in_line_gap(pull: float, radius: float, rigidity: float) -> float:
    """How far the cut opens when one of the two pulls on an open ring is at its cut.

    2 x P R^3 / EI, derived for this project by Castigliano's theorem.

    >>> round(open_in_line_gap(pull=10.0, radius=1.9, rigidity=1508.0), 4)
    0.091
    """
    return 2 * _unit(pull, radius, rigidity)


def spread_gap(pull: float, radius: float, rigidity: float) -> float:
    """How far the cut opens when its two ends are pulled apart along the wire.

    3 pi x P R^3 / EI, as for a split piston ring in finite-element textbooks.

    >>> round(spread_gap(pull=10.0, radius=1.9, rigidity=1508.0), 4)
    0.4287
    """
    return 3 * math.pi * _unit(pull, radius, rigidity)


def spread_pull(gap: float, radius: float, rigidity: float) -> float:
    """The pull on its two ends, along the wire, that opens the cut of a split ring so far.

    gap x EI / (3 pi R^3), as for a split piston ring in finite-element textbooks.

    >>> round(spread_pull(gap=0.4287, radius=1.9, rigidity=1508.0), 2)
    10.0
    """
    return gap / spread_gap(1.0, radius, rigidity)


def sideways_gap(pull: float, radius: float, rigidity: float, poisson: float) -> float:
    """How far two pulls sideways, out of the ring's plane, twist the ends of an open ring apart.

    pi x P R^3 / EI from bending and 3 pi x P R^3 / GJ from twist; in round wire EI / GJ = 1 +
    Poisson's ratio, together pi (4 + 3 `poisson`) x P R^3 / EI. Derived for this project by
    Castigliano's theorem.

    >>> round(sideways_gap(pull=10.0, radius=1.9, rigidity=1508.0, poisson=0.37), 4)
    0.7302
    """
    return math.pi * (4 + 3 * poisson) * _unit(pull, radius, rigidity)


def closed_movements(pull: float, radius: float, rigidity: float) -> tuple[float, float]:
    """How much a closed (soldered) ring pulled across grows along the pull, and across it.

    (pi / 4 - 2 / pi) and -(2 / pi - 1 / 2) x P R^3 / EI, the second negative as the ring narrows:
    handbooks of mechanics; derived again for this project.

    >>> [round(moved, 5) for moved in closed_movements(pull=10.0, radius=1.9, rigidity=1508.0)]
    [0.00677, -0.00621]
    """
    unit = _unit(pull, radius, rigidity)
    return (math.pi / 4 - 2 / math.pi) * unit, -(2 / math.pi - 1 / 2) * unit


def _unit(pull: float, radius: float, rigidity: float) -> float:
    """P R^3 / EI, the measure of every movement of a thin ring."""
    return pull * radius**3 / rigidity
