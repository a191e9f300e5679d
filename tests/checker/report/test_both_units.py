"""Lengths in the other system: to eighths, and never within what stands in the plan."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.common import units
from wellstrung.report.pages import both_units


def other(sentence: str) -> list[str]:
    return [piece.text for piece in both_units.pieces(sentence) if piece.kind == "other"]


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        ("a ring of 6 mm, a bore of 7.94..8.71 mm, 25.4 mm", []),
        ("41.16 cm, likely 40.51..41.81 cm", ["≈ 16 1/4 in", "≈ 16..16 1/2 in"]),
        ("46 cm ± 1 cm", ["≈ 18 1/8 in"]),
        ("8 ± 0.2 mm", []),
        ("254 mm", ["10 in"]),
        ("417 mm or longer, 417 mm or less", ["≈ 16 1/2 in", "≈ 16 3/8 in"]),
        ("43.2 cm long, or more; 43.2 cm inside, or more", ["≈ 17 1/8 in", "≈ 17 1/8 in"]),
        ("it will be 0 cm, likely 0..3 mm", []),
        ("it comes to 29851 m", []),
        ("11/32 in", ["≈ 8.73 mm"]),
        ("15 3/4 in", ["≈ 40 cm"]),
        ("15 3/4 in or less", ["≈ 40 cm"]),
        ("16..17 in", ["≈ 40.6..43.2 cm"]),
        ("use 14 AWG wire", ["≈ 1.63 mm"]),
        ("24 h, 9 hung, 5 g", []),
        ("write `times: 80 mm` here", []),
        ("80 mm of `80 mm` in 90 mm", ["≈ 3 1/8 in", "≈ 3 1/2 in"]),
        ("hang 9 in all", []),
        ("77 mm or more", []),  # 3 1/8 in would be 3 % more
        ("pull 0.9 N", ["≈ 92 g hanging"]),
        ("(straight pull 0.9 to 12 N)", ["≈ 92 g to 1.22 kg hanging"]),
        ("49 g hanging (0.48 N), 2.66 N (271 g)", []),
        ("18 in, and 18 in", ["≈ 45.7 cm", "≈ 45.7 cm"]),
    ],
)
def test_a_size_stands_beside_itself_in_the_other_system(
    sentence: str, expected: list[str]
) -> None:
    assert other(sentence) == expected


@given(st.text(alphabet="abc `.,0123456789/±minc", max_size=40))
def test_no_word_of_a_sentence_is_lost(sentence: str) -> None:
    kept = [piece for piece in both_units.pieces(sentence) if piece.kind != "other"]
    assert "".join(piece.text for piece in kept) == sentence.replace("`", "")
    assert "".join(piece.text for piece in both_units.plain(sentence)) == sentence.replace("`", "")


@given(st.floats(76.2, 3000), st.sampled_from(("up", "down", "nearest")))
def test_inches_are_off_by_an_eighth_at_most_and_never_to_the_wrong_side(
    mm: float, side: units.Side
) -> None:
    said = both_units.inches(mm, side).removeprefix("≈ ")
    if not said:
        assert (mm < 160 and side != "nearest") or mm < 80
        return
    shown = units.length(said).value
    assert abs(shown - mm) <= 0.02 * mm
    assert abs(shown - mm) <= (25.4 / 16 if side == "nearest" else 25.4 / 8) + 1e-9
    assert shown >= mm - 0.01 or side != "up"
    assert shown <= mm + 0.01 or side != "down"
