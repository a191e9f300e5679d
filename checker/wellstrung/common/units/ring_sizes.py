"""Ring sizes: how far round the inside of a ring is, by the systems that shops use."""

from __future__ import annotations

import re
from functools import lru_cache

from wellstrung.common.units.amount import REMEMBERED, Parsed, UnitFault, clean, one_line
from wellstrung.common.units.readers import length

_SYSTEM = r"\b(US|UK|EU|ISO)\b"
_SIZE = r"([A-Z]|\d{1,2}(?:\.\d{1,2})?)? ?(1/2|1/4|3/4)?"
_PARTS = {"": 0.0, "1/4": 0.25, "1/2": 0.5, "3/4": 0.75}
_EXAMPLE = "write one as `US 7`, `UK N 1/2` or `EU 54`, or round the finger, as `54 mm`"


def us(size: float) -> float:
    """Round the inside, mm, of a US size: 0.458 in across and 0.032 in more a size.

    National Bureau of Standards Circular 11, as the chart of `Ring size`, en.wikipedia.org, has it.

    >>> round(us(7), 1)
    54.4
    """
    return 36.55 + 2.5535 * size


def uk(letters: float) -> float:
    """Round the inside, mm, of a UK size, by its letter from A = 0: C is 40 mm, 1.25 mm a letter.

    The standard BS 6820:1987, as `Ring size`, en.wikipedia.org, cites it; a chart seen is up to
    0.4 mm from it.

    >>> uk(13)
    53.75
    """
    return 37.5 + 1.25 * letters


@lru_cache(maxsize=REMEMBERED)
def finger(text: str | int | float) -> Parsed:
    """How far it is round a finger, mm: measured, or by the size of a ring that fits.

    An ISO 8653 size, which Europe uses, is the way round inside in mm.

    >>> [round(finger(size).value, 1) for size in ("54 mm", "US 7", "N 1/2 UK", "EU 54")]
    [54.0, 54.4, 54.4, 54.0]
    """
    written = clean(text, "ring size", "US 7")
    found = re.search(_SYSTEM, written, re.IGNORECASE)
    if found is None:
        if re.fullmatch(rf"(?:size ?)?{_SIZE}", written, re.IGNORECASE):
            raise UnitFault(f"`{one_line(text)}` does not say whose ring size it is: {_EXAMPLE}")
        return length(text)
    rest = re.sub(r"\bsize\b", " ", written.replace(found[0], " ", 1), flags=re.IGNORECASE).strip()
    rest = rest.upper()
    size = re.fullmatch(_SIZE, rest)
    system = found[1].upper()
    if size is None or not rest or (size[1] or "0").isalpha() != (system == "UK"):
        raise UnitFault(f"`{one_line(text)}` is not a ring size: {_EXAMPLE}")
    part = _PARTS[size[2] or ""]
    if system == "UK":
        round_it = uk(ord(size[1]) - ord("A") + part)
    else:
        number = float(size[1] or 0) + part
        round_it = us(number) if system == "US" else number
    if not 30 <= round_it <= 90:
        raise UnitFault(f"`{one_line(text)}` is no size of a finger: {_EXAMPLE}")
    return Parsed(round_it, round_it, round_it, "mm", str(text))
