"""Answers as people give them."""

from __future__ import annotations

import pytest

from wellstrung.start.question import Answers, Refused
from wellstrung.start.words import length, measure


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("16 cm", 160),
        ("wrist 16 cm", 160),
        ("about 16 cm", 160),
        ("Wrist: 6 1/2 in", 165.1),
        ("½ in", 12.7),
    ],
)
def test_a_measure(said: str, mm: float) -> None:
    assert measure(said, Answers({})).value == pytest.approx(mm)
    assert length(said, Answers({})).value == pytest.approx(mm)


def test_what_is_no_measure() -> None:
    with pytest.raises(Refused, match="is not a length"):
        measure("as my wrist", Answers({}))
