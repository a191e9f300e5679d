"""What the draft is so far, in the checker's own figures: thick, long, heavy, so many beads."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.judging.result import PlanResult
from wellstrung.rulebook import Ask, Missing, Quantity, Role
from wellstrung.rulebook.wording import between, hours, in_unit_of
from wellstrung.start.trial import Tried

_MADE = (Role.ROPE, Role.BAND, Role.STRAND)
#: what of a part is worth a line, and the word for it
_SIZES = (("width", "wide"), ("outside", "thick"), ("length", "long"))


def lines(tried: Tried) -> Iterator[str]:
    """The lines that show the effect of the answers so far."""
    ask = tried.result.ask
    if ask is not None:
        yield from _sizes(ask)
        yield from _beads(ask)
        goal = ask.plan.goal
        if goal is not None and goal.assumed:
            yield f"{goal.text} is asked for: give or take what most makers do"
        mass = _got(ask, "piece.mass")
        if mass is not None:
            yield f"the piece weighs about {_grams(mass)}"
        mine, students = _got(ask, "piece.bench_time"), _got(ask, "piece.student_time")
        if mine is not None and students is not None:
            yield f"about {hours(mine.middle)} of work, {hours(students.middle)} of a student's"
    yield from remarks(tried.result)


def remarks(result: PlanResult) -> Iterator[str]:
    """What the checker has against it, with the first way out."""
    for remark in result.numbered:
        then = f"; {remark.remedy}" if remark.remedy else ""
        yield f"{remark.level}: {remark.says}{then}"


def _sizes(ask: Ask) -> Iterator[str]:
    for part in dict.fromkeys(one for one in ask.plan.in_run if one.kind.role in _MADE):
        found = []
        for what, word in _SIZES:
            size = _got(ask, f"{part.name}.{what}") if ask.offers(part, what) else None
            if size is not None:
                found.append(f"{in_unit_of(size.middle, size)} {word}{_likely(size, what)}")
        if found:
            yield f"`{part.name}`: {', '.join(found)}"


def _likely(size: Quantity, what: str) -> str:
    """The range of a size that is worked out; a length is stopped at, and needs none."""
    low, high = size.likely
    if what == "length" or low == high:
        return ""
    return f" (likely {between(low, high, size)})"


def _beads(ask: Ask) -> Iterator[str]:
    found = []
    for name in ask.plan.beads:
        needed = _got(ask, f"beads.{name}.needed")
        if needed is not None:
            found.append(f"about {needed.middle:.0f} of `{name}`")
    if found:
        yield f"takes {', '.join(found)}"


def _grams(mass: Quantity) -> str:
    return f"{mass.middle:.2g} g" if mass.middle < 10 else f"{mass.middle:.0f} g"


def _got(ask: Ask, name: str) -> Quantity | None:
    try:
        return ask.get(name)
    except Missing:
        return None
