"""Cutting lists: every plan can be cut with a ruler, and none is beaten by trying everything."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.formulas.cutting_stock import Cut, CutPlan, cut

pieces_of = st.lists(st.integers(5, 60), min_size=0, max_size=6)
lengths_of = st.lists(st.integers(20, 100), min_size=0, max_size=3)
losses = st.sampled_from([0.0, 0.5, 1.0, 7.0])


def brute(pieces: list[int], on_hand: list[int], lost: float) -> tuple[int, float]:
    """Most pieces, and least length cut into for so many, by giving each piece every length."""
    best = (0, 0.0)
    for homes in itertools.product(range(-1, len(on_hand)), repeat=len(pieces)):
        held = [
            [piece for piece, home in zip(pieces, homes, strict=True) if home == at]
            for at in range(len(on_hand))
        ]
        if any(
            sum(cuts) + lost * (len(cuts) - 1) > length + 1e-9
            for cuts, length in zip(held, on_hand, strict=True)
            if cuts
        ):
            continue
        had = sum(map(len, held))
        used = sum(length for cuts, length in zip(held, on_hand, strict=True) if cuts)
        if (-had, used) < (-best[0], best[1]):
            best = (had, used)
    return best


def with_a_ruler(plan: CutPlan, on_hand: list[int], lost: float) -> list[float]:
    """Cut every length as planned, from one end; the pieces that come off."""
    assert len({one.on_hand for one in plan.cuts}) == len(plan.cuts)
    had = []
    for one in plan.cuts:
        assert one.length == on_hand[one.on_hand] and one.pieces
        at = 0.0
        for piece in one.pieces:
            had.append(piece)
            assert at + piece <= one.length + 1e-9
            at += piece + lost
        assert one.left == pytest.approx(max(0.0, one.length - at))
    return had


@pytest.mark.slow
@settings(max_examples=150)
@given(pieces_of, lengths_of, losses)
def test_no_plan_is_better(pieces: list[int], on_hand: list[int], lost: float) -> None:
    plan = cut(pieces, on_hand, lost)
    had, used = brute(pieces, on_hand, lost)
    assert plan.proved
    assert (len(pieces) - len(plan.missing), plan.used, plan.at_least) == (had, used, used)


@pytest.mark.slow
@settings(max_examples=100)
@given(pieces_of, lengths_of, losses, st.sampled_from([0, 3, 10, 40]))
def test_a_search_cut_short_claims_no_more_than_is_true(
    pieces: list[int], on_hand: list[int], lost: float, steps: int
) -> None:
    plan = cut(pieces, on_hand, lost, steps=steps)
    had = len(pieces) - len(plan.missing)
    most, used = brute(pieces, on_hand, lost)
    assert had <= most
    assert not plan.proved or (had, plan.used) == (most, used)
    # the bound is for the pieces of the plan, and those are the shortest
    of_all, least = brute(sorted(pieces)[:had], on_hand, lost)
    assert of_all == had and plan.at_least <= least <= plan.used


@settings(max_examples=60)
@given(
    st.lists(st.floats(4, 90), max_size=30),
    st.lists(st.integers(20, 400), max_size=8),
    st.floats(0, 9),
    st.sampled_from([0, 50, 5_000]),
)
def test_every_plan_can_be_cut(
    pieces: list[float], on_hand: list[int], lost: float, steps: int
) -> None:
    lost = round(lost, 3)
    pieces = [round(piece, 3) for piece in pieces]
    plan = cut(pieces, on_hand, lost, steps=steps)
    had = with_a_ruler(plan, on_hand, lost)
    assert sorted([*had, *plan.missing]) == pytest.approx(sorted(pieces))
    assert plan.used == sum(one.length for one in plan.cuts)
    assert sum(had) <= plan.at_least + 1e-6 <= plan.used + 2e-6
    assert not had or not plan.missing or max(had) <= min(plan.missing)


@given(pieces_of, lengths_of, losses, st.randoms(use_true_random=False))
@settings(max_examples=40)
def test_the_order_of_the_pieces_does_not_matter(
    pieces: list[int], on_hand: list[int], lost: float, random: st.DataObject
) -> None:
    mixed = list(pieces)
    random.shuffle(mixed)  # type: ignore[attr-defined]
    assert cut(mixed, on_hand, lost) == cut(pieces, on_hand, lost)


def test_the_whole_answer() -> None:
    plan = cut([120, 200, 120, 200], [300, 420, 250], 3)
    assert plan == CutPlan(
        cuts=(
            Cut(1, 420.0, (200.0, 200.0), 14.0),
            Cut(2, 250.0, (120.0, 120.0), 4.0),
        ),
        missing=(),
        used=670.0,
        at_least=670.0,
        proved=True,
    )


def test_short_of_length_the_longest_go_without() -> None:
    plan = cut([50, 40, 30], [75])
    assert ([one.pieces for one in plan.cuts], plan.missing) == ([(40.0, 30.0)], (50.0,))


def test_the_cut_behind_the_last_piece_costs_nothing() -> None:
    ((_, _, pieces, left),) = cut([50, 50], [101], 1).cuts
    assert (pieces, left) == ((50.0, 50.0), 0.0)
    assert cut([50, 50], [100.9], 1).missing == (50.0,)


def test_the_offcut_is_what_the_last_cut_leaves() -> None:
    ((_, _, _, left),) = cut([50], [100], 2).cuts
    assert left == 48.0


def test_no_steps_still_give_a_plan_and_say_that_it_is_not_proved() -> None:
    pieces = [5, 4, 4, 3, 2, 2]
    plan = cut(pieces, [10] * 4, steps=0)
    assert (plan.used, plan.at_least, plan.proved) == (30.0, 20.0, False)
    assert cut(pieces, [10] * 4).used == 20.0


def test_the_bound_counts_lengths_without_the_cut_behind_them() -> None:
    pieces = [49, 39, 39, 29, 19, 19]
    assert cut(pieces, [99] * 4, 1, steps=0).at_least == 198.0
    assert cut(pieces, [99] * 4, 1).used == 198.0


def test_many_small_pieces_end_with_a_bound() -> None:
    plan = cut([5 + 0.01 * (n * 37 % 900) for n in range(600)], [1000] * 8, 0.5, steps=2_000)
    assert plan.missing == () and plan.at_least <= plan.used


def test_nothing_to_cut_and_nothing_to_cut_from() -> None:
    assert cut([], [100]) == CutPlan((), (), 0.0, 0.0, True)
    assert cut([5, 7], [], 2) == CutPlan((), (7.0, 5.0), 0.0, 0.0, True)


@pytest.mark.parametrize(
    ("pieces", "on_hand", "lost", "says"),
    [
        ([0.0], [5.0], 0.0, "a length must be above nothing to be cut, not 0 mm"),
        ([1.0], [-5.0], 0.0, "a length must be above nothing to be cut, not -5 mm"),
        ([1.0], [float("inf")], 0.0, "a length must be above nothing to be cut, not inf mm"),
        ([1.0], [5.0], -1.0, "a cut cannot lose -1 mm"),
    ],
)
def test_lengths_that_are_none(
    pieces: list[float], on_hand: list[float], lost: float, says: str
) -> None:
    with pytest.raises(ValueError) as told:
        cut(pieces, on_hand, lost)
    assert str(told.value) == says
