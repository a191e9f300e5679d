"""Regular expressions that are compiled when they are first used: a check needs few of them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cached_property


class Pattern:
    r"""A pattern of `re`; each method is that of the compiled pattern, from its first use on.

    Most patterns read what only a slip or a rare spelling has: to compile all of them at the start
    made a cold check 6 % longer.

    >>> Pattern(r"\d+ mm").search("a ring of 5 mm")[0]
    '5 mm'
    """

    def __init__(self, text: str, flags: int = 0) -> None:
        self._text, self._flags = text, flags

    @cached_property
    def compiled(self) -> re.Pattern[str]:
        """The same, compiled."""
        return re.compile(self._text, self._flags)

    @cached_property
    def search(self) -> Callable[..., re.Match[str] | None]:
        """Where it is first found."""
        return self.compiled.search

    @cached_property
    def match(self) -> Callable[..., re.Match[str] | None]:
        """Whether a text begins with it."""
        return self.compiled.match

    @cached_property
    def fullmatch(self) -> Callable[..., re.Match[str] | None]:
        """Whether it is the whole text."""
        return self.compiled.fullmatch

    @cached_property
    def finditer(self) -> Callable[..., Iterator[re.Match[str]]]:
        """Every place where it is found."""
        return self.compiled.finditer

    @cached_property
    def sub(self) -> Callable[..., str]:
        """The text with what is found replaced."""
        return self.compiled.sub

    @cached_property
    def split(self) -> Callable[..., list[str]]:
        """What stands between the places where it is found."""
        return self.compiled.split
