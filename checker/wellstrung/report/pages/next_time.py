"""What is to be done before the class meets again: what to measure, and which joints cure."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from wellstrung.common.wording import hours
from wellstrung.quantity.value import Quantity
from wellstrung.report.pages.measurements import Measurement
from wellstrung.report.pages.students import Student

#: the name of a rule, where a change begins with it
_RULE = re.compile(r"^[a-z]+(-[a-z]+)+(?= )")


class ToMeasure(Struct, frozen=True):
    """What a student has to measure, each with what it decides, and how many checks are open.

    `first` is the value that most of these wait for.
    """

    name: str
    sizes: tuple[tuple[str, str], ...]
    open: int
    first: str


class Cure(Struct, frozen=True):
    """An adhesive that cures: until it is handled, until it is worn, and what each has glued."""

    adhesive: str
    handling: str
    full: str
    students: tuple[str, ...]


def to_measure(sizes: Iterable[tuple[Student, Sequence[Measurement]]]) -> list[ToMeasure]:
    """Who has to measure what, because a verdict hangs on it, and whose checks are open."""
    found = (
        ToMeasure(
            student.name,
            tuple(_deciding(measured)),
            len(student.plan.unjudged),
            next((value for value, _ in student.plan.answer_first), ""),
        )
        for student, measured in sizes
    )
    return [one for one in found if one.sizes or one.open]


def _deciding(measured: Iterable[Measurement]) -> Iterator[tuple[str, str]]:
    for one in measured:
        decides = [change for change in one.changes if " stays at any " not in change]
        if decides:
            yield one.what, "; ".join(_RULE.sub(_in_words, change) for change in decides)


def _in_words(rule: re.Match[str]) -> str:
    return f"{rule[0].replace('-', ' ')}:"


def cures(students: Sequence[Student]) -> list[Cure]:
    """Every adhesive that a plan glues with, by how long it takes, and who glues with it."""
    found: dict[tuple[str, str, str], dict[str, None]] = {}
    for student in students:
        ask = student.plan.ask
        for step in ask.plan.steps_that("glue") if ask is not None else ():
            glue = step.parts.get("with")
            if glue is None:
                continue
            times = (student.plan.quantities.get(f"{glue.name}.{what}") for what in _TIMES)
            handling, full = map(_lasts, times)
            if full:
                name = glue.said("type") if glue.has("type") else glue.name
                found.setdefault((name, handling, full), {})[student.name] = None
    return [Cure(*key, tuple(names)) for key, names in found.items()]


_TIMES = ("handling", "full_cure")


def _lasts(time: Quantity | None) -> str:
    """A time on the careful side; empty where it is not known."""
    return hours(time.worst.high, days=True) if time is not None else ""
