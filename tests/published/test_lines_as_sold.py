"""Threads, wires and cords as pages print them: each figure lies in the range of its table.

What a page says of one make is no rule for others, so that the range may be wider; a figure that
another page contradicts has a note in its cell.
"""

from __future__ import annotations

import pytest

from wellstrung import tables
from wellstrung.common import units
from wellstrung.formulas.rings import coiled
from wellstrung.kinds.wire_link import cylinder_mass

#: table, row, column, what is printed, in mm or pounds, and by whom (copies seen)
PRINTED = [
    ("threads", "gel-spun braided 8 lb", "diameter", 0.13, "globalfishingreports.com"),
    ("threads", "gel-spun braided 8 lb", "diameter", 0.128, "tasline.com.au"),
    ("threads", "gel-spun braided 10 lb", "diameter", 0.148, "tasline.com.au"),
    ("threads", "gel-spun braided 15 lb", "diameter", 0.165, "tasline.com.au"),
    ("threads", "gel-spun braided 15 lb", "diameter", 0.19, "globalfishingreports.com"),
    ("threads", "gel-spun braided 20 lb", "diameter", 0.205, "tasline.com.au"),
    ("threads", "gel-spun braided 20 lb", "diameter", 0.23, "globalfishingreports.com"),
    ("threads", "gel-spun braided 6 lb", "diameter", 0.1, "tasline.com.au"),
    ("threads", "gel-spun braided 4 lb", "diameter", 0.1, "globalfishingreports.com, 5 lb"),
    ("threads", "fused 4 lb", "diameter", 0.15, "beads.co, the thread divide"),
    ("threads", "monofilament 8 lb", "diameter", 0.28, "trickyfish.net"),
    ("threads", "monofilament 20 lb", "diameter", 0.45, "norrik.com"),
    ("cords", "silk 0", "diameter", 0.3, "blueberrybeads.com"),
    ("cords", "silk 16", "diameter", 1.05, "blueberrybeads.com"),
    ("cords", "hemp 20 lb", "diameter", 1.0, "globalhemp.com"),
    ("cords", "hemp 20 lb", "diameter", 1.5, "globalhemp.com, of others"),
    ("elastics", "elastic 0.7 mm", "diameter", 0.7, "siroccostradingpost.blogspot.com"),
    ("beading_wires", "flexible wire 0.015 in", "diameter", 0.38, "jtv.com"),
    ("beading_wires", "flexible wire 0.036 in", "diameter", 0.91, "beadalon.blogspot.com"),
    ("memory_wires", "memory wire bracelet", "diameter", 0.6, "avbeads.com"),
    ("memory_wires", "memory wire bracelet", "coil", 65, "avbeads.com"),
    ("memory_wires", "memory wire bracelet", "coil", 57.2, "beads.co, 2.25 in"),
    ("memory_wires", "memory wire small bracelet", "coil", 50.8, "beadingtimes.com, 2 in"),
    ("memory_wires", "memory wire bracelet", "coil", 63.5, "beadingtimes.com, 2.5 in"),
    ("needles", "beading 10", "wire", 0.46, "beads.co, needle sizes"),
    ("needles", "beading 12", "wire", 0.4, "ameblo.jp, bead-stitch needles"),
]


@pytest.mark.parametrize(("table", "row", "column", "printed", "page"), PRINTED)
def test_a_printed_size(table: str, row: str, column: str, printed: float, page: str) -> None:
    cell = tables.load(table).row(row).cell(column)
    assert cell.low - 1e-9 <= printed <= cell.high + 1e-9, page


def test_the_coils_in_an_ounce_of_memory_wire() -> None:
    """68 to 70 coils of 2 in weigh 1 oz (beadingtimes.com, excerpt seen): steel, 7.85 g/cm3."""
    line = tables.load("memory_wires").row("memory wire small bracelet").cell("diameter")
    mass = [
        cylinder_mass(coiled(69, coil=50.8, line=wire), wire, density=7.85)
        for wire in (line.value - 0.02, line.value + 0.02)
    ]
    assert mass[0] < 28.35 < mass[1]


def test_government_nylon_is_as_strong_as_the_strongest_beading_nylon() -> None:
    """A-A-52109: sewing nylon B bears 6 lb and E 9 lb at least, which is of another make."""
    for letter, pounds in (("B", 6.0), ("E", 9.0)):
        cell = tables.load("threads").row(f"nylon {letter}").cell("breaking")
        assert cell.value < units.force(f"{pounds} lb").value < 1.6 * cell.value


def test_letters_and_card_numbers_of_silk_are_two_systems() -> None:
    """One page sets silk E beside number 4: a card of 4 is twice as thick as a spool of E."""
    letter, number = (tables.load("cords").row(f"silk {size}") for size in ("E", "4"))
    assert letter.cell("diameter").high < number.cell("diameter").low


def test_fused_line_is_thicker_than_plain_braid_of_its_rating() -> None:
    """As makers say; so a word for both is wider than either."""
    rows = tables.load("threads").rows
    both = [name.split(" ", 1)[1] for name in rows if name.startswith("fused ")]
    for rating in both:
        fused, braid = rows[f"fused {rating}"], rows[f"gel-spun braided {rating}"]
        assert fused.cell("diameter").value > braid.cell("diameter").value, rating
        assert fused.cell("breaking").value == braid.cell("breaking").value
