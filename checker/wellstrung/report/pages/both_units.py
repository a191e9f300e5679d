"""Sizes in mm and in inches: what stands in a sentence, with the other system beside it.

Inches are given to a sixteenth, as on rulers; what lies between two sixteenths is given as
`≈`, which is too coarse to judge a fit by: the millimetres decide.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from wellstrung.common import units
from wellstrung.quantity.working import number

_NUMBER = r"\d+(?:\.\d+)?(?:[ -]\d+/\d+|/\d+)?"
#: a length or a range of them, or a wire gauge
_SIZE = re.compile(
    rf"(?<![\w./])(?P<first>{_NUMBER})(?:(?P<sign>\.\.| to | ± )(?P<last>{_NUMBER}))?"
    r" (?P<unit>mm|cm|m|in|AWG|SWG)\b"
)
#: what follows `in` where it is the word: `hang 9 in all`
_WORD = re.compile(r" [a-z]")
_SIXTEENTHS = 16


class Piece(NamedTuple):
    """A piece of a sentence: words, what stands in the plan (`code`), or the size converted."""

    kind: str
    text: str


def pieces(sentence: str) -> Iterator[Piece]:
    """A sentence in pieces, each size in it followed by the other system; code stays as it is.

    >>> [piece.text for piece in pieces("take a bore of 8 mm for `cap: 8 mm`")]
    ['take a bore of 8 mm', '≈ 5/16 in', ' for ', 'cap: 8 mm']
    """
    for index, stretch in enumerate(sentence.split("`")):
        if index % 2:
            yield Piece("code", stretch)
            continue
        at = 0
        for found in _SIZE.finditer(stretch):
            whole_number = found["last"] is None and found["first"].isdecimal()
            if found["unit"] == "in" and whole_number and _WORD.match(stretch, found.end()):
                continue
            try:
                other = _other(found)
            except units.UnitFault:
                continue  # larger than any piece: one unit tells enough
            yield Piece("words", stretch[at : found.end()])
            yield Piece("other", other)
            at = found.end()
        if stretch[at:]:
            yield Piece("words", stretch[at:])


def plain(sentence: str) -> Iterator[Piece]:
    """A sentence in pieces of words and code, its sizes as they are."""
    for index, stretch in enumerate(sentence.split("`")):
        if stretch:
            yield Piece("code" if index % 2 else "words", stretch)


def inches(mm: float) -> str:
    """A length in inches to the nearest sixteenth.

    >>> inches(25.4), inches(8.0), inches(0.5), inches(419.1)
    ('1 in', '≈ 5/16 in', 'under 1/16 in', '16 1/2 in')
    """
    if mm == 0:
        return "0 in"
    parts = round(mm / units.INCH * _SIXTEENTHS)
    if parts == 0:
        return "under 1/16 in"
    exact = abs(mm / units.INCH * _SIXTEENTHS - parts) < 0.01
    return f"{'' if exact else '≈ '}{_sixteenths(parts)} in"


def _sixteenths(parts: int) -> str:
    return units.show(parts * units.INCH / _SIXTEENTHS, "in/").removesuffix(" in")


def _mm(size: str, unit: str) -> float:
    """A length in mm; a plan may not say nothing, a sentence may."""
    return units.length(f"{size} {unit}").value if size.strip("0.") else 0.0


def _other(found: re.Match[str]) -> str:
    """The size in the other system; of a range both ends, of a tolerance the middle."""
    unit = found["unit"]
    if unit in ("AWG", "SWG"):
        return f"≈ {number(units.wire(found[0].replace(' to ', '..')).value)} mm"
    ends = [_mm(found["first"], unit)]
    if found["last"] and found["sign"] != " ± ":
        ends.append(_mm(found["last"], unit))
    if unit == "in":
        return f"≈ {'..'.join(map(number, ends))} mm"
    shown = [inches(end).removeprefix("≈ ") for end in ends]
    if len(set(shown)) > 1:
        return f"≈ {shown[0].removesuffix(' in')}..{shown[1]}"
    return inches(ends[0]) if len(ends) == 1 else f"≈ {shown[0]}"
