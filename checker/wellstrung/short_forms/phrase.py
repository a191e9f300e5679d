"""The words of one value, each taken once by what understands them, with its place in the line."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from copy import copy
from functools import lru_cache

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.common.trade_words import plain
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.reading.numbers import SET, in_sets

#: stands for words that are taken already: nothing matches it, and nothing matches across it
_TAKEN = "\0"
#: what may stand between words and says nothing
_COMMA = Pattern(r"[,;](?!\d)")
_BETWEEN = Pattern(rf"[\s,;{_TAKEN}]+")

NUMBER = r"(?:\d+(?:\.\d+)?(?:\s+\d+/\d+)?|\d+/\d+|\.\d+)"
_UNIT = r"(?:mm|cm|inch(?:es)?|in|\"|″)(?![\w])"
TO = r"\s*(?:±|\.\.|to|[-–])\s*"
#: a length with its unit, as beads, findings and what is cut have it
LENGTH = rf"(?<![\w./])(?:{NUMBER}\s*(?:{_UNIT})?{TO})?{NUMBER}\s*{_UNIT}"


_HOW_MANY = Pattern(
    r"(?<![\w./])(?:\d+\s*(?:times|pcs?|pieces?|[x×])|x\s*\d+)(?![\w./])", re.IGNORECASE
)
#: what follows how many there are
_OF = Pattern(rf"{_TAKEN}\s*of\b", re.IGNORECASE)
#: a number before all else that a phrase says
_FIRST = Pattern(rf"^\s*\d+(?=[\s{_TAKEN}])")


class Phrase:
    """A value in words; `left` holds those that nothing has taken yet."""

    def __init__(self, node: tree.Scalar) -> None:
        self.node = node
        self._left = node.text

    def take(self, pattern: Pattern | re.Pattern[str]) -> tree.Scalar | None:
        """The first words of a pattern, in the author's spelling; its first group if it has one.

        What is given has at least one sign: taking again and again comes to an end.
        """
        found = pattern.search(self._left)
        if not found or not found[0]:
            return None
        return self._taken(*found.span(found.lastindex or 0), found.span())

    def take_word(self, meanings: Mapping[str, str], *, head: bool = False) -> tree.Scalar | None:
        """The longest known words; their value is what they mean, their text the author's.

        With `head`, only those before the first comma.
        """
        end = self.node.text.find(",") if head else -1
        if not meanings:
            return None
        found = _any_of(tuple(meanings)).search(self._left, 0, len(self._left) if end < 0 else end)
        if found is None:
            return None
        word = self._taken(*found.span(), found.span())
        word.value = meanings[plain(word.text)]
        return word

    def take_sets(self) -> tree.Scalar | None:
        """So many pairs, dozen or gross; the value is how many that is."""
        found = SET.search(self._left)
        if found is None:
            return None
        words = self._taken(*found.span(), found.span())
        words.value = in_sets(words.text)
        return words

    def how_many(self, what: str, *, sized: bool) -> Fault | None:
        """The fault of words that say how many there are, where a phrase says what one is.

        A bare number is one of them where the phrase has its size already.
        """
        words = self.take_sets() or self.take(_HOW_MANY) or (self.take(_FIRST) if sized else None)
        if words is None:
            return None
        self.take(_OF)
        do = "take it out, and write what is on hand under `supplies`"
        return fault(f"{what} says {shown(words)}, which is how many: {do}", words.place)

    @property
    def head(self) -> str:
        """What is left before the first comma; after it any text may stand."""
        found = _COMMA.search(self.node.text)
        left = self._left[: found.start()] if found else self._left
        return " ".join(_BETWEEN.sub(" ", left).split())

    def take_rest(self) -> tree.Scalar | None:
        """All that is left, as free text; None if nothing is."""
        spans = [found.span() for found in re.finditer(rf"[^\s,;{_TAKEN}]+", self._left)]
        if not spans:
            return None
        start, end = spans[0][0], spans[-1][1]
        rest = self._taken(start, end, (start, end))
        rest.text = rest.value = " ".join(_BETWEEN.sub(" ", self._before[start:end]).split())
        return rest

    def unknown(self, what: str, needs: str) -> Fault | None:
        """The fault of the words that are left; None if none are."""
        rest = self.take_rest()
        if rest is None:
            return None
        return fault(f"{what} says {shown(rest)}, which is not known: {needs}", rest.place)

    def _taken(self, start: int, end: int, whole: tuple[int, int]) -> tree.Scalar:
        self._before = self._left
        first, last = whole
        self._left = self._left[:first] + _TAKEN * (last - first) + self._left[last:]
        return self.part(start, end)

    def part(self, start: int, end: int) -> tree.Scalar:
        """Some of its words, taken or not."""
        return part(self.node, start, end)


def part(node: tree.Scalar, start: int, end: int) -> tree.Scalar:
    """Some of the words of a value, at their own place where they are written as they are read."""
    words = copy(node)
    words.text = words.value = node.text[start:end]
    quote = int(node.quoted)
    if node.line == node.end_line and node.end_column - node.column == len(node.text) + 2 * quote:
        words.column, words.end_column = node.column + quote + start, node.column + quote + end
        words.quoted = False
    return words


def named_sizes(**said: str) -> Mapping[str, Pattern]:
    """Sizes by the name of their field, as in `depth 3 mm`, or by a word, as in `3 mm deep`."""
    begin = r"(?<![\w-])(?:with\s+(?:an?\s+)?)?"
    return {
        field: Pattern(
            rf"{begin}(?:{field}s?(?:\s+(?:size|of))*\s+({LENGTH})|({LENGTH})\s+{word}(?!\w))",
            re.IGNORECASE,
        )
        for field, word in said.items()
    }


def known_in(words: str, meanings: Mapping[str, str]) -> bool:
    """Whether any of the known words is in a text."""
    return _any_of(tuple(meanings)).search(words) is not None


@lru_cache(maxsize=64)
def _any_of(words: Iterable[str]) -> re.Pattern[str]:
    longest = sorted(words, key=len, reverse=True)
    either = "|".join(re.escape(word).replace(r"\ ", r"[\s-]+") for word in longest)
    return re.compile(rf"(?<![\w/])(?:{either})(?![\w/])", re.IGNORECASE)
