"""Circles in a circle: bounds that no answer may leave, and order that must not matter."""

from __future__ import annotations

import math
from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.formulas.circles import container, equal_ratio, lower_bound, packed

some = st.lists(st.floats(0.2, 12.0), min_size=1, max_size=5)


@settings(max_examples=60)
@given(some)
def test_never_below_the_bound_nor_above_the_sum(diameters: list[float]) -> None:
    found = container(diameters)
    assert lower_bound(diameters) - 1e-9 <= found <= sum(diameters) + 1e-9


@settings(max_examples=60)
@given(some)
def test_no_smaller_than_the_area_and_the_two_largest(diameters: list[float]) -> None:
    """Reckoned here, without the bound of the package."""
    found = container(diameters)
    area = sum(math.pi * diameter**2 / 4 for diameter in diameters)
    assert math.pi * found**2 / 4 >= area * (1 - 1e-9)
    assert found >= sum(sorted(diameters)[-2:]) * (1 - 1e-9)


@given(st.lists(st.floats(0.2, 12.0), min_size=1, max_size=3), st.floats(0.1, 10.0))
def test_room_grows_with_the_scale(diameters: list[float], scale: float) -> None:
    """Up to three only, where the answer is exact."""
    scaled = container([scale * diameter for diameter in diameters])
    assert scaled == pytest.approx(scale * container(diameters))


@settings(deadline=None)
@given(some, st.randoms(use_true_random=False))
def test_the_order_does_not_matter(diameters: list[float], random: Random) -> None:
    mixed = list(diameters)
    random.shuffle(mixed)
    assert container(mixed) == pytest.approx(container(diameters))


@given(st.lists(st.floats(0.2, 12.0), min_size=1, max_size=3), st.floats(0, 3))
def test_a_larger_circle_never_needs_less_room(diameters: list[float], more: float) -> None:
    """Up to three only, where the answer is exact; a search may come nearer for the larger."""
    assert container([diameters[0] + more, *diameters[1:]]) >= container(diameters) - 1e-9


@given(st.floats(0.2, 12.0), st.integers(1, 19))
def test_one_more_equal_circle_never_needs_less_room(diameter: float, count: int) -> None:
    assert container([diameter] * (count + 1)) >= container([diameter] * count) - 1e-9


def test_nothing_takes_no_room() -> None:
    assert container([]) == 0.0


def test_there_is_no_published_ratio_above_twenty() -> None:
    with pytest.raises(
        ValueError, match="no published ratio here for 21 circles, only for 1 to 20"
    ):
        equal_ratio(21)


#: the smallest found by a solver from thirty starts each; not proved
FOUND = {
    (1.3, 1.86, 1.78, 1.55): 3.9173,
    (3.52, 1.46, 1.8, 1.51): 5.3200,
    (3.01, 1.52, 1.95, 0.66, 1.72, 1.53): 5.3092,
    (1.03, 1.92, 1.16, 0.62, 1.83, 1.68): 4.1183,
    (0.53, 1.34, 3.01, 1.32, 1.79, 1.72): 5.0109,
    (0.84, 2.56, 4.3, 1.5, 4.44, 0.72, 3.6): 9.0127,
    (0.69, 0.97, 2.23, 2.64, 1.55, 1.14, 1.57): 5.0225,
}


@pytest.mark.parametrize("diameters", FOUND)
def test_unequal_circles_as_small_as_a_solver_finds(diameters: tuple[float, ...]) -> None:
    assert container(diameters) <= FOUND[diameters] + 1e-4


@given(st.lists(st.floats(0.2, 12.0), min_size=1, max_size=8), st.floats(0, 3))
def test_the_bound_grows_with_any_circle_and_with_one_more(
    diameters: list[float], more: float
) -> None:
    bound = lower_bound(diameters)
    assert lower_bound([diameters[0] + more, *diameters[1:]]) >= bound - 1e-9
    assert lower_bound([*diameters, more + 0.1]) >= bound - 1e-9


@pytest.mark.parametrize("count", [*range(1, 15), 19])
def test_the_bound_of_equal_circles_is_their_proved_ratio(count: int) -> None:
    assert lower_bound([1.5] * count) == pytest.approx(1.5 * equal_ratio(count))


@pytest.mark.parametrize("count", [15, 16, 17, 18, 20])
def test_a_ratio_that_is_not_proved_is_no_bound(count: int) -> None:
    proved = 14 if count < 19 else 19
    assert lower_bound([1.0] * count) == pytest.approx(max(equal_ratio(proved), math.sqrt(count)))


def test_small_circles_beside_two_large_ones_cost_no_room() -> None:
    assert container([7.8, 1.0, 0.8, 0.8]) == pytest.approx(8.8, abs=1e-9)


def test_many_circles_end() -> None:
    sizes = [1 + 0.05 * number for number in range(24)]
    assert lower_bound(sizes) < container(sizes) < 1.3 * lower_bound(sizes)


def pressed(diameters: list[float]) -> float:
    """How far packed circles reach into each other, or out of their container, mm."""
    spots, outer = packed(diameters), container(diameters) / 2
    sized = list(zip(spots, diameters, strict=True))
    out = [math.hypot(x, y) + size / 2 - outer for (x, y), size in sized]
    into = [(a + b) / 2 - math.dist(one, other) for (one, a), (other, b) in combinations(sized, 2)]
    return max(0.0, *out, *into)


@settings(max_examples=80)
@given(some)
def test_packed_circles_lie_in_their_container_and_beside_each_other(
    diameters: list[float],
) -> None:
    assert pressed(diameters) < 1e-6


@pytest.mark.parametrize("count", range(1, 21))
@pytest.mark.parametrize("diameter", [0.15, 1.0, 12.0])
def test_equal_circles_lie_in_the_smallest_container_known(count: int, diameter: float) -> None:
    assert pressed([diameter] * count) < 1e-3 / 50


@given(st.lists(st.floats(1e-3, 1e3), min_size=1, max_size=3))
def test_sizes_far_apart_are_packed_too(diameters: list[float]) -> None:
    assert pressed(diameters) < 1e-6 * max(1.0, *diameters)


def test_each_circle_keeps_its_place_in_the_order() -> None:
    small, large = packed([1.0, 5.0])
    assert math.hypot(*small) == pytest.approx(2.5) and math.hypot(*large) == pytest.approx(0.5)
    assert packed([]) == []


def test_very_many_circles_are_held_in_bundles() -> None:
    sizes = [2.0] * 150 + [3.0] * 40 + [1.0] * 10
    found = container(sizes)
    assert lower_bound(sizes) <= found <= 1.6 * lower_bound(sizes)


@pytest.mark.parametrize(
    ("circles", "in_a_ring"), [*((n, n) for n in range(2, 7)), (7, 6), (8, 7), (9, 8), (11, 9)]
)
def test_few_equal_circles_lie_in_a_ring_that_touches_the_rim(circles: int, in_a_ring: int) -> None:
    """Reckoned here: their centres are the corners of a regular polygon, its sides one diameter."""
    assert equal_ratio(circles) == pytest.approx(1 + 1 / math.sin(math.pi / in_a_ring))
