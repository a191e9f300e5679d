"""What stands in a draft beside plain values: a comment, a choice to make, a length to find."""

from __future__ import annotations

from collections.abc import Iterator, MutableMapping, MutableSequence
from typing import Any

from msgspec import Struct

#: a plan as it is written: its fields in their order, with any of the leaves below
Plan = dict[str, Any]
#: where a leaf stands: its group or list, and its name or number there
Slot = tuple[Any, Any]


class Noted(Struct, frozen=True):
    """A value with its comment; a value of None is left out, and the comment stands alone."""

    value: Any
    why: str


class Choose(Struct, frozen=True):
    """A value that the checker chooses: the first of these that it has the least against.

    With `else_open` the value is left out where none is free of remarks. `near` names a quantity of
    the plan: the few sizes nearest to it are tried, the nearest first.
    """

    values: tuple[Any, ...]
    why: str
    else_open: str = ""
    near: str = ""
    #: whether remarks on other parts count as well
    of_all: bool = False


class Fill(Struct, frozen=True):
    """A length, or a count, that makes the piece as long as the plan asks."""

    first: float
    why: str
    counted: bool = False
    unit: str = "cm"
    #: the tolerance that is written with it
    give: str = ""


def slots(inside: Any, of: type) -> Iterator[tuple[Slot, Any]]:
    """Every leaf of a type in a draft, with its place, in the order of the plan."""
    entries: Any = ()
    if isinstance(inside, MutableMapping):
        entries = list(inside.items())
    elif isinstance(inside, MutableSequence):
        entries = list(enumerate(inside))
    elif isinstance(inside, Noted):
        yield from slots(inside.value, of)
    for key, value in entries:
        if isinstance(value, of):
            yield (inside, key), value
        else:
            yield from slots(value, of)


def copied(inside: Any) -> Any:
    """A draft that can be changed without the first: its groups and lists are new."""
    if isinstance(inside, dict):
        return {key: copied(value) for key, value in inside.items()}
    if isinstance(inside, list):
        return [copied(value) for value in inside]
    if isinstance(inside, Noted):
        return Noted(copied(inside.value), inside.why)
    return inside


def plain(inside: Any) -> Any:
    """A draft without its comments."""
    if isinstance(inside, dict):
        return {key: value for key, one in inside.items() if (value := plain(one)) is not None}
    if isinstance(inside, list):
        return [plain(value) for value in inside]
    return plain(inside.value) if isinstance(inside, Noted) else inside
