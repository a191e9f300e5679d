"""The columns of a stock list: what each is, by its own name or one that means the same."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from wellstrung.common.trade_words import fields_meant, plain
from wellstrung.reading.rfc_4180 import Cell

Schema = Mapping[str, Any]
Path = tuple[str, ...]

#: what a row is called, what of it is on hand and what it costs, each with other words for it
OWN: Mapping[str, tuple[str, ...]] = {
    "name": ("item", "article"),
    "kind": ("category", "sort"),
    "count": ("on hand", "in stock", "stock", "have"),
    "pack": ("pack size", "pack weight", "pack of"),
    "packs": ("tubes", "bags", "hanks", "boxes", "cards", "bottles"),
    "spools": ("reels",),
    "on hand length": ("length on hand", "length in stock", "stock length"),
    "volume": (),
    "sold as": ("sold in",),
    "lot": ("dye lot", "batch"),
    "price": ("cost",),
}
#: of these the name and the kind make a row; the others are no supplies
OF_A_ROW = ("name", "kind")
_WITH_UNIT = re.compile(r"(.*\S)\s*[(\[]\s*([^()\[\]]+?)\s*[)\]]")
_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
_BARE = re.compile(r"[\d½¼¾⅛⅜⅝⅞⅓⅔][\d½¼¾⅛⅜⅝⅞⅓⅔ ./-]*")


class Column(Struct, frozen=True):
    """A column: its heading, the unit in it, and what it is: one of `OWN`, or a field of kinds."""

    head: Cell
    unit: str = ""
    own: str = ""
    fields: Mapping[str, Path] = {}

    @property
    def what(self) -> tuple[object, ...]:
        """What two columns may not both be."""
        return self.own, tuple(self.fields.items())

    def value(self, text: str, its: Schema, *, decimal_comma: bool) -> str:
        """The words of a cell, a number with the unit of its column."""
        words = " ".join(text.split())
        if decimal_comma and its.get("$comment") not in ("text", "name"):
            words = _DECIMAL_COMMA.sub(".", words)
        return f"{words} {self.unit}" if self.unit and bare(words) else words


def bare(words: str) -> bool:
    """Whether a cell is a number without a unit.

    >>> bare("1 1/2"), bare("20 g")
    (True, False)
    """
    return _BARE.fullmatch(words) is not None


def column(head: Cell, kinds: Mapping[str, Schema]) -> Column:
    """What a column is, by its heading.

    >>> from wellstrung.common.places import Place
    >>> ring = {"properties": {"wire": {}, "eye": {"properties": {"hole": {}}}}}
    >>> here = Place("a.csv", 1, 1, 1, 5)
    >>> column(Cell("Gauge", here), {"ring": ring}).fields
    {'ring': ('wire',)}
    >>> found = column(Cell("eye hole (mm)", here), {"ring": ring})
    >>> found.fields, found.unit
    ({'ring': ('eye', 'hole')}, 'mm')
    >>> column(Cell("Qty", here), {}).own, column(Cell("shelf", here), {}).own
    ('count', '')
    """
    text = " ".join(head.text.split())
    found = _WITH_UNIT.fullmatch(text)
    word, unit = (found[1], found[2]) if found else (text, "")
    for own, words in OWN.items():
        if plain(word) in words or fields_meant(word, (own,)):
            return Column(head, unit, own)
    fields = {kind: path for kind, its in kinds.items() if (path := _path(plain(word), its))}
    return Column(head, unit, "", fields)


def _path(word: str, its: Schema) -> Path:
    """Where a kind has the field of that name; empty where it has none."""
    fields = its.get("properties", {})
    whole = fields_meant(word, [name for name in fields if name != "kind"])
    if len(whole) == 1:
        return whole
    first, _, rest = word.replace(".", " ").partition(" ")
    inside = _path(rest, fields[first]) if rest and first in fields else ()
    return (first, *inside) if inside else ()


def at(its: Schema, path: Path) -> Schema:
    """The schema of a field."""
    for name in path:
        its = its["properties"][name]
    return its
