"""A value that nobody may look at yet: what is worked out without it holds whatever it will be."""

from __future__ import annotations

from typing import NoReturn


class Unsettled(BaseException):
    """An unsettled value was looked at. No answer is kept of what was asked, nor a failure."""

    def __init__(self, value: UnsettledValue) -> None:
        super().__init__("a value that is not settled")
        self.value = value


class UnsettledValue(str):
    """Stands where a plan has a text or a number, and raises Unsettled when it is looked at.

    >>> float(UnsettledValue())
    Traceback (most recent call last):
    ...
    wellstrung.common.unsettled.Unsettled: a value that is not settled
    """

    __slots__ = ()


def _looked_at(value: UnsettledValue, *_: object) -> NoReturn:
    raise Unsettled(value)


for _name in (
    *("__hash__", "__eq__", "__ne__", "__lt__", "__le__", "__gt__", "__ge__", "__len__"),
    *("__str__", "__repr__", "__format__", "__float__", "__int__", "__index__", "__iter__"),
    *("__contains__", "__getitem__", "__add__", "__mul__", "__mod__", "__getattribute__"),
):
    setattr(UnsettledValue, _name, _looked_at)
