"""The age of a wearer, as laws on jewellery divide it."""

from __future__ import annotations

import re

from wellstrung.common.patterns import Pattern
from wellstrung.common.units.amount import UnitFault
from wellstrung.common.wording import nearest

ADULT, CHILD, UNDER_THREE = "adult", "child", "under three"
#: where a child is under 15: California, Health and Safety Code 25214.1; the CPSIA says 12 and
#: under. A small part is one for a child under 3: 16 CFR 1501
GROWN, SMALL = 15, 3
_OLDEST = 120

_WRITTEN = Pattern(
    r"(\d{1,4}(?:[.,]\d+)?) ?(years?|yrs?|y|months?|mths?|mo|m)?(?:[ -]?olds?)?", re.IGNORECASE
)


def age(text: str | int | float) -> str:
    """Whether an age in years, months or words is that of an adult, a child or one under three.

    >>> age(2), age("30 months"), age("7 years"), age("16"), age("adult")
    ('under three', 'under three', 'child', 'adult', 'adult')
    """
    written = " ".join(str(text).split())
    words = (ADULT, CHILD, UNDER_THREE)
    if written.casefold() in words:
        return written.casefold()
    read = _WRITTEN.fullmatch(written)
    if read is None:
        near = nearest(written, words)
        advice = (
            f"write `{near}`" if near else "write `adult`, `child`, or an age such as `7 years`"
        )
        raise UnitFault(f"`{written}` is not an age: {advice}", near)
    years = float(read[1].replace(",", ".")) / (12 if (read[2] or "y").lower()[0] == "m" else 1)
    if years > _OLDEST:
        raise UnitFault(f"`{written}` is too old: write an age such as `7 years` or `18 months`")
    return UNDER_THREE if years < SMALL else CHILD if years < GROWN else ADULT
