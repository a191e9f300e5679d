"""What comes out of judging: remarks, held checks, open checks and internal errors, by plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

from msgspec import Struct, field

from wellstrung.common.places import Place
from wellstrung.common.wording import together
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.remark import LEVELS as LEVELS
from wellstrung.judging.remark import RANK as RANK
from wellstrung.judging.remark import Identity as Identity
from wellstrung.judging.remark import Remark as Remark
from wellstrung.judging.versions import Since
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import Ask, Level

#: the families that say whether a piece can be made: a plan is mostly open by their checks
DECIDING = ("fit", "length", "work")
#: the rule that holds a piece against the length that its plan asks for
_LENGTH = "finished-length"


class HeldCheck(NamedTuple):
    """A rule that holds, with the margin that is left; `title` is what the rule asks for.

    `note` says where it holds by the choice of some makers and not of others.
    """

    rule: str
    parts: tuple[str, ...]
    margin: Quantity | None
    title: str = ""
    note: str = ""
    family: str = ""


class Unjudged(NamedTuple):
    """A rule that applies but lacks a value, with the field to fill in.

    `margin` is there where all values are, and one that is assumed decides.
    """

    rule: str
    parts: tuple[str, ...]
    missing: tuple[str, ...]
    family: str = ""
    margin: Quantity | None = None


class Failure(Struct, frozen=True):
    """An internal error, by which the report is incomplete; `rule` is empty outside of rules.

    Of a plan that could not be checked for want of a file, `plugin` is empty too. `trace` is the
    way to it through the code, for whoever mends it.
    """

    rule: str
    plugin: str
    message: str
    trace: str = ""

    @property
    def says(self) -> str:
        """The error in one line."""
        if not self.plugin:
            return self.message
        if not self.rule:
            return f"internal error in `{self.plugin}`: {self.message}"
        where = f"rule `{self.rule}` of `{self.plugin}`"
        return f"internal error in {where}; this check was skipped: {self.message}"


class _OfPlan(Struct, frozen=True):
    """What a result has of a plan, and a summary of it too."""

    file: str
    title: str = ""
    #: who made the plan; empty where it does not say
    maker: str = ""
    bench: str | None = None
    failures: tuple[Failure, ...] = ()
    #: what of its drawer is not used, and what of its bench contradicts the tables
    notes: tuple[str, ...] = ()
    #: whether it could be read as a plan: its remarks are slips otherwise, and nothing is judged
    readable: bool = True


class PlanResult(_OfPlan, frozen=True):
    """All that is known of one plan.

    `ask` holds the plan itself and its quantities, for lists and drawings; it is None unless the
    checker keeps plans and the plan has the right shape.
    """

    piece: str = ""
    text: str = ""
    #: the swatches of its bench that it goes by, each with what it narrows
    swatches: tuple[tuple[Place, tuple[str, ...]], ...] = ()
    #: the text of its drawer, by file name, if it has one
    beside: Mapping[str, str] = field(default_factory=dict)
    remarks: tuple[Remark, ...] = ()
    held: tuple[HeldCheck, ...] = ()
    unjudged: tuple[Unjudged, ...] = ()
    quantities: Mapping[str, Quantity] = field(default_factory=dict)
    ask: Ask | None = None
    #: the rank of each remark that was raised, those that another one stands for included
    raised: Mapping[Identity, int] = field(default_factory=dict)
    #: what changed since an earlier version, where it was compared with one
    since: Since | None = None

    @property
    def drawer(self) -> str | None:
        """The file of its drawer, if it has one."""
        return next(iter(self.beside), None)

    @property
    def numbered(self) -> tuple[Remark, ...]:
        """The remarks that reports number from 1: all but the cautions, in reading order."""
        return tuple(remark for remark in self.remarks if remark.level != "caution")

    @property
    def cautions(self) -> tuple[Remark, ...]:
        """The safety texts."""
        return tuple(remark for remark in self.remarks if remark.level == "caution")

    @property
    def fix_first(self) -> Remark | None:
        """The first error in the plan, or the first warning; None if there is neither."""
        return next((remark for remark in self.remarks if remark.counts), None)

    def count(self, level: Level) -> int:
        """How many remarks of a level affect the outcome (all of them, for cautions)."""
        return sum(
            remark.level == level and (remark.counts or level == "caution")
            for remark in self.remarks
        )

    @property
    def slips(self) -> int:
        """How many things keep it from being read."""
        return 0 if self.readable else len(self.remarks)

    @property
    def open(self) -> int:
        """How many checks lack a value."""
        return len(self.unjudged)

    def let_go(self) -> None:
        """Free the memory of the plan that it keeps, once everything is written of it."""
        if self.ask is not None:
            self.ask.plan.let_go()

    @property
    def outcome(self) -> str:
        """The verdict in one phrase, as the schema of the report lists them.

        A plan that a rule failed on is never makeable: what that rule would have found is open.
        """
        if not self.readable:
            return "not checked yet"
        if self.count("error"):
            return "not makeable"
        if self.failures:
            return "not fully checked"
        if self.mostly_open:
            return "no error found" if self.count("warning") else "nothing wrong found"
        return "makeable with warnings" if self.count("warning") else "makeable"

    @property
    def mostly_open(self) -> bool:
        """Whether more checks of fit, length and work are open than passed."""
        passed = sum(check.family in DECIDING for check in self.held)
        return len(self._waiting) > passed

    @property
    def length_waits(self) -> str:
        """The values without which its length is not checked; empty where it is checked."""
        waits = [check.missing for check in self.unjudged if check.rule == _LENGTH]
        return together(waits[0]) if waits and not self.count("error") else ""

    @property
    def _waiting(self) -> list[str]:
        """The value that each open check of fit, length and work waits for."""
        return [together(check.missing) for check in self.unjudged if check.family in DECIDING]

    @property
    def answer_first(self) -> list[tuple[str, int]]:
        """The values that most of these checks wait for, at most three, with how many each."""
        return Counter(self._waiting).most_common(3)


class Summary(_OfPlan, frozen=True, kw_only=True):
    """What the end of a report shows of one plan; what it has of a result, it calls the same.

    Ten thousand of them take some 20 MB, and one goes from process to process.
    """

    outcome: str = ""
    mostly_open: bool = False
    #: how many remarks of each level affect the outcome (all of them, for cautions)
    counts: Mapping[Level, int]
    slips: int = 0
    passed: int = 0
    open: int = 0
    #: the values without which its length is not checked
    length_waits: str = ""
    #: without what only its own lines show
    fix_first: Remark | None = None
    #: each safety text with the steps that it is for
    cautions: tuple[tuple[str, tuple[int, ...]], ...] = ()
    #: whether there is more to say of it than how it stands
    says_more: bool = False

    def count(self, level: Level) -> int:
        """How many remarks of a level affect the outcome (all of them, for cautions)."""
        return self.counts[level]


#: how a plan stands, and what was counted of it
Counted = PlanResult | Summary


class Together:
    """What several plans have together."""

    plans: Sequence[Counted]

    @property
    def failures(self) -> tuple[Failure, ...]:
        """Internal errors, each once."""
        return tuple(dict.fromkeys(failure for plan in self.plans for failure in plan.failures))

    @property
    def not_checked(self) -> int:
        """How many plans could not be read, so that nothing is known of them yet."""
        return sum(not plan.readable for plan in self.plans)

    @cached_property
    def _titles(self) -> Counter[str]:
        return Counter(plan.title for plan in self.plans)

    @cached_property
    def _makers(self) -> Counter[str]:
        return Counter(plan.maker for plan in self.plans)

    def called(self, plan: Counted) -> str:
        """A plan by its title; by its file too where others have that title, or it has none."""
        alike = self._titles[plan.title]
        return plan.title if alike == 1 and plan.title else f"{plan.title} {plan.file}".strip()

    def known_by(self, plan: Counted) -> str:
        """A plan by who made it where no other plan is theirs, or else as it is called."""
        alike = self._makers[plan.maker]
        return plan.maker if alike == 1 and plan.maker else self.called(plan)

    def count(self, level: Level) -> int:
        """How many remarks of a level affect the outcome, over all plans."""
        return sum(plan.count(level) for plan in self.plans)


def understood(plans: Iterable[PlanResult]) -> list[Quantities]:
    """The quantities of every plan that has the right shape, for a checker that keeps plans.

    What a drawer has on hand is on hand for the first plan that takes it, and for no other.
    """
    had: set[Place] = set()
    found = []
    for ask in (result.ask.quantities for result in plans if result.ask is not None):
        plan = ask.plan
        shared = {line.place for line in plan.entries("supplies") if line.place.file != plan.file}
        gone = had & shared
        found.append(ask.of_changed(plan.without_supplies(gone)) if gone else ask)
        had |= shared
    return found


class Result(Struct, Together, frozen=True, dict=True):
    """The results of one run, plan by plan.

    Where they were compared with earlier plans, `since` names those, and `gone` are the ones of
    them that no plan follows.
    """

    plans: tuple[PlanResult, ...]
    since: str = ""
    gone: tuple[PlanResult, ...] = ()
