"""Frozen records: what `dataclasses` makes, in a tenth of the time.

A run of the command makes some eighty kinds of record before it reads a plan. The standard library
compiles six methods for each, one after another, which is a fifth of the whole run; here a record
has its `__init__` alone compiled, and shares the others.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import MISSING, Field, field
from functools import wraps
from inspect import get_annotations
from operator import attrgetter
from typing import Any, Generic, TypeVar, dataclass_transform, overload

__all__ = ["field", "once", "record", "remembered", "replace"]

T = TypeVar("T")
R = TypeVar("R")


@overload
def record(cls: type[T], /) -> type[T]: ...
@overload
def record(*, eq: bool) -> Callable[[type[T]], type[T]]: ...
@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type[T] | None = None, /, *, eq: bool = True) -> Any:
    """The class as a frozen record of its annotated names, those of its bases first.

    Two records are equal when they are of one class and all that they compare is; with `eq=False`
    each is equal to itself alone.

    >>> @record
    ... class Bead:
    ...     size: str
    ...     colour: str = field(default="", compare=False)
    >>> Bead("11/0", "slate") == Bead("11/0", "reed"), Bead("8/0")
    (True, Bead(size='8/0', colour=''))
    """
    if cls is None:
        return lambda cls: _made(cls, eq)
    return _made(cls, eq)


def replace(one: T, **changes: object) -> T:
    """A copy of a record with some of its values changed.

    >>> @record
    ... class Bead:
    ...     size: str
    >>> replace(Bead("8/0"), size="11/0")
    Bead(size='11/0')
    """
    return type(one)(**{**_values(one), **changes})


class once(Generic[T]):  # noqa: N801 - reads like the decorator it is
    """A property worked out when first read.

    The standard library's takes a lock each time on Python 3.11, which a graph of small values
    feels; a quantity worked out twice by two threads is still the same quantity.
    """

    def __init__(self, work: Callable[[Any], T]) -> None:
        self._work = work
        self.__doc__ = work.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self._name = name

    def __get__(self, instance: Any, owner: type | None = None) -> T:
        value = instance.__dict__[self._name] = self._work(instance)
        return value


def remembered(ask: Callable[[T], R]) -> Callable[[T], R]:
    """A question to one record, answered once: the record keeps the answer as long as it lives.

    >>> @record
    ... class Row:
    ...     beads: tuple[int, ...]
    >>> @remembered
    ... def total(row: Row) -> int:
    ...     print("counting")
    ...     return sum(row.beads)
    >>> row = Row((2, 3))
    >>> total(row) + total(row)
    counting
    10
    """
    name = f"{ask.__module__}.{ask.__qualname__}"

    @wraps(ask)
    def answered(one: T) -> R:
        kept = vars(one)
        if name not in kept:
            kept[name] = ask(one)
        answer: R = kept[name]
        return answer

    return answered


def _made(cls: type[T], eq: bool) -> type[T]:
    fields: dict[str, Field[Any]] = dict(getattr(cls, "__record_fields__", {}))
    for name in get_annotations(cls):
        default = cls.__dict__.get(name, MISSING)
        fields[name] = one = default if isinstance(default, Field) else field(default=default)
        # a default is read on the class as well, one that is made for each record is not
        if one.default is not MISSING:
            setattr(cls, name, one.default)
        elif default is one:
            delattr(cls, name)
    methods: dict[str, object] = {
        "__record_fields__": fields,
        "__init__": _init(cls, fields),
        "__repr__": _repr,
        "__setattr__": _refuse,
        "__delattr__": _refuse,
    }
    if eq:
        compared = [name for name, one in fields.items() if one.compare]
        getter = attrgetter(*compared) if compared else _nothing
        methods |= {"_compared": staticmethod(getter), "__eq__": _eq, "__hash__": _hash}
    for name, method in methods.items():
        if name not in cls.__dict__:
            setattr(cls, name, method)
    return cls


def _init(cls: type, fields: Mapping[str, Field[Any]]) -> object:
    """The constructor; it writes past `__setattr__`, which refuses."""
    known: dict[str, object] = {"MISSING": MISSING}
    heads, lines = ["self"], ["values = self.__dict__"]
    for name, one in fields.items():
        value = name
        if one.default_factory is not MISSING:
            known[f"_new_{name}"] = one.default_factory
            heads.append(f"{name}=MISSING")
            value = f"_new_{name}() if {name} is MISSING else {name}"
        elif one.default is not MISSING:
            known[f"_default_{name}"] = one.default
            heads.append(f"{name}=_default_{name}")
        else:
            heads.append(name)
        lines.append(f"values[{name!r}] = {value}")
    body = "\n    ".join(lines)
    exec(f"def __init__({', '.join(heads)}):\n    {body}", known)
    made: Any = known["__init__"]
    made.__qualname__ = f"{cls.__qualname__}.__init__"
    return made


def _values(one: object) -> dict[str, object]:
    fields: Mapping[str, Field[Any]] = type(one).__record_fields__  # type: ignore[attr-defined]
    return {name: getattr(one, name) for name in fields}


def _repr(self: object) -> str:
    values = ", ".join(f"{name}={value!r}" for name, value in _values(self).items())
    return f"{type(self).__qualname__}({values})"


def _refuse(self: object, name: str, value: object = None) -> None:
    raise AttributeError(f"`{name}` of a record is set once: make a new one with `replace`")


def _nothing(_: object) -> tuple[()]:
    return ()


def _eq(self: Any, other: Any) -> Any:
    return type(self) is type(other) and self._compared(self) == self._compared(other)


def _hash(self: Any) -> int:
    return hash(self._compared(self))
