"""How it shall sit: what the wearer measures, and how long the piece is to be."""

from __future__ import annotations

from wellstrung.common import units
from wellstrung.start.making import ROUND
from wellstrung.start.question import Answers, Question
from wellstrung.start.words import length, measure
from wellstrung.tables import load

_BY_WORD = {"choker": "choker", "collar": "collar", "matinee": "matinee", "opera": "opera"}


def _piece(answers: Answers) -> str:
    return str(answers["piece"].piece)


def _length(answers: Answers) -> str:
    """A usual length: of what goes round something, its measure and a comfortable ease."""
    piece, measure = answers["piece"], answers["measure"]
    if piece.piece == "lariat":
        return "1.05 m"
    if piece.piece == "bracelet":
        ease = load("bracelet_eases").row("comfort").cell("ease").value
        if measure is None:
            return "18 cm"
        return _shown(measure.value + ease, measure.unit)
    if piece.piece == "anklet":
        return _shown(measure.value + 15, measure.unit) if measure is not None else "24 cm"
    name = _BY_WORD.get(piece.word)
    if name is not None and measure is None:
        row = load("necklace_lengths").row(name)
        return units.show(round(row.cell("nominal").value, -1), "cm")
    if measure is not None:
        return _shown(measure.value + (50 if name in ("choker", "collar") else 100), measure.unit)
    return "46 cm"


def _shown(mm: float, unit: str) -> str:
    return units.show(mm, unit, None if unit.startswith("in") else 1)


def _why(answers: Answers) -> str:
    piece = _piece(answers)
    if answers["measure"] is None:
        return "usual; you can change it when you have measured"
    if piece == "bracelet":
        return "the wrist and a comfortable ease"
    return "the ankle and a little room" if piece == "anklet" else "so far below the neck"


def _asks(answers: Answers) -> str:
    piece = _piece(answers)
    if piece in ("bracelet", "anklet"):
        return "How long is it to be, the way round inside, closed?"
    return "How long is it to be, laid taut, clasp closed?"


QUESTIONS = (
    Question(
        "measure",
        lambda answers: f"How far round is the {ROUND[_piece(answers)]}?",
        measure,
        applies=lambda answers: _piece(answers) in ROUND,
    ),
    Question(
        "length",
        _asks,
        length,
        proposes=_length,
        why=_why,
        applies=lambda answers: _piece(answers) in (*ROUND, "lariat"),
    ),
)
