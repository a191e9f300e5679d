"""Properties that are worked out when they are first read."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, TypeVar

T = TypeVar("T")


class once(Generic[T]):  # noqa: N801 - reads like the decorator it is
    """A property worked out when first read, kept in the `__dict__` of its owner.

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
