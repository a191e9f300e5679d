"""Counts as people write them beside a plain number: `twelve`, `8 beads`, `3x`."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.common.patterns import Pattern

_WORDS: Mapping[str, int] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "once": 1,
    "twice": 2, "pair": 2, "a pair": 2, "half a dozen": 6, "dozen": 12, "a dozen": 12,
}  # fmt: skip
#: a number with what is counted: no unit of a size, and no second number
_COUNTED = Pattern(r"(?:x ?)?([1-9][0-9]{0,4}) ?(?:x|times|//.*|[a-z]{4,}(?: [a-z]+)*)?")


def whole(text: str) -> int | None:
    """The whole number that a text means; None where it may mean another thing.

    >>> whole("twelve"), whole("8 beads"), whole("3x"), whole("14 g"), whole("8.5")
    (12, 8, 3, None, None)
    """
    said = " ".join(text.lower().split())
    found = _COUNTED.fullmatch(said)
    return int(found[1]) if found else _WORDS.get(said)
