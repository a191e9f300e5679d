"""What hangs on it, and the stone that a bezel holds."""

from __future__ import annotations

from wellstrung.start.making.hanging import BOUGHT, NOTHING, STONE
from wellstrung.start.question import Answers, Choice, Question, one_of, saying
from wellstrung.start.topics import beads
from wellstrung.start.topics.piece import style
from wellstrung.start.words import size

_CHOICES = (
    Choice(NOTHING),
    Choice(BOUGHT, "bought, on a bail"),
    Choice(STONE, "a cabochon in rounds of peyote, on a bail"),
)


def may_hang(answers: Answers) -> bool:
    """Whether a bail slides over it: one rope or one strand of a necklace."""
    one = style(answers)
    return answers["piece"].piece == "necklace" and (
        one.ends in ("cap", "crimp") and one.wide != "strands"
    )


def has_bezel(answers: Answers) -> bool:
    """Whether a stone in a bezel belongs to it."""
    stone = may_hang(answers) and answers["hangs"] == STONE
    return stone or any(role.name == "bezel bead" for role in style(answers).roles)


def _of_bezel(question: Question) -> Question:
    return Question(
        question.name,
        question.asks,
        question.reads,
        question.proposes,
        applies=has_bezel,
    )


QUESTIONS = (
    Question(
        "hangs",
        saying("Does anything hang on it?"),
        one_of(lambda answers: _CHOICES),
        proposes=saying(NOTHING),
        choices=lambda answers: _CHOICES,
        applies=may_hang,
    ),
    Question(
        "stone",
        saying("How wide is the stone, measured across?"),
        size,
        proposes=saying("18 mm"),
        applies=has_bezel,
    ),
    *map(_of_bezel, beads.BEZEL),
)
