"""Thread, needle, metal, caps and rings: proposed together on one screen, enter takes them."""

from __future__ import annotations

from collections.abc import Sequence

from wellstrung.start.making.styles import BUTTON, OPEN, OVER_HEAD, SLIDE, THROUGH
from wellstrung.start.question import Answers, Choice, Question, one_of
from wellstrung.start.topics.piece import style
from wellstrung.start.words import Fields, size
from wellstrung.tables import load

_METALS = ("brass", "sterling silver", "stainless steel", "copper", "titanium", "niobium")


def _threads(answers: Answers) -> Sequence[Choice]:
    return tuple(Choice(name) for name in style(answers).threads)


def _thread(text: str, answers: Answers) -> Fields:
    """The fields of a thread by its name: type, and size or rating."""
    words = sorted(text.casefold().split())
    offered = _threads(answers)
    same = [one.word for one in offered if sorted(one.word.casefold().split()) == words]
    name = same[0] if same else one_of(_threads)(text, answers)
    kind = max((one for one in load("line_types").rows if name.startswith(f"{one} ")), key=len)
    rest = name.removeprefix(f"{kind} ")
    if kind == "elastic":
        return {"type": "elastic", "outside": rest}
    return {"type": kind, ("rating" if rest.endswith("lb") else "size"): rest}


def _metal(answers: Answers) -> str:
    if answers["piece"].piece == "earrings":
        return "niobium"
    child = answers["wearer"].child
    return (
        "sterling silver" if answers["wearer"].metals else "stainless steel" if child else "brass"
    )


def _clasped(answers: Answers) -> bool:
    return answers["closing"] not in (None, BUTTON, SLIDE, OVER_HEAD, OPEN)


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
        proposes=lambda answers: style(answers).threads[0],
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
        lambda text, answers: text,
        proposes=lambda answers: "22 AWG",
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
