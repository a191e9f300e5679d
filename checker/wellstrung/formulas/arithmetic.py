"""Arithmetic on numbers and on symbols, so that a formula is written once.

A formula is a plain function of floats. Called with floats it returns a float. Called with a symbol
for each argument (see `tracing`) it returns an expression, which has its text and shows in which
arguments it is linear. So a formula uses `+ - * / **` and the functions of this module: `either`,
`least` and `most` instead of `if`, `min` and `max`. A formula that cannot be written so, such as a
search, is declared `opaque`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from functools import wraps
from typing import Any, Final, ParamSpec, TypeVar

from wellstrung.formulas.symbols import Symbol, Symbolic, call

P = ParamSpec("P")
R = TypeVar("R")
N = TypeVar("N", bound=float)

pi: Final = math.pi


def _of_one(function: Callable[[float], N], name: str) -> Callable[[float], N]:
    def result(x: float) -> N:
        try:
            return function(x)
        except Symbolic:
            symbol: N = call(name, x)
            return symbol

    result.__name__ = result.__qualname__ = name
    result.__doc__ = f"`math.{name}`, of a number or a symbol."
    return result


sqrt = _of_one(math.sqrt, "sqrt")
sin = _of_one(math.sin, "sin")
cos = _of_one(math.cos, "cos")
tan = _of_one(math.tan, "tan")
atan = _of_one(math.atan, "atan")
ceil = _of_one(math.ceil, "ceil")
floor = _of_one(math.floor, "floor")


def least(*values: N) -> N:
    """The smallest of the values.

    >>> least(3.0, 2.0)
    2.0
    """
    try:
        return min(values)
    except Symbolic:
        symbol: N = call("min", *values)
        return symbol


def most(*values: N) -> N:
    """The largest of the values.

    >>> most(0, -2.0)
    0
    """
    try:
        return max(values)
    except Symbolic:
        symbol: N = call("max", *values)
        return symbol


def either(
    condition: bool, a: float | Callable[[], float], b: float | Callable[[], float]
) -> float:
    """`a` where the condition holds, else `b`.

    What cannot be worked out where it is not asked for is given as a function of no arguments.

    >>> either(5 < 6, 0.0, lambda: sqrt(5 - 6))
    0.0
    """
    try:
        chosen = a if condition else b
    except Symbolic:
        branches = [one() if callable(one) else one for one in (a, b)]
        symbol: float = call("if", condition, *branches)
        return symbol
    return chosen() if callable(chosen) else chosen


def added(values: Iterable[float]) -> float:
    """The sum of the values, rounded once.

    >>> added([0.1] * 10)
    1.0
    """
    values = tuple(values)
    try:
        return math.fsum(values)
    except Symbolic:
        # one symbol for them all: sums within sums would lie too deep to walk through
        terms = [value for value in values if isinstance(value, Symbol) or value != 0]
        symbol: float = call("+", *terms)
        return symbol if len(terms) > 1 else terms[0]


def require(condition: bool, otherwise: str, *values: float) -> None:
    """Raise ValueError with the text `otherwise`, filled in with `values`, unless it holds.

    >>> require(2 > 3, "a bore of {:g} mm is too small", 2)
    Traceback (most recent call last):
    ...
    ValueError: a bore of 2 mm is too small
    """
    try:
        holds = bool(condition)
    except Symbolic:
        return
    if not holds:
        raise ValueError(otherwise.format(*values))


_NUMBERS = frozenset({float, int})


def opaque(words: str) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """A function that is not traced: its text is `words` and its arguments, linear in none of them.

    >>> @opaque("length of the best path past")
    ... def searched(*sizes: float) -> float:
    ...     return min(sizes)
    >>> searched(2.0, 1.0), searched(Symbol("name", ("bead",)), 1.0)
    (1.0, length of the best path past (bead, 1))
    """

    def declared(function: Callable[P, R]) -> Callable[P, R]:
        @wraps(function)
        def called(*args: P.args, **kwargs: P.kwargs) -> R:
            given = (*args, *kwargs.values())
            if _NUMBERS.issuperset(map(type, given)):  # as nearly always
                return function(*args, **kwargs)
            of = tuple(_each(given))
            if any(isinstance(one, Symbol) for one in of):
                symbol: R = call(words, *of)
                return symbol
            return function(*args, **kwargs)

        called.opaque = words  # type: ignore[attr-defined]
        return called

    return declared


def _each(args: Iterable[Any]) -> Iterator[Any]:
    """The arguments one by one, those in a tuple or a list too."""
    for one in args:
        if isinstance(one, tuple | list):
            yield from _each(one)
        else:
            yield one
