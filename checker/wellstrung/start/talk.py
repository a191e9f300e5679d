"""The dialogue in words: asks, understands `back` and the like, shows what follows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from textwrap import wrap

from wellstrung.common.wording import nearest
from wellstrung.start import effect
from wellstrung.start.dialogue import DRAFT_AFTER, Dialogue
from wellstrung.start.outlook import not_known, settled, verdict
from wellstrung.start.question import Question, Refused
from wellstrung.start.trial import Tried

COMMANDS = {
    "back": "the question before this one again",
    "answers": "all your answers, to correct one",
    "write": "stop asking: take what is proposed for the rest, and write the plan",
    "quit": "stop, and write nothing",
    "help": "these words",
}
_HELP = (
    "Enter takes what stands in [brackets]; `don't know` is always an answer. Sizes as you say"
    " them: 46 cm, 7 1/2 in, 8/0, 20 AWG."
)


class Quit(Exception):
    """The author wants to stop and have nothing written."""


class Talk:
    """One dialogue at a terminal; `ask` gets a line, `tell` prints one."""

    def __init__(
        self,
        dialogue: Dialogue,
        ask: Callable[[str], str],
        tell: Callable[[str], None],
        width: int,
    ) -> None:
        self.dialogue = dialogue
        self._ask = ask
        self._print = tell
        self._width = width
        self._shown: set[str] = set()

    def run(self) -> Tried:
        """Ask until the author is content; the draft. Raises Quit."""
        self._tell(_HELP + " `back`, `answers`, `write`, `quit` and `help` work everywhere.")
        while True:
            question = self.dialogue.open
            if question is None:
                if self._content():
                    return self.dialogue.tried()
            elif question.screen:
                self._screen()
            else:
                self._question(question)

    def _tell(self, text: str, first: str = "", rest: str | None = None) -> None:
        indent = rest if rest is not None else " " * len(first)
        for line in wrap(text, self._width, initial_indent=first, subsequent_indent=indent) or [""]:
            self._print(line)

    def _question(self, question: Question) -> None:
        answers = self.dialogue.answers
        proposed = question.proposes(answers)
        self._print("")
        self._tell(question.asks(answers))
        choices = self.dialogue.offered(question)
        self._rows([(choice.word, choice.about) for choice in choices])
        why = question.why(answers)
        if why and proposed and not choices:
            self._tell(f"{proposed}: {why}", "  ")
        while (given := self._line(f"[{proposed}] > " if proposed else "> ")) is not None:
            try:
                self.dialogue.answer(question.name, given)
            except Refused as refused:
                self._tell(str(refused), "  ! ")
                continue
            if self.dialogue.answers.unsure(question.name):
                self._tell(not_known(self.dialogue, question), "  > ")
            self._effect()
            return

    def _rows(self, rows: Sequence[tuple[str, str]]) -> None:
        """Numbered rows of a word and what there is to say about it."""
        wide = min(max((len(word) for word, _ in rows), default=0), 34)
        for number, (word, about) in enumerate(rows, 1):
            first = f"  {number:>{len(str(len(rows)))}} {word.ljust(wide)}  "
            if about:
                self._tell(about, first)
            else:
                self._print(first.rstrip())

    def _effect(self) -> None:
        """The lines of the effect that are new, once the way of making is known."""
        if not self.dialogue.shaped:
            return
        found = list(effect.lines(self.dialogue.tried()))
        for line in found:
            if line not in self._shown:
                self._tell(line, "  > ")
        self._shown = set(found)

    def _screen(self) -> None:
        self._print("")
        self._tell("All this goes with it; enter takes it, or write a number and your own.")
        questions = self.dialogue.screen
        rows = [(one.name, self._stands(one)) for one in questions]
        self._rows(rows)
        given = self._line("[take all] > ")
        if given is None:
            return
        if not given:
            self.dialogue.take_screen()
            return
        word, _, text = given.partition(" ")
        names = [one.name for one in questions]
        index = int(word) - 1 if word.isdecimal() else -1
        name = names[index] if 0 <= index < len(names) else _named(given, names)
        text = text if word.isdecimal() else given[len(name or "") :].lstrip(" :")
        if name is None or not text:
            self._tell(
                f"write a number from 1 to {len(names)} and what you have, as `1 {rows[0][1]}`",
                "  ! ",
            )
            return
        try:
            self.dialogue.answer(name, text)
        except Refused as refused:
            self._tell(str(refused), "  ! ")
            return
        self._effect()

    def _stands(self, question: Question) -> str:
        """What is taken for a question of the screen: as answered, proposed, or chosen."""
        said = self.dialogue.answers.said(question.name)
        return said or settled(self.dialogue.tried(), question.name)

    def _content(self) -> bool:
        """Whether the author takes the plan as it stands; or one answer is corrected."""
        self._print("")
        tried = self.dialogue.tried()
        self._tell(verdict(tried))
        for line in effect.remarks(tried.result):
            self._tell(line, "  > ")
        wrong = tried.result.count("error")
        given = self._line("[write it all the same] > " if wrong else "[write it] > ")
        if given is None:
            return False
        if given and given != "yes":
            self._tell("enter writes it; `answers` corrects one of your answers", "  ! ")
            return False
        return True

    def _line(self, prompt: str) -> str | None:
        """A line from the author; None if it was one of the commands, which is done then."""
        given = " ".join(self._ask(prompt).split())
        word = given.casefold()
        if word == "back":
            if not self.dialogue.back():
                self._tell("this is the first question", "  ! ")
        elif word in ("answers", "list"):
            self._correct()
        elif word == "write":
            self._write()
        elif word in ("quit", "exit", "stop"):
            raise Quit
        elif word == "help":
            self._tell(_HELP, "  ")
            for name, about in COMMANDS.items():
                self._tell(about, f"  {name.ljust(8)} ")
        else:
            return given
        return None

    def _write(self) -> None:
        """Take what is proposed for the rest."""
        if not self.dialogue.ready:
            self._tell(f"a draft can be written after {DRAFT_AFTER} answers", "  ! ")
            return
        while (question := self.dialogue.open) is not None:
            if question.screen:
                self.dialogue.take_screen()
            else:
                self.dialogue.answer(question.name, "")

    def _correct(self) -> None:
        """Show the answers, and ask one of them again."""
        asked = [
            one for one in self.dialogue.answers.asked() if one.name in self.dialogue.answers.given
        ]
        given_so_far = self.dialogue.answers.given
        self._rows([(one.name, given_so_far[one.name].said) for one in asked])
        given = self._ask("number to change, or enter > ").strip()
        if not given:
            return
        names = [one.name for one in asked]
        index = int(given) - 1 if given.isdecimal() else -1
        name = names[index] if 0 <= index < len(names) else _named(given, names)
        if name is None:
            self._tell("there is no such answer", "  ! ")
            return
        self._question(next(one for one in asked if one.name == name))


def _named(given: str, names: list[str]) -> str | None:
    low = given.casefold()
    found = [name for name in names if low == name or low.startswith((f"{name} ", f"{name}:"))]
    return max(found, key=len) if found else nearest(given, names)
