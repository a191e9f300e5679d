"""What the tests of flat stitches share: a band in a plan, its quantities, its refusals, a grid."""

from __future__ import annotations

from collections.abc import Iterable

from wellstrung import tables
from wellstrung.judging.checker import Checker
from wellstrung.model.parts import Part
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity

PLAN = """\
plan: 1
title: Band
piece: bracelet
beads:
  seed: {type: round, size: 11/0, make: Japanese}
  tube: {type: cylinder, size: 11/0}
  tile: {type: two-hole, size: 5 mm}
  cube: {type: other, outside: 3 mm, measured: {length: 3 mm}, hole: 1 mm, per_gram: 16.7}
parts:
  band: {kind: woven band, BAND}
run: [band]
work:
  - {do: weave, part: band}
  - {do: finish thread, part: band}
"""

#: One band of every stitch, and of every way to shape it.
EVERY_BAND = (
    "stitch: flat peyote, across: 10, beads: tube, length: 15 cm",
    "stitch: flat peyote, across: 11, beads: seed, length: 15 cm",
    "stitch: flat peyote, across: 12, bead_up: 2, beads: {seed: 2, tube: 1}, length: 15 cm",
    "stitch: flat peyote, across: 9, each_row: 1, beads: tube, rows: 6",
    "stitch: flat herringbone, across: 8, beads: tube, length: 15 cm",
    "stitch: flat herringbone, across: 6, between: 1, beads: seed, length: 15 cm",
    "stitch: brick, across: 9, beads: tube, length: 15 cm",
    "stitch: brick, across: 9, each_row: -1, beads: seed, rows: 8",
    "stitch: ladder, across: 2, beads: tube, length: 15 cm",
    "stitch: square, across: 8, beads: cube, length: 15 cm",
    "stitch: two-hole strung, across: 1, beads: tile, length: 15 cm",
    "stitch: flat peyote, across: 6, beads: tile, length: 15 cm",
    "stitch: loom, across: 9, warp: 0.2 mm, beads: tube, length: 15 cm",
    "stitch: right-angle weave, across: 3, beads: seed, length: 15 cm",
    "stitch: right-angle weave, across: 1, loop: 5, needles: 2, beads: seed, length: 15 cm",
    "stitch: netting, across: 3, loop: 5, beads: seed, length: 15 cm",
)
#: a bead laid flat: the middle of it, and how far it reaches along and across the width
Laid = tuple[float, float, float, float]


def found(installed: Host, band: str, plan: str = PLAN) -> dict[str, Quantity]:
    """The quantities of a plan with this band."""
    result = Checker(installed, quantities=True).check_text(plan.replace("BAND", band))
    assert result.readable and not result.count("error"), result.remarks
    return dict(result.quantities)


def middles(installed: Host, band: str, plan: str = PLAN) -> dict[str, float]:
    """Their middles, by the name of what they are; the eyes of edges have tests of their own."""
    return {
        name.removeprefix("band."): value.middle
        for name, value in found(installed, band, plan).items()
        if " edge." not in name and name != "band.edge_beads"
    }


def part(installed: Host, band: str, plan: str = PLAN) -> Part:
    """The band itself."""
    result = Checker(installed, keep=True).check_text(plan.replace("BAND", band))
    assert result.ask is not None, result.remarks
    return result.ask.plan.parts["band"]


def refused(installed: Host, band: str, plan: str = PLAN) -> list[str]:
    """What is said against the band."""
    result = Checker(installed).check_text(plan.replace("BAND", band))
    return [remark.says for remark in result.remarks if remark.level in ("slip", "error")]


def spans(beads: Iterable[Laid]) -> tuple[float, float]:
    """Width and length that laid beads take together, measured from edge to edge."""
    laid = list(beads)
    return (
        max(x + wide / 2 for x, _, wide, _ in laid) - min(x - wide / 2 for x, _, wide, _ in laid),
        max(y + high / 2 for _, y, _, high in laid) - min(y - high / 2 for _, y, _, high in laid),
    )


def printed(fact: str) -> float:
    """A figure as it was printed, from the trade table of stitches."""
    return tables.load("stitch_facts").row(fact).cells["figure"].value
