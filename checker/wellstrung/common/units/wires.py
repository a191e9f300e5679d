"""Wire: gauges of the two systems, and a thickness from either or from a length."""

from __future__ import annotations

import re
from functools import lru_cache

from wellstrung.common.patterns import Pattern
from wellstrung.common.units.amount import (
    REMEMBERED,
    Parsed,
    UnitFault,
    around,
    clean,
    measure,
    one_line,
)
from wellstrung.common.units.known import INCH, WIRE
from wellstrung.common.units.readers import length
from wellstrung.common.units.show import show

_GAUGE = Pattern(r"(0{1,4}|[1-9][0-9]?)(?: ?-? ?(awg|swg|ga|gauge|gage|g)\b\.?)?", re.IGNORECASE)


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


@lru_cache(maxsize=REMEMBERED)
def wire(text: str | int | float) -> Parsed:
    """A wire thickness in mm, from a length or from a gauge that names its system.

    >>> round(wire('20 AWG').value, 3), round(wire('21 SWG').value, 3)
    (0.812, 0.813)
    """
    written, quoted = clean(text, WIRE.name, WIRE.example), one_line(text)
    head, sign, tail = written.partition(" ± ")
    found = _GAUGE.fullmatch(head.removeprefix("#"))
    if found is None and re.search("[as]wg", head, re.IGNORECASE):
        raise UnitFault(f"`{quoted}` is not a gauge: write its number and system, as in `20 AWG`")
    # a bare 20 is a gauge of some system, 1 or 20 ± 1 mm is not
    if found is None or (found[2] is None and (sign or len(found[1]) == 1)):
        return measure(text, WIRE)._replace(unit="mm")
    value, system = _gauge(quoted, found[1], (found[2] or "").upper())
    if not sign:
        return Parsed(value, value, value, system, str(text))
    try:
        by = length(tail).value
    except UnitFault:
        says = f"the tolerance in `{quoted}` is not a length: write one as in `20 AWG ± 0.02 mm`"
        raise UnitFault(says) from None
    return Parsed(value, *around(value, by, quoted), system, str(text))


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
    either = " or ".join(
        f"`{gauge} {system}` ({show(thick(gauge), 'mm')})"
        for system, thick in (("AWG", awg), ("SWG", swg))
    )
    raise UnitFault(f"`{text}` does not say which gauge it is: write {either}")
