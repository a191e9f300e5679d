"""Trade tables: every value has a grade and its sources, and no figure changes unseen."""

from __future__ import annotations

import pytest

from wellstrung import tables

CELLS = [
    (name, row, column, cell)
    for name in tables.names()
    for row in tables.load(name).rows.values()
    for column, cell in row.cells.items()
]
NEEDS_NO_SOURCE = {"from memory", "common practice"}


@pytest.mark.parametrize(("name", "row", "column", "cell"), CELLS)
def test_every_value_has_a_grade_and_its_sources(
    name: str, row: tables.Row, column: str, cell: tables.Cell
) -> None:
    assert cell.grade in tables.GRADES
    assert cell.sources or cell.grade in NEEDS_NO_SOURCE, f"{row.name}, {column}"
    assert set(cell.sources) <= set(tables.load(name).sources)
    assert cell.low <= cell.value <= cell.high


def test_every_source_is_used() -> None:
    for name in tables.names():
        used = {source for table, _, _, cell in CELLS if table == name for source in cell.sources}
        assert used == set(tables.load(name).sources), name


def test_an_unknown_row_names_the_nearest() -> None:
    with pytest.raises(tables.UnknownRow) as caught:
        tables.load("adhesives").row("two part epoxy")
    assert (caught.value.table, caught.value.near) == ("adhesives", "two-part epoxy")


#: every figure that rules use: table, row, column -> value, low, high
FIGURES = """
adhesives, two-part epoxy, usable: 5 5 5 min
adhesives, two-part epoxy, handling: 60 30 120 min
adhesives, two-part epoxy, full_cure: 1440 1440 1440 min
adhesives, cyanoacrylate, usable: 0.5 0.1 1 min
adhesives, cyanoacrylate, handling: 5 1 10 min
adhesives, cyanoacrylate, full_cure: 1440 1440 1440 min
adhesives, UV resin, usable: 60 60 60 min
adhesives, UV resin, handling: 5 5 5 min
adhesives, UV resin, full_cure: 1440 1440 1440 min
adhesives, contact cement, usable: 30 15 120 min
adhesives, contact cement, handling: 60 15 120 min
adhesives, contact cement, full_cure: 1440 1440 1440 min
beads, round 15/0 Japanese, outside: 1.5 1.4 1.6 mm
beads, round 15/0 Japanese, length: 1.1 1.02 1.18 mm
beads, round 15/0 Japanese, hole: 0.6 0.5 0.7 mm
beads, round 15/0 Japanese, per_gram: 265 238.5 291.5
beads, round 11/0 Japanese, outside: 2.1 1.95 2.25 mm
beads, round 11/0 Japanese, length: 1.45 1.33 1.57 mm
beads, round 11/0 Japanese, hole: 0.8 0.7 0.9 mm
beads, round 11/0 Japanese, per_gram: 110 99 121
beads, round 8/0 Japanese, outside: 3 2.8 3.2 mm
beads, round 8/0 Japanese, length: 2.1 1.92 2.28 mm
beads, round 8/0 Japanese, hole: 1.05 0.95 1.15 mm
beads, round 8/0 Japanese, per_gram: 35 30.8 39.2
beads, round 6/0 Japanese, outside: 4 3.7 4.3 mm
beads, round 6/0 Japanese, length: 2.6 2.35 2.85 mm
beads, round 6/0 Japanese, hole: 1.45 1.2 1.7 mm
beads, round 6/0 Japanese, per_gram: 15 13.2 16.8
beads, round 15/0 Czech, outside: 1.5 1.4 1.6 mm
beads, round 15/0 Czech, length: 1.1 1.02 1.18 mm
beads, round 15/0 Czech, hole: 0.45 0.4 0.5 mm
beads, round 15/0 Czech, per_gram: 280 238 322
beads, round 13/0 Czech, outside: 1.65 1.5 1.8 mm
beads, round 13/0 Czech, length: 1.04 0.98 1.1 mm
beads, round 13/0 Czech, hole: 0.5 0.4 0.6 mm
beads, round 13/0 Czech, per_gram: 290 246.5 333.5
beads, round 12/0 Czech, outside: 1.9 1.8 2 mm
beads, round 12/0 Czech, length: 1.15 1.07 1.23 mm
beads, round 11/0 Czech, outside: 2.05 1.85 2.25 mm
beads, round 11/0 Czech, length: 1.45 1.33 1.57 mm
beads, round 11/0 Czech, hole: 0.7 0.6 0.8 mm
beads, round 11/0 Czech, per_gram: 125 112.5 137.5
beads, round 10/0 Czech, outside: 2.3 2.15 2.45 mm
beads, round 10/0 Czech, length: 1.6 1.45 1.75 mm
beads, round 10/0 Czech, hole: 0.8 0.7 0.9 mm
beads, round 10/0 Czech, per_gram: 90 81 99
beads, round 8/0 Czech, outside: 2.9 2.65 3.15 mm
beads, round 8/0 Czech, length: 2.1 1.92 2.28 mm
beads, round 8/0 Czech, hole: 0.9 0.8 1 mm
beads, round 8/0 Czech, per_gram: 41 36.08 45.92
beads, round 6/0 Czech, outside: 4 3.7 4.3 mm
beads, round 6/0 Czech, length: 2.6 2.35 2.85 mm
beads, round 6/0 Czech, hole: 1.1 1 1.2 mm
beads, round 6/0 Czech, per_gram: 14 12.32 15.68
beads, cylinder 15/0, outside: 1.3 1.2 1.4 mm
beads, cylinder 15/0, length: 1.1 1 1.2 mm
beads, cylinder 15/0, hole: 0.65 0.55 0.75 mm
beads, cylinder 15/0, per_gram: 365 310.25 419.75
beads, cylinder 11/0, outside: 1.6 1.55 1.65 mm
beads, cylinder 11/0, length: 1.3 1.25 1.35 mm
beads, cylinder 11/0, hole: 0.8 0.7 0.9 mm
beads, cylinder 11/0, per_gram: 200 184 216
beads, cylinder 10/0, outside: 2.2 2.1 2.3 mm
beads, cylinder 10/0, length: 1.7 1.6 1.8 mm
beads, cylinder 10/0, hole: 1 0.9 1.1 mm
beads, cylinder 10/0, per_gram: 95 76 114
beads, cylinder 8/0, outside: 3 2.8 3.2 mm
beads, cylinder 8/0, length: 2.6 2.4 2.8 mm
beads, cylinder 8/0, hole: 1.3 1.1 1.5 mm
beads, cylinder 8/0, per_gram: 31 24.8 37.2
metals, sterling silver, density: 10.36 10.34 10.38 g/cm3
metals, fine silver, density: 10.49 10.47 10.51 g/cm3
metals, copper, density: 8.915 8.89 8.94 g/cm3
metals, brass, density: 8.53 8.5 8.56 g/cm3
metals, red brass, density: 8.75 8.73 8.77 g/cm3
metals, bronze, density: 8.8 8.78 8.82 g/cm3
metals, phosphor bronze, density: 8.86 8.84 8.88 g/cm3
metals, stainless steel, density: 7.99 7.96 8.02 g/cm3
metals, titanium, density: 4.51 4.5 4.52 g/cm3
metals, niobium, density: 8.57 8.56 8.58 g/cm3
metals, aluminium, density: 2.68 2.66 2.7 g/cm3
metals, pewter, density: 7.3 7.2 7.4 g/cm3
metals, 14k gold, density: 13.07 12.37 13.77 g/cm3
metals, plated brass, density: 8.5 8.3 8.7 g/cm3
metals, plated steel, density: 7.85 7.65 8.05 g/cm3
metals, plated pewter, density: 7.3 7.1 7.5 g/cm3
metals, gold-filled brass, density: 8.7 8.4 9 g/cm3
needles, beading 10, wire: 0.46 0.42 0.5 mm
needles, beading 10, eye: 0.5 0.5 0.5 mm
needles, beading 11, wire: 0.41 0.37 0.45 mm
needles, beading 11, eye: 0.45 0.45 0.45 mm
needles, beading 12, wire: 0.38 0.34 0.42 mm
needles, beading 12, eye: 0.42 0.42 0.42 mm
needles, beading 13, wire: 0.33 0.29 0.37 mm
needles, beading 13, eye: 0.37 0.37 0.37 mm
needles, beading 15, wire: 0.26 0.23 0.29 mm
needles, beading 15, eye: 0.3 0.3 0.3 mm
needles, sharps 10, wire: 0.51 0.47 0.55 mm
needles, sharps 10, eye: 0.55 0.55 0.55 mm
needles, sharps 12, wire: 0.43 0.39 0.47 mm
needles, sharps 12, eye: 0.47 0.47 0.47 mm
needles, long stringing, wire: 0.5 0.45 0.55 mm
needles, big-eye, wire: 0.425 0.35 0.5 mm
needles, twisted fine, wire: 0.25 0.2 0.3 mm
needles, twisted medium, wire: 0.36 0.31 0.41 mm
needles, twisted heavy, wire: 0.5 0.45 0.55 mm
threads, nylon OO, diameter: 0.1 0.07 0.13 mm
threads, nylon OO, breaking: 6.67 6.67 6.67 N
threads, nylon O, diameter: 0.13 0.1 0.16 mm
threads, nylon O, breaking: 8.9 8.9 8.9 N
threads, nylon A, diameter: 0.16 0.13 0.19 mm
threads, nylon A, breaking: 13.34 13.34 13.34 N
threads, nylon B, diameter: 0.2 0.17 0.23 mm
threads, nylon B, breaking: 17.79 17.79 17.79 N
threads, nylon D, diameter: 0.28 0.24 0.32 mm
threads, nylon D, breaking: 26.69 26.69 26.69 N
threads, nylon E, diameter: 0.33 0.29 0.37 mm
threads, nylon E, breaking: 35.59 35.59 35.59 N
threads, nylon F, diameter: 0.37 0.32 0.42 mm
threads, nylon F, breaking: 48.93 48.93 48.93 N
threads, nylon FF, diameter: 0.43 0.38 0.48 mm
threads, nylon FF, breaking: 71.17 71.17 71.17 N
threads, fused 4 lb, diameter: 0.13 0.1 0.16 mm
threads, fused 4 lb, breaking: 17.79 17.79 17.79 N
threads, fused 6 lb, diameter: 0.15 0.12 0.18 mm
threads, fused 6 lb, breaking: 26.69 26.69 26.69 N
threads, fused 8 lb, diameter: 0.18 0.15 0.21 mm
threads, fused 8 lb, breaking: 35.59 35.59 35.59 N
threads, fused 10 lb, diameter: 0.2 0.17 0.23 mm
threads, fused 10 lb, breaking: 44.48 44.48 44.48 N
threads, braided 8 lb, diameter: 0.13 0.11 0.15 mm
threads, braided 8 lb, breaking: 35.59 35.59 35.59 N
threads, braided 10 lb, diameter: 0.15 0.13 0.17 mm
threads, braided 10 lb, breaking: 44.48 44.48 44.48 N
threads, braided 15 lb, diameter: 0.18 0.16 0.2 mm
threads, braided 15 lb, breaking: 66.72 66.72 66.72 N
threads, braided 20 lb, diameter: 0.22 0.2 0.24 mm
threads, braided 20 lb, breaking: 88.96 88.96 88.96 N
threads, monofilament 4 lb, diameter: 0.2 0.18 0.22 mm
threads, monofilament 4 lb, breaking: 17.79 17.79 17.79 N
threads, monofilament 6 lb, diameter: 0.23 0.21 0.25 mm
threads, monofilament 6 lb, breaking: 26.69 26.69 26.69 N
threads, monofilament 8 lb, diameter: 0.26 0.24 0.28 mm
threads, monofilament 8 lb, breaking: 35.59 35.59 35.59 N
threads, monofilament 10 lb, diameter: 0.29 0.26 0.32 mm
threads, monofilament 10 lb, breaking: 44.48 44.48 44.48 N
threads, monofilament 12 lb, diameter: 0.33 0.31 0.35 mm
threads, monofilament 12 lb, breaking: 53.38 53.38 53.38 N
threads, monofilament 15 lb, diameter: 0.39 0.37 0.41 mm
threads, monofilament 15 lb, breaking: 66.72 66.72 66.72 N
threads, monofilament 20 lb, diameter: 0.43 0.4 0.46 mm
threads, monofilament 20 lb, breaking: 88.96 88.96 88.96 N
"""


def test_no_figure_changes_unseen() -> None:
    found = [
        f"{name}, {row.name}, {column}: "
        + f"{cell.value:g} {cell.low:g} {cell.high:g} {cell.unit}".rstrip()
        for name, row, column, cell in CELLS
    ]
    assert found == FIGURES.strip().splitlines()
