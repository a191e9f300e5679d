"""Magnets of a clasp: what they bear sideways, and how much a loose one draws another.

Pulls in N, lengths in mm, flux density in kilogauss (kG).
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi


def slides_at(pull: float, share: float) -> float:
    """The sideways pull, N, at which a magnet slides off: a share of its straight pull.

    Friction; for `share` see trade table `clasps`, magnetic.

    >>> round(slides_at(pull=12, share=0.15), 2)
    1.8
    """
    return pull * share


def flux_index(flux_density: float, outside: float) -> float:
    """Flux index of a round magnet, kG2 mm2: flux density at its pole, squared, by the pole's area.

    The measure of 16 CFR 1262, by the method of ASTM F963-17, 8.25 (method from memory).

    >>> round(flux_index(flux_density=2, outside=4), 1)
    50.3
    """
    return flux_density**2 * pi / 4 * outside**2
