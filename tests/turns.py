"""How many of its examples a slow test tries: every so many-th, or all of them.

`EVERY_EXAMPLE=1 pytest` tries all; it takes several times as long.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")

ALL_OF_THEM = bool(os.environ.get("EVERY_EXAMPLE"))


def some(examples: Sequence[T], turn: int, first: int = 0) -> Sequence[T]:
    """Every so many-th of them, from the one at `first` on."""
    return examples if ALL_OF_THEM else examples[first % turn :: turn]
