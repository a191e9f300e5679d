"""From a value in its base unit back to the unit that the author wrote."""

from __future__ import annotations

import math
from typing import Literal

from wellstrung.common.units.known import (
    EVERY_UNIT,
    FORCES,
    INCH,
    KILOGRAM_FORCE,
    LENGTHS,
    MASSES,
    TIMES,
    VOLUMES,
    name_of,
)

Side = Literal["nearest", "up", "down"]


#: Inches are printed in eighths from here up, in sixteenths below: common practice, no source.
_EIGHTHS_FROM = 3.0
#: What a sixteenth would miss by more than this share is printed in mm.
_COARSE = 0.02
#: Where longer units begin, mm: common practice, no source.
_METRES_FROM, _YARDS_FROM, _LEAST_CUT = 1000.0, 72 * INCH, INCH / 16
#: What a comparison forgives, in base units: a limit missed by less is none to round away from.
_FORGIVEN = 1e-3


def _steps(value: float, step: float, side: Side) -> int:
    """A value in whole steps; one that must be reached goes up, one not to pass goes down."""
    if side == "nearest":
        return round(value / step)
    forgiven = min(_FORGIVEN, step / 2)
    up = side == "up"
    return math.ceil((value - forgiven) / step) if up else math.floor((value + forgiven) / step)


def show(value: float, unit: str, digits: int | None = None, side: Side = "nearest") -> str:
    """A value in its base unit, printed in `unit`, in no finer steps than a bench can measure.

    Inches are printed as a ruler shows them, and in mm what is too small for that.

    >>> show(8.0, 'mm'), show(460.0, 'cm'), show(419.1, 'in/'), show(10.0, 'in')
    ('8 mm', '46 cm', '16 1/2 in', '10 mm')
    >>> show(8.002, 'mm', side='up'), show(8.008, 'mm', side='down'), show(418.0, 'in', side='up')
    ('8.01 mm', '8 mm', '16 1/2 in')
    """
    if unit.strip("/") == "in" or name_of(unit, LENGTHS) == "in":
        return _fraction(value / INCH, side) or show(value, "mm", digits, side)
    if unit == "°F":
        value = value * 1.8 + 32
    factor = _factor(unit)
    if unit in ("AWG", "SWG"):
        unit = "mm"
    places = digits if digits is not None else _digits(unit)
    step = factor / 10**places
    amount = f"{value / factor:.{places}f}"
    if side != "nearest":
        amount = f"{_steps(value, step, side) / 10**places:.{places}f}"
    if "." in amount:
        amount = amount.rstrip("0").rstrip(".")
    amount = "0" if amount in ("-0", "") else amount
    printed = {"lbf": "lb", "kgf": "kg"}.get(unit, unit)
    close = unit[:1] in ('"', "'", "″", "′", "”", "’", "%")
    return f"{amount}{printed}" if close or not unit else f"{amount} {printed}"


def by_length(length: float, *, inches: bool = False, side: Side = "nearest") -> str:
    """What is cut or bought by its length, mm: cm, from 1 m up m; inches, from 2 yards up yards.

    >>> by_length(419.1), by_length(1800), by_length(419.1, inches=True)
    ('41.9 cm', '1.8 m', '16 1/2 in')
    >>> by_length(18288, inches=True), by_length(500, inches=True, side="up")
    ('20 yd', '19 3/4 in')
    """
    if inches and length >= _YARDS_FROM:
        return show(length, "yd", 2, side)
    if inches and length >= _LEAST_CUT:
        return _fraction(length / INCH, side, coarse=1.0)
    unit, digits = ("cm", 1) if length < _METRES_FROM else ("m", 2)
    return show(length, unit, digits, side)


def hanging(force: float, side: Side = "nearest") -> str:
    """The mass that pulls with a force, N, where it hangs: nobody feels newtons.

    >>> hanging(6.67), hanging(15.785, side="up"), hanging(666.9)
    ('680 g', '1.61 kg', '68 kg')
    """
    grams = force / KILOGRAM_FORCE * 1000
    if abs(grams) < 1000:
        return show(grams, "g", 0 if abs(grams) >= 10 else 1, side)
    return show(grams, "kg", 2 if abs(grams) < 10_000 else 1, side)


def _digits(unit: str) -> int:
    return 3 if name_of(unit, EVERY_UNIT) in ("m", "kg", "oz") else 2


def _factor(unit: str) -> float:
    name = name_of(unit, EVERY_UNIT)
    return next(
        (table[name] for table in (LENGTHS, MASSES, TIMES, FORCES, VOLUMES) if name in table), 1.0
    )


def _fraction(inches: float, side: Side, coarse: float = _COARSE) -> str:
    """Eighths or sixteenths, or finer where that is what it is; empty if they say too little."""
    parts = next((n for n in (16, 32, 64) if abs(inches * n - round(inches * n)) < 1e-4), 0)
    if not parts:
        parts = 8 if abs(inches) >= _EIGHTHS_FROM else 16
    steps = _steps(inches * INCH, INCH / parts, side)
    if abs(steps / parts - inches) > coarse * abs(inches):
        return ""
    whole, part = divmod(abs(steps), parts)
    shared = math.gcd(part, parts)
    rest = f"{part // shared}/{parts // shared}" if part else ""
    sign = "-" if steps < 0 else ""
    return f"{sign}{' '.join(filter(None, [str(whole) if whole or not part else '', rest]))} in"
