"""Rings an inch and inches an ounce of weaves of rings, against printed tables.

Sizes are mandrels in 64ths of an inch, whose rings spring open by some hundredths, and gauges are
AWG: "Family portraits: inch sizes". Byzantine: "How to figure the number of rings needed to make a
Byzantine necklace". The ounces printed for four-in-one are 1.4 to 1.5 times what its own count of
rings weighs, so those of the single chain alone are held.
"""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

#: sprung open by so much of the mandrel: a twentieth at most, from memory
SPRUNG = 1.025
PLAN = """
plan: 1
title: Rings
piece: necklace
metal: sterling silver
parts:
  link: {{kind: jump ring, inside: {inside} mm, wire: {wire} AWG, closing: open}}
  maille: {{kind: ring weave, type: {type}, rings: link, rows: {rows}, length: {length} in}}
run: [maille]
"""
#: weave, rows, inside in mm, AWG, rings an inch in print
PRINTED = [
    ("single", 1, 4 / 64, 22, 15.25), ("single", 1, 5 / 64, 20, 12.5),
    ("single", 1, 6 / 64, 17, 10.25), ("single", 1, 8 / 64, 15, 7.75),
    ("single", 1, 10 / 64, 13, 6), ("single", 1, 14 / 64, 10, 4.5),
    ("four-in-one", 5, 5 / 64, 22, 55), ("four-in-one", 5, 6 / 64, 21, 45),
    ("four-in-one", 5, 7 / 64, 20, 38), ("four-in-one", 5, 8 / 64, 19, 33),
    ("four-in-one", 5, 9 / 64, 18, 31), ("four-in-one", 5, 10 / 64, 17, 28),
    ("four-in-one", 5, 11 / 64, 16, 23), ("four-in-one", 5, 13 / 64, 15, 21),
    ("Byzantine", 1, 2.25 / 25.4 / SPRUNG, 22, 40), ("Byzantine", 1, 2.75 / 25.4 / SPRUNG, 20, 33),
]  # fmt: skip
#: weave, rows, inside in in, AWG, inches to a troy ounce of sterling silver in print
WEIGHED = [
    ("single", 1, 6 / 64, 17, 25), ("single", 1, 8 / 64, 15, 16), ("single", 1, 12 / 64, 11, 6),
    ("single", 1, 5 / 64, 20, 53.5), ("single", 1, 10 / 64, 13, 10),
]  # fmt: skip


def found(installed: Host, what: str, type_: str, rows: int, inside: float, wire: int) -> float:
    """A quantity of ten inches of a weave, an inch."""
    mm = round(inside * 25.4 * SPRUNG, 3)
    text = PLAN.format(type=type_, rows=rows, inside=mm, wire=wire, length=10)
    return (
        Checker(installed, quantities=True)
        .check_text(text.lstrip())
        .quantities[f"maille.{what}"]
        .middle
        / 10
    )


@pytest.mark.parametrize(("type_", "rows", "inside", "wire", "printed"), PRINTED)
def test_rings_an_inch(
    installed: Host, type_: str, rows: int, inside: float, wire: int, printed: float
) -> None:
    assert found(installed, "rings", type_, rows, inside, wire) == pytest.approx(printed, rel=0.09)


@pytest.mark.parametrize(("type_", "rows", "inside", "wire", "printed"), WEIGHED)
def test_inches_an_ounce(
    installed: Host, type_: str, rows: int, inside: float, wire: int, printed: float
) -> None:
    ounce = 31.1 / found(installed, "mass", type_, rows, inside, wire)
    assert ounce == pytest.approx(printed, rel=0.12)
