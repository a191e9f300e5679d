"""Constants of the formulas are those of the trade tables."""

from __future__ import annotations

import pytest

from wellstrung import tables
from wellstrung.formulas.thread import PACKING, SHARP_EDGE, USUAL_LENGTH, USUAL_TAIL


@pytest.mark.parametrize(
    ("row", "constant"),
    [
        ("thread packed in a hole, per thread", PACKING),
        ("working length of thread", USUAL_LENGTH),
        ("tail", USUAL_TAIL),
        ("strength left at a knot or a sharp bead", SHARP_EDGE),
    ],
)
def test_a_constant_is_that_of_its_row(row: str, constant: float) -> None:
    assert tables.load("stitch_facts").row(row).cell("figure").value == constant
