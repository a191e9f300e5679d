"""What a rule is."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec import Struct

from wellstrung.rulebook.answer import Answer, Level, Range
from wellstrung.rulebook.ask import Ask, Limit
from wellstrung.subjects.base import Subject


class Rule(Struct, frozen=True):
    """One rule: its name in trade words, what it looks at, and the function that judges.

    `title` says in one line what it asks for; `why` what happens at the bench otherwise; `bad` and
    `good` show a line of a plan. `level` is the highest it gives. `yields_to` names the rules whose
    remark about the same parts, or about some of them, makes this one superfluous. `over` is
    `worst` for rules of hold and of safety. `limits` are those that it asks for. `loads` says that
    it judges a load, which what the plan leaves out can only raise: what is known of it may be too
    much already. `fault` says in a few trade words what is wrong where it does not hold, or what a
    caution is about: `cap too shallow`, `thread burner or flame`.
    """

    name: str
    family: str
    subject: type[Subject]
    check: Callable[[Any, Ask], Answer]
    title: str
    why: str
    sources: tuple[str, ...]
    bad: str = ""
    good: str = ""
    level: Level = "error"
    yields_to: tuple[str, ...] = ()
    over: Range = "likely"
    limits: tuple[Limit, ...] = ()
    loads: bool = False
    fault: str = ""

    @property
    def wrong(self) -> str:
        """What is wrong where it does not hold, or what to take care of, for a list of them."""
        if self.fault:
            return self.fault
        return self.name.replace("-", " ") if self.level == "caution" else f"not kept: {self.title}"

    @property
    def looks_at(self) -> str:
        """The subject in words: the first sentence of its documentation."""
        first = (self.subject.__doc__ or self.subject.__name__).partition("\n")[0]
        return first[0].lower() + first[1:].rstrip(".")
