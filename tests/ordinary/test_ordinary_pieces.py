"""Ordinary pieces, as anyone makes them, draw no warning."""

from __future__ import annotations

from pathlib import Path

import pytest

from wellstrung import tables
from wellstrung.judging.checker import Checker


def _pairings() -> list[tuple[float, float]]:
    """Every wire, and every crimp that a page advises for it, mm."""
    crimps, found = tables.load("crimps"), []
    for wire in tables.load("beading_wires").rows.values():
        thick = wire.cell("diameter").value
        if "tube" in wire.cells:
            size = f"{wire.cell('tube').value:g}"
            found.append((thick, crimps.row(f"tube {size} x {size}").cell("inside").value))
        if "crimp_inside" in wire.cells:
            inside = wire.cell("crimp_inside")
            found += [(thick, hole) for hole in {inside.low, inside.value, inside.high}]
    return found


CRIMPED = """\
plan: 1
title: Crimped strand
piece: necklace
beads: {{shell: {{type: other, outside: 8 mm, length: 8 mm, hole: 2.2 mm}}}}
parts:
  strand: {{kind: strand, stitch: strung, beads: shell, length: 42 cm, thread: {{type: flexible wire, outside: {wire} mm}}}}
  crimp: {{kind: crimp, inside: {inside} mm, length: 2 mm}}
  lobster: {{kind: clasp, type: lobster, closed_length: 14 mm, a: {{eye: {{hole: 2 mm, wire: 1 mm}}}}, b: {{eye: {{hole: 4 mm, wire: 1 mm}}}}}}
run: [lobster.a, crimp, strand, crimp, lobster.b]
"""  # noqa: E501


@pytest.mark.parametrize(("wire", "inside"), _pairings())
def test_a_crimp_that_a_page_pairs_with_a_wire_fits(
    wire: float, inside: float, checker: Checker
) -> None:
    result = checker.check_text(CRIMPED.format(wire=wire, inside=inside))
    assert [kept for kept in result.held if kept.rule == "crimp-bore"]


PIECES = sorted(Path(__file__).parent.glob("*.yaml"))


@pytest.mark.parametrize("path", PIECES, ids=lambda path: path.stem)
def test_an_ordinary_piece_draws_no_warning(path: Path, checker: Checker) -> None:
    result = checker.check_text(path.read_text(encoding="utf-8"))
    assert not result.failures
    assert not [(remark.rule, remark.says) for remark in result.remarks if remark.counts]
