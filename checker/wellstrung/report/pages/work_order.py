"""The work in the order that finishes first, with what can be done while a joint cures.

Hands work on one step at a time. A wait needs no hands, and what does not need the joint is done
meanwhile.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from msgspec import Struct

from wellstrung.common.wording import hours
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.plan import Step
from wellstrung.subjects.steps import done_at_home
from wellstrung.work import hours as piece_hours
from wellstrung.work.dependencies import for_times
from wellstrung.work.schedule import SLACK, Work, overlapping


class Done(Struct, frozen=True):
    """One step: when it begins, how long hands take, and how long what they made then rests."""

    number: int
    words: str
    begins: float
    hands: float
    rest: float
    student_begins: float
    student_hands: float
    meanwhile: tuple[str, ...] = ()

    @property
    def waits(self) -> bool:
        """Whether it is a wait, which takes no hands."""
        return self.rest > 0 and not self.hands


class Order(Struct, frozen=True):
    """The steps in the order that finishes first; no time is known without the value `missing`.

    `longer_cure` says that a joint needs more time to cure than the plan gives it; here it has it.
    """

    steps: tuple[Done, ...] = ()
    maker_ends: float = 0.0
    student_ends: float = 0.0
    as_written: bool = True
    longer_cure: bool = False
    missing: str = ""
    untimed: tuple[str, ...] = ()

    @property
    def hands(self) -> float:
        """Minutes of hands at the maker's pace."""
        return sum(step.hands for step in self.steps)

    @property
    def student_hands(self) -> float:
        """Minutes of hands at a student's pace."""
        return sum(step.student_hands for step in self.steps)


def order_of(result: PlanResult) -> Order | None:
    """The work of a plan; None where it has none."""
    if result.ask is None or not result.ask.plan.steps:
        return None
    plan, steps = result.ask.plan, result.ask.plan.steps
    quantities = result.ask.quantities
    words = tuple(in_words(step) for step in steps)
    try:
        hands = [time.middle for time in piece_hours.hands(quantities)]
    except Missing as missing:
        return Order(missing=missing.field, untimed=words)
    pace = plan.bench.paces["student"].value
    work = for_times(quantities, hands)
    at_home = [done_at_home(plan, step) for step in steps]
    slow = work.taking(
        [
            0.0 if brought else minutes * pace
            for minutes, brought in zip(hands, at_home, strict=True)
        ]
    )
    order = piece_hours.fastest_order(quantities).order or work.written
    times, slowly = overlapping(work, order), overlapping(slow, order)
    begun = sorted((times.starts[at], at) for at, task in enumerate(work.tasks) if task.hands)
    done = [
        Done(
            steps[index].number, words[index], times.starts[index], hands[index],
            work.tasks[index].rest, slowly.starts[index], slow.tasks[index].hands,
            _meanwhile(times.over[index], work.tasks[index].rest, begun, words),
        )
        for index in order
    ]  # fmt: skip
    as_given = overlapping(Work(work.tasks), order)
    longer_cure = times.finish > as_given.finish + SLACK or any(
        start > given + SLACK for start, given in zip(times.starts, as_given.starts, strict=True)
    )
    return Order(tuple(done), times.finish, slowly.finish, order == work.written, longer_cure)


def _meanwhile(
    end: float, rest: float, begun: Sequence[tuple[float, int]], words: Sequence[str]
) -> tuple[str, ...]:
    """The steps that hands begin during a wait of `rest` minutes that is over at `end`."""
    if not rest:
        return ()
    during = begun[bisect_left(begun, (end - rest, -1)) : bisect_left(begun, (end, -1))]
    return tuple([words[at] for at in sorted(at for _, at in during)])


def in_words(step: Step) -> str:
    """A step in words, names in backticks: glue `cap` to `rope`, 2 joints."""
    said = step.verb
    if step.verb == "wait":
        return f"wait {step.get('time')}" if step.get("time") else said
    for name, before in _NAMED:
        value = step.get(name)
        if name == "part" and value is not None and said.endswith(f" {value}"):
            said = (
                f"{said.removesuffix(str(value))}`{value}`"  # close `ring`, not close ring `ring`
            )
        elif value is not None:
            joined = "of" if (step.verb, name) == ("finish thread", "part") else before
            said += f" {joined} `{value}`" if joined else f" `{value}`"
    for name, one, many in _COUNTED:
        count = step.get(name)
        if count is not None:
            said += f", {count} {one if count == 1 else many}"
    return said


_NAMED = (
    ("part", ""), ("onto", "onto"), ("to", "to"), ("from", "from"), ("around", "around"),
    ("by", "by"), ("with", "with"),
)  # fmt: skip
_COUNTED = (("joints", "joint", "joints"), ("ends", "end", "ends"), ("times", "time", "times"))


def days(minutes: float) -> str:
    """A time in days, hours and minutes."""
    return hours(minutes, days=True)
