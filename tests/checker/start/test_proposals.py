"""What is proposed, from the answers before."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.start.dialogue import Dialogue
from wellstrung.start.topics import QUESTIONS
from wellstrung.start.trial import Trial


@pytest.mark.parametrize(
    ("piece", "measure", "length"),
    [
        ("anklet", "22 cm", "24.5 cm"),
        ("anklet", "9 in", "10 in"),
        ("anklet", "", "24 cm"),
        ("bracelet", "16 cm", "17.9 cm"),
        ("bracelet", "", "18 cm"),
        ("necklace", "36 cm", "46 cm"),
        ("necklace", "", "46 cm"),
        ("choker", "34 cm", "39 cm"),
        ("choker", "", "38 cm"),
        ("opera", "", "76 cm"),
        ("opera", "36 cm", "76 cm"),
        ("lariat", "", "1.05 m"),
    ],
)
def test_a_length(piece: str, measure: str, length: str, checker: Checker) -> None:
    dialogue = Dialogue(Trial(checker))
    dialogue.answer("piece", piece)
    if measure:
        dialogue.answer("measure", measure)
    assert QUESTIONS["length"].proposes(dialogue.answers) == length
