"""One line of a shopping list: how much is needed, had and spare, and what it is sold in.

Amounts are pieces, mm (thread, chain, cord, wire) or mm3 (adhesive). They are kept as they come;
only what is bought is rounded, at the end, to whole pieces, packs or centimetres.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.money import PIECES, SOLD, Money, Price
from wellstrung.quantity.verdict import SLACK

#: Groups of a shopping list, in the order it is read in a shop.
GROUPS = (
    "beads", "thread", "cord", "core", "chain", "wire", "rings", "findings", "adhesive",
)  # fmt: skip
LENGTH, VOLUME = "mm", "mm3"
#: What is asked for by the length, and cut off to it: priced by what is bought, not by the pack.
BY_THE_LENGTH = frozenset({"cord", "core", "chain", "wire"})
#: Lengths are bought by the centimetre, mm.
_CENTIMETRE, _METRE = 10.0, 1000.0
#: A bound on hostile plans.
MOST_PACKS = 100_000


class Pack(Struct, frozen=True):
    """What a thing is sold in: how much one holds, in the line's unit, and how it is written.

    `holds` is None where one is enough whatever it holds, as a bottle of adhesive. It may hold
    `less` than that, as likely; `grams` is what beads in it weigh.
    """

    holds: float | None
    word: str
    text: str = ""
    less: float = 0.0
    grams: float | None = None


class Needed(Struct, frozen=True):
    """How much of a thing is taken: the middle and its likely range."""

    middle: float
    low: float
    high: float


class SupplyLine(Struct, frozen=True):
    """One thing to buy.

    `up` is how far need and spare may likely be above their middle, `down` how far what is on hand
    may be below its own. `cut_short` is what has to be bought of a chain, whose lengths do not add
    up. `missing` names the fields that would let the amount be known; `notes` are for people.
    """

    group: str
    name: str
    describes: str
    unit: str
    need: Needed = Needed(0.0, 0.0, 0.0)
    spare: float = 0.0
    up: float = 0.0
    have: float = 0.0
    down: float = 0.0
    cut_short: float | None = None
    pack: Pack | None = None
    per_gram: float | None = None
    price: Price | None = None
    plans: tuple[str, ...] = ()
    files: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    def left(self, packs: int = 0) -> float:
        """What is left over, at its likely least, when so many packs more have been bought.

        Need and what is had vary apart from each other: root-sum-square, as a rule compares them.
        """
        holds, less = (self.pack.holds or 0.0, self.pack.less) if self.pack else (0.0, 0.0)
        middle = self.have + packs * holds - self.need.middle - self.spare
        return middle - math.hypot(self.up, self.down + packs * less)

    @property
    def short(self) -> float:
        """What has to be bought, before it is rounded to pieces and packs."""
        return max(0.0, -self.left()) if self.cut_short is None else self.cut_short

    @property
    def packs(self) -> int | None:
        """Whole packs to buy; None where nothing says what it is sold in."""
        if self.pack is None:
            return None
        if self.pack.holds is None or not self.short:
            return 1 if self.short else 0
        packs = up(self.short / self.pack.holds)
        while self.left(packs) < -SLACK and packs < MOST_PACKS:
            packs += 1
        return packs

    @property
    def buy(self) -> float:
        """What is bought: whole packs, whole pieces, whole centimetres."""
        if self.pack is not None and self.pack.holds is not None:
            return (self.packs or 0) * self.pack.holds
        if self.unit == LENGTH:
            return up(self.short / _CENTIMETRE) * _CENTIMETRE
        return up(self.short) if self.unit == PIECES else self.short

    @property
    def grams(self) -> float | None:
        """What the beads to buy weigh, g; None for what is not weighed."""
        if self.pack is not None and self.pack.grams is not None:
            return (self.packs or 0) * self.pack.grams
        return self.buy / self.per_gram if self.per_gram else None

    @property
    def cost(self) -> Money | None:
        """What it costs to buy; None without a price that says for how much."""
        bought = self._bought(self.price) if self.price is not None and not self.missing else None
        return self.price.of(bought) if self.price is not None and bought is not None else None

    def _bought(self, price: Price) -> float | None:
        """How much is bought, in a price's unit; None where the price does not fit the thing."""
        if price.unit == "g":
            return self.grams
        if price.unit == self.unit:
            return self.buy
        if self.packs is not None and price.unit in (SOLD, PIECES):
            return self.packs  # `each` is each spool of thread, each bottle of adhesive
        # a finding with a bare price is sold by the piece; a bead with one may be sold in anything
        bare = price.unit == SOLD and " per " not in price.text
        return self.buy if bare and self.unit == PIECES and self.group != "beads" else None

    @property
    def key(self) -> tuple[str, str, str]:
        """Two lines with one key are for the same thing."""
        return self.group, self.name, self.describes


def added(lines: Iterable[SupplyLine]) -> list[SupplyLine]:
    """Lines for the same thing as one, added up before anything is rounded."""
    found: dict[tuple[str, str, str], SupplyLine] = {}
    for line in lines:
        found[line.key] = _sum(found[line.key], line) if line.key in found else line
    return list(found.values())


def _sum(one: SupplyLine, other: SupplyLine) -> SupplyLine:
    need = Needed(
        one.need.middle + other.need.middle,
        one.need.low + other.need.low,
        one.need.high + other.need.high,
    )
    return replace(
        one,
        need=need,
        spare=one.spare + other.spare,
        up=one.up + other.up,
        have=one.have + other.have,
        down=one.down + other.down,
        pack=one.pack or other.pack,
        price=one.price or other.price,
        plans=tuple(dict.fromkeys((*one.plans, *other.plans))),
        files=tuple(dict.fromkeys((*one.files, *other.files))),
        missing=tuple(dict.fromkeys((*one.missing, *other.missing))),
        notes=tuple(dict.fromkeys((*one.notes, *other.notes))),
    )


def bought(line: SupplyLine) -> str:
    """What is bought, in words: what it is sold in, or pieces, or a length.

    >>> bought(SupplyLine("rings", "small", "", "", Needed(14, 14, 14)))
    '14'
    """
    if line.packs is not None and line.pack is not None:
        word = line.pack.word if line.packs == 1 else _several(line.pack.word)
        return f"{line.packs} {word}" + (f" of {line.pack.text}" if line.pack.text else "")
    if line.unit == LENGTH:
        return units.show(line.buy, "m" if line.buy >= _METRE else "cm")
    return f"{line.buy:g}"


def _several(word: str) -> str:
    return f"{word}es" if word.endswith("x") else f"{word}s"


def up(value: float) -> int:
    """The whole number that is enough, by counting; a millionth more still counts as it.

    >>> up(2.3), up(2.0000001)
    (3, 2)
    """
    return max(0, math.ceil(value - 1e-6))
