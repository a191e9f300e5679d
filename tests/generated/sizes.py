"""Sizes as people write them: mm, cm or inches, wire by gauge, with or without a tolerance."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generated.choices import Choices, chance, pick

INCH = 25.4

#: wire by gauge and its thickness in mm, as printed in any table of gauges
GAUGES: tuple[tuple[str, float], ...] = (
    ("26 AWG", 0.405), ("24 AWG", 0.511), ("22 AWG", 0.644), ("21 AWG", 0.723), ("20 AWG", 0.812),
    ("18 AWG", 1.024), ("16 AWG", 1.291), ("14 AWG", 1.628), ("12 AWG", 2.053),
    ("25 SWG", 0.508), ("22 SWG", 0.711), ("21 SWG", 0.813), ("19 SWG", 1.016), ("18 SWG", 1.219),
    ("16 SWG", 1.626),
)  # fmt: skip


class Wire(NamedTuple):
    """A wire as written, and how thick it is, mm."""

    written: str
    mm: float


class Sizes:
    """Writes the sizes of one plan, in the units that its maker thinks in."""

    def __init__(self, choices: Choices) -> None:
        self._choices = choices
        self.inches = chance(choices, 22)
        self._tidy = chance(choices, 75)

    def length(self, mm: float, *, tolerance: int = 0) -> str:
        """A length; `tolerance` is in how many of a hundred it carries its own."""
        if tolerance and chance(self._choices, tolerance):
            return self._with_tolerance(mm)
        return self._plain(mm)

    def window(self, mm: float, give: float) -> str:
        """A length to land in, and how near."""
        if self.inches:
            return f"{self._inches(mm)} ± {self._inches(max(give, 4))}"
        if chance(self._choices, 12):
            return f"{plain((mm - give) / 10, 1)}..{plain((mm + give) / 10, 1)} cm"
        if give >= 10:
            return f"{plain(mm / 10, 1)} cm ± {plain(give / 10, 1)} cm"
        return f"{plain(mm / 10, 1)} cm ± {plain(give, 0)} mm"

    def wire(self, low: float, high: float) -> Wire:
        """A wire between two thicknesses, mm, by its gauge or in mm."""
        gauges = [Wire(*gauge) for gauge in GAUGES if low <= gauge[1] <= high]
        if gauges and chance(self._choices, 70):
            return pick(self._choices, gauges)
        steps = max(0, round((high - low) / 0.1))
        mm = round(low + 0.1 * self._choices.whole(0, steps), 2)
        return Wire(f"{plain(mm, 2)} mm", mm)

    def _plain(self, mm: float) -> str:
        if self.inches and (mm >= 20 or chance(self._choices, 15)):
            return self._inches(mm)
        if mm >= 1000 and chance(self._choices, 60):
            return f"{plain(mm / 1000, 3)} m"
        if mm >= 100 and self._tidy:
            return f"{plain(mm / 10, 2)} cm"
        return f"{plain(mm, 2)} mm"

    def _inches(self, mm: float) -> str:
        if mm < 20:
            return f"{plain(mm / INCH, 3)} in"
        finest = 32 if mm < 60 else 16
        whole, rest = divmod(Fraction(round(mm / INCH * finest), finest), 1)
        written = " ".join(str(part) for part in (whole, rest) if part) or "0"
        mark = pick(self._choices, (" in", " in", '"', " inches"))
        return f"{written}{mark}"

    def _with_tolerance(self, mm: float) -> str:
        give = max(0.02, round(mm * 0.02, 2))
        if chance(self._choices, 30):
            return f"{plain(mm - give, 2)}..{plain(mm + give, 2)} mm"
        between = pick(self._choices, (" ± ", " ± ", " +/- "))
        return f"{plain(mm, 2)}{between}{plain(give, 2)} mm"


def plain(number: float, digits: int) -> str:
    """A number without needless noughts.

    >>> plain(8.50, 2), plain(40.0, 1), plain(0.5, 0)
    ('8.5', '40', '1')
    """
    if digits == 0:
        return str(max(1, round(number)))
    return f"{number:.{digits}f}".rstrip("0").rstrip(".")
