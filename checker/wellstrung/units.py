"""From what an author writes to a number in the base unit, and back again.

Base units: mm, g, N, minutes. A bare number is refused: nobody can tell whose 8 it is.
Conversion factors are exact by NIST SP 811 appendix B and Handbook 44 appendix C.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

INCH = 25.4
POUND = 453.59237
CARAT = 0.2
POUND_FORCE = 4.4482216152605
KILOGRAM_FORCE = 9.80665

LENGTHS: Mapping[str, float] = {
    "mm": 1.0,
    "cm": 10.0,
    "m": 1000.0,
    "in": INCH,
    "ft": 12 * INCH,
    "yd": 36 * INCH,
}
MASSES: Mapping[str, float] = {
    "g": 1.0,
    "kg": 1000.0,
    "mg": 0.001,
    "oz": POUND / 16,
    "lb": POUND,
    "ct": CARAT,
}
FORCES: Mapping[str, float] = {"N": 1.0, "lb": POUND_FORCE, "kg": KILOGRAM_FORCE}
TIMES: Mapping[str, float] = {"s": 1 / 60, "min": 1.0, "h": 60.0, "d": 1440.0, "week": 10080.0}

_SPELLINGS: Mapping[str, str] = {
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "inch": "in",
    "inches": "in",
    '"': "in",
    "″": "in",
    "”": "in",
    "''": "in",
    "foot": "ft",
    "feet": "ft",
    "'": "ft",
    "′": "ft",
    "’": "ft",
    "yard": "yd",
    "yards": "yd",
    "gram": "g",
    "grams": "g",
    "gramme": "g",
    "grammes": "g",
    "kilogram": "kg",
    "kilograms": "kg",
    "milligram": "mg",
    "milligrams": "mg",
    "ounce": "oz",
    "ounces": "oz",
    "pound": "lb",
    "pounds": "lb",
    "lbs": "lb",
    "lbf": "lb",
    "carat": "ct",
    "carats": "ct",
    "newton": "N",
    "newtons": "N",
    "n": "N",
    "kgf": "kg",
    "sec": "s",
    "second": "s",
    "seconds": "s",
    "minute": "min",
    "minutes": "min",
    "mins": "min",
    "hour": "h",
    "hours": "h",
    "hr": "h",
    "hrs": "h",
    "day": "d",
    "days": "d",
    "weeks": "week",
}
_VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_NUMBER = r"\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
_AMOUNT = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>[^\d\s.±+/-][^\d.±+]*?)?")
_BEAD = re.compile(r"(\d{1,2})\s*/\s*0|(\d{1,2})°")
_GAUGE = re.compile(r"(\d{1,2})\s*(?:-\s*)?(awg|swg|ga|gauge|g)\b\.?", re.IGNORECASE)


#: A plan says the same sizes again and again; what a text means never changes.
_REMEMBERED = 4096


class Parsed(NamedTuple):
    """A value in its base unit, the tolerance that was written with it, and how it was written."""

    value: float
    low: float
    high: float
    unit: str
    text: str


class UnitFault(ValueError):
    """What is wrong with a value, and what could stand there instead."""

    def __init__(self, says: str, suggestion: str | None = None) -> None:
        super().__init__(says)
        self.says = says
        self.suggestion = suggestion


def awg(gauge: int) -> float:
    """Diameter, mm, of American Wire Gauge: 0.127 x 92^((36 - n) / 39) (ASTM B258).

    >>> round(awg(20), 3)
    0.812
    """
    return float(0.127 * 92 ** ((36 - gauge) / 39))


#: Inches, BS 3737:1964 (withdrawn); copy seen, 28 SWG after the legal step rule (.0148).
_SWG = {
    10: 0.128, 11: 0.116, 12: 0.104, 13: 0.092, 14: 0.080, 15: 0.072, 16: 0.064, 17: 0.056,
    18: 0.048, 19: 0.040, 20: 0.036, 21: 0.032, 22: 0.028, 23: 0.024, 24: 0.022, 25: 0.020,
    26: 0.018, 27: 0.0164, 28: 0.0148, 29: 0.0136, 30: 0.0124,
}  # fmt: skip


def swg(gauge: int) -> float:
    """Diameter, mm, of British Standard Wire Gauge 10 to 30 (BS 3737:1964).

    >>> round(swg(20), 3)
    0.914
    """
    if gauge not in _SWG:
        raise UnitFault(f"{gauge} SWG is not in the table, which runs from 10 to 30: write mm")
    return _SWG[gauge] * INCH


@lru_cache(maxsize=_REMEMBERED)
def length(text: str | int | float) -> Parsed:
    """A length in mm.

    >>> length('16 1/2 in').value, length('8 ± 0.2 mm').low
    (419.1, 7.8)
    """
    return _measure(text, "length", LENGTHS, ("mm", "cm"))


@lru_cache(maxsize=_REMEMBERED)
def mass(text: str | int | float) -> Parsed:
    """A mass in g.

    >>> mass('9 g').value
    9.0
    """
    return _measure(text, "mass", MASSES, ("g", "oz"))


@lru_cache(maxsize=_REMEMBERED)
def force(text: str | int | float) -> Parsed:
    """A pull or a thread's rating in N; `lb` is pound-force here.

    >>> round(force('8 lb').value, 2)
    35.59
    """
    return _measure(text, "rating", FORCES, ("lb", "N"))


@lru_cache(maxsize=_REMEMBERED)
def duration(text: str | int | float) -> Parsed:
    """A time in minutes; sums such as `1 h 30 min` are taken.

    >>> duration('24 h').value, duration('1 h 30 min').value
    (1440.0, 90.0)
    """
    parts = re.findall(r"\d+(?:\.\d+)?\s*[A-Za-z]+", text) if isinstance(text, str) else []
    if len(parts) > 1 and "".join(parts).replace(" ", "") == str(text).replace(" ", ""):
        value = sum(_measure(part, "time", TIMES, ("min", "h")).value for part in parts)
        return Parsed(value, value, value, "min", str(text))
    return _measure(text, "time", TIMES, ("min", "h"))


@lru_cache(maxsize=_REMEMBERED)
def wire(text: str | int | float) -> Parsed:
    """A wire thickness in mm, from a length or from a gauge that names its system.

    >>> round(wire('20 AWG').value, 3), round(wire('21 SWG').value, 3)
    (0.812, 0.813)
    """
    found = _GAUGE.fullmatch(_clean(str(text)))
    if found is None:
        return _measure(text, "wire", LENGTHS, ("mm", "AWG"))
    gauge, system = int(found[1]), found[2].upper()
    if system not in ("AWG", "SWG"):
        raise UnitFault(
            f"`{text}` may be {gauge} AWG ({show(awg(gauge), 'mm')}) or"
            f" {gauge} SWG ({show(swg(gauge), 'mm')}): write which",
            f"{gauge} AWG",
        )
    if system == "AWG" and gauge > 40:
        raise UnitFault(f"{gauge} AWG is finer than any wire sold: write mm")
    value = awg(gauge) if system == "AWG" else swg(gauge)
    return Parsed(value, value, value, system, str(text))


@lru_cache(maxsize=_REMEMBERED)
def target(text: str | int | float) -> Parsed:
    """A window of lengths to land in; one length alone is no window.

    >>> target('46 cm ± 1 cm')[:3]
    (460.0, 450.0, 470.0)
    """
    parsed = length(text)
    if parsed.low == parsed.high:
        raise UnitFault(
            f"`{text}` leaves no room to land in: write `{text} ± 1 cm`", f"{text} ± 1 cm"
        )
    return parsed


def bead_size(text: str | int | float) -> str:
    """A bead size such as `11/0`.

    >>> bead_size('8 / 0')
    '8/0'
    """
    found = _BEAD.fullmatch(_clean(str(text)))
    if found is None:
        raise UnitFault(f"`{text}` is not a bead size: write one such as `11/0`", "11/0")
    return f"{found[1] or found[2]}/0"


def needle(text: str | int | float) -> tuple[str, str]:
    """A needle with its class, since a size means nothing without it.

    >>> needle('beading 11')
    ('beading', '11')
    """
    words = _clean(str(text)).split()
    if len(words) < 2:
        raise UnitFault(
            f"`{text}` lacks the needle's class: write `beading {text}`", f"beading {text}"
        )
    return " ".join(words[:-1]), words[-1]


def show(value: float, unit: str, digits: int | None = None) -> str:
    """A value in its base unit, printed in `unit`, in no finer steps than a bench can measure.

    >>> show(8.0, 'mm'), show(460.0, 'cm'), show(419.1, 'in/'), show(10.0, 'in')
    ('8 mm', '46 cm', '16 1/2 in', '0.394 in')
    """
    if unit == "in/":
        return _sixteenths(value / INCH)
    factor = _factor(unit)
    if unit in ("AWG", "SWG"):
        unit = "mm"
    places = digits if digits is not None else _digits(unit)
    amount = f"{value / factor:.{places}f}"
    if "." in amount:
        amount = amount.rstrip("0").rstrip(".")
    amount = "0" if amount in ("-0", "") else amount
    return f"{amount}{unit}" if unit in ('"', "'") else f"{amount} {unit}".rstrip()


def _digits(unit: str) -> int:
    name = _SPELLINGS.get(unit.lower(), unit)
    return {"in": 3, "ft": 3, "yd": 3, "m": 3, "kg": 3, "oz": 3}.get(name, 2)


def _factor(unit: str) -> float:
    name = _SPELLINGS.get(unit.lower(), unit)
    return next((table[name] for table in (LENGTHS, MASSES, TIMES, FORCES) if name in table), 1.0)


def _sixteenths(inches: float) -> str:
    from fractions import Fraction  # slow to import, and most plans have none

    whole, part = divmod(round(inches * 16), 16)
    rest = str(Fraction(part, 16)) if part else ""
    return f"{' '.join(filter(None, [str(whole) if whole or not part else '', rest]))} in"


def _clean(text: str) -> str:
    if text.isascii() and "+" not in text:
        return text.strip()
    for sign, fraction in _VULGAR.items():
        text = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", text).replace(sign, fraction)
    text = text.replace("\u00a0", " ").replace("\u202f", " ")
    return re.sub(r"\+\s*/\s*-|\+-", "±", text).strip()


def _measure(
    text: str | int | float, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> Parsed:
    if not isinstance(text, str):
        raise UnitFault(
            f"a {what} needs a unit: write `{text} {usual[0]}` or `{text} {usual[1]}`",
            _readable(f"{text} {usual[0]}", what, units, usual),
        )
    cleaned = _clean(text)
    if "±" in cleaned:
        head, _, tail = (part.strip() for part in cleaned.partition("±"))
        return _with_tolerance(text, head, tail, what, units, usual)
    for sign in ("..", " to "):
        if sign in cleaned:
            head, _, tail = (part.strip() for part in cleaned.partition(sign))
            return _range(text, head, tail, what, units, usual)
    value, unit = _amount(cleaned, text, what, units, usual)
    if value == 0:
        raise UnitFault(f"`{text}` is nothing: a {what} is more than 0")
    return Parsed(value, value, value, unit, text)


def _with_tolerance(
    text: str, head: str, tail: str, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> Parsed:
    by, unit = _amount(tail, text, what, units, usual)
    bare = re.fullmatch(_NUMBER, head) is not None
    value, head_unit = _amount(
        f"{head} {unit.strip('/')}" if bare else head, text, what, units, usual
    )
    if by >= value:
        raise UnitFault(f"in `{text}` the tolerance is as large as the value: write a smaller one")
    # the sum is rounded so that 46 cm + 1 cm is 47 cm to the last digit
    return Parsed(value, round(value - by, 9), round(value + by, 9), head_unit, text)


def _range(
    text: str, head: str, tail: str, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> Parsed:
    high, unit = _amount(tail, text, what, units, usual)
    bare = re.fullmatch(_NUMBER, head) is not None
    low, _ = _amount(f"{head} {unit.strip('/')}" if bare else head, text, what, units, usual)
    if low > high:
        raise UnitFault(
            f"`{text}` runs from the larger to the smaller: write the smaller first",
            f"{tail} to {head}" if not bare else None,
        )
    return Parsed((low + high) / 2, low, high, unit, text)


def _amount(
    part: str, text: str, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> tuple[float, str]:
    found = _AMOUNT.fullmatch(part)
    if found is None:
        raise UnitFault(*_unreadable(part, text, what, units, usual))
    number, unit = found["number"], (found["unit"] or "").strip()
    if not unit:
        raise UnitFault(
            f"`{text}` lacks a unit: write `{number} {usual[0]}` or `{number} {usual[1]}`",
            _readable(f"{number} {usual[0]}", what, units, usual),
        )
    name = _SPELLINGS.get(unit, _SPELLINGS.get(unit.lower(), unit))
    if name not in units:
        name = name.lower() if name.lower() in units else name
    if name not in units:
        known = [*units, *(word for word, base in _SPELLINGS.items() if base in units)]
        near = _nearest_unit(unit, known)
        advice = f"write `{number} {near}`" if near else f"use {', '.join(units)}"
        raise UnitFault(
            f"`{unit}` in `{text}` is not a unit of {what}: {advice}",
            f"{number} {near}" if near else None,
        )
    try:
        value = _number(number)
        value *= units[name]
    except ZeroDivisionError:
        raise UnitFault(f"`{text}` divides by nothing: write the fraction again") from None
    except OverflowError:
        raise UnitFault(f"this {what} is larger than any piece: write it again") from None
    fraction = "/" in number and name == "in"
    # rounded, so that 16 1/2 in is 419.1 mm to the last digit
    return float(f"{value:.12g}"), "in/" if fraction else unit


def _number(text: str) -> float:
    """A number, a fraction or a number and a fraction; raises ZeroDivisionError, OverflowError."""
    if "/" not in text:
        value = float(text)
        if value == float("inf"):
            raise OverflowError
        return value
    from fractions import Fraction  # slow to import, and most plans have none

    return float(sum(Fraction(piece) for piece in re.split(r"[ -]", text) if piece))


def _readable(
    suggestion: str, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> str | None:
    """A suggestion, if it would be taken: `0` wants more than a unit."""
    try:
        _measure(suggestion, what, units, usual)
    except UnitFault:
        return None
    return suggestion


def _nearest_unit(unit: str, known: list[str]) -> str | None:
    """The likeliest unit meant: a slip of one key keeps the length of the word."""
    from difflib import get_close_matches  # only wanted where a unit is misspelt

    near = get_close_matches(unit.lower(), known, n=5, cutoff=0.5)
    return min(near, key=lambda word: (len(word) != len(unit), near.index(word)), default=None)


def _unreadable(
    part: str, text: str, what: str, units: Mapping[str, float], usual: tuple[str, str]
) -> tuple[str, str | None]:
    if part.startswith(("-", "−")):
        return f"`{text}` is negative: a {what} is more than 0", None
    comma = re.fullmatch(r"(\d+),(\d+)(.*)", part)
    if comma:
        written = f"{comma[1]}.{comma[2]}{comma[3]}"
        return f"`{text}` has a comma for its point: write `{written}`", written
    span = re.fullmatch(r"([\d.]+)\s*[-–—]\s*([\d.]+\s*\D*)", part)
    if span:
        written = f"{span[1]}..{span[2]}"
        return f"`{text}` may be a range or a fraction: write `{written}`", written
    return f"`{text}` is not a {what}: write a number and a unit, such as `8 {usual[0]}`", None
