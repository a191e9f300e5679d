"""From a value in its base unit back to the unit that the author wrote."""

from __future__ import annotations

from math import gcd

from wellstrung.common.units.known import (
    EVERY_UNIT,
    FORCES,
    INCH,
    LENGTHS,
    MASSES,
    TIMES,
    VOLUMES,
    name_of,
)


def show(value: float, unit: str, digits: int | None = None) -> str:
    """A value in its base unit, printed in `unit`, in no finer steps than a bench can measure.

    >>> show(8.0, 'mm'), show(460.0, 'cm'), show(419.1, 'in/'), show(10.0, 'in')
    ('8 mm', '46 cm', '16 1/2 in', '0.394 in')
    """
    if unit == "in/":
        return _fraction(value / INCH) or show(value, "in", digits)
    if unit == "°F":
        value = value * 1.8 + 32
    factor = _factor(unit)
    if unit in ("AWG", "SWG"):
        unit = "mm"
    places = digits if digits is not None else _digits(unit)
    amount = f"{value / factor:.{places}f}"
    if "." in amount:
        amount = amount.rstrip("0").rstrip(".")
    amount = "0" if amount in ("-0", "") else amount
    printed = {"lbf": "lb", "kgf": "kg"}.get(unit, unit)
    close = unit[:1] in ('"', "'", "″", "′", "”", "’", "%")
    return f"{amount}{printed}" if close or not unit else f"{amount} {printed}"


def _digits(unit: str) -> int:
    return 3 if name_of(unit, EVERY_UNIT) in ("in", "ft", "yd", "m", "kg", "oz") else 2


def _factor(unit: str) -> float:
    name = name_of(unit, EVERY_UNIT)
    return next(
        (table[name] for table in (LENGTHS, MASSES, TIMES, FORCES, VOLUMES) if name in table), 1.0
    )


def _fraction(inches: float) -> str:
    """Sixteenths, or finer where that is exactly what it is; empty if it would be shown as 0."""
    size = abs(inches)
    parts = next((n for n in (16, 32, 64) if abs(size * n - round(size * n)) < 1e-4), 16)
    whole, part = divmod(round(size * parts), parts)
    if not whole and not part and inches:
        return ""
    shared = gcd(part, parts)
    rest = f"{part // shared}/{parts // shared}" if part else ""
    sign = "-" if inches < 0 else ""
    return f"{sign}{' '.join(filter(None, [str(whole) if whole or not part else '', rest]))} in"
