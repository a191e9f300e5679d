"""What a question is, and what has been answered so far."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from msgspec import Struct

from wellstrung.common import wording
from wellstrung.common.wording import nearest, same_as


class Refused(ValueError):
    """An answer that cannot be read: what is wrong with it, and what to write."""


class Choice(NamedTuple):
    """One of the answers that a question offers, a few words about it, and other words for it."""

    word: str
    about: str = ""
    also: tuple[str, ...] = ()


class Answer(Struct, frozen=True):
    """What was said and what it was read as; `known` is no where it was "don't know"."""

    said: str
    value: Any
    known: bool = True


class Question(Struct, frozen=True):
    """One question; every text of it may follow from the answers before.

    `proposes` is an answer as it would be typed, which enter takes; where it is empty and nothing
    is known, the value is None. The questions of the `screen` stand on one page.
    """

    name: str
    asks: Callable[[Answers], str]
    reads: Callable[[str, Answers], Any]
    proposes: Callable[[Answers], str] = lambda answers: ""
    why: Callable[[Answers], str] = lambda answers: ""
    choices: Callable[[Answers], Sequence[Choice]] = lambda answers: ()
    applies: Callable[[Answers], bool] = lambda answers: True
    screen: bool = False
    #: whether the plan says nothing of it where it is not known
    aside: bool = False
    needed: bool = False
    #: whether a choice that brings an error is left out of those that are offered
    tried: bool = False
    #: whether it is not worth asking, since there is one answer
    obvious: Callable[[Answers], bool] = lambda answers: False


class Answers:
    """The answers so far; what is not answered yet has the value that is proposed."""

    def __init__(
        self, questions: Mapping[str, Question], given: Mapping[str, Answer] | None = None
    ) -> None:
        self.questions = questions
        self.given = dict(given or {})

    def __getitem__(self, name: str) -> Any:
        """What was answered, or else what is proposed; None where neither is."""
        answer = self.given.get(name)
        if answer is not None and (answer.known or answer.value is not None):
            return answer.value
        return self.proposed(name)

    def proposed(self, name: str) -> Any:
        """The value of what is proposed; None if nothing is, or if the question is not asked."""
        question = self.questions[name]
        if not question.applies(self):
            return None
        text = question.proposes(self)
        return question.reads(text, self) if text else None

    def knows(self, name: str) -> bool:
        """Whether the author answered, and not with "don't know"."""
        answer = self.given.get(name)
        return answer is not None and answer.known

    def unsure(self, name: str) -> bool:
        """Whether the author said "don't know"."""
        answer = self.given.get(name)
        return answer is not None and not answer.known

    def said(self, name: str) -> str:
        """What the author wrote, or else what is proposed."""
        answer = self.given.get(name)
        if answer is not None and answer.known:
            return answer.said
        question = self.questions[name]
        return question.proposes(self) if question.applies(self) else ""

    def asked(self) -> Iterator[Question]:
        """The questions that belong to these answers, in their order."""
        return (one for one in self.questions.values() if one.applies(self))

    def but(self, name: str, answer: Answer | None) -> Answers:
        """The same answers with one other, or without it; what no longer belongs goes too."""
        given = {**self.given, name: answer} if answer is not None else dict(self.given)
        if answer is None:
            given.pop(name, None)
        changed = Answers(self.questions, given)
        for question in self.questions.values():
            kept = changed.given.get(question.name)
            if kept is not None and not (
                question.applies(changed) and _stands(question, kept, changed)
            ):
                del changed.given[question.name]
        return changed


def _stands(question: Question, answer: Answer, answers: Answers) -> bool:
    if not answer.known:
        return True
    try:
        question.reads(answer.said, answers)
    except Refused:
        return False
    return True


def one_of(
    choices: Callable[[Answers], Sequence[Choice]],
) -> Callable[[str, Answers], str]:
    """Reads one of the choices: by its word, by its number, or by a word that means the same."""

    def read(text: str, answers: Answers) -> str:
        text = text.replace(",", "")
        offered = choices(answers)
        words = [choice.word for choice in offered]
        called = {name: choice.word for choice in offered for name in (*choice.also, choice.word)}
        found = same_as(text, words) or same_as(text, called)
        if found is None and text.isdecimal():
            if 1 <= int(text) <= len(words):
                return words[int(text) - 1]
            raise Refused(f"choose a number from 1 to {len(words)}, or write the word")
        found = found or _begins(text, called)
        if found is not None:
            return called[found]
        near = nearest(text, called)
        advice = f"write `{near}`" if near else f"choose {wording.one_of(words, text)}"
        raise Refused(f"`{text}` is not among the answers here: {advice}")

    return read


def _begins(text: str, called: Mapping[str, str]) -> str | None:
    """The answer of which alone a name begins so, or holds this word whole."""
    low = text.casefold()
    found = {called[name] for name in called if name.casefold().startswith(low)}
    found = found or {called[name] for name in called if low in name.casefold().split()}
    return found.pop() if len(found) == 1 else None


def saying(text: str) -> Callable[[Answers], str]:
    """The same text whatever was answered."""
    return lambda answers: text
