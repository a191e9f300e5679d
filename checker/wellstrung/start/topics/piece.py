"""What piece, how many, for whom, and what is on the table already."""

from __future__ import annotations

import re
from typing import NamedTuple

from wellstrung.start.making import STYLES
from wellstrung.start.making.styles import Style
from wellstrung.start.question import Answers, Choice, Question, one_of, saying
from wellstrung.start.words import had, wearer

_PIECES = (
    Choice("necklace", "choker, collar and rosary too"),
    Choice("bracelet", "cuff too"),
    Choice("anklet"),
    Choice("earrings", "a pair"),
    Choice("lariat", "open, or through a loop of its own"),
    Choice("pendant", "a stone in a bezel, for a cord or chain"),
)


class Piece(NamedTuple):
    """The piece, how many of it, and the word that was used for it."""

    piece: str
    makes: int
    word: str


#: what people call a piece, and the kind of piece that it is
_WORDS = {
    "choker": "necklace",
    "collar": "necklace",
    "rosary": "necklace",
    "princess": "necklace",
    "matinee": "necklace",
    "opera": "necklace",
    "cuff": "bracelet",
    "bangle": "bracelet",
    "earring": "earrings",
}
_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}


def _read(text: str, answers: Answers) -> Piece:
    words = re.sub(r"^(?:a )?pair of ", "", text.casefold().strip()).split()
    count = 0
    if len(words) > 1 and (words[0] in _NUMBERS or words[0].isdecimal()):
        count = _NUMBERS.get(words[0]) or min(int(words[0]), 10_000)
        words = words[1:]
    pair = "pairs" in words
    words = [word for word in words if word not in ("pairs", "of", "pair")]
    called = " ".join(words)
    one = called if called in _WORDS else called.removesuffix("s")
    found = _WORDS.get(one) or one_of(lambda _: _PIECES)(
        one if one != called and one in [choice.word for choice in _PIECES] else called, answers
    )
    each = 2 if found == "earrings" and (pair or not count) else 1
    return Piece(
        found, max(count, 1) * each, one if one in _WORDS and found != "earrings" else found
    )


def style(answers: Answers) -> Style:
    """The way of making that was chosen, or is proposed."""
    return STYLES[answers["stitch"]]


QUESTIONS = (
    Question(
        "piece",
        saying("What are you making, and how many?"),
        _read,
        choices=lambda answers: _PIECES,
        needed=True,
    ),
    Question(
        "wearer",
        saying("For whom: an adult, or a child of what age? Does metal trouble the wearer?"),
        wearer,
        proposes=saying("adult"),
    ),
    Question(
        "have",
        saying("What have you on the table already? (beads with how much of them, thread, clasp)"),
        had,
        proposes=saying("nothing"),
        aside=True,
    ),
)
