"""How it closes, or how an earring is worn: what fits, with one proposed."""

from __future__ import annotations

import re
from collections.abc import Sequence

from wellstrung.start.making.styles import BREAKAWAY, BUTTON, KNOT, OPEN, OVER_HEAD, SLIDE, THROUGH
from wellstrung.start.question import Answers, Choice, Question, one_of, saying
from wellstrung.start.topics.piece import style
from wellstrung.start.words import measure

_ABOUT = {
    BREAKAWAY: "round a child's neck, only what opens by itself when it catches",
    "lobster": "shuts by itself; the wearer needs one hand",
    "toggle": "a bar through a ring; needs a little weight to stay",
    "spring ring": "small and light",
    "hook": "simple; needs weight to stay",
    "magnetic": "easy for stiff fingers; never for a child or beside a pacemaker",
    BUTTON: "no metal ends and no glue: a loop of beads over a button",
    SLIDE: "a tube over each end, flat",
    KNOT: "stretched over the hand",
    OVER_HEAD: "no clasp at all",
    THROUGH: "the end goes through a ring",
    OPEN: "worn knotted or crossed",
}
#: over a head goes what is at least so long, mm: common practice, no source
_OVER_A_HEAD = 640.0


def _fits(answers: Answers, closing: str) -> bool:
    """Whether it suits the piece, its length and its wearer."""
    piece, long = answers["piece"].piece, answers["length"]
    child = answers["wearer"].child
    if closing in (THROUGH, OPEN):
        return bool(piece == "lariat" and not (child and closing == THROUGH))
    if closing == OVER_HEAD:
        return piece == "necklace" and long is not None and long.low >= _OVER_A_HEAD and not child
    if piece == "lariat" or (piece == "necklace" and child):
        return False
    return not (closing == "magnetic" and child)


def _closings(answers: Answers) -> Sequence[Choice]:
    """Those that fit, the one on the table first."""
    fit = [one for one in style(answers).closings if _fits(answers, one)]
    if answers["piece"].piece == "necklace" and answers["wearer"].child:
        fit = [BREAKAWAY]
    had = " ".join(one.said.casefold() for one in answers["have"] or ())
    fit.sort(key=lambda name: name not in had)
    if OVER_HEAD in fit:
        fit.sort(key=lambda name: name != OVER_HEAD and name not in had)
    return tuple(Choice(name, _ABOUT[name]) for name in fit)


def _proposed(answers: Answers) -> str:
    return _closings(answers)[0].word


#: the size of a clasp, which is asked with the rings
_SIZE = re.compile(r"\b\d+(?:\.\d+)? ?mm\b")
_EARS = (
    Choice("hook", "easy to make and to wear"),
    Choice("lever back", "shuts, and does not fall out"),
    Choice("post", "sits close"),
)
QUESTIONS = (
    Question(
        "closing",
        saying("How does it close?"),
        lambda text, answers: one_of(_closings)(_SIZE.sub("", text).strip(), answers),
        proposes=_proposed,
        why=lambda answers: _ABOUT[_proposed(answers)],
        choices=_closings,
        applies=lambda answers: bool(style(answers).closings),
        tried=True,
        obvious=lambda answers: KNOT in style(answers).closings,
    ),
    Question(
        "hand",
        saying("How far round is the closed hand? It must go over."),
        measure,
        applies=lambda answers: KNOT in style(answers).closings,
    ),
    Question(
        "ear fitting",
        saying("What goes through the ear?"),
        one_of(lambda answers: _EARS),
        proposes=saying("hook"),
        choices=lambda answers: _EARS,
        applies=lambda answers: answers["piece"].piece == "earrings",
    ),
)
