"""The words for the metal of a finding."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from wellstrung import tables
from wellstrung.common.trade_words import ACCEPTED, plain, words

#: a finish over a metal that nobody names: text, which no table takes for a metal
_FINISHES = (
    *(
        f"{finish} {metal}"
        for finish in ("antique", "antiqued", "oxidised", "oxidized")
        for metal in ("brass", "copper", "bronze", "silver", "gold", "pewter")
    ),
    *(
        f"{metal} {finish}"
        for metal in ("silver", "gold", "copper", "bronze", "brass", "rose gold")
        for finish in ("tone", "plated", "plate", "colour", "color", "filled")
    ),
    *("gunmetal", "rose gold", "tibetan silver", "silver", "gold", "steel"),
)


@cache
def metals() -> Mapping[str, str]:
    """Every word of a metal, and of a finish, which stays the author's own."""
    rows = tables.load("metals").rows
    same = {plain(w): own for own, others in ACCEPTED["metal"].items() for w in words(others)}
    return {**dict(zip(_FINISHES, _FINISHES, strict=True)), **{row: row for row in rows}, **same}
