"""A value that is chosen and not measured, and the span in which makers choose it."""

from __future__ import annotations

from typing import NamedTuple


class Choice(NamedTuple):
    """From where to where makers choose a value, and who says so.

    What holds anywhere in the span is a matter of taste, and no remark. A `careful` choice is made
    for safety, such as room for wear: short of it is a warning, and an error only where no value of
    the span would do.
    """

    low: float
    high: float
    source: str = "common practice, no source"
    careful: bool = False
