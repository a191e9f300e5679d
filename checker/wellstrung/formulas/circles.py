"""Circles in a circle: the smallest round hole that holds round things. Sizes are diameters in mm.

Two are exact, three are exact, equal ones follow the published best ratios up to twenty and lie as
in a honeycomb beyond that. Anything else is searched: what is returned surely holds the circles,
and `lower_bound` says how much less it might be.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import combinations
from typing import NamedTuple

from wellstrung.formulas.arithmetic import added, opaque
from wellstrung.formulas.layouts import EQUAL

#: Container over circle for n equal circles: closed forms and best known values, Graham,
#: Lubachevsky, Nurmela, Östergård 1998 and the papers cited there (copy seen).
EQUAL_RATIOS: dict[int, float] = {
    1: 1.0,
    2: 2.0,
    3: 1 + 2 / math.sqrt(3),
    4: 1 + math.sqrt(2),
    5: 1 + math.sqrt(2 * (1 + 1 / math.sqrt(5))),
    6: 3.0,
    7: 3.0,
    8: 1 + 1 / math.sin(math.pi / 7),
    9: 1 + math.sqrt(2 * (2 + math.sqrt(2))),
    10: 3.81302563,
    11: 1 + 1 / math.sin(math.pi / 9),
    12: 4.02960193,
    13: 2 + math.sqrt(5),
    14: 4.32842855,
    15: 1 + math.sqrt(6 + 2 / math.sqrt(5) + 4 * math.sqrt(1 + 2 / math.sqrt(5))),
    16: 4.61542559,
    17: 4.79203375,
    18: 1 + math.sqrt(2) + math.sqrt(6),
    19: 1 + math.sqrt(2) + math.sqrt(6),
    20: 5.12232074,
}
#: Numbers of equal circles whose ratio is proved to be the best: Kravitz 1967, Pirl 1969, Melissen
#: 1994, Fodor 1999 to 2003; fourteen 2024 (copies seen).
_PROVED: tuple[int, ...] = (*range(1, 15), 19)


def beside(one: float, other: float) -> float:
    """From middle to middle, mm, of two circles that touch side by side: geometry.

    >>> beside(one=4.0, other=6.0)
    5.0
    """
    return one / 2 + other / 2


def equal_ratio(count: int) -> float:
    """Container diameter over circle diameter for `count` equal circles; ValueError above twenty.

    Published best-known ratios: see the module.

    >>> round(equal_ratio(8) * 0.30, 4)
    0.9914
    """
    if count not in EQUAL_RATIOS:
        raise ValueError(f"there is no published ratio here for {count} circles, only for 1 to 20")
    return EQUAL_RATIOS[count]


def container(diameters: Sequence[float]) -> float:
    """Diameter of a circle that holds circles of these diameters.

    Exact for up to three circles and for equal ones; for more, one in which each was placed.

    Two and three by geometry, equal ones by the published ratios, more by search: see the module.

    >>> container([7.8, 1.0])
    8.8
    >>> container([6.0, 4.0, 2.0])
    10.0
    """
    return added(diameters) if len(diameters) < 3 else _round_three_or_more(diameters)


def side_by_side(**diameters: float) -> float:
    """`container` of circles that have names.

    Two and three by geometry, equal ones by the published ratios, more by search: see the module.

    >>> round(side_by_side(rope=7.8, eye=1.0), 2)
    8.8
    """
    return container(tuple(diameters.values()))


@opaque("smallest circle round")
def _round_three_or_more(diameters: Sequence[float]) -> float:
    sizes = sorted(diameters, reverse=True)
    if _equal(sizes):
        known = EQUAL_RATIOS.get(len(sizes))
        return sizes[0] * (known or _honeycomb(len(sizes))[0])
    if len(sizes) == 3:
        return _three(*(size / 2 for size in sizes)) * 2
    return 2 * _searched(tuple(size / 2 for size in sizes)).radius


def packed(diameters: Sequence[float]) -> list[tuple[float, float]]:
    """Where circles lie in their `container`: their centres, mm from its middle, in this order.

    They touch, by geometry; what rounding makes them overlap is less than a micrometre. ValueError
    for sizes so far apart that rounding leaves no place for one of them.

    >>> packed([2.0, 4.0])
    [(-2.0, 0.0), (1.0, 0.0)]
    """
    sizes = sorted(diameters, reverse=True)
    if not sizes:
        return []
    if _equal(sizes) and (len(sizes) in EQUAL or len(sizes) not in EQUAL_RATIOS):
        known = EQUAL.get(len(sizes)) or _honeycomb(len(sizes))[1]
        return [(sizes[0] * x, sizes[0] * y) for x, y in known]
    order: Sequence[float] = [size / 2 for size in sizes]
    radius = container(sizes) / 2
    if len(sizes) > 3 and not _equal(sizes):
        order = _searched(tuple(order)).order
    placed = next(filter(None, (_placed(order, radius * wider) for wider in _WIDER)), [])
    if not placed:
        raise ValueError("circles so unlike each other that rounding leaves no place for one")
    spots = sorted(placed, key=lambda spot: -spot[2])  # equal ones are as good as each other
    ranks = sorted(range(len(sizes)), key=lambda index: -diameters[index])
    return [spots[ranks.index(index)][:2] for index in range(len(sizes))]


def _equal(sizes: Sequence[float]) -> bool:
    """Whether sorted sizes are one size."""
    return math.isclose(sizes[0], sizes[-1], rel_tol=1e-12)


@cache
def _honeycomb(count: int) -> tuple[float, list[tuple[float, float]]]:
    """The ratio for equal circles that touch six others each, and the centres of circles of 1 mm.

    The least round a circle, between two or between three: it surely holds them, and may be a few
    per cent more than the best. Geometry, worked out for this project.
    """
    reach = math.ceil(math.sqrt(count)) + 1
    rows = [
        (n + m / 2, m * math.sqrt(3) / 2)
        for n in range(-2 * reach, 2 * reach)
        for m in range(-reach, reach)
    ]
    found: list[tuple[float, list[tuple[float, float]]]] = []
    for middle_x, middle_y in ((0.0, 0.0), (0.5, 0.0), (0.5, math.sqrt(3) / 6)):
        spots = [(x - middle_x, y - middle_y) for x, y in rows]
        nearest = sorted(spots, key=lambda spot: math.hypot(*spot))[:count]
        found.append((1 + 2 * math.hypot(*nearest[-1]), nearest))
    return min(found, key=lambda one: one[0])


def _three(a: float, b: float, c: float) -> float:
    """Radius that holds three circles of radii a >= b >= c.

    The outer circle of Descartes' theorem is the smallest container only while the third circle
    reaches it; a small third lies beside the other two inside the circle of radius a + b.
    Derived for this project from Descartes' circle theorem and checked numerically.
    """
    if c <= a * b * (a + b) / (a * a + a * b + b * b):
        return a + b
    bends = [1 / a, 1 / b, 1 / c]
    pairs = bends[0] * bends[1] + bends[1] * bends[2] + bends[2] * bends[0]
    return -1 / (math.fsum(bends) - 2 * math.sqrt(pairs))


def lower_bound(diameters: Sequence[float]) -> float:
    """No circle smaller than this holds circles of these diameters.

    The greatest of what the three largest need, what so many equal ones no larger than any of them
    need (proved ratios only), and the area of all.

    Geometry and the published ratios: see the module.

    >>> lower_bound([3.0, 4.0])
    7.0
    >>> lower_bound([9.0, 3.0, 3.0, 3.0, 3.0]) < container([9.0, 3.0, 3.0, 3.0, 3.0])
    True
    """
    sizes = sorted(diameters, reverse=True)
    return max(
        container(sizes[:3]),
        math.sqrt(math.fsum(size**2 for size in sizes)),
        *(sizes[count - 1] * EQUAL_RATIOS[count] for count in _PROVED if count <= len(sizes)),
    )


@opaque("least circle round")
def _least_round(diameters: Sequence[float]) -> float:
    return lower_bound(diameters)


def least_side_by_side(**diameters: float) -> float:
    """`lower_bound` of circles that have names.

    Geometry and the published ratios: see the module.

    >>> least_side_by_side(rope=7.0, eye=1.0)
    8.0
    """
    return _least_round(tuple(diameters.values()))


#: where a circle lies, and its radius
_Disc = tuple[float, float, float]


class _Found(NamedTuple):
    """Radius of a container, and the order in which the circles find room in it."""

    radius: float
    order: tuple[float, ...]


@cache
def _searched(radii: tuple[float, ...]) -> _Found:
    """A container in which every circle has been placed.

    The circles are placed largest first; then two of them change places in that order as long as
    this gives a smaller container.
    """
    low = lower_bound([2 * r for r in radii]) / 2
    if len(radii) > MOST_PLACED:
        return _Found(_in_bundles(radii), radii)
    if _placed(radii, low):
        return _Found(low, radii)
    order, best = list(radii), _halved(radii, low, math.fsum(radii))
    left, again = _WORK // len(radii) ** 3, True
    while again:
        again = False
        for one, other in combinations(range(len(order)), 2):
            if order[one] == order[other]:
                continue
            if left == 0:
                return _Found(best, tuple(order))
            left -= 1
            changed = list(order)
            changed[one], changed[other] = order[other], order[one]
            if _placed(changed, best * _WORTH_IT):
                order, best, again = changed, _halved(changed, low, best * _WORTH_IT), True
    return _Found(best, tuple(order))


def _in_bundles(radii: Sequence[float]) -> float:
    """Radius of a container for very many circles: those of about one size lie in one bundle.

    It surely holds them, and is larger than it need be. Geometry, worked out for this project.
    """
    bundles: dict[int, list[float]] = {}
    for radius in radii:
        bundles.setdefault(math.floor(math.log(radii[0] / radius, 1.5)), []).append(radius)
    rounds = [2 * max(one) * _honeycomb(len(one))[0] for one in bundles.values()]
    return min(container(rounds) / 2, radii[0] * _honeycomb(len(radii))[0])


def _halved(radii: Sequence[float], low: float, high: float) -> float:
    """Radius of a container for the circles placed in this order; halves from `high` to `low`."""
    close = _CLOSE if len(radii) <= _FEW else _NEAR_ENOUGH
    while high - low > close * high:
        middle = (low + high) / 2
        if _placed(radii, middle):
            high = middle
        else:
            low = middle
    return high


def _placed(radii: Sequence[float], container: float) -> list[_Disc]:
    """The circles in this order, each as near the rim as it can; none where one finds no room.

    A circle as large as the one before it tries the spots that are left, and those beside that one.
    """
    placed: list[_Disc] = []
    spots: list[tuple[float, float]] = []
    before = None
    for radius in radii:
        if not placed:
            placed.append((container - radius, 0.0, radius))
            continue
        if radius == before:
            x, y, r = placed[-1]
            spots = [spot for spot in spots if math.dist(spot, (x, y)) >= radius + r - _TOUCH]
            fresh = placed[-1:]
        else:
            spots, fresh = [], placed
        spots += [
            spot
            for spot in _touching(placed, fresh, radius, container)
            if all(math.dist(spot, (x, y)) >= radius + r - _TOUCH for x, y, r in placed)
            and math.hypot(*spot) <= container - radius + _TOUCH
        ]
        if not spots:
            return []
        placed.append((*max(spots, key=lambda spot: (round(math.hypot(*spot), 9), spot)), radius))
        before = radius
    return placed


def _touching(
    placed: Sequence[_Disc], fresh: Sequence[_Disc], radius: float, container: float
) -> Iterator[tuple[float, float]]:
    """Centres at which a circle touches two others, or another and the rim.

    `fresh` are the last of those placed: one that it touches is among them.
    """
    rounds = [(x, y, r + radius) for x, y, r in placed] + [(0.0, 0.0, container - radius)]
    old = len(placed) - len(fresh)
    pairs = combinations(rounds, 2) if not old else _with_last(rounds)
    for (ax, ay, a), (bx, by, b) in pairs:
        apart = math.hypot(bx - ax, by - ay)
        if apart < _TOUCH or apart > a + b or apart < abs(a - b):
            continue
        along = (a * a - b * b + apart * apart) / (2 * apart)
        aside = math.sqrt(max(0.0, a * a - along * along))
        ux, uy = (bx - ax) / apart, (by - ay) / apart
        for side in (aside, -aside):
            yield ax + along * ux - side * uy, ay + along * uy + side * ux
    yield from ((x + r + radius, y) for x, y, r in fresh)
    yield from ((x - r - radius, y) for x, y, r in fresh)


def _with_last(rounds: Sequence[_Disc]) -> Iterator[tuple[_Disc, _Disc]]:
    """The circle placed last with each of the others, and with the rim."""
    *others, last, rim = rounds
    yield from ((other, last) for other in others)
    yield last, rim


_TOUCH = 1e-9
#: How many times wider the container may be taken to find their places by plain arithmetic.
_WIDER = (1.0, 1 + 1e-12, 1 + 1e-10, 1 + 1e-8, 1 + 1e-7)
#: How close the halving comes, and how much smaller a container must be to change the order for.
_CLOSE, _WORTH_IT = 1e-7, 1 - 1e-5
#: Of more circles than these the halving comes no closer than this.
_FEW, _NEAR_ENOUGH = 24, 1e-3
#: Changes of order that are tried, times the cube of the number of circles: what one costs.
_WORK = 60_000
#: More circles than these are not placed one by one: their container may be half as wide again.
MOST_PLACED = 90
