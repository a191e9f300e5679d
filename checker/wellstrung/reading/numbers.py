"""Counts as people write them beside a plain number: `twelve`, `8 beads`, `3x`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from wellstrung.common.patterns import Pattern

_WORDS: Mapping[str, int] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "once": 1,
    "twice": 2,
}  # fmt: skip
#: so many, as lists of what is bought have it, and how many one is
_SETS: Mapping[str, int] = {
    "pair": 2, "pairs": 2, "pr": 2, "prs": 2, "dozen": 12, "dozens": 12, "gross": 144,
}  # fmt: skip
SET = Pattern(
    rf"(?<![\w./])(?:(\d+|half|{'|'.join(_WORDS)}|an?)\s+(?:an?\s+)?)?({'|'.join(_SETS)})\b",
    re.IGNORECASE,
)
#: a number with what is counted: no unit of a size, and no second number
_COUNTED = Pattern(r"(?:x ?)?([1-9][0-9]{0,4}) ?(?:x|times|//.*|[a-z]{4,}(?: [a-z]+)*)?")


def whole(text: str) -> int | None:
    """The whole number that a text means; None where it may mean another thing.

    >>> whole("twelve"), whole("8 beads"), whole("3x"), whole("2 pairs")
    (12, 8, 3, 4)
    >>> whole("14 g"), whole("8.5")
    (None, None)
    """
    said = " ".join(text.lower().split())
    if SET.match(said):
        return in_sets(said)
    found = _COUNTED.fullmatch(said)
    return int(found[1]) if found else _WORDS.get(said)


def in_sets(text: str) -> int:
    """How many a text means that begins with so many pairs, dozen or gross.

    >>> in_sets("2 pairs of hooks"), in_sets("half a dozen"), in_sets("a gross")
    (4, 6, 144)
    """
    found = SET.match(text.lower())
    assert found is not None
    figure, of = found[1] or "one", _SETS[found[2]]
    if figure == "half":
        return of // 2
    return of * (int(figure) if figure.isdecimal() else _WORDS.get(figure, 1))
