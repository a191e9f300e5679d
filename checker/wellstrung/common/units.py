"""From what an author writes to a number in the base unit, and back again.

Base units: mm, g, ml, N, minutes, °C. A bare number is refused: nobody can tell whose 8 it is.
Conversion factors are those of NIST SP 811 appendix B and Handbook 44 appendix C, exact unless
said; copies of the tables seen, the digits of SP 811 itself not.

A suggestion is the whole value as it should stand and can itself be read: it is put in place of
what was written.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from functools import lru_cache
from math import gcd, inf
from typing import NamedTuple

INCH = 25.4
POUND = 453.59237
CARAT = 0.2
FLUID_OUNCE = 29.5735295625
POUND_FORCE = 4.4482216152605
KILOGRAM_FORCE = 9.80665

LENGTHS: Mapping[str, float] = {
    "mm": 1.0,
    "cm": 10.0,
    "m": 1000.0,
    "in": INCH,
    "ft": 12 * INCH,
    "yd": 36 * INCH,
    "µm": 0.001,
}
MASSES: Mapping[str, float] = {
    "g": 1.0,
    "kg": 1000.0,
    "mg": 0.001,
    "oz": POUND / 16,
    "lb": POUND,
    "ct": CARAT,
}
#: Threads are rated in `lb` and `kg`, meaning the pull of that mass.
FORCES: Mapping[str, float] = {
    "N": 1.0,
    "lbf": POUND_FORCE,
    "kgf": KILOGRAM_FORCE,
    "lb": POUND_FORCE,
    "kg": KILOGRAM_FORCE,
}
VOLUMES: Mapping[str, float] = {"ml": 1.0, "cl": 10.0, "l": 1000.0, "fl oz": FLUID_OUNCE}
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
    "yds": "yd",
    "μm": "µm",
    "um": "µm",
    "gm": "g",
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
    "carat": "ct",
    "carats": "ct",
    "millilitre": "ml",
    "millilitres": "ml",
    "milliliter": "ml",
    "milliliters": "ml",
    "mL": "ml",
    "cc": "ml",
    "centilitre": "cl",
    "centilitres": "cl",
    "litre": "l",
    "litres": "l",
    "liter": "l",
    "liters": "l",
    "newton": "N",
    "newtons": "N",
    "n": "N",
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
#: Real units that are none of ours; the nearest of ours would be another size.
_FOREIGN = frozenset({
    "km", "nm", "kn", "gr", "grain", "grains", "ozt", "dwt", "month", "months", "year", "years",
})  # fmt: skip
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
#: Full-width letters, digits and signs, and the fraction slash.
_PLAIN = {wide: wide - 0xFEE0 for wide in range(0xFF01, 0xFF5F)} | {ord("⁄"): "/"}

#: A number, a fraction or both, and a unit.
_PIECE = re.compile(
    r"""(\d+(?:[ -]\d+)?/\d+|\d+(?:\.\d+)?) ?([A-Za-zµμ"'″′”’%#][^\d.,±+/–—−-]*)?"""
)
_BEAD = re.compile(r"([1-9][0-9]?) ?(?:/ ?0|°)")
_GAUGE = re.compile(r"(0{1,4}|[1-9][0-9]?)(?: ?-? ?(awg|swg|ga|gauge|gage|g)\b\.?)?", re.IGNORECASE)
_SIGNS = ("±", "..", " to ")
# The patterns below are compiled when something is wrong, and most plans have nothing wrong.
_NEARLY_BEAD = r"(?:size )?#? ?([1-9][0-9]?) ?(?:[-/] ?[oO0]|[oO])?"
_LAST_UNIT = r"[^\d\s./]+$"
#: What is often written, what is meant by it, and what is said of it.
_SLIPS = (
    (r"(?<=\d),(?=\d)", ".", "has a comma for its point"),
    (r"(?<![\d.])\.(?=\d)", "0.", "has no figure before its point"),
    (r"(?<=\d)\.(?![\d.])", "", "has no figure after its point"),
    (r"(?<=[a-z])\.(?!\.)", "", "has a stop after its unit"),
    (r"± ?[-−] ?", "± ", "has a minus in its tolerance"),
    (r"^([\d./ ]*\d)( ?[a-z'\"″]+)? ?[-–—] ?(?=\d)", r"\1\2..", "may be a range or a fraction"),
)

_WARM, _HOTTEST = "18 °C", 50.0
_DEGREES = re.compile(
    r"(?P<first>-?\d+(?:\.\d+)?)(?:(?P<sign> ± | ?\.\. ?| to )(?P<last>-?\d+(?:\.\d+)?))?"
    r" ?(?:°|deg(?:rees)?\.?)? ?(?P<scale>[CFcf])(?:elsius|ahrenheit)?"
)
#: Longer than any size that is written by hand, in characters.
_LONGEST = 60
#: Nothing at the bench is smaller or larger, in the base unit: a tenth of a micrometre, 10 km.
_SMALLEST, _LARGEST = 1e-4, 1e7
#: A plan says the same sizes again and again; what a text means never changes.
_REMEMBERED = 4096


class Parsed(NamedTuple):
    """A value in its base unit, the tolerance that was written with it, and how it was written.

    `unit` is the author's, as `show` takes it: `in/` where inches were written as fractions, `lbf`
    and `kgf` for ratings.
    """

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


class _Kind(NamedTuple):
    """A kind of value: its name, its units, those to offer, those to list, an example."""

    name: str
    units: Mapping[str, float]
    usual: tuple[str, ...]
    takes: str
    example: str


#: what an author writes for the length of the one part that fills what the others leave
REST = "fills the rest"
_LENGTH = _Kind("length", LENGTHS, ("mm", "cm"), "mm, cm, m, in, ft or yd", "8 mm")
_WINDOW = _LENGTH._replace(usual=("cm", "in"), example="46 cm ± 1 cm")
_WIRE = _Kind("wire thickness", LENGTHS, ("mm",), "mm, in, AWG or SWG", "0.8 mm")
_MASS = _Kind("mass", MASSES, ("g", "oz"), "g, kg, mg, oz, lb or ct", "9 g")
_RATING = _Kind("rating", FORCES, ("lb", "N"), "lb, kg or N", "8 lb")
_TIME = _Kind("time", TIMES, ("min", "h"), "s, min, h, d or week", "24 h")
_VOLUME = _Kind("volume", VOLUMES, ("ml",), "ml, cl, l or fl oz", "25 ml")
_EVERY_UNIT = {*LENGTHS, *MASSES, *FORCES, *TIMES, *VOLUMES}


def awg(gauge: int) -> float:
    """Diameter, mm, of American Wire Gauge: 0.127 x 92^((36 - n) / 39) (ASTM B258).

    00, 000 and 0000 are -1, -2 and -3.

    >>> round(awg(20), 3)
    0.812
    """
    return float(0.127 * 92 ** ((36 - gauge) / 39))


#: Inches, BS 3737:1964 (withdrawn). 10 to 27 and 29: copy of the table seen. 28 and 30 to 40: the
#: legal steps, copy seen: 0.8 thou a number down to 39, 0.4 thou from there.
_SWG = {
    10: 0.128, 11: 0.116, 12: 0.104, 13: 0.092, 14: 0.080, 15: 0.072, 16: 0.064, 17: 0.056,
    18: 0.048, 19: 0.040, 20: 0.036, 21: 0.032, 22: 0.028, 23: 0.024, 24: 0.022, 25: 0.020,
    26: 0.018, 27: 0.0164, 28: 0.0148, 29: 0.0136, 30: 0.0124, 31: 0.0116, 32: 0.0108, 33: 0.0100,
    34: 0.0092, 35: 0.0084, 36: 0.0076, 37: 0.0068, 38: 0.0060, 39: 0.0052, 40: 0.0048,
}  # fmt: skip


def swg(gauge: int) -> float:
    """Diameter, mm, of British Standard Wire Gauge 10 to 40 (BS 3737:1964).

    >>> round(swg(20), 3)
    0.914
    """
    if gauge not in _SWG:
        raise UnitFault(f"{gauge} SWG is not in the table, which runs from 10 to 40: write mm")
    return _SWG[gauge] * INCH


@lru_cache(maxsize=_REMEMBERED)
def length(text: str | int | float) -> Parsed:
    """A length in mm; sums such as `5 ft 6 in` are taken.

    >>> length('16 1/2 in').value, length('8 ± 0.2 mm').low
    (419.1, 7.8)
    """
    return _measure(text, _LENGTH)


@lru_cache(maxsize=_REMEMBERED)
def mass(text: str | int | float) -> Parsed:
    """A mass in g.

    >>> mass('9 g').value
    9.0
    """
    return _measure(text, _MASS)


@lru_cache(maxsize=_REMEMBERED)
def force(text: str | int | float) -> Parsed:
    """A pull or a thread's rating in N; `lb` is pound-force here.

    >>> round(force('8 lb').value, 2)
    35.59
    """
    return _measure(text, _RATING)


@lru_cache(maxsize=_REMEMBERED)
def duration(text: str | int | float) -> Parsed:
    """A time in minutes; sums such as `1 h 30 min` are taken.

    >>> duration('24 h').value, duration('1 h 30 min').value
    (1440.0, 90.0)
    """
    return _measure(text, _TIME)


@lru_cache(maxsize=_REMEMBERED)
def volume(text: str | int | float) -> Parsed:
    """A volume in ml; a fluid ounce is the one of the United States.

    >>> volume('25 ml').value, round(volume('1 fl oz').value, 2)
    (25.0, 29.57)
    """
    return _measure(text, _VOLUME)


@lru_cache(maxsize=_REMEMBERED)
def temperature(text: str | int | float) -> Parsed:
    """How warm a room is, in °C, from degrees that name their scale.

    >>> temperature('12 °C').value, temperature('59 F').value, temperature('12..15 °C').low
    (12.0, 15.0, 12.0)
    """
    quoted = _quoted(_clean(text, "temperature", _WARM))
    found = _DEGREES.fullmatch(quoted)
    if found is None:
        bare = re.fullmatch(r"-?\d+(\.\d+)?( ?°)?", quoted)
        near = f"{quoted.rstrip(' °')} °C" if bare else None
        if near:
            temperature(near)  # what else is wrong with it is raised first
        says = f"may be °C or °F: write which, as in `{near}`" if bare else "is not a temperature"
        raise UnitFault(f"`{quoted}` {says}" + ("" if bare else f": write one as `{_WARM}`"), near)
    scale = found["scale"].upper()
    first, last = float(found["first"]), float(found["last"] or found["first"])
    if found["sign"] and "±" in found["sign"]:
        value, low, high = first, first - last, first + last
    else:
        value, low, high = (first + last) / 2, first, last
    if scale == "F":
        value, low, high = ((degrees - 32) / 1.8 for degrees in (value, low, high))
    if low > high:
        raise UnitFault(f"`{quoted}` runs from the warmer to the colder: write the colder first")
    if low < 0 or high > _HOTTEST:
        raise UnitFault(f"`{quoted}` is no room to work in: write one from 0 to 50 °C")
    value, low, high = (round(degrees, 9) for degrees in (value, low, high))
    return Parsed(value, low, high, f"°{scale}", str(text))


@lru_cache(maxsize=_REMEMBERED)
def wire(text: str | int | float) -> Parsed:
    """A wire thickness in mm, from a length or from a gauge that names its system.

    >>> round(wire('20 AWG').value, 3), round(wire('21 SWG').value, 3)
    (0.812, 0.813)
    """
    written, quoted = _clean(text, _WIRE.name, _WIRE.example), _quoted(text)
    head, sign, tail = written.partition(" ± ")
    found = _GAUGE.fullmatch(head)
    if found is None and re.search("[as]wg", head, re.IGNORECASE):
        raise UnitFault(f"`{quoted}` is not a gauge: write its number and system, as in `20 AWG`")
    # a bare 20 is a gauge of some system, 1 or 20 ± 1 mm is not
    if found is None or (found[2] is None and (sign or len(found[1]) == 1)):
        return _measure(text, _WIRE)
    value, system = _gauge(quoted, found[1], (found[2] or "").upper())
    if not sign:
        return Parsed(value, value, value, system, str(text))
    try:
        by = length(tail).value
    except UnitFault:
        says = f"the tolerance in `{quoted}` is not a length: write one as in `20 AWG ± 0.02 mm`"
        raise UnitFault(says) from None
    return Parsed(value, *_around(value, by, quoted), system, str(text))


@lru_cache(maxsize=_REMEMBERED)
def target(text: str | int | float) -> Parsed:
    """A window of lengths to land in; one length alone is no window.

    >>> target('46 cm ± 1 cm')[:3]
    (460.0, 450.0, 470.0)
    """
    parsed = _measure(text, _WINDOW)
    if parsed.low < parsed.high:
        return parsed
    inches = _name(parsed.unit.strip("/"), LENGTHS) in ("in", "ft", "yd")
    large, small = ("1/2 in", "1/16 in") if inches else ("1 cm", "1 mm")
    room = large if parsed.value >= 100 else small
    written = _clean(text, _WINDOW.name, _WINDOW.example)
    if _split(written)[1] or length(room).value >= parsed.value:
        raise UnitFault(f"`{_quoted(text)}` leaves no room to land in: write a window with some")
    suggestion = f"{written} ± {room}"
    raise UnitFault(
        f"`{_quoted(text)}` leaves no room to land in: write `{suggestion}`", suggestion
    )


@lru_cache(maxsize=_REMEMBERED)
def bead_size(text: str | int | float) -> str:
    """A bead size such as `11/0`.

    >>> bead_size('8 / 0')
    '8/0'
    """
    written = _clean(text, "bead size", "11/0")
    if found := _BEAD.fullmatch(written):
        return f"{found[1]}/0"
    if nearly := re.fullmatch(_NEARLY_BEAD, written):
        size = f"{nearly[1]}/0"
        raise UnitFault(f"`{_quoted(text)}` is not a bead size: write `{size}`", size)
    raise UnitFault(f"`{_quoted(text)}` is not a bead size: write one such as `11/0`")


@lru_cache(maxsize=_REMEMBERED)
def needle(text: str | int | float) -> tuple[str, str]:
    """A needle with its class, since a size means nothing without it.

    >>> needle('beading 11')
    ('beading', '11')
    """
    written = _clean(text, "needle", "beading 11")
    *kind, size = [word for word in written.replace("#", "").split() if word != "size"] or [""]
    if kind and not kind[0][0].isdigit():
        return " ".join(kind), size
    if size[:1].isdigit() and not kind:
        suggestion = f"beading {size}"
        raise UnitFault(
            f"`{_quoted(text)}` lacks the needle's class: write `{suggestion}`", suggestion
        )
    raise UnitFault(
        f"`{_quoted(text)}` is not a needle: write its class and its size, as in `beading 11`"
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
    return 3 if _name(unit, _EVERY_UNIT) in ("in", "ft", "yd", "m", "kg", "oz") else 2


def _factor(unit: str) -> float:
    name = _name(unit, _EVERY_UNIT)
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


class _Amount(NamedTuple):
    value: float
    unit: str


def _clean(text: str | int | float, what: str, example: str) -> str:
    """What was written, in plain characters and single spaces."""
    try:
        written = str(text)
    except ValueError:  # Python prints no whole number of more than 4,300 figures
        written = "9" * (_LONGEST + 1)
    if not written.isascii():
        for sign, fraction in _VULGAR.items():
            written = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", written).replace(sign, fraction)
        written = written.translate(_PLAIN)
    written = " ".join(written.split())
    if len(written) > _LONGEST:
        raise UnitFault(f"`{written[:20]}...` is too long for a {what}: write one as `{example}`")
    if not written:
        raise UnitFault(f"a {what} is missing: write one such as `{example}`")
    if "+" in written:
        written = re.sub(r"\+ ?/ ?-|\+-", "±", written)
    return re.sub(" ?± ?", " ± ", written) if "±" in written else written


def _quoted(text: str | int | float) -> str:
    """What was written, on one line."""
    return " ".join(str(text).split())


def _gauge(text: str, number: str, system: str) -> tuple[float, str]:
    """A wire of a gauge in mm, and the gauge's system."""
    gauge = 1 - len(number) if number.startswith("0") else int(number)
    if system == "AWG":
        if gauge > 40:
            raise UnitFault(f"`{text}` is finer than any wire for beads: write it in mm")
        return awg(gauge), system
    if system == "SWG":
        return swg(gauge), system
    if gauge not in _SWG:
        raise UnitFault(f"`{text}` may be AWG or SWG: write which, or write it in mm")
    thicknesses = (
        f"{gauge} AWG ({show(awg(gauge), 'mm')}) or {gauge} SWG ({show(swg(gauge), 'mm')})"
    )
    raise UnitFault(f"`{text}` may be {thicknesses}: write which")


def _measure(text: str | int | float, kind: _Kind) -> Parsed:
    written = _clean(text, kind.name, kind.example)
    if written == text:
        return _read(written, kind, written)
    return _read(written, kind, _quoted(text))._replace(text=str(text))


def _read(written: str, kind: _Kind, text: str) -> Parsed:
    """A value from cleaned text; faults quote `text`, what the author wrote."""
    head, sign, tail = _split(written)
    last = _amount(tail, written, kind, text)
    value, unit = last
    low = high = value
    if sign:
        first = _amount(head, written, kind, text, unit)
        if sign == "±":
            value, unit = first
            low, high = _around(value, last.value, text)
        else:
            low, value = first.value, (first.value + high) / 2
            if low > high:
                raise _turned(head, sign, tail, kind, text)
    if low <= 0:
        nothing = "is nothing" if value == 0 else "begins at nothing"
        raise UnitFault(f"`{text}` {nothing}: a {kind.name} is more than 0")
    if high > _LARGEST:
        raise UnitFault(f"`{text}` is larger than any piece: write it again")
    if value < _SMALLEST:
        raise UnitFault(f"`{text}` is smaller than anyone can measure: write it again")
    name = _name(unit, kind.units)
    if name == "in" and "/" in (head if sign == "±" else written):
        unit = "in/"
    elif kind is _RATING:
        unit = {"lb": "lbf", "kg": "kgf"}.get(name, name)
    return Parsed(value, low, high, unit, text)


def _split(written: str) -> tuple[str, str, str]:
    """What stands before a tolerance or range sign, the sign, and what follows, or is alone."""
    for sign in _SIGNS:
        head, found, tail = written.partition(sign)
        if found:
            return head.strip(), sign, tail.strip()
    return "", "", written


def _around(value: float, by: float, text: str) -> tuple[float, float]:
    # rounded, so that 46 cm + 1 cm is 47 cm to the last digit
    low, high = round(value - by, 9), round(value + by, 9)
    if value and low <= 0:
        raise UnitFault(f"in `{text}` the tolerance is as large as the value: write a smaller one")
    return min(low, value), max(high, value)


def _turned(head: str, sign: str, tail: str, kind: _Kind, text: str) -> UnitFault:
    """The fault of a range that begins at its larger end."""
    says = f"`{text}` runs from the larger to the smaller: write the smaller first"
    unit = "" if re.search(_LAST_UNIT, head) else re.findall(_LAST_UNIT, tail)[0]
    turned = f"{tail.removesuffix(unit).strip()}{sign}{head} {unit}".strip()
    return UnitFault(says, turned if _reads(turned, kind) else None)


def _amount(part: str, written: str, kind: _Kind, text: str, unit: str = "") -> _Amount:
    """One part of what was written: a number with its unit, or a sum as `5 ft 6 in`.

    `unit` is the one to take where a single number has none.
    """
    pieces = list(_PIECE.finditer(part))
    if not pieces or sum(len(piece[0]) for piece in pieces) != len(part):
        raise _unreadable(written, kind, text)
    total, larger = 0.0, inf
    for piece in pieces:
        number, spelled = piece[1], (piece[2] or "").strip()
        if not spelled and len(pieces) > 1:
            raise _unreadable(written, kind, text)
        unit = spelled or unit
        if not unit:
            raise _unitless(written, kind, text)
        name = _name(unit, kind.units)
        if name not in kind.units:
            raise _unknown_unit(unit, written, kind, text)
        if kind.units[name] >= larger:  # 8 mm 9 mm is a slip, no sum
            raise _unreadable(written, kind, text)
        larger = kind.units[name]
        try:
            total += _number(number) * larger
        except ZeroDivisionError:
            raise UnitFault(f"`{text}` divides by nothing: write the fraction again") from None
    # rounded, so that 16 1/2 in is 419.1 mm to the last digit
    return _Amount(float(f"{total:.12g}"), unit)


def _number(text: str) -> float:
    """A number, a fraction or a number and a fraction; raises ZeroDivisionError."""
    if "/" not in text:
        return float(text)
    *whole, last = text.replace("-", " ").split()
    over, _, under = last.partition("/")
    return sum(map(float, whole)) + float(over) / float(under)


def _name(unit: str, units: Collection[str]) -> str:
    """The short name that `units` has for a spelling, or the spelling where they have none."""
    if unit in units:
        return unit
    small = unit.lower()
    tries = (_SPELLINGS.get(unit), small, _SPELLINGS.get(small))
    return next((name for name in tries if name in units), None) or unit


def _reads(written: str, kind: _Kind) -> bool:
    try:
        _read(written, kind, written)
    except UnitFault:
        return False
    return True


def _unitless(written: str, kind: _Kind, text: str) -> UnitFault:
    """The fault of a value without its unit; what else is wrong with it is raised first."""
    own = re.findall(_LAST_UNIT, _split(written)[0])
    inches = ["in"] if "/" in written and "in" in kind.units else []
    each = [f"{written} {unit}" for unit in own or inches or kind.usual]
    _read(each[0], kind, text)
    choice = " or ".join(f"`{one}`" for one in each)
    return UnitFault(f"a {kind.name} needs a unit: write {choice}", each[0])


def _unknown_unit(unit: str, written: str, kind: _Kind, text: str) -> UnitFault:
    says = f"`{unit}` in `{text}` is not a unit of {kind.name}"
    real = unit.lower() in _FOREIGN or _name(unit, _EVERY_UNIT) in _EVERY_UNIT
    near = None if real else _nearest_unit(unit, kind)
    if near:
        mended = re.sub(rf"(?<=[\d ]){re.escape(unit)}(?=$|[\d ±.])", near, written)
        if mended != written and _reads(mended, kind):
            return UnitFault(f"{says}: write `{mended}`", mended)
    return UnitFault(f"{says}: use {kind.takes}")


def _nearest_unit(unit: str, kind: _Kind) -> str | None:
    """The likeliest unit meant: a slip of one key keeps the length of a short one."""
    from difflib import get_close_matches  # only wanted where a unit is misspelt

    words = {**{name: name for name in kind.units}, **_SPELLINGS}
    known = [word for word, name in words.items() if name in kind.units and name != "µm"]
    near = get_close_matches(unit.lower(), known, n=5, cutoff=0.5)
    if len(unit) > 3:
        return near[0] if near else None
    return min(near, key=lambda word: (len(word) != len(unit), near.index(word)), default=None)


def _unreadable(written: str, kind: _Kind, text: str) -> UnitFault:
    """The fault of what is no number with a unit; a common slip is told with its mending."""
    if re.match(r"[-−] ?[0-9]", written):
        return UnitFault(f"`{text}` is negative: a {kind.name} is more than 0")
    if re.search(r"[1-9][0-9]{0,2},[0-9]{3}(?![0-9])", written):
        return UnitFault(f"`{text}` may be thousands or a decimal: write it without its comma")
    mended, slip = written, ""
    for pattern, meant, says in _SLIPS:
        changed = re.sub(pattern, meant, mended)
        if changed != mended:
            mended, slip = changed, slip or says
    if slip and _reads(mended, kind):
        return UnitFault(f"`{text}` {slip}: write `{mended}`", mended)
    return UnitFault(
        f"`{text}` is not a {kind.name}: write a number and a unit, such as `{kind.example}`"
    )
