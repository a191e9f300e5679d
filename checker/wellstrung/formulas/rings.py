"""Jump rings: sizes, the hole that a curved wire needs, and the pull that opens a ring.

Sizes in mm, pulls in N, stresses in MPa (N/mm2).

The wire is taken as a curved beam (Winkler): the inside of a tight bend is shorter and is strained
more than that of a straight wire, and the pull itself stretches the wire opposite the cut. At
*first yield* the ring begins to keep a bend; at the *full hinge* it opens without more pull.
"""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import either, most, opaque, pi, sqrt


def inside_of(outside: float, wire: float) -> float:
    """Inside diameter of a ring: outside = inside + 2 x wire (trade table `jump_rings`).

    >>> inside_of(outside=5.0, wire=0.8)
    3.4
    """
    return outside - 2 * wire


def outside_of(inside: float, wire: float) -> float:
    """Outside diameter of a ring: inside + 2 x wire (trade table `jump_rings`).

    >>> outside_of(inside=3.4, wire=0.8)
    5.0
    """
    return inside + 2 * wire


def hole_needed(wire: float, inside: float, through: float) -> float:
    """The straight hole that a ring's wire needs to go round an eye `through` thick, mm.

    The wire bends away from the hole's middle by the sagitta of the ring's inner circle over the
    thickness: hole >= wire + r - sqrt(r^2 - through^2 / 4), r = inside / 2. Where the eye is
    thicker than the ring is wide inside, it goes round only if the hole takes the whole ring.
    Geometry, worked out for this project.

    >>> round(hole_needed(wire=0.8, inside=3.4, through=1.2), 3)
    0.909
    >>> hole_needed(wire=0.8, inside=3.4, through=4.0)
    4.2
    """
    radius = inside / 2
    return either(
        through > inside, wire + inside, lambda: wire + radius - sqrt(radius**2 - through**2 / 4)
    )


@opaque("smallest circle round a ring flat beside a bar")
def taken_beside(across: float, wire: float, bar: float) -> float:
    """Diameter, mm, of the smallest circle that holds a bar and, flat against it, a ring.

    The ring is `across` wide and `wire` thick, and the bar lies on the middle of its flat side. The
    circle passes through the far side of the bar and the ring's two far corners, or through all
    four corners of a ring that is much wider than both are thick. Geometry, worked out for this
    project.

    >>> round(taken_beside(across=8.0, wire=1.0, bar=2.0), 3), round(taken_beside(2.0, 1.0, 3.0), 3)
    (8.062, 4.25)
    """
    high = wire + bar
    middle = (high**2 - across**2 / 4) / (2 * high)
    return 2 * (high - middle) if middle >= wire / 2 else math.hypot(across, wire)


def middle_radius(inside: float, wire: float) -> float:
    """Radius of the middle of the wire.

    Geometry.

    >>> middle_radius(inside=3.0, wire=0.8)
    1.9
    """
    return (inside + wire) / 2


def hinge_modulus(wire: float) -> float:
    """Plastic section modulus of round wire, mm3: d^3 / 6, moment at full hinge over yield.

    Statics of a round section in full yield, any handbook.

    >>> round(hinge_modulus(0.8), 4)
    0.0853
    """
    return wire**3 / 6


def neutral_radius(radius: float, wire: float) -> float:
    """Radius at which a curved round wire of this middle radius is not strained by bending.

    Winkler's curved beam, round section: (2 R + sqrt(4 R^2 - d^2)) / 4, which is the handbooks'
    d^2 / (4 (2 R - sqrt(4 R^2 - d^2))) without its small difference of large numbers.

    >>> round(neutral_radius(radius=13.0, wire=6.0), 5)
    12.82456
    """
    return (2 * radius + sqrt(4 * radius**2 - wire**2)) / 4


def curved_stresses(pull: float, moment: float, radius: float, wire: float) -> tuple[float, float]:
    """Stress at the inside and at the outside of a curved wire; tension is positive.

    `moment` (N mm) about the middle of the wire straightens it, `pull` stretches it: Winkler's
    curved beam, as worked in machine-design texts.

    >>> inside, outside = curved_stresses(pull=300, moment=300 * 13, radius=13, wire=6)
    >>> round(inside, 1), round(outside, 1)
    (232.7, -145.4)
    """
    neutral = neutral_radius(radius, wire)
    area = pi * wire**2 / 4
    inner, outer = radius - wire / 2, radius + wire / 2
    # radius - neutral, without the small difference of large numbers
    shift = wire**2 / (16 * neutral)
    bending = moment / (area * shift)
    return (
        pull / area + bending * (wire / 2 - shift) / inner,
        pull / area - bending * (wire / 2 + shift) / outer,
    )


@opaque("pull at first yield of an open ring")
def open_across_first_yield(inside: float, wire: float, yield_stress: float) -> float:
    """Pull across an open ring, its cut at the side, at first yield of the curved wire.

    The moment opposite the cut is pull x R, and the pull itself stretches the wire there: statics
    and Winkler's curved beam.

    >>> round(open_across_first_yield(inside=3.0, wire=0.8, yield_stress=124), 2)
    2.65
    """
    radius = middle_radius(inside, wire)
    return yield_stress / max(map(abs, curved_stresses(1.0, radius, radius, wire)))


def open_across_hinge(inside: float, wire: float, yield_stress: float) -> float:
    """Pull across an open ring, its cut at the side, at the full hinge opposite the cut.

    Pull = stress x d^3 / (6 R): statics and the plastic section modulus.

    >>> round(open_across_hinge(inside=3.0, wire=0.8, yield_stress=124), 2)
    5.57
    """
    return yield_stress * hinge_modulus(wire) / middle_radius(inside, wire)


def closed_moments(pull: float, radius: float, wire: float) -> tuple[float, float]:
    """Moments, N mm, of a closed ring pulled across: under the pull, and a quarter round from it.

    Under the pull the wire is bent tighter (negative), a quarter round it is straightened. For a
    thin ring pull x R / pi and pull x R x (1/2 - 1/pi); with Winkler's curved beam the neutral
    radius takes the place of R in the first (energy, worked out for this project).

    >>> [round(moment, 4) for moment in closed_moments(pull=1.0, radius=1.0, wire=0.01)]
    [-0.3183, 0.1817]
    """
    under = pull * neutral_radius(radius, wire) / pi
    return -under, pull * radius / 2 - under


@opaque("pull at first yield of a closed ring")
def closed_first_yield(inside: float, wire: float, yield_stress: float) -> float:
    """Pull across a closed (soldered) ring at first yield of the curved wire.

    Any ring that can be closed yields first under the pull; one far tighter than its wire is thick
    a quarter round from it.

    The moments by statics, the stress by Winkler's curved beam: see the module.

    >>> round(closed_first_yield(inside=3.0, wire=0.8, yield_stress=124), 2)
    8.79
    """
    radius = middle_radius(inside, wire)
    under, aside = closed_moments(1.0, radius, wire)
    stresses = (
        *curved_stresses(0.0, under, radius, wire),
        *curved_stresses(0.5, aside, radius, wire),
    )
    return yield_stress / max(map(abs, stresses))


def closed_hinge(inside: float, wire: float, yield_stress: float) -> float:
    """Pull across a closed (soldered) ring at its four hinges: under the pull and a quarter round.

    Both moments together are pull x R / 2, each at most stress x d^3 / 6: four times the pull of
    an open ring. Limit analysis, worked out for this project.

    >>> round(closed_hinge(inside=3.0, wire=0.8, yield_stress=124), 2)
    22.28
    """
    return 4 * open_across_hinge(inside, wire, yield_stress)


def taken_along(next: float, hole: float = 0.0, **rings: float) -> float:
    """What lies along a link, mm: the `next` link's wire, and the rings' wires.

    Rings that fit the hole's width side by side take the thickest of them, others all together.

    Geometry, worked out for this project.

    >>> round(taken_along(hole=2.0, next=0.8, ring1=0.8, ring2=0.8), 2)
    1.6
    >>> round(taken_along(hole=1.0, next=0.8, ring1=0.8, ring2=0.8), 2)
    2.4
    """
    wires = rings.values()
    if len(wires) == 1:
        return next + sum(wires)
    return next + either(sum(wires) <= hole, most(*wires), sum(wires))


def loop_wire(hole: float, wire: float, wraps: float) -> float:
    """Wire in one loop, mm: once round the hole, and `wraps` turns round the neck.

    Geometry, worked out for this project.

    >>> round(loop_wire(hole=2.5, wire=0.64, wraps=3), 1)
    21.9
    """
    return pi * (hole + wire) + wraps * pi * 2 * wire


def coiled(turns: float, coil: float, line: float) -> float:
    """Wire in so many coils, mm, of which each is `coil` wide inside: the way along its middle.

    Geometry. Held against print: 68 to 70 coils of 2 in in an ounce of steel, 7.85 g/cm3, are wire
    of 0.64 to 0.65 mm (`Memory Wire Bracelet`, beadingtimes.com project0105, excerpt seen).

    >>> round(coiled(turns=3, coil=60.0, line=0.6), 1)
    571.1
    """
    return turns * pi * (coil + line)


def turns_in(length: float, coil: float, line: float) -> float:
    """How often a length of wire, mm, goes round in its coil: `coiled` the other way round.

    Geometry.

    >>> round(turns_in(length=571.1, coil=60.0, line=0.6), 2)
    3.0
    """
    return length / (pi * (coil + line))
