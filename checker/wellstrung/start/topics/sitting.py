"""How it shall sit: what the wearer measures, and how long the piece is to be."""

from __future__ import annotations

from wellstrung.common import units
from wellstrung.start.making import ROUND
from wellstrung.start.question import Answers, Question
from wellstrung.start.words import length, measure
from wellstrung.tables import load

#: how far below the neck a necklace lies, mm, and one that sits close: common practice, no source
_BELOW, _CLOSE = 100.0, 50.0
_CLOSE_ONES = ("choker", "collar")
#: a bracelet, an anklet and a lariat of no measure known: common practice, no source
_UNMEASURED = {"bracelet": "18 cm", "anklet": "24 cm", "necklace": "46 cm", "lariat": "1.05 m"}
#: the comfortable ease of what goes round a wrist or an ankle: the table and its row
_EASES = {"bracelet": ("bracelet_eases", "comfort"), "anklet": ("anklets", "usual")}


def _piece(answers: Answers) -> str:
    return str(answers["piece"].piece)


def _length(answers: Answers) -> str:
    """A usual length: of what goes round something, its measure and a comfortable ease."""
    piece, measure = answers["piece"], answers["measure"]
    if _usual(answers):
        named = load("necklace_lengths").rows.get(piece.word)
        if named is None:
            return _UNMEASURED[piece.piece]
        return units.show(round(named.cell("nominal").value, -1), "cm")
    if piece.piece in _EASES:
        table, row = _EASES[piece.piece]
        ease = load(table).row(row).cell("ease").value
    else:
        ease = _CLOSE if piece.word in _CLOSE_ONES else _BELOW
    inches = measure.unit.startswith("in")
    return units.show(measure.value + ease, measure.unit, None if inches else 1)


def _usual(answers: Answers) -> bool:
    """Whether the length goes by the name of the piece: of no measure, or far below the neck."""
    word = answers["piece"].word
    far = word in load("necklace_lengths").rows and word not in _CLOSE_ONES
    return answers["measure"] is None or far


def _why(answers: Answers) -> str:
    piece = _piece(answers)
    if answers["measure"] is None:
        return "usual; you can change it when you have measured"
    if _usual(answers):
        return "usual for its name"
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
