"""Plans in inches, and what no ruler shows."""

from __future__ import annotations

import re

from wellstrung.common import units

#: what no ruler shows, and what is finer than eighths from 3 inches up
DECIMAL = re.compile(r"\d\.\d+ in\b")
TOO_FINE = re.compile(r"\b(?:[3-9]|\d\d+) \d+/(?:16|32|64) in\b")


def in_inches(text: str) -> str:
    """Every length in cm or m, to an eighth; a tolerance with it becomes half an inch."""

    def turn(found: re.Match[str]) -> str:
        mm = float(found[1]) * units.LENGTHS[found[2]]
        shown = units.show(round(mm / 25.4 * 8) / 8 * 25.4, "in/")
        return shown + (" ± 1/2 in" if found[3] else "")

    return re.sub(r"\b(\d+(?:\.\d+)?) (cm|m)\b( ± [\d.]+ (?:mm|cm))?", turn, text)
