"""The size of a line as it is sold: by letter, number on a card, Tex, plies, coil or pull."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from wellstrung.common import units
from wellstrung.common.patterns import Pattern
from wellstrung.reading import tree
from wellstrung.short_forms.phrase import Phrase
from wellstrung.tables import Row

RATING = r"(?<![\w.])(\d+(?:\.\d+)?[ -]*(?:lbs?\b\.?|pounds?\b|kgs?\b|N\b|#(?!\w)))"
_INCHES = r"in(?:ch(?:es)?)?\b|[\"″”]"
_OFF = rf"(?: ?(?:mm\b|{_INCHES})? ?(?:±|\.\.|to) ?\d*\.?\d+)?"
THICK = rf"(?<![\w./])((?:\d+/\d+|\d*[.,]?\d+{_OFF}) ?(?:mm\b|{_INCHES})|0?\.0\d+(?![\w.]))"
_END, _BEGIN = r"(?![\w./-])", r"(?<![\w./-])"
_LETTER = r"[A-H]|FF|O{1,3}|0{1,3}"
_CARD = r"(?:(?:size|number|nr|no|carded|card|on)\.? *|# *)*"
_PATTERNS: Mapping[str, Pattern] = {
    "letter": Pattern(rf"{_BEGIN}(?:(?i:size|letter) *((?i:{_LETTER}))|({_LETTER})){_END}"),
    "number": Pattern(rf"{_BEGIN}{_CARD}(\d{{1,3}}){_END}", re.IGNORECASE),
    "tex": Pattern(rf"{_BEGIN}(?:size *)?(?:tex|T) ?-?(\d{{2,4}}){_END}", re.IGNORECASE),
    "ply": Pattern(rf"{_BEGIN}(\d{{1,2}})[ -]*ply\b", re.IGNORECASE),
    "coil": Pattern(
        rf"{_BEGIN}(?:size *)?((?:large |small )?bracelet|necklace|choker|ring)\b"
        r"(?:[ -]*sized?\b)?",
        re.IGNORECASE,
    ),
    "rating": Pattern(RATING, re.IGNORECASE),
    "mm": Pattern(THICK, re.IGNORECASE),
    "inches": Pattern(THICK, re.IGNORECASE),
}


def rating(text: str) -> str:
    """The pull that a line is sold by, as it is printed.

    >>> rating("8-lb."), rating("20#"), rating("3.6 kg")
    ('8 lb', '20 lb', '3.6 kg')
    """
    return re.sub(r"[ -]*(?:#|lbs?\.?|pounds?)$", " lb", text, flags=re.IGNORECASE)


def length(text: str) -> str:
    """How thick a line is; decimals of an inch need no unit.

    >>> length(".0155"), length(".7mm"), length("0.5 mm")
    ('0.0155 in', '0.7 mm', '0.5 mm')
    """
    if re.fullmatch(r"0?\.0\d+", text):
        return f"0.{text.partition('.')[2]} in"
    figure, unit = re.fullmatch(r"([\d.,/]+(?:[ .to±]+[\d.,]+)?) ?(.+)", text).groups()  # type: ignore[union-attr]
    return f"{'0' if figure.startswith('.') else ''}{figure} {unit}"


_AS_SOLD: Mapping[str, Callable[[str], str]] = {
    "letter": lambda text: text.upper().replace("0", "O"),
    "number": lambda text: str(int(text)),
    "tex": lambda text: f"Tex {int(text)}",
    "ply": lambda text: f"{int(text)} ply",
    "coil": lambda text: text.lower().replace("choker", "necklace"),
    "rating": rating,
    "mm": length,
    "inches": length,
}


#: no line is so thick, mm, and no coil of memory wire so narrow
_NARROWEST_COIL = 10.0


def is_coil(text: str, sold: Row | None) -> bool:
    """Whether a length that memory wire is sold by is how wide its coils are.

    >>> from wellstrung import tables
    >>> memory_wire = tables.load("line_types").row("memory wire")
    >>> is_coil("58 mm", memory_wire), is_coil("0.6 mm", memory_wire)
    (True, False)
    """
    if sold is None or sold.text("sold_by") != "coil":
        return False
    try:
        return units.size(text).value >= _NARROWEST_COIL
    except units.UnitFault:
        return False


def size_of(said: Phrase | tree.Scalar, sold: Row | None) -> tuple[str, tree.Scalar | None]:
    """The field and the size that words say; None where they say none.

    A line of no known type may have a letter: which fibre it is, is open. Words in a field of
    their own are a size only as a whole.
    """
    whole = isinstance(said, tree.Scalar)
    if isinstance(said, tree.Scalar) and is_coil(said.text, sold):
        return "coil", said
    ways = list(filter(None, sold.text("sold_by").split(", "))) if sold is not None else ["letter"]
    for way in (*ways, "rating") if whole else ways:
        phrase = Phrase(said) if isinstance(said, tree.Scalar) else said
        size = phrase.take(_PATTERNS[way])
        if size is None or (whole and phrase.take_rest() is not None):
            continue
        size.value = _AS_SOLD[way](size.text)
        return "rating" if way == "rating" else "size", size
    return "size", None
