"""Answers from a file: YAML, each question by its name; every slip of the file in one round."""

from __future__ import annotations

from pathlib import Path

from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import parser, tree
from wellstrung.start.dialogue import Dialogue
from wellstrung.start.question import Question, Refused
from wellstrung.start.topics import QUESTIONS

_ANSWERS = parser.Expected(
    "file of answers",
    "write answers such as `piece: necklace`",
    "a file of answers names each question: begin with `piece: necklace`",
)


def answered(dialogue: Dialogue, path: Path) -> list[str]:
    """Give a dialogue all the answers of a file; what is wrong with them, line by line.

    What the file does not answer takes what is proposed, as enter does.
    """
    read = parser.read(path, _ANSWERS)
    if read.tree is None:
        return [f"{fault.place.line}:{fault.place.column} {fault.says}" for fault in read.faults]
    entries, refused = dict(read.tree.entries), []
    while (question := _next(dialogue)) is not None:
        entry = entries.pop(question.name, None)
        try:
            dialogue.answer(question.name, _text(entry.node) if entry is not None else "")
        except Refused as why:
            place = entry.node.place if entry is not None else read.tree.place
            refused.append(f"{place.line}:{place.column} {question.name}: {why}")
            return refused
    for name, entry in entries.items():
        place = entry.key.place
        refused.append(f"{place.line}:{place.column} {_not_asked(dialogue, name)}")
    return refused


def _next(dialogue: Dialogue) -> Question | None:
    """The next question, those that a person would not be asked included."""
    answers = dialogue.answers
    return next((one for one in answers.asked() if one.name not in answers.given), None)


def _text(node: tree.Node) -> str:
    """An answer as it would be typed; a list is one with `and` between its lines."""
    if isinstance(node, tree.Sequence):
        return " and ".join(_text(item) for item in node.items)
    return str(getattr(node, "text", node.value))


def _not_asked(dialogue: Dialogue, name: str) -> str:
    asked = [one.name for one in dialogue.answers.asked()]
    if name in QUESTIONS:
        return (
            f"`{name}` is not asked with these answers: delete it, or look at what comes before it"
        )
    near = nearest(name, asked)
    advice = f"write `{near}`" if near else f"name {one_of(asked, name)}"
    return f"there is no question `{name}`: {advice}"
