"""Which lot the beads of each kit come from: one lot, as long as one is enough.

Lots of one colour differ in dye, firing and size: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from msgspec import Struct

#: beads still to buy count as one more lot, used after those on hand
BOUGHT = "what is bought"


class Share(Struct, frozen=True):
    """Kits that come from the same lots, and how much one kit takes of each lot."""

    kits: int
    of: Mapping[str, float]

    @property
    def mixed(self) -> bool:
        """Whether a kit has more than one lot."""
        return len(self.of) > 1


def dealt(held: Mapping[str, float], each: float, kits: int) -> list[Share]:
    """Share the lots on hand out over the kits, as many kits as possible from one lot.

    A kit for which no one lot is enough is mixed of as few as will do. Counting.

    >>> [(one.kits, one.of) for one in dealt({"L7": 100, "L9": 48}, 37, 4)]
    [(2, {'L7': 37}), (1, {'L9': 37}), (1, {'L7': 26, 'L9': 11})]
    """
    left, found = dict(held), []
    for lot, amount in held.items() if each else ():
        whole = min(kits, math.floor(amount / each + 1e-9))
        if whole:
            found.append(Share(whole, {lot: each}))
            left[lot] -= whole * each
            kits -= whole
    for _ in range(min(kits, len(held)) if each else 0):  # each of these uses up a lot
        of, wanted = {}, each
        for lot in sorted(left, key=lambda lot: -left[lot]):
            some = min(left[lot], wanted)
            if some > 1e-6:
                of[lot] = some
                left[lot] -= some
                wanted -= some
        if of:
            found.append(Share(1, {lot: of[lot] for lot in held if lot in of}))
    return found
