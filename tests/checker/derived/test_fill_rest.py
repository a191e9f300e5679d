"""A part that fills the rest: the piece comes out as wanted, and the length is named."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.quantity.value import Quantity
from wellstrung.testing.cases import changed

CHECKER = Checker(host.load(), quantities=True)
FILLS = {"length: 39.7 cm": "length: fills the rest"}


def worked_out(text: str) -> dict[str, Quantity]:
    result = CHECKER.check_text(text)
    assert not result.failures
    return dict(result.quantities)


def test_the_piece_comes_out_as_wanted_laid_taut(collar: str) -> None:
    as_written, found = worked_out(collar), worked_out(changed(collar, FILLS))
    assert found["piece.length"].middle == pytest.approx(460.0)
    others = as_written["piece.length"].middle - 397.0
    assert found["rope.length"].middle == pytest.approx(460.0 - others)


def test_the_piece_comes_out_as_wanted_inside(collar: str) -> None:
    wanted = {"finished_length: 46 cm ± 1 cm": "inside: 43 cm ± 1 cm"}
    found = worked_out(changed(collar, {**FILLS, **wanted}))
    assert found["piece.inside"].middle == pytest.approx(430.0)


def test_a_rope_in_two_places_fills_half_the_rest_in_each(collar: str) -> None:
    twice = {**FILLS, "cap, rope, cap": "cap, rope, cap, small, cap, rope, cap"}
    found = worked_out(changed(collar, twice))
    assert found["piece.length"].middle == pytest.approx(460.0)


def test_what_is_woven_to_the_rest_is_no_surer_than_a_written_length(collar: str) -> None:
    as_written, found = worked_out(collar), worked_out(changed(collar, FILLS))
    for end in ("low", "high"):
        assert getattr(found["piece.length"].worst, end) - 460.0 == pytest.approx(
            getattr(as_written["piece.length"].worst, end) - as_written["piece.length"].middle
        )


def test_rounds_and_beads_follow_the_rest(collar: str) -> None:
    found = worked_out(changed(collar, FILLS))
    length, rise = found["rope.length"].middle, found["rope.rise"].middle
    assert found["rope.rounds"].middle == pytest.approx(length / rise)


def test_where_the_others_are_too_long_the_piece_is_too_long(collar: str) -> None:
    short = {"finished_length: 46 cm ± 1 cm": "finished_length: 3 cm ± 1 mm"}
    text = changed(collar, {**FILLS, **short})
    assert worked_out(text)["rope.length"].middle == 0.0
    remarks = CHECKER.check_text(text).remarks
    assert [remark.level for remark in remarks if remark.rule == "finished-length"] == ["error"]
