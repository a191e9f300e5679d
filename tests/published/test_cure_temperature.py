"""Cure against temperature, as epoxy makers' pages print it (copies seen).

The rate doubles for each 10 °C (18 °F) more, from about 30 to 120 °F: an epoxy that gels in 10 min
and cures in 60 min at 25 °C takes 5 and 30 min at 35 °C. Many formulas stall below about 55 °F
(another maker's page). The other times follow from the rule, as does the Arrhenius activation
energy of a doubling between 15 and 25 °C, 49.5 kJ/mol.
"""

from __future__ import annotations

import math

import pytest

from wellstrung import tables
from wellstrung.formulas import glue
from wellstrung.formulas.glue import cure_at

#: molar gas constant, J/(mol K): CODATA 2018, exact
GAS = 8.314462618


@pytest.mark.parametrize(
    ("name", "stated", "warm"), [("gel", 10, 5), ("full cure", 60, 30)], ids=["gel", "full cure"]
)
def test_gel_and_cure_printed_at_25_and_35(name: str, stated: float, warm: float) -> None:
    assert cure_at(25, stated) == stated
    assert cure_at(35, stated) == pytest.approx(warm)


@pytest.mark.parametrize(("temperature", "hours"), [(25, 24), (15, 48), (5, 96), (35, 12)])
def test_a_day_at_25(temperature: float, hours: float) -> None:
    assert cure_at(temperature, 24 * 60) / 60 == pytest.approx(hours)


def test_the_range_in_fahrenheit() -> None:
    """30 to 120 °F is -1.1 to 48.9 °C: the module's 0 to 50 °C to within a degree and a half."""
    low, high = ((f - 32) / 1.8 for f in (30, 120))
    assert pytest.approx((low, high), abs=1.2) == (glue.COLDEST, glue.WARMEST)


def arrhenius(temperature: float, energy: float) -> float:
    """Time at a temperature, °C, over the time at 25 °C, for an activation energy in J/mol."""
    return math.exp(energy / GAS * (1 / (temperature + 273.15) - 1 / 298.15))


def test_the_activation_energy_of_a_doubling() -> None:
    longer = cure_at(15, 1) / cure_at(25, 1)
    energy = GAS * math.log(longer) / (1 / 288.15 - 1 / 298.15)
    assert energy / 1000 == pytest.approx(49.5, abs=0.05)


def test_the_rule_stays_near_arrhenius_at_the_bench() -> None:
    """Within 5 % from 10 to 35 °C; Arrhenius is slower by 10 % at 0 °C and by 21 % at 50 °C."""
    for temperature in range(10, 36):
        assert cure_at(temperature, 1) == pytest.approx(arrhenius(temperature, 49_500), rel=0.05)
    assert arrhenius(0, 49_500) / cure_at(0, 1) == pytest.approx(1.10, abs=0.005)
    assert arrhenius(50, 49_500) / cure_at(50, 1) == pytest.approx(1.21, abs=0.005)


def test_the_trade_table_says_the_same() -> None:
    epoxy = tables.load("adhesives").row("two-part epoxy")
    assert epoxy.cell("degrees_to_double").value == glue.DEGREES_TO_DOUBLE
    assert epoxy.cell("stated_at").value == glue.STATED_AT
    assert epoxy.cell("stalls_below").value == round((55 - 32) / 1.8)
