"""Thread, needle, metal, caps and rings: proposed together on one screen, enter takes them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from wellstrung.common import units
from wellstrung.start import said
from wellstrung.start.making.styles import BUTTON, KNOT, OPEN, OVER_HEAD, SLIDE, THROUGH
from wellstrung.start.question import Answers, Choice, Question, Refused, one_of
from wellstrung.start.topics.piece import style
from wellstrung.start.words import Fields, size, wire
from wellstrung.tables import load

_MM = re.compile(r"\d+(?:\.\d+)? ?mm")
_METALS = ("brass", "sterling silver", "stainless steel", "copper", "titanium", "niobium")


def _threads(answers: Answers) -> Sequence[Choice]:
    return tuple(Choice(name) for name in style(answers).threads)


def _usual_thread(answers: Answers) -> str:
    """The thread on the table; otherwise the checker chooses among the usual ones."""
    for one in answers["have"] or ():
        try:
            if one.bead is None and _thread(one.said, answers):
                return str(one.said)
        except Refused:
            continue
    return ""


def _thread(text: str, answers: Answers) -> Fields:
    """The fields of a thread: one of those offered by its number, or any by what it is called."""
    offered = [choice.word for choice in _threads(answers)]
    if text.isdecimal() and 1 <= int(text) <= len(offered):
        text = offered[int(text) - 1]
    return said.thread(text)


def _metal(answers: Answers) -> str:
    if answers["piece"].piece == "earrings":
        return "niobium"
    child = answers["wearer"].child
    return (
        "sterling silver" if answers["wearer"].metals else "stainless steel" if child else "brass"
    )


def _clasped(answers: Answers) -> bool:
    return answers["closing"] not in (None, BUTTON, SLIDE, OVER_HEAD, OPEN, KNOT)


def _clasp_size(answers: Answers) -> str:
    """The size that was said with the clasp, at the question or on the table, or a usual one."""
    words = [one.said for one in answers["have"] or () if answers["closing"] in one.said.casefold()]
    for text in (answers.said("closing"), *words):
        found = _MM.search(text)
        if found is not None:
            return found[0]
    usual = load("clasps").rows.get(answers["closing"])
    return units.show(usual.cell("size").value, "mm") if usual is not None else "usual"


def _capped(answers: Answers) -> bool:
    return style(answers).ends == "cap" and answers["closing"] not in (BUTTON, OVER_HEAD)


def _held(name: str) -> Question:
    return Question(
        name,
        lambda answers: f"the size of the {name}",
        size,
        applies=lambda answers: style(answers).ends == name,
        screen=True,
    )


def _needles(answers: Answers) -> Sequence[Choice]:
    return tuple(Choice(name) for name in load("needles").rows if name.startswith("beading"))


def _needle(answers: Answers) -> str:
    return "beading 12"


QUESTIONS = (
    Question(
        "thread",
        lambda answers: "thread or wire",
        _thread,
        proposes=_usual_thread,
        choices=_threads,
        applies=lambda answers: bool(style(answers).threads),
        screen=True,
        tried=True,
    ),
    Question(
        "needle",
        lambda answers: "needle",
        one_of(_needles),
        proposes=_needle,
        choices=_needles,
        applies=lambda answers: style(answers).technique == "woven",
        screen=True,
    ),
    Question(
        "metal",
        lambda answers: "metal of clasp, rings and caps",
        one_of(lambda answers: tuple(Choice(name) for name in load("metals").rows)),
        proposes=_metal,
        screen=True,
    ),
    Question(
        "wire",
        lambda answers: "wire of the links",
        wire,
        applies=lambda answers: style(answers).linked,
        screen=True,
    ),
    Question(
        "rope measured",
        lambda answers: "the rope, if you have woven 2 cm and measured it",
        size,
        applies=_capped,
        screen=True,
    ),
    Question("cap", lambda answers: "inside of the caps", size, applies=_capped, screen=True),
    Question(
        "clasp size",
        lambda answers: "clasp, as the shop sells it",
        lambda text, answers: text if text == "usual" else size(text, answers).text,
        proposes=_clasp_size,
        applies=lambda answers: _clasped(answers) and answers["closing"] != THROUGH,
        screen=True,
    ),
    Question(
        "ring",
        lambda answers: "rings, outside",
        size,
        applies=lambda answers: (
            (_clasped(answers) or answers["closing"] == THROUGH) and style(answers).ringed
        ),
        screen=True,
    ),
    _held("crimp"),
    _held("bead tip"),
    _held("cone"),
)
