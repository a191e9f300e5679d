"""A remark on a plan, and what its level means."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct

from wellstrung.common.places import Edit, Place
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import working
from wellstrung.rulebook import Level, Target

#: what a remark is about, whatever it says: its rule and its parts
Identity = tuple[str, tuple[str, ...]]
#: levels, the higher the worse
RANK: Mapping[str, int] = {"caution": 0, "warning": 1, "error": 2, "slip": 2}
#: the levels of what rules say, the worst first
LEVELS: tuple[Level, ...] = ("error", "warning", "caution")


class Remark(Struct, frozen=True):
    """What a rule says about a subject, with the level that judging gave it."""

    rule: str
    #: a slip is what keeps a plan from being read
    level: Level | Literal["slip"]
    parts: tuple[str, ...]
    says: str
    place: Place
    found: str = ""
    needed: str = ""
    remedy: str = ""
    edits: tuple[Edit, ...] = ()
    #: lines of arithmetic that are not those of its margin
    lines: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    also: tuple[Place, ...] = ()
    affects: tuple[str, ...] = ()
    accepted: str | None = None
    margin: Quantity | None = None
    #: of a caution: the numbers of the steps that it is for, and whether a cutting list shows it
    steps: tuple[int, ...] = ()
    cuts: bool = False
    #: where the value that the words of `remedy` leave open is written, and which values will do
    target: Target | None = None
    #: what is wrong in a few trade words, and what happens at the bench otherwise
    fault: str = ""
    why: str = ""

    @property
    def working(self) -> tuple[str, ...]:
        """The arithmetic behind it, one line a step."""
        return (*self.lines, *(working(self.margin) if self.margin is not None else ()))

    @property
    def problem(self) -> str:
        """What is wrong, without the advice that ends the message where the remedy repeats it."""
        if not self.remedy or not self.says.endswith(self.remedy):
            return self.says
        return self.says[: -len(self.remedy)].removesuffix(": ").removesuffix(", so ")

    @property
    def identity(self) -> Identity:
        """The rule and the parts, by which remarks on two versions of a plan are compared."""
        return self.rule, self.parts

    @property
    def counts(self) -> bool:
        """Whether it affects the outcome: not a caution, not accepted."""
        return self.level != "caution" and self.accepted is None
