"""Units against NIST SP 811 appendix B, Handbook 44 appendix C, and `pint`.

Copies of the tables were seen, the digits of SP 811 itself were not.

One seen text equates a pull of 90 N with 9 lb; by the exact factors 90 N is 20.2 lb.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pint
import pytest

from wellstrung.common import units

Read = Callable[[str], units.Parsed]

EXACT: list[tuple[Read, str, float]] = [
    (units.length, "1 in", 25.4),
    (units.length, "1 ft", 304.8),
    (units.length, "1 yd", 914.4),
    (units.length, "7 in", 177.8),
    (units.length, "18 in", 457.2),
    (units.length, "1/16 in", 1.5875),
    (units.mass, "1 lb", 453.59237),
    (units.mass, "1 oz", 28.349523125),
    (units.mass, "1 ct", 0.2),
    (units.duration, "1 h", 60.0),
    (units.duration, "3 days", 4320.0),
]
#: Printed to four decimals.
ROUNDED: list[tuple[Read, str, float]] = [
    (units.force, "15 lb", 66.7233),
    (units.force, "10 lb", 44.4822),
]


@pytest.mark.parametrize(("read", "text", "value"), EXACT)
def test_exact_values(read: Read, text: str, value: float) -> None:
    assert read(text).value == pytest.approx(value, rel=1e-11)


@pytest.mark.parametrize(("read", "text", "value"), ROUNDED)
def test_rounded_values(read: Read, text: str, value: float) -> None:
    assert read(text).value == pytest.approx(value, abs=5e-5)


def test_a_pound_of_pull_is_a_pound_under_standard_gravity() -> None:
    assert pytest.approx(0.45359237 * 9.80665, rel=1e-15, abs=0) == units.POUND_FORCE
    assert units.KILOGRAM_FORCE == 9.80665


def test_ninety_newtons_are_twenty_pounds_not_nine() -> None:
    assert units.force("20.2 lb").value == pytest.approx(90, abs=0.2)
    assert units.show(90, "lbf") == "20.23 lb"


PINT: dict[str, tuple[Read, Mapping[str, float], str, Mapping[str, str]]] = {
    "length": (units.length, units.LENGTHS, "mm", {}),
    "mass": (units.mass, units.MASSES, "g", {"ct": "carat"}),
    "force": (units.force, units.FORCES, "N", {"lb": "lbf", "kg": "kgf"}),
    "time": (units.duration, units.TIMES, "min", {"d": "day"}),
}


@pytest.mark.parametrize("kind", PINT)
def test_against_pint(kind: str) -> None:
    read, table, base, names = PINT[kind]
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    for unit in table:
        expected = registry.Quantity(3.5, names.get(unit, unit)).to(base).magnitude
        assert read(f"3.5 {unit}").value == pytest.approx(expected, rel=1e-11), unit
