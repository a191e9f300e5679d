"""Round beads on a 16 in strand, as three pages count them.

4 mm 100..101, 6 mm 66..67, 8 mm 50, 10 mm 40..41: `Beads per inch: a UK beaders guide`, `Bead and
necklace size charts` and `Stone shape beads per inch`, copies seen; trade table `bead_strands`. One
page prints 94 of 4 mm, which no bead of 4 mm gives.
"""

from __future__ import annotations

import pytest

from wellstrung.common.units import length
from wellstrung.stitches import strung

SIXTEEN = length("16 in").value


@pytest.mark.parametrize(
    ("size", "least", "most"), [(4, 100, 101), (6, 66, 67), (8, 50, 50), (10, 40, 41)]
)
def test_counts_on_sixteen_inches(size: int, least: int, most: int) -> None:
    count = strung.beads_for(SIXTEEN, size * 1.01, 0.0)  # beads sit 0 to 2 % apart
    assert least <= round(count) <= most


def test_ninety_four_are_no_4_mm_beads() -> None:
    most_apart = strung.beads_for(SIXTEEN, 4 * 1.02, 0.0)
    assert most_apart > 99
