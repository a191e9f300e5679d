"""Numbers in a phrase that no phrase is read with: each is one slip, at its own words."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker

PLAN = """\
plan: 1
title: Commas
piece: necklace
beads:
  pearl: 6 mm glass pearl
parts:
  row: {kind: strand, stitch: strung, beads: pearl, length: 40 cm, thread: "flexible wire 0.38 mm"}
  clasp: lobster 12 mm
run: [clasp.a, row, clasp.b]
work:
  - string row
  - wait 15 min
supplies:
  - 1 pack of pearl, 20 g
"""
COMMA = "has a comma as its decimal point: write"


@pytest.mark.parametrize(
    ("read", "odd", "says", "place"),
    [
        ("6 mm glass", "6,5 mm glass", f"`6,5 mm` {COMMA} `6.5 mm`", (5, 10)),
        (
            "6 mm glass",
            "-6 mm glass",
            "`-6 mm` is negative: write a length of more than 0",
            (5, 10),
        ),
        ("6 mm glass pearl", "-8/0 round", "`-8/0` is not a bead size: write `8/0`", (5, 10)),
        ("6 mm glass pearl", "round −11/0", "`−11/0` is not a bead size: write `11/0`", (5, 16)),
        (
            "6 mm glass",
            "1e-9 mm glass",
            "`e` in `1e-9 mm` is not a unit of length: use mm, cm, m, in, ft or yd",
            (5, 10),
        ),
        ("0.38 mm", "0,38 mm", f"`0,38 mm` {COMMA} `0.38 mm`", (7, 91)),
        ("lobster 12 mm", "lobster 1,125 in", f"`1,125 in` {COMMA} `1.125 in`", (8, 18)),
        ("lobster 12 mm", "lobster 12,5 mm", f"`12,5 mm` {COMMA} `12.5 mm`", (8, 18)),
        ("15 min", "1,5 h", f"`1,5 h` {COMMA} `1.5 h`", (12, 10)),
        ("20 g", "20,5 g", f"`20,5 g` {COMMA} `20.5 g`", (14, 22)),
        ("20 g", "-20 g", "`-20 g` is negative: write a mass of more than 0", (14, 22)),
    ],
)
def test_an_odd_number_is_one_slip(
    checker: Checker, read: str, odd: str, says: str, place: tuple[int, int]
) -> None:
    assert checker.check_text(PLAN).readable
    [slip] = checker.check_text(PLAN.replace(read, odd)).remarks
    assert (slip.says, slip.place[1:3]) == (says, place)
    edits = [edit.new for edit in slip.edits]
    assert edits == (says.split("`")[3:4] if says.endswith("`") else [])


@pytest.mark.parametrize("range_", ["6-7 mm glass", "6 mm - 7 mm glass", "glass, 6 mm -7 mm"])
def test_a_range_has_no_minus(checker: Checker, range_: str) -> None:
    assert checker.check_text(PLAN.replace("6 mm glass", range_)).readable
