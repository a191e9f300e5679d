"""How quantities are made: read off, or worked out from others by a formula.

A formula is a plain function of floats. What it says, and where it is linear, is traced from it:
see `formulas.tracing`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from types import MappingProxyType

from wellstrung.common.choice import Choice
from wellstrung.common.places import Place
from wellstrung.formulas.arithmetic import added
from wellstrung.quantity.causes import Spread
from wellstrung.quantity.value import Quantity

_NONE: Mapping[str, Quantity] = MappingProxyType({})


def leaf(
    name: str,
    middle: float,
    unit: str,
    spreads: Iterable[Spread] = (),
    *,
    place: Place | None = None,
    spelling: str = "",
    spelled_unit: str = "",
    source: str = "",
    grade: str = "",
    choice: Choice | None = None,
) -> Quantity:
    """A value that was written, measured or looked up.

    >>> from wellstrung.quantity.causes import Cause
    >>> bore = leaf("cap.bore", 8.0, "mm", [Spread(Cause("make of", "cap"), 0.1, 0.1)])
    >>> bore.worst
    Window(low=7.9, high=8.1)
    """
    return Quantity(
        name, unit, middle, tuple(spreads), place, spelling, spelled_unit, source, grade, choice
    )


def exact(
    name: str, value: float, unit: str = "", source: str = "", choice: Choice | None = None
) -> Quantity:
    """A value with no spread: a count, a limit, a rule of practice."""
    return Quantity(name, unit, value, source=source, choice=choice)


def derived(
    name: str,
    unit: str,
    function: Callable[..., float],
    gathered: Mapping[str, Quantity] = _NONE,
    /,
    *,
    scan: bool = False,
    source: str = "",
    **args: Quantity,
) -> Quantity:
    """A value worked out by `function`, a formula (see `formulas.arithmetic`), from `args`.

    Arguments whose names are known only at run time are `gathered`. `scan` marks a function that
    may turn back between the ends of a cause: its causes are tried at points between as well.

    >>> from wellstrung.quantity.causes import Cause
    >>> side = leaf("side", 10.0, "mm", [Spread(Cause("cutting"), 1.0, 1.0)])
    >>> area = derived("area", "mm2", lambda a, b: a * b, a=side, b=side)
    >>> area.worst
    Window(low=81.0, high=121.0)
    """
    return Quantity(
        name, unit, function=function, args={**gathered, **args}, scan=scan, source=source
    )


def total(name: str, unit: str, terms: Iterable[Quantity], source: str = "") -> Quantity:
    """The sum of `terms`.

    >>> total("run", "mm", [exact("cap", 5.0, "mm"), exact("rope", 400.0, "mm")]).middle
    405.0
    """
    args = {f"t{number}": term for number, term in enumerate(terms, 1)}
    slopes = dict.fromkeys(args, 1.0)
    return Quantity(name, unit, function=_of_all, args=args, slopes=slopes, source=source)


def _of_all(**values: float) -> float:
    return added(values.values())


def product(name: str, unit: str, *factors: Quantity, source: str = "") -> Quantity:
    """The product of `factors`.

    >>> product("thread", "mm", exact("length", 400.0, "mm"), exact("passes", 2)).middle
    800.0
    """
    args = {f"f{number}": factor for number, factor in enumerate(factors, 1)}
    return Quantity(name, unit, function=_multiplied, args=args, source=source)


def _multiplied(f1: float, **more: float) -> float:
    for factor in more.values():
        f1 = f1 * factor
    return f1


def times(each: Quantity, count: int) -> Quantity:
    """`count` of the same thing: what varies in one varies in all of them.

    >>> times(exact("ring", 3.4, "mm"), 3).middle
    10.2
    """
    if count == 1:
        return each
    return product(f"{count} x {each.name}", each.unit, exact("count", count), each)
