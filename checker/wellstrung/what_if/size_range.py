"""A piece in other sizes: the same plan with another finished length.

The part whose `length: fills the rest` takes up the difference. If the plan gives the wearer's own
measure, it changes with the length, so that the ease stays the same. Every size is checked as a
plan of its own; what breaks at it are the remarks that the plan's own size does not have.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import floor, isfinite

from msgspec import Struct

from wellstrung.common import units
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import RANK, Identity, PlanResult, Remark, understood
from wellstrung.lists import shopping
from wellstrung.lists.line import SupplyLine
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Goal, Plan
from wellstrung.reading import parser, tree
from wellstrung.rulebook.installed import Installed
from wellstrung.subjects.worn import ROUND

#: Steps from one size to the next, mm, by the piece and by whether its maker writes inches: a
#: bracelet is sized by the centimetre or half inch, a necklace by the inch. Common practice.
_STEPS: Mapping[str, tuple[float, float]] = {"necklace": (25.0, 25.4)}
_STEP = (10.0, 12.7)
#: How many sizes there are to each side of the plan's own where none are named, and at most in all.
_EITHER_SIDE, _MOST_SIZES = 3, 60
#: What can take up the difference: what is woven or strung.
_STRETCHES = frozenset({Role.ROPE, Role.BAND, Role.STRAND})
_COUNTED_BY = ("length", "rounds", "rows", "count", "repeats")


class NoSizes(Exception):
    """Why a plan has no range of sizes, and what to write."""


class Size(Struct, frozen=True):
    """One size: its length and what it takes; `breaks` are the remarks that are new to it.

    `length` and `rounds` are of the part that fills the rest; None where they are not known.
    """

    wanted: float
    text: str
    own: bool
    length: float | None
    rounds: float | None
    lines: tuple[SupplyLine, ...]
    breaks: tuple[Remark, ...]
    errors: int
    warnings: int


class Sizes(Struct, frozen=True):
    """A plan over its sizes; `part` fills the rest, `field` is the length that varies.

    `inches` says that its author writes them in inches.
    """

    result: PlanResult
    part: str
    field: str
    moves: str | None
    sizes: tuple[Size, ...]
    inches: bool = False


def over(
    result: PlanResult,
    installed: Installed,
    first: str | None = None,
    last: str | None = None,
    step: str | None = None,
) -> Sizes:
    """The plan at every size from `first` to `last`; raises NoSizes.

    Lengths are written as in a plan. If none are named, three sizes to each side.
    """
    plan, part, goal = _sized(result)
    checker = Checker(installed, keep=True)
    before = _ranks(result)
    found = []
    for wanted, text in _range(plan, goal, first, last, step):
        changed = _at(plan, goal, wanted, checker)
        own = abs(wanted - goal.middle) < _SAME
        found.append(_size(changed, part, wanted, text, own, before))
    wearer, _ = _measure(plan)
    return Sizes(result, part.name, goal.field, wearer, tuple(found), plan.in_inches)


def grown(result: PlanResult, size: str, checker: Checker) -> PlanResult:
    """The plan in a larger size, or in its own, written as a length in a plan; raises NoSizes."""
    plan, _, goal = _sized(result)
    wanted = _length("--up-to", size)
    if wanted is None or wanted < goal.middle - _SAME:
        raise NoSizes(f"--up-to {size} is shorter than the plan's own size, {goal.text}")
    return _at(plan, goal, wanted, checker)


def _sized(result: PlanResult) -> tuple[Plan, Part, Goal]:
    """A plan that can have other sizes, what fills its rest, and its length; raises NoSizes."""
    if result.ask is None:
        raise NoSizes(f"{result.file} cannot be read: `wellstrung check` shows what is wrong")
    plan = result.ask.plan
    part, goal = _filling(plan, result.ask.quantities), plan.goal
    assert goal is not None  # a rest of nothing is refused when the plan is built
    return plan, part, goal


def _at(plan: Plan, goal: Goal, wanted: float, checker: Checker) -> PlanResult:
    """A plan with another length, mm, and its wearer's measure moved as far."""
    edits = [(goal.place, _written(wanted, goal.window.high - goal.middle))]
    _, measure = _measure(plan)
    if measure is not None:
        body = units.finger(measure.value)
        moved = body.value + wanted - goal.middle
        if moved > 0:
            edits.append((measure.place, _written(moved, body.high - body.value)))
    read = parser.read_text(tree.replaced(plan.text, edits), plan.file)
    return checker.check_read(read, plan.bench, plan.drawer)


#: Two sizes that are nearer than this are one, mm.
_SAME = 0.05


def _filling(plan: Plan, ask: Quantities) -> Part:
    """The part that fills the rest; raises NoSizes with the part that could."""
    for part in plan.parts.values():
        if part.fills_rest:
            return part
    if plan.goal is None:
        raise NoSizes(
            f"{plan.file} gives no length for the piece: write `finished_length: ...` or"
            " `inside: ...`"
        )
    longest = max(
        (
            part
            for entry in plan.run
            for part in entry.parts
            if part.kind.role in _STRETCHES and not entry.beside
        ),
        key=lambda part: _known(part.name, "length", ask) or 0.0,
        default=None,
    )
    if longest is None:
        raise NoSizes(
            f"no rope, band, braid or strand of {plan.file} has a place of its own in the run,"
            " where it could fill the rest"
        )
    field = next((name for name in _COUNTED_BY if longest.has(name)), "length")
    place = longest.place_of(field)
    raise NoSizes(
        f"no part of {plan.file} fills the rest: write `length: fills the rest` for"
        f" `{field}: {longest.text(field)}` of `{longest.name}` (line {place.line})"
    )


def _known(part: str, what: str, ask: Quantities) -> float | None:
    """The middle of a quantity of a part; None where the plan lacks a value for it."""
    try:
        return ask.get(f"{part}.{what}").middle
    except Missing:
        return None


def _measure(plan: Plan) -> tuple[str | None, tree.Node | None]:
    """Which measure of the wearer moves with the size, and where it is written."""
    name = ROUND.get(plan.piece)
    node = plan.written("wearer", name) if name else None
    return (name, node) if node is not None else (None, None)


def _range(
    plan: Plan, goal: Goal, first: str | None, last: str | None, step: str | None
) -> list[tuple[float, str]]:
    """Each size in mm and as the author writes lengths; raises NoSizes."""
    by = _length("--step", step) or _STEPS.get(plan.piece, _STEP)[plan.in_inches]
    middle = goal.middle
    low = _length("--from", first) or max(by, middle - _EITHER_SIDE * by)
    high = _length("--to", last) or max(low, middle + _EITHER_SIDE * by)
    if high < low:
        raise NoSizes(f"--from {first or units.show(low, goal.unit)} is longer than --to {last}")
    count = floor((high - low) / by + 1e-6) + 1
    if count > _MOST_SIZES:
        raise NoSizes(f"these are {count} sizes: take a longer --step, for at most {_MOST_SIZES}")
    return [(low + n * by, units.show(low + n * by, goal.unit)) for n in range(count)]


def _length(option: str, text: str | None) -> float | None:
    """A length of the command line, mm; raises NoSizes."""
    if text is None:
        return None
    try:
        parsed = units.length(text)
    except units.UnitFault as wrong:
        raise NoSizes(f"{option}: {wrong.says}") from wrong
    if parsed.low != parsed.high or not isfinite(parsed.value):
        raise NoSizes(f"{option}: `{text}` is a range: write one length")
    return parsed.value


def _written(length: float, either_way: float) -> str:
    """A length as it is written in the changed plan, with the tolerance it had."""
    written = units.show(length, "mm", 9)
    return f"{written} ± {units.show(either_way, 'mm', 9)}" if either_way else written


def _ranks(result: PlanResult) -> dict[Identity, int]:
    """The level of each remark that counts, the most serious about one thing."""
    ranks: dict[Identity, int] = {}
    for remark in result.remarks:
        if remark.counts:
            ranks[remark.identity] = max(ranks.get(remark.identity, 0), RANK[remark.level])
    return ranks


def _size(
    changed: PlanResult,
    part: Part,
    wanted: float,
    text: str,
    own: bool,
    before: Mapping[Identity, int],
) -> Size:
    ask = changed.ask.quantities if changed.ask else None
    return Size(
        wanted,
        text,
        own,
        _known(part.name, "length", ask) if ask else None,
        _known(part.name, "rounds", ask) if ask else None,
        tuple(shopping.needed(understood([changed]), on_hand=False)),
        tuple(
            remark
            for remark in changed.remarks
            if remark.counts and RANK[remark.level] > before.get(remark.identity, 0)
        ),
        changed.count("error"),
        changed.count("warning"),
    )
