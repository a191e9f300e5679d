"""Where the places of a run lie, and what breaks take out of a long part."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pages import ALL, checked
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.piece.sagging import point_on, sagging
from wellstrung.drawing.piece.stretches import GAP, along_run


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_the_places_of_a_run_add_up_to_the_length_of_the_piece(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    run = list(along_run(result.ask.plan, Sizes(result.ask), None))
    assert run[-1].start + run[-1].length == pytest.approx(result.quantities["piece.length"].middle)
    assert not any(stretch.cut_short for stretch in run)
    for before, after in pairwise(run):
        assert after.start == pytest.approx(before.start + before.length)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_what_is_cut_short_is_drawn_in_pieces_with_gaps_between(path: Path) -> None:
    result = checked(path)
    assert result.ask is not None
    for stretch in along_run(result.ask.plan, Sizes(result.ask), {}):
        pieces = list(stretch.pieces)
        assert len(pieces) == (3 if stretch.cut_short else 1)
        drawn = sum(length for _, length in pieces)
        assert drawn + GAP * (len(pieces) - 1) == pytest.approx(stretch.drawn)
        assert stretch.drawn <= stretch.length


@given(chord=st.floats(50, 500), share=st.floats(1.001, 1.5))
def test_a_sagging_strand_is_as_long_as_it_is(chord: float, share: float) -> None:
    curve = sagging(10, chord, chord * share)
    assert curve[-1][0] == pytest.approx(chord * share, rel=1e-6)
    assert curve[0][1:] == (10, 0) and curve[-1][1] == pytest.approx(10 + chord)
    x, y = point_on(curve, chord * share / 2)
    assert x == pytest.approx(10 + chord / 2) and y == pytest.approx(max(y for *_, y in curve))
