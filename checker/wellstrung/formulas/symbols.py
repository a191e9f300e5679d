"""Symbols that stand for numbers while a formula is traced: expressions, and their text.

`arithmetic` explains how a formula is written, `tracing` what is read off its expression.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from typing import Any, NoReturn

#: how tightly an operator binds; what binds less stands in brackets
_BINDS = {"if": 0, "and": 1, "compare": 2, "+": 3, "-": 3, "*": 4, "/": 4, "negative": 5, "^": 6}
_ATOM = 7


class Symbolic(TypeError):
    """A symbol was used where only a number will do."""


def _infix(op: str, same: int | None = None, *, turned: bool = False) -> Callable[[Any, Any], Any]:
    """What a symbol does with `op`; the number `same` leaves it as it is."""

    def result(one: Any, other: Any) -> Any:
        if type(other) is not Symbol:
            if other == same:
                return one
            if op == "*" and other == 0:
                return 0
        return Symbol(op, (other, one) if turned else (one, other))

    return result


class Symbol:
    """An expression: a name, or an operation on symbols and numbers."""

    __slots__ = ("of", "op")

    def __init__(self, op: str, of: tuple[Any, ...]) -> None:
        self.op = op
        self.of = of

    __add__, __radd__ = _infix("+", 0), _infix("+", 0, turned=True)
    __sub__, __rsub__ = _infix("-", 0), _infix("-", turned=True)
    __mul__, __rmul__ = _infix("*", 1), _infix("*", 1, turned=True)
    __truediv__, __rtruediv__ = _infix("/", 1), _infix("/", turned=True)
    __pow__, __rpow__ = _infix("^", 1), _infix("^", turned=True)
    __lt__, __le__, __gt__, __ge__ = _infix("<"), _infix("<="), _infix(">"), _infix(">=")
    __eq__, __ne__, __and__ = _infix("=="), _infix("!="), _infix("and")

    def __neg__(self) -> Symbol:
        return Symbol("negative", (self,))

    def __abs__(self) -> Symbol:
        return Symbol("abs", (self,))

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


def text(one: Any, name: Callable[[str], str] = str, beside: int = 0) -> str:
    """A symbol (or a number) as a formula in text, each of its names written by `name`.

    `beside` is how tightly what stands beside it binds.

    >>> length, wire = Symbol("name", ("length",)), Symbol("name", ("wire",))
    >>> text((length - 2 * wire) / 3)
    '(length - 2 * wire) / 3'
    >>> text(math.pi / 4 * wire**2), text(call("if", wire < 1, 0, call("max", 0, -length)))
    ('pi / 4 * wire^2', '0 if wire < 1 else max(0, -length)')
    """
    if not isinstance(one, Symbol):
        says, binds = _number(one)
    elif one.op == "name":
        says = name(one.of[0])
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
    behind = binds + (op not in "+*")
    terms = (text(of[0], name, binds), *(text(each, name, behind) for each in of[1:]))
    return f" {op} ".join(terms), binds


def _number(value: float) -> tuple[str, int]:
    """A number of a formula, multiples of pi as such."""
    if not math.isfinite(value):
        return f"{value:g}", _ATOM
    if value < 0:
        return f"-{_number(-value)[0]}", _BINDS["negative"]
    for power, symbol in ((1, "pi"), (2, "pi^2")):
        unit = math.pi**power
        part = Fraction(value / unit).limit_denominator(180)
        if part and part.numerator < 100 and math.isclose(part * unit, value, rel_tol=1e-15):
            over = f" / {part.denominator}" if part.denominator > 1 else ""
            times = f"{part.numerator} * " if part.numerator > 1 else ""
            return f"{times}{symbol}{over}", _BINDS["*"] if over or times else _ATOM
    return f"{value:.12g}", _ATOM


def settled(one: Any, holds: Callable[[Symbol], bool | None]) -> Any:
    """The same with only one branch of each condition of which `holds` knows whether it holds.

    >>> ring, bore = Symbol("name", ("ring",)), Symbol("name", ("bore",))
    >>> settled(call("if", ring < 6, 0, bore) - 1, lambda condition: False)
    bore - 1
    """
    if not isinstance(one, Symbol) or one.op == "name":
        return one
    if one.op == "if":
        decided = holds(one.of[0])
        if decided is not None:
            return settled(one.of[1 if decided else 2], holds)
    return Symbol(one.op, tuple(settled(each, holds) for each in one.of))


def conditions(one: Any) -> Iterator[Symbol]:
    """The conditions in it."""
    if isinstance(one, Symbol) and one.op != "name":
        if one.op == "if":
            yield one.of[0]
        for each in one.of:
            yield from conditions(each)


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
