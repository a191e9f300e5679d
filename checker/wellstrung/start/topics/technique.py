"""Woven, strung, knotted or wired, then which stitch, and how wide."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wellstrung.start.making import STYLES
from wellstrung.start.making.styles import Style
from wellstrung.start.question import Answers, Choice, Question, one_of, saying
from wellstrung.start.topics.piece import style
from wellstrung.start.words import whole

_ABOUT = {
    "woven": "with needle and thread, stitch by stitch",
    "strung": "on wire, thread or elastic",
    "knotted": "a knot between beads",
    "wired": "on links or pins of wire",
}
#: what the word for a piece says of how it is made
_BY_WORD = {"cuff": "woven", "collar": "woven", "rosary": "wired"}
_STITCH_BY_WORD = {"cuff": "flat peyote", "collar": "netting"}


def _fitting(answers: Answers) -> Sequence[Style]:
    """Ways of making that suit the piece; round a child's neck, those that take a clasp."""
    piece = answers["piece"].piece
    clasped = piece == "necklace" and answers["wearer"].child
    return [
        one
        for one in STYLES.values()
        if piece in one.pieces and (not clasped or "hook" in one.closings)
    ]


def _techniques(answers: Answers) -> Sequence[Choice]:
    fit = {one.technique for one in _fitting(answers)}
    return tuple(Choice(name, about) for name, about in _ABOUT.items() if name in fit)


def _stitches(answers: Answers) -> Sequence[Choice]:
    technique = answers["technique"] or _techniques(answers)[0].word
    fit = [one for one in _fitting(answers) if one.technique == technique]
    return tuple(Choice(one.name, one.about, one.also) for one in fit)


def _first(
    choices: Callable[[Answers], Sequence[Choice]], words: dict[str, str]
) -> Callable[[Answers], str]:
    """The first choice, or the one that the word for the piece says."""

    def propose(answers: Answers) -> str:
        offered = [choice.word for choice in choices(answers)]
        by_word = words.get(answers["piece"].word, "")
        return by_word if by_word in offered else offered[0]

    return propose


def _counts(answers: Answers) -> Sequence[Choice]:
    return style(answers).counts


def _count(field: str, asks: str, least: int, most: int) -> Question:
    return Question(
        field,
        saying(asks),
        whole(least, most, "beads" if field != "strands" else "strands"),
        proposes=lambda answers: style(answers).usual,
        choices=_counts,
        applies=lambda answers: style(answers).wide == field,
    )


_LOOPS = (Choice("wrapped"), Choice("simple"))
QUESTIONS = (
    Question(
        "technique",
        saying("Woven, strung, knotted or wired?"),
        one_of(_techniques),
        proposes=_first(_techniques, _BY_WORD),
        choices=_techniques,
        applies=lambda answers: len(_techniques(answers)) > 1,
    ),
    Question(
        "stitch",
        saying("Which way?"),
        one_of(_stitches),
        proposes=_first(_stitches, _STITCH_BY_WORD),
        choices=_stitches,
        obvious=lambda answers: len(_stitches(answers)) == 1,
    ),
    _count("around", "How many beads round?", 3, 60),
    _count("across", "How many beads across?", 2, 200),
    _count("strands", "How many strands?", 2, 9),
    Question(
        "loops",
        saying("Simple loops, or wrapped ones that cannot open?"),
        one_of(lambda answers: _LOOPS),
        proposes=saying("wrapped"),
        choices=lambda answers: _LOOPS,
        applies=lambda answers: style(answers).linked,
    ),
)
