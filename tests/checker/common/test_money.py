"""Prices: as written, for how much, and to the cent."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.common import money, units
from wellstrung.common.money import Money


@pytest.mark.parametrize(
    ("text", "cost", "per", "unit"),
    [
        ("4.20 EUR per 10 g", "4.20 EUR", 10.0, "g"),
        ("£1.80 each", "£1.80", 1.0, ""),
        ("12 €", "€12.00", 1.0, "sold"),
        ("3 USD per 100", "3.00 USD", 100.0, ""),
        ("8 EUR per spool", "8.00 EUR", 1.0, "sold"),
        ("6 EUR per m", "6.00 EUR", 1000.0, "mm"),
        ("6 EUR per g", "6.00 EUR", 1.0, "g"),
        ("2 EUR per 1/2 in", "2.00 EUR", 12.7, "mm"),
    ],
)
def test_a_price_as_written(text: str, cost: str, per: float, unit: str) -> None:
    found = money.price(text)
    assert (str(found.money), found.unit) == (cost, unit)
    assert found.per == pytest.approx(per)


@pytest.mark.parametrize("text", ["3", "free", "4 EUR per", "4 EUR per 10 gg", "4 EUR per 0 g", 3])
def test_what_is_no_price(text: str | int) -> None:
    with pytest.raises(units.UnitFault):
        money.price(text)


@pytest.mark.parametrize("text", ["40", "40 EUR each", "40 EUR per spool", "40 EUR per 10 g"])
def test_what_is_no_budget(text: str) -> None:
    with pytest.raises(units.UnitFault):
        money.budget(text)


def test_half_a_cent_goes_up() -> None:
    assert money.price("0.05 EUR per 10 g").of(5).amount == Decimal("0.03")


@given(st.lists(st.decimals(0, 1000, places=2), max_size=50))
def test_a_bill_adds_up_to_the_cent(amounts: list[Decimal]) -> None:
    found = money.total(Money(amount, "EUR") for amount in amounts)
    assert sum(money.amount for money in found) == sum(amounts)


@given(st.text(max_size=40))
def test_no_text_breaks_it(text: str) -> None:
    try:
        assert money.price(text).per > 0
    except units.UnitFault as wrong:
        assert wrong.says
