"""Lengths in mm and in inches: what stands in a sentence, with the other system beside it.

Beads, bores, rings, holes and wire stay in mm. What is cut, worn or sold by length is given in
inches too, in eighths as on a ruler: from 3 inches up, where no size of a part is as long and an
eighth is less than the bench can tell. A limit is rounded to its safe side.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from wellstrung.common import units
from wellstrung.quantity.working import number

_NUMBER = r"\d+(?:\.\d+)?(?:[ -]\d+/\d+|/\d+)?"
#: a length or a range of them, a wire gauge, or a pull that no grams stand beside
_SIZE = re.compile(
    rf"(?<![\w./])(?<!hanging \()(?P<first>{_NUMBER})"
    rf"(?:(?P<sign>\.\.| to | ± )(?P<last>{_NUMBER}))?"
    r" (?P<unit>mm|cm|m|in|AWG|SWG|N(?! \(\d))\b"
)
#: what follows `in` where it is the word: `hang 9 in all`
_WORD = re.compile(r" [a-z]")
#: the least, mm, that is given in inches
_INCHES_FROM = 3 * units.INCH
#: the words behind a limit, with the side that it is rounded to
_LIMITS: dict[units.Side, re.Pattern[str]] = {
    "up": re.compile(r"( \w+)?,? or (more|wider|longer|deeper|thicker|higher)\b"),
    "down": re.compile(r"( \w+)?,? or (less|narrower|shorter|thinner)\b| at most\b"),
}


class Piece(NamedTuple):
    """A piece of a sentence: words, what stands in the plan (`code`), or the size converted."""

    kind: str
    text: str


def pieces(sentence: str) -> Iterator[Piece]:
    """A sentence in pieces, each size in it followed by the other system; code stays as it is.

    >>> [piece.text for piece in pieces("weave 40 cm of `rope` for a bore of 8 mm")]
    ['weave 40 cm', '≈ 15 3/4 in', ' of ', 'rope', ' for a bore of 8 mm']
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
                other = _other(found, _side(stretch, found.end()))
            except units.UnitFault:
                continue  # larger than any piece: one unit tells enough
            if not other:
                continue
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


def inches(mm: float, side: units.Side = "nearest") -> str:
    """A length in inches, in eighths; empty where it is a size that stays in mm.

    >>> inches(419.1), inches(412.0), inches(412.0, "up"), inches(8.0)
    ('16 1/2 in', '≈ 16 1/4 in', '≈ 16 1/4 in', '')
    """
    if mm < _INCHES_FROM:
        return ""
    eighths = mm / units.INCH * 8
    exact = abs(eighths - round(eighths)) < 0.01
    shown = units.show(mm, "in", side=side)  # in mm again where an eighth would be too far off
    return f"{'' if exact else '≈ '}{shown}" if shown.endswith("in") else ""


def _side(text: str, at: int) -> units.Side:
    """The side to which a size is rounded: that which the words behind it leave safe."""
    return next((side for side, words in _LIMITS.items() if words.match(text, at)), "nearest")


def _other(found: re.Match[str], side: units.Side) -> str:
    """The size in the other system; of a range both ends, of a tolerance the middle."""
    unit = found["unit"]
    if unit in ("AWG", "SWG"):
        return f"≈ {number(units.wire(found[0].replace(' to ', '..')).value)} mm"
    if unit == "N":
        return f"≈ {' to '.join(units.hanging(float(size)) for size in _ends(found))} hanging"
    ends = [
        units.length(f"{size} {unit}").value if size.strip("0.") else 0.0 for size in _ends(found)
    ]
    if unit == "in":
        metric = "cm" if ends[0] >= _INCHES_FROM else "mm"
        shown = [units.show(end, metric, 1 if metric == "cm" else 2, side) for end in ends]
    else:
        shown = [inches(end, side) for end in ends]
    first, last = (end.removeprefix("≈ ") for end in (shown[0], shown[-1]))
    if first == last or not first:
        return shown[0] if found["last"] is None and unit != "in" else f"≈ {first}" if first else ""
    return f"≈ {first.rpartition(' ')[0]}..{last}"


def _mm(size: str, unit: str) -> float:
    """A length in mm; a plan may not say nothing, a sentence may."""
    return units.length(f"{size} {unit}").value if size.strip("0.") else 0.0


def _ends(found: re.Match[str]) -> list[str]:
    """The one number of a size, or the two of a range."""
    last = found["last"] if found["sign"] != " ± " else None
    return [size for size in (found["first"], last) if size]
