"""Money and prices: an amount, its currency, and for how much of a thing it is.

Amounts are decimal, so that a bill adds up to the penny; the unit of what is sold is g, mm, pieces,
or `sold`, whatever the thing is sold in.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from decimal import ROUND_HALF_UP, Decimal

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.patterns import Pattern

#: Words for what things are sold in, as a price or a line of supplies may name them.
SOLD_IN = ("pack", "tube", "hank", "strand", "loop", "spool", "card", "bag", "box", "bottle")
#: The units of a price for single pieces, and for whatever a thing is sold in.
PIECES, SOLD = "", "sold"
_NUMBER = r"\d+(?:\.\d+)?"
_PRICE = Pattern(
    rf"(?:(?P<sign>[£€$¥]) ?(?P<after>{_NUMBER})"
    rf"|(?P<before>{_NUMBER}) ?(?P<name>[A-Z]{{3}}|[£€$¥]))"
    r"(?: (?:(?P<each>each)|per (?P<per>\S.*)))?"
)
_EXAMPLE = "1.80 EUR each"
_CENT = Decimal("0.01")
_HOURLY = Pattern(r"(\S.*?) ?(?:per|an?|/) ?(?:h|hr|hour)", re.IGNORECASE)


class Money(Struct, frozen=True):
    """An amount in a currency, as the author names it."""

    amount: Decimal
    currency: str

    def __str__(self) -> str:
        amount = self.amount.quantize(_CENT, ROUND_HALF_UP)
        return (
            f"{amount} {self.currency}" if self.currency.isalpha() else f"{self.currency}{amount}"
        )


class Price(Struct, frozen=True):
    """So much money for so much of a thing; `unit` is `g`, `mm`, empty for pieces, or `sold`."""

    money: Money
    per: float
    unit: str
    text: str

    def of(self, bought: float) -> Money:
        """What an amount in the price's unit costs, to the cent.

        >>> str(price("4.20 EUR per 10 g").of(40))
        '16.80 EUR'
        """
        share = Decimal(str(bought)) / Decimal(str(self.per))
        cost = (self.money.amount * share).quantize(_CENT, ROUND_HALF_UP)
        return Money(cost, self.money.currency)


def price(text: str | int | float) -> Price:
    """A price as written; raises UnitFault.

    >>> three = price("3 € per 2 m")
    >>> str(three.money), three.per, three.unit
    ('€3.00', 2000.0, 'mm')
    """
    written = " ".join(str(text).split())
    found = _PRICE.fullmatch(written)
    if found is None:
        raise _unread(written, "a price", _EXAMPLE)
    per, unit = (1.0, "") if found["each"] else _sold(found["per"], written)
    return Price(_money(found), per, unit, written)


def budget(text: str | int | float) -> Money:
    """An amount of money to stay within; raises UnitFault.

    >>> str(budget("40 EUR"))
    '40.00 EUR'
    """
    written = " ".join(str(text).split())
    found = _PRICE.fullmatch(written)
    if found is None or found["each"] or found["per"]:
        raise _unread(written, "an amount of money", "40 EUR")
    return _money(found)


def wage(text: str | int | float) -> Money:
    """What an hour costs; raises UnitFault.

    >>> str(wage("18 EUR per h")), str(wage("£15 an hour"))
    ('18.00 EUR', '£15.00')
    """
    written = " ".join(str(text).split())
    found = _HOURLY.fullmatch(written)
    money = _PRICE.fullmatch(found[1]) if found is not None else None
    if money is None or money["each"] or money["per"]:
        raise _unread(written, "what an hour costs", "18 EUR per h")
    return _money(money)


def _unread(written: str, what: str, example: str) -> units.UnitFault:
    """The fault of what is no money, or has a comma for its point."""
    mended = re.sub(r"(?<=\d),(?=\d\d?\b)", ".", written)
    if mended != written and (_PRICE.fullmatch(mended) or _HOURLY.fullmatch(mended)):
        says = f"`{written}` has a comma as its decimal point: write `{mended}`"
        return units.UnitFault(says, mended)
    return units.UnitFault(
        f"`{written}` is not {what}: write it with its currency, as in `{example}`"
    )


def _money(found: re.Match[str]) -> Money:
    return Money(Decimal(found["after"] or found["before"]), found["sign"] or found["name"])


def _sold(per: str | None, written: str) -> tuple[float, str]:
    """For how much a price is, and of what; by default for whatever the thing is sold in."""
    if per is None or per in SOLD_IN:
        return 1.0, SOLD
    if re.fullmatch(r"[1-9]\d*", per):
        return float(per), ""
    amount = per if per[0].isdigit() else f"1 {per}"
    for read_unit, unit in ((units.mass, "g"), (units.length, "mm")):
        try:
            return read_unit(amount).value, unit
        except units.UnitFault:
            continue
    raise units.UnitFault(
        f"`{written}` does not say for how much: write a weight, a length, a number or a word of"
        f" {', '.join(SOLD_IN)} after `per`"
    )


def total(costs: Iterable[Money]) -> tuple[Money, ...]:
    """The sum of what things cost, one for each currency in order of appearance.

    >>> [str(money) for money in total([budget("2 EUR"), budget("£1"), budget("3 EUR")])]
    ['5.00 EUR', '£1.00']
    """
    sums: dict[str, Decimal] = {}
    for money in costs:
        sums[money.currency] = sums.get(money.currency, Decimal()) + money.amount
    return tuple(Money(amount, currency) for currency, amount in sums.items())


def priced(prices: Mapping[str, str], name: str) -> Price | None:
    """The price of a bead or a part by its name; None where the bench has none."""
    return price(prices[name]) if name in prices else None
