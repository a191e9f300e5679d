"""Edits tried on copies of a plan: each set of them once, and no more than a few for each plan."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wellstrung.common.places import Edit
from wellstrung.judging.result import PlanResult

#: So many changed copies of a plan are checked in full: more than any plan of the tests needs.
MOST_TRIALS = 8
#: So many characters are read again in all: a very long plan is tried less often, or never.
MOST_READ = 400_000


class Trials:
    """Tries edits on copies of one plan of `size` characters, `most` times, by a full check."""

    def __init__(self, check: Callable[[Sequence[Edit]], PlanResult], most: int, size: int) -> None:
        self._check = check
        self._left = min(most, MOST_READ // max(size, 1))
        self._known: dict[tuple[Edit, ...], PlanResult] = {}

    def __call__(self, edits: Sequence[Edit]) -> PlanResult | None:
        """The result of the changed plan; None once there have been as many trials as there may."""
        key = tuple(edits)
        if key not in self._known:
            if not self._left:
                return None
            self._left -= 1
            self._known[key] = self._check(edits)
        return self._known[key]
