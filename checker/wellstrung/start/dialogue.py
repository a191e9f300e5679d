"""The state of a dialogue: what has been answered, what comes next, going back, correcting."""

from __future__ import annotations

from collections.abc import Sequence

from wellstrung.start.making import draft
from wellstrung.start.question import Answer, Answers, Choice, Question, Refused
from wellstrung.start.topics import QUESTIONS
from wellstrung.start.trial import Trial, Tried

#: from so many answers on the rest may be left to what is proposed
DRAFT_AFTER = 5
_UNKNOWN = (
    "don't know", "dont know", "do not know", "i don't know", "not sure", "no idea", "unknown",
    "dunno", "dk", "?",
)  # fmt: skip
_HEAD = (
    "Written by `wellstrung start`, from answers to its questions. What stands after a # is a"
    " comment: why a value is so, or what to measure."
)


def is_unknown(text: str) -> bool:
    """Whether an answer is one of the ways to say "don't know"."""
    return " ".join(text.casefold().replace("\u2019", "'").rstrip(".!").split()) in _UNKNOWN


class Dialogue:
    """Questions, answers and the draft that follows from them."""

    def __init__(self, trial: Trial) -> None:
        self.trial = trial
        self.answers = Answers(QUESTIONS)
        #: the names of what was answered, the last one last; the screen counts as one
        self.path: list[str] = []
        self.screen_seen = False

    @property
    def open(self) -> Question | None:
        """The next question that is not answered; the first of the screen stands for all of it."""
        for question in self.answers.asked():
            settled = question.obvious(self.answers) or (question.screen and self.screen_seen)
            if question.name not in self.answers.given and not settled:
                return question
        return None

    @property
    def shaped(self) -> bool:
        """Whether the way of making is known, so that there is something to show."""
        names, following = list(QUESTIONS), self.open
        return following is None or names.index(following.name) > names.index("stitch")

    @property
    def screen(self) -> list[Question]:
        """The questions of the screen."""
        return [question for question in self.answers.asked() if question.screen]

    @property
    def ready(self) -> bool:
        """Whether there is a draft that could be written."""
        return len(self.answers.given) >= DRAFT_AFTER

    def answer(self, name: str, text: str) -> None:
        """Read an answer; raises Refused. An empty one takes what is proposed."""
        question = QUESTIONS[name]
        text = " ".join(text.split())
        if is_unknown(text) or (not text and not question.proposes(self.answers)):
            if question.needed:
                raise Refused(f"this one is needed: {self._offered(question)}")
            given = Answer("don't know", None, known=False)
        else:
            said = text or question.proposes(self.answers)
            given = Answer(said, question.reads(said, self.answers))
        self.answers = self.answers.but(name, given)
        if not question.screen:
            self.path = [one for one in self.path if one != name] + [name]

    def _offered(self, question: Question) -> str:
        words = [choice.word for choice in question.choices(self.answers)]
        return f"write {', '.join(words)}" if words else "write an answer"

    def take_screen(self) -> None:
        """Take the screen as it stands."""
        self.screen_seen = True
        self.path.append("")

    def back(self) -> bool:
        """Take the last answer back; no if there is none."""
        if not self.path:
            return False
        name = self.path.pop()
        if name:
            self.answers = self.answers.but(name, None)
        else:
            self.screen_seen = False
        self.path = [one for one in self.path if not one or one in self.answers.given]
        return True

    def offered(self, question: Question) -> Sequence[Choice]:
        """The choices of a question, without those that the checker has more against."""
        choices = question.choices(self.answers)
        if not question.tried or len(choices) < 2:
            return choices
        scores = [self._with(question, one).score for one in choices]
        return [one for one, score in zip(choices, scores, strict=True) if score == min(scores)]

    def _with(self, question: Question, choice: Choice) -> Tried:
        value = question.reads(choice.word, self.answers)
        answers = self.answers.but(question.name, Answer(choice.word, value))
        return self._settled(answers)

    def tried(self) -> Tried:
        """The draft so far, as the checker has it."""
        return self._settled(self.answers)

    def _settled(self, answers: Answers) -> Tried:
        asked = [one.name for one in answers.asked() if not one.screen and not one.aside]
        unsure = [name for name in asked if answers.unsure(name)]
        known = "Not known when it was written: {}. What stands for it is usual, or left open."
        more = (known.format(", ".join(unsure)),) if unsure else ()
        return self.trial.settled(draft(answers), (_HEAD, *more))
