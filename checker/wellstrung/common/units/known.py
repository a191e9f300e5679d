"""The units that plans are written in, their spellings, and the kinds of values that take them.

Base units: mm, g, ml, N, minutes, °C. Conversion factors are those of NIST SP 811 appendix B and
Handbook 44 appendix C, exact unless said; copies of the tables seen, the digits of SP 811 itself
not.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
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


SPELLINGS: Mapping[str, str] = {
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
FOREIGN = frozenset({
    "km", "nm", "kn", "gr", "grain", "grains", "ozt", "dwt", "month", "months", "year", "years",
    "mil", "mils", "thou", "finger", "fingers", "hand", "hands", "span",
})  # fmt: skip


EVERY_UNIT = {*LENGTHS, *MASSES, *FORCES, *TIMES, *VOLUMES}


class Kind(NamedTuple):
    """A kind of value: its name, its units, those to offer, those to list, an example."""

    name: str
    units: Mapping[str, float]
    usual: tuple[str, ...]
    takes: str
    example: str


LENGTH = Kind("length", LENGTHS, ("mm", "cm"), "mm, cm, m, in, ft or yd", "8 mm")
WINDOW = LENGTH._replace(usual=("cm", "in"), example="46 cm ± 1 cm")
WIRE = Kind("wire thickness", LENGTHS, ("mm",), "mm, in, AWG or SWG", "0.8 mm")
MASS = Kind("mass", MASSES, ("g", "oz"), "g, kg, mg, oz, lb or ct", "9 g")
RATING = Kind("rating", FORCES, ("lb", "N"), "lb, kg or N", "8 lb")
TIME = Kind("time", TIMES, ("min", "h"), "s, min, h, d or week", "24 h")
VOLUME = Kind("volume", VOLUMES, ("ml",), "ml, cl, l or fl oz", "25 ml")


def name_of(unit: str, units: Collection[str]) -> str:
    """The short name that `units` has for a spelling, or the spelling where they have none."""
    if unit in units:
        return unit
    small = unit.lower()
    tries = (SPELLINGS.get(unit), small, SPELLINGS.get(small))
    return next((name for name in tries if name in units), None) or unit
