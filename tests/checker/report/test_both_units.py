"""Sizes in the other system: to sixteenths, and never within what stands in the plan."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.report.pages import both_units


def other(sentence: str) -> list[str]:
    return [piece.text for piece in both_units.pieces(sentence) if piece.kind == "other"]


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        ("6 mm", ["≈ 1/4 in"]),
        ("25.4 mm", ["1 in"]),
        ("a bore of 7.94..8.71 mm", ["≈ 5/16 in"]),
        ("41.16 cm, likely 40.51..41.81 cm", ["≈ 16 3/16 in", "≈ 15 15/16..16 7/16 in"]),
        ("46 cm ± 1 cm", ["≈ 18 1/8 in", "≈ 3/8 in"]),
        ("8 ± 0.2 mm", ["≈ 5/16 in"]),
        ("0.6 mm", ["under 1/16 in"]),
        ("it comes to 0 cm, likely 0..3 mm", ["0 in", "≈ 0..1/8 in"]),
        ("it comes to 29851 m", []),
        ("11/32 in", ["≈ 8.73 mm"]),
        ("15 3/4 in", ["≈ 400.1 mm"]),
        ("use 14 AWG wire", ["≈ 1.63 mm"]),
        ("24 h, 9 hung, 5 g", []),
        ("write `times: 8 mm` here", []),
        ("8 mm of `8 mm` in 9 mm", ["≈ 5/16 in", "≈ 3/8 in"]),
        ("hang 9 in all", []),
        ("18 in, and 18 in", ["≈ 457.2 mm", "≈ 457.2 mm"]),
        ("a hole of 0.394 in works", ["≈ 10.01 mm"]),
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


@given(st.floats(1.6, 2000))
def test_inches_are_off_by_half_a_sixteenth_at_most(mm: float) -> None:
    whole, _, part = both_units.inches(mm).removeprefix("≈ ").removesuffix(" in").rpartition(" ")
    over, _, under = part.partition("/")
    value = float(whole or 0) + float(over) / float(under or 1)
    assert abs(value * 25.4 - mm) <= 25.4 / 32 + 1e-9
