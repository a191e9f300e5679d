"""Units against NIST SP 811 appendix B and Handbook 44 appendix C (copies seen), and `pint`."""

from __future__ import annotations

import pint
import pytest

from wellstrung import units

NIST = [
    (units.length, "1 in", 25.4),
    (units.length, "1 ft", 304.8),
    (units.length, "1 yd", 914.4),
    (units.length, "7 in", 177.8),
    (units.length, "18 in", 457.2),
    (units.length, "1/16 in", 1.5875),
    (units.mass, "1 lb", 453.59237),
    (units.mass, "1 oz", 28.349523125),
    (units.mass, "1 ct", 0.2),
    (units.force, "1 lb", 4.4482216152605),
    (units.force, "15 lb", 66.7233),
    (units.force, "10 lb", 44.4822),
    (units.duration, "1 h", 60.0),
    (units.duration, "3 days", 4320.0),
]


@pytest.mark.parametrize(("read", "text", "value"), NIST)
def test_against_nist(read: type[units.Parsed], text: str, value: float) -> None:
    assert read(text).value == pytest.approx(value, rel=1e-6)  # type: ignore[call-arg,arg-type]


PINT = {
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
        assert read(f"3.5 {unit}").value == pytest.approx(expected, rel=1e-9), unit
