"""Arithmetic on numbers and, to find out what a formula says, on symbols that stand for them.

A formula is a plain function of floats. Called with floats it gives a float; called with a symbol
for each argument (see `tracing`) it gives what it does with them: its own text, and in which
arguments it is linear. A formula therefore uses `+ - * / **` and the functions of this module, and
`either`, `least` and `most` instead of `if`, `min` and `max`. A formula that cannot be written so,
such as a search, is declared `opaque`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from functools import wraps
from typing import Any, Final, NoReturn, ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")
N = TypeVar("N", bound=float)

pi: Final = math.pi

#: how tightly an operator binds; what binds less stands in brackets
_BINDS = {"if": 0, "and": 1, "compare": 2, "+": 3, "-": 3, "*": 4, "/": 4, "negative": 5, "^": 6}
_ATOM = 7


class Symbolic(TypeError):
    """A symbol was used where only a number will do."""


class Symbol:
    """What stands for a number while a formula is traced: a name, or an operation on symbols."""

    __slots__ = ("of", "op")

    def __init__(self, op: str, of: tuple[Any, ...]) -> None:
        self.op = op
        self.of = of

    def __add__(self, other: Any) -> Symbol:
        return self if _is(other, 0) else Symbol("+", (self, other))

    def __radd__(self, other: Any) -> Symbol:
        return self if _is(other, 0) else Symbol("+", (other, self))

    def __sub__(self, other: Any) -> Symbol:
        return self if _is(other, 0) else Symbol("-", (self, other))

    def __rsub__(self, other: Any) -> Symbol:
        return -self if _is(other, 0) else Symbol("-", (other, self))

    def __mul__(self, other: Any) -> Any:
        if _is(other, 0):
            return 0
        return self if _is(other, 1) else Symbol("*", (self, other))

    def __rmul__(self, other: Any) -> Any:
        if _is(other, 0):
            return 0
        if _is(other, -1):
            return -self
        return self if _is(other, 1) else Symbol("*", (other, self))

    def __truediv__(self, other: Any) -> Symbol:
        return self if _is(other, 1) else Symbol("/", (self, other))

    def __rtruediv__(self, other: Any) -> Symbol:
        return Symbol("/", (other, self))

    def __pow__(self, other: Any) -> Symbol:
        return self if _is(other, 1) else Symbol("^", (self, other))

    def __rpow__(self, other: Any) -> Symbol:
        return Symbol("^", (other, self))

    def __neg__(self) -> Symbol:
        return Symbol("negative", (self,))

    def __abs__(self) -> Symbol:
        return Symbol("abs", (self,))

    def __lt__(self, other: Any) -> Symbol:
        return Symbol("<", (self, other))

    def __le__(self, other: Any) -> Symbol:
        return Symbol("<=", (self, other))

    def __gt__(self, other: Any) -> Symbol:
        return Symbol(">", (self, other))

    def __ge__(self, other: Any) -> Symbol:
        return Symbol(">=", (self, other))

    def __eq__(self, other: object) -> Symbol:  # type: ignore[override]
        return Symbol("==", (self, other))

    def __ne__(self, other: object) -> Symbol:  # type: ignore[override]
        return Symbol("!=", (self, other))

    def __and__(self, other: Any) -> Symbol:
        return Symbol("and", (self, other))

    def __bool__(self) -> NoReturn:
        raise Symbolic(
            f"a formula must not decide by `{text(self)}`: use `either`, `least` or `most` instead"
            " of `if`, `min` or `max`"
        )

    def __float__(self) -> NoReturn:
        raise Symbolic(
            f"a formula needs the number of `{text(self)}`: use the functions of"
            " `wellstrung.formulas.arithmetic`, or declare the formula `opaque`"
        )

    __int__ = __index__ = __hash__ = __float__
    __round__ = __ceil__ = __floor__ = __trunc__ = __iter__ = __float__

    def __repr__(self) -> str:
        return text(self)


def _is(one: Any, number: int) -> bool:
    return type(one) is not Symbol and bool(one == number)


def text(one: Any, name: Callable[[str], str] = str, beside: int = 0) -> str:
    """A symbol (or a number) as a formula in text, each of its names written by `name`.

    `beside` is how tightly what stands beside it binds.

    >>> length, wire = Symbol("name", ("length",)), Symbol("name", ("wire",))
    >>> text((length - 2 * wire) / 3)
    '(length - 2 * wire) / 3'
    >>> text(pi / 4 * wire**2), text(either(wire < 1, 0, most(0, length - wire)))
    ('pi / 4 * wire^2', '0 if wire < 1 else max(0, length - wire)')
    """
    if not isinstance(one, Symbol):
        says, binds = _number(one)
    elif one.op == "name":
        says, binds = name(one.of[0]), _ATOM
        binds = _BINDS["negative"] if says.startswith("-") else _ATOM
    else:
        says, binds = _operation(one, name)
    return f"({says})" if binds < beside else says


def _operation(one: Symbol, name: Callable[[str], str]) -> tuple[str, int]:
    op, of = one.op, one.of
    binds = _BINDS["compare"] if op in ("<", "<=", ">", ">=", "==", "!=") else _BINDS.get(op, _ATOM)
    if binds == _ATOM:
        space = " " if " " in op else ""
        return f"{op}{space}({', '.join(text(each, name) for each in of)})", binds
    if op == "if":
        condition, a, b = (text(each, name, binds + 1) for each in of)
        return f"{a} if {condition} else {b}", binds
    if op == "negative":
        return f"-{text(of[0], name, binds)}", binds
    if op == "^":
        return f"{text(of[0], name, _ATOM)}^{text(of[1], name, _ATOM)}", binds
    left, right = text(of[0], name, binds), text(of[1], name, binds + (op not in "+*"))
    return f"{left} {op} {right}", binds


def _number(value: float) -> tuple[str, int]:
    """A number of a formula, multiples of pi as such."""
    if value < 0:
        return f"-{_number(-value)[0]}", _BINDS["negative"]
    for power, symbol in ((1, "pi"), (2, "pi^2")):
        part = Fraction(value / pi**power).limit_denominator(180)
        if part and part.numerator < 100 and math.isclose(part * pi**power, value, rel_tol=1e-15):
            over = f" / {part.denominator}" if part.denominator > 1 else ""
            times = f"{part.numerator} * " if part.numerator > 1 else ""
            return f"{times}{symbol}{over}", _BINDS["*"] if over or times else _ATOM
    return f"{value:.12g}", _ATOM


def degree(one: Any, varying: Iterable[str]) -> int:
    """0 where none of the varying names is in it, 1 where it is linear in all of them, else 2.

    >>> pitch, tension = Symbol("name", ("pitch",)), Symbol("name", ("tension",))
    >>> degree(pitch * tension, ["pitch"]), degree(pitch * tension, ["pitch", "tension"])
    (1, 2)
    """
    if not isinstance(one, Symbol):
        return 0
    if one.op == "name":
        return int(one.of[0] in varying)
    degrees = [degree(each, varying) for each in one.of]
    highest = max(degrees)
    if one.op in ("+", "-", "negative"):
        return highest
    if one.op == "*":
        return min(2, sum(degrees))
    if (one.op == "/" and not degrees[1]) or (one.op == "if" and not degrees[0]):
        return highest
    return 2 if highest else 0


def names(one: Any) -> Iterator[str]:
    """The names in it, as often as they stand there."""
    if isinstance(one, Symbol):
        if one.op == "name":
            yield one.of[0]
        else:
            for each in one.of:
                yield from names(each)


def call(name: str, *of: Any) -> Any:
    """The symbol of a function's result."""
    return Symbol(name, of)


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
        return sum(values)


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
            of = tuple(_each((*args, *kwargs.values())))
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
