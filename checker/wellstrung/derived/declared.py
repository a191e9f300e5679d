"""Quantities declared as data: a field with its allowance, a cell of a table, or a formula.

Kinds and stitches are written with these. An argument of a formula is named by another quantity of
the same part, or is worked out by a formula itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from types import MappingProxyType

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.derived.learnt import of_hand
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity import arithmetic
from wellstrung.quantity.arithmetic import derived, exact, leaf
from wellstrung.quantity.causes import Cause, Hand, Spread
from wellstrung.quantity.value import Quantity

#: What a model says of itself where no print was found.
GEOMETRY = "geometry, worked out for this project"
#: What it says of a range that is the maker's hand: no geometry gives it, and no print has it.
FITTED = "range fitted by this project, no printed one"

Argument = str | Formula
_NONE: Mapping[str, Argument] = MappingProxyType({})


def of_each(items: Iterable[Item], what: str, ask: Quantities) -> list[Quantity]:
    """`what` of each item; where some lack it, one Missing names what all of them lack."""
    found: list[Quantity] = []
    lacking: list[str] = []
    for item in items:
        try:
            found.append(ask.of(item, what))
        except Missing as missing:
            lacking += missing.fields
    if lacking:
        raise Missing(*lacking)
    return found


def size(*path: str, allowance: str = "") -> Formula:
    """The size of a part, mm, as the plan measures or states it, off by a bench allowance."""
    return lambda part, ask: part.size(*path, allowance=allowance)


def by_length(*path: str, allowance: str = "") -> Formula:
    """What is cut, worn or sold by length, mm, as the plan measures or states it."""
    return lambda part, ask: part.length(*path, allowance=allowance)


def wire(*path: str) -> Formula:
    """A wire thickness, mm, as the plan states it."""
    return lambda part, ask: part.wire(*path)


def mass(*path: str) -> Formula:
    """A mass, g, as the plan measures or states it."""
    return lambda part, ask: part.mass(*path)


def same_as(what: str) -> Formula:
    """Another quantity of the part."""
    return lambda part, ask: ask.of(part, what)


def constant(what: str, value: float, unit: str = "", source: str = "") -> Formula:
    """A value with no spread, the same for every part."""
    return lambda part, ask: exact(f"{part.name}.{what}", value, unit, source=source)


def count(what: str, counted: Callable[[Part], float], source: str = "") -> Formula:
    """A count of a part, without spread."""
    return lambda part, ask: exact(f"{part.name}.{what}", counted(part), source=source)


def formula(
    what: str,
    unit: str,
    function: Callable[..., float],
    gathered: Mapping[str, Argument] = _NONE,
    /,
    *,
    scan: bool = False,
    source: str = "",
    **args: Argument,
) -> Formula:
    """A quantity worked out by a plain function of floats from others of the part.

    Arguments that several formulas share may be `gathered`; `scan` as in `derived`.
    """
    arguments = {**gathered, **args}

    def work_out(part: Part, ask: Quantities) -> Quantity:
        values = {name: value_of(given, part, ask) for name, given in arguments.items()}
        return derived(f"{part.name}.{what}", unit, function, values, scan=scan, source=source)

    return work_out


def product(what: str, unit: str, *factors: Argument, source: str = "") -> Formula:
    """The product of others of the part."""

    def work_out(part: Part, ask: Quantities) -> Quantity:
        values = [value_of(factor, part, ask) for factor in factors]
        return arithmetic.product(f"{part.name}.{what}", unit, *values, source=source)

    return work_out


def total(what: str, unit: str, *terms: Argument, source: str = "") -> Formula:
    """The sum of others of the part."""

    def work_out(part: Part, ask: Quantities) -> Quantity:
        values = [value_of(term, part, ask) for term in terms]
        return arithmetic.total(f"{part.name}.{what}", unit, values, source=source)

    return work_out


def value_of(argument: Argument, part: Part, ask: Quantities) -> Quantity:
    """The value of an argument of a formula, for one part."""
    return ask.of(part, argument) if isinstance(argument, str) else argument(part, ask)


def written_or(written: Formula, *paths: tuple[str, ...], otherwise: Formula) -> Formula:
    """As written, where the plan has one of these fields; else worked out."""

    def found(part: Part, ask: Quantities) -> Quantity:
        is_there = any(part.has(*path) for path in paths)
        return written(part, ask) if is_there else otherwise(part, ask)

    return found


def measurable(what: str, otherwise: Formula, *, allowance: str = "") -> Formula:
    """The size as a swatch measured it or the plan states it; else worked out."""
    written = size(what, allowance=allowance)
    return written_or(written, ("measured", what), (what,), otherwise=otherwise)


def hand(
    name: str,
    range_: tuple[float, float, float],
    *,
    cure: str,
    source: str = FITTED,
    grade: str = "",
    worst: tuple[float, float] | None = None,
) -> Formula:
    """A factor between two ends, by the maker's hand: how tight, how close, how far spread.

    `{part}` in the cure stands for the part's name. `worst` are the ends that can be, where they
    lie beyond those that are likely.
    """
    low, middle, high = range_

    def factor(part: Part, ask: Quantities) -> Quantity:
        cause = Hand(name, f"`{part.name}`", cure.replace("{part}", f"`{part.name}`"))
        spreads = [Spread(cause, middle - low, high - middle)]
        if worst is not None:
            beyond = Cause(f"{name} at its worst", cause.scope, cause.cure, "worst")
            spreads.append(Spread(beyond, low - worst[0], worst[1] - high))
        called = f"{part.name}.{name.removeprefix('thread ')}"
        return of_hand(leaf(called, middle, "", spreads, source=source, grade=grade), part)

    return factor


def from_table(
    name: str, table: str, row: tables.Row, column: str, cause: Cause, *, place: Place | None = None
) -> Quantity:
    """A cell of a trade table, with its range as a spread of that cause."""
    cell = row.cell(column)
    spreads = [Spread(cause, cell.value - cell.low, cell.high - cell.value)]
    source = f"trade tables, {table}, {row.name}: {cell.grade}"
    return leaf(name, cell.value, cell.unit, spreads, place=place, source=source, grade=cell.grade)


def allowed(what: str, middle: float, allowance: str, cause: str, cure: str) -> Formula:
    """A length, mm, of which only a bench allowance says how far it may be off.

    `{part}` in the cure stands for the part's name.
    """

    def length(part: Part, ask: Quantities) -> Quantity:
        setting = part.bench.allowances[allowance]
        why = Cause(cause, f"`{part.name}`", cure.replace("{part}", f"`{part.name}`"))
        spreads = [Spread(why, setting.value, setting.value)]
        return leaf(f"{part.name}.{what}", middle, "mm", spreads, source=setting.reason)

    return length
