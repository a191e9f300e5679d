"""Circles in a circle: bounds that no answer may leave, and order that must not matter."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.circles import container, equal_ratio, lower_bound

some = st.lists(st.floats(0.2, 12.0), min_size=1, max_size=5)


@settings(max_examples=60, deadline=None)
@given(some)
def test_never_below_the_bound_nor_above_the_sum(diameters: list[float]) -> None:
    found = container(diameters)
    assert lower_bound(diameters) - 1e-9 <= found <= sum(diameters) + 1e-9


@settings(deadline=None)
@given(some, st.randoms(use_true_random=False))
def test_the_order_does_not_matter(diameters: list[float], random: st.DataObject) -> None:
    mixed = list(diameters)
    random.shuffle(mixed)  # type: ignore[attr-defined]
    assert container(mixed) == pytest.approx(container(diameters))


@given(st.lists(st.floats(0.2, 12.0), min_size=1, max_size=3), st.floats(0, 3))
def test_a_larger_circle_never_needs_less_room(diameters: list[float], more: float) -> None:
    assert container([diameters[0] + more, *diameters[1:]]) >= container(diameters) - 1e-9


def test_nothing_takes_no_room() -> None:
    assert container([]) == 0.0


def test_there_is_no_published_ratio_above_twenty() -> None:
    with pytest.raises(
        ValueError, match="no published ratio here for 21 circles, only for 1 to 20"
    ):
        equal_ratio(21)
