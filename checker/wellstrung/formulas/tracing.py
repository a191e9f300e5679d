"""Traces a formula: a plain function of floats goes in, its text and where it is linear come out.

A function is traced once in a process, by calling it with a symbol for each argument.
"""

from __future__ import annotations

from collections.abc import Callable
from types import FunctionType
from typing import Any

from wellstrung.formulas.symbols import Symbol, call, conditions, degree, names, settled, text

#: What a formula may take from around it; anything else it must get as an argument.
_CONSTANT = (int, float, str, bool, tuple, type(None), FunctionType)
#: stands round a name in a text whose names are still to be written
_MARK = "\0"


class Traced:
    """The expression that a function returns, as `tree`; what is read off it is kept."""

    __slots__ = ("_conditions", "_linear", "_pieces", "_settled", "tree")

    def __init__(self, tree: Any) -> None:
        self.tree = tree
        self._linear: dict[tuple[str, ...], bool] = {}
        self._settled: dict[tuple[bool | None, ...], Traced] = {}
        self._conditions = tuple(conditions(tree))
        self._pieces: list[str] = []

    def text(self, name: Callable[[str], str] = str) -> str:
        """The formula in text, each argument written by `name`."""
        if not self._pieces:
            self._pieces = text(self.tree, lambda one: f"{_MARK}{one}{_MARK}").split(_MARK)
        shown = self._pieces.copy()
        shown[1::2] = names = [name(one) for one in shown[1::2]]
        if any([one.startswith("-") for one in names]):  # a negative number may need brackets
            return text(self.tree, name)
        return "".join(shown)

    def settled(self, holds: Callable[[Symbol], bool | None]) -> Traced:
        """The same with only one branch of each condition of which `holds` knows the outcome."""
        if not self._conditions:
            return self
        decided = tuple([holds(condition) for condition in self._conditions])
        if decided not in self._settled:
            known = dict(zip(map(id, self._conditions), decided, strict=True))
            tree = settled(self.tree, lambda condition: known[id(condition)])
            self._settled[decided] = Traced(tree)
        return self._settled[decided]

    def is_linear(self, varying: tuple[str, ...]) -> bool:
        """Whether it is a sum of these arguments, each times what does not depend on any of them.

        >>> traced(lambda outside, wire: outside - 2 * wire, ("outside", "wire")).is_linear(
        ...     ("outside", "wire"))
        True
        >>> traced(lambda length, tension: length * tension, ("length", "tension")).is_linear(
        ...     ("length", "tension"))
        False
        """
        known = self._linear.get(varying)
        if known is None:
            known = self._linear[varying] = degree(self.tree, varying) < 2
        return known


_KNOWN: dict[object, Traced] = {}


def traced(function: Callable[..., float], arguments: tuple[str, ...]) -> Traced:
    """The expression that a function returns for arguments of these names.

    Raises TypeError where it cannot be traced: where it branches, uses `math`, or depends on
    anything but its arguments and constants; and where it leaves an argument out.

    >>> traced(lambda stem, hole: stem + hole / 2, ("stem", "hole")).text()
    'stem + hole / 2'
    """
    words = getattr(function, "opaque", None)
    if words is not None:
        return Traced(call(words, *[Symbol("name", (name,)) for name in arguments]))
    key = (*_identity(function), arguments)
    found = _KNOWN.get(key)
    if found is None:
        found = _KNOWN[key] = _traced(function, arguments)
    return found


def _identity(function: Any) -> tuple[object, ...]:
    """The code and the constants of a formula: a lambda is a new object each time it is reached."""
    found = (function.__module__, function.__code__, function.__defaults__)
    if function.__closure__ is None:
        return found
    around = [cell.cell_contents for cell in function.__closure__]
    for name, value in zip(function.__code__.co_freevars, around, strict=True):
        if not isinstance(value, _CONSTANT):
            raise TypeError(f"`{function.__qualname__}` depends on `{name}`: make it an argument")
    return (*found, *around)


def _traced(function: Any, arguments: tuple[str, ...]) -> Traced:
    tree = function(**{name: Symbol("name", (name,)) for name in arguments})
    left_out = set(arguments).difference(names(tree))
    if left_out:
        raise TypeError(
            f"`{function.__qualname__}` makes no use of {', '.join(sorted(left_out))}:"
            f" its formula is `{text(tree)}`"
        )
    return Traced(tree)
