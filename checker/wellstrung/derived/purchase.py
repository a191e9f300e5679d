"""What has to be bought of one thing: from what it takes and what is on hand to whole packs.

Amounts are pieces, mm (thread, chain, cord, wire) or ml (adhesive). Only what is bought is rounded,
at the end: up to whole pieces, packs or centimetres, and weights up to a tenth of a gram.
"""

from __future__ import annotations

import math

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.money import PIECES, SOLD, Money, Price
from wellstrung.derived.amounts import LENGTH
from wellstrung.quantity.verdict import SLACK

#: Lengths are bought by the centimetre, mm.
_CENTIMETRE = 10.0
#: A bound on hostile plans.
MOST_PACKS = 100_000


class Pack(Struct, frozen=True):
    """What a thing is sold in: how much one holds, in the unit of the thing, and how it is written.

    `holds` is None where one is enough whatever it holds, as a bottle of adhesive without a volume.
    It may hold `less` than that, as likely; `grams` is the weight of a pack that is sold by weight.
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


class Purchase(Struct, frozen=True, kw_only=True):
    """One thing, how much of it is needed and on hand, and what it is sold in.

    `up` is how far need and spare may likely be above their middle, `down` how far what is on hand
    may be below its own. `cut_short` is what has to be bought of a chain, whose lengths do not add
    up. `missing` names the fields that would let the amount be known, `inches` says that its maker
    goes by inches.
    """

    group: str
    name: str
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
    missing: tuple[str, ...] = ()
    inches: bool = False

    def left(self, packs: int = 0) -> float:
        """What is left over, at its likely least, when so many packs more have been bought.

        Need and what is on hand vary independently: root-sum-square, as a rule compares them.
        """
        holds, less = (self.pack.holds or 0.0, self.pack.less) if self.pack else (0.0, 0.0)
        middle = self.have + packs * holds - self.need.middle - self.spare
        return middle - math.hypot(self.up, self.down + packs * less)

    @property
    def short(self) -> float:
        """What has to be bought, before it is rounded to pieces and packs."""
        if self.cut_short is not None:
            return self.cut_short
        short = -self.left()
        return short if short > SLACK else 0.0

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
        """How much is bought: whole packs, whole pieces, whole centimetres."""
        if self.pack is not None and self.pack.holds is not None:
            return (self.packs or 0) * self.pack.holds
        if self.unit == LENGTH:
            return up(self.short / _CENTIMETRE) * _CENTIMETRE
        return up(self.short) if self.unit == PIECES else self.short

    @property
    def grams(self) -> float | None:
        """The weight of the beads to buy, g; None for what is not weighed."""
        if self.pack is not None and self.pack.grams is not None:
            return (self.packs or 0) * self.pack.grams
        return weighed(self.buy, self.per_gram)

    @property
    def cost(self) -> Money | None:
        """What it costs to buy; None without a price that fits."""
        return self._at_price(self.buy, self.grams, self.packs)

    @property
    def used_cost(self) -> Money | None:
        """What of its price goes into the work, spare ones included; None without one that fits.

        The rest of a pack stays with whoever bought it; a bottle that does not say how much it
        holds goes in whole.
        """
        used = self.need.middle + self.spare
        grams = used / self.per_gram if self.per_gram else None
        packs = None if self.pack is None else used / self.pack.holds if self.pack.holds else 1.0
        return self._at_price(used, grams, packs)

    def _at_price(self, amount: float, grams: float | None, packs: float | None) -> Money | None:
        """What so much costs; None where nothing has the price, or it does not fit the thing."""
        if self.price is None or self.missing:
            return None
        paid = self._in_its_unit(self.price, amount, grams, packs)
        return self.price.of(paid) if paid is not None else None

    def _in_its_unit(
        self, price: Price, amount: float, grams: float | None, packs: float | None
    ) -> float | None:
        """How much it is, in a price's unit; None where the price does not fit the thing."""
        if price.unit == "g":
            return grams
        if price.unit == self.unit:
            return amount
        if packs is not None and price.unit in (SOLD, PIECES):
            return packs  # `each` is each spool of thread, each bottle of adhesive
        # a finding with a bare price is sold by the piece; a bead with one may be sold in anything
        bare = price.unit == SOLD and " per " not in price.text
        return amount if bare and self.unit == PIECES and self.group != "beads" else None


def bought(thing: Purchase) -> str:
    """What is bought, in words: what it is sold in, or pieces, or a length.

    >>> need, box = Needed(14, 14, 14), Pack(10, "box", "10")
    >>> bought(Purchase(group="rings", name="small", unit="", need=need))
    '14'
    >>> bought(Purchase(group="rings", name="small", unit="", need=need, pack=box))
    '2 boxes of 10'
    """
    if thing.packs is not None and thing.pack is not None:
        word = thing.pack.word if thing.packs == 1 else _several(thing.pack.word)
        return f"{thing.packs} {word}" + (f" of {thing.pack.text}" if thing.pack.text else "")
    if thing.unit == LENGTH:
        return units.by_length(thing.buy, inches=thing.inches, side="up")
    return f"{thing.buy:g}"


def _several(word: str) -> str:
    return f"{word}es" if word.endswith("x") else f"{word}s"


def weighed(pieces: float, per_gram: float | None) -> float | None:
    """What so many beads weigh, up to the next tenth of a gram; None where that is not known.

    Counting.

    >>> weighed(2663, 110.0)
    24.3
    """
    return up(pieces / per_gram * 10) / 10 if per_gram else None


def up(value: float) -> int:
    """A whole number that is enough; a millionth over it still counts as it. Counting.

    >>> up(2.0000001), up(2.1), up(-3)
    (2, 3, 0)
    """
    return max(0, math.ceil(value - 1e-6))
