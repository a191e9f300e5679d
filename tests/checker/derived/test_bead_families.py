"""Every family of beads, in every size that it is sold in, is read, checked and drawn."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from wellstrung import tables
from wellstrung.drawing.piece import drawings
from wellstrung.judging.checker import Checker
from wellstrung.model.item import Missing
from wellstrung.plugins.host import Host

FAMILIES = tables.load("other_beads").rows.values()
#: a strand of it, a head pin with it, and a drop that turns round it
PLAN = """\
plan: 1
title: One bead
piece: necklace
beads: {{it: {{type: {family}, size: {size}{make}}}, seed: 11/0 round Japanese}}
parts:
  row: {{kind: strand, stitch: strung, beads: [seed, it, seed], length: 40 cm, thread: fused 6 lb}}
  pin: {{kind: wire link, type: head pin, wire: 26 AWG, beads: it, length: 50 mm}}
  leg: {{kind: bead drop, beads: [seed, seed], turn: it, thread: fused 6 lb}}
  hook: lobster 12 mm
run: [hook.a, row, hook.b]
hung:
- {{part: pin, from: hook}}
"""


def sizes(family: tables.Row) -> Iterator[str]:
    """What a family is sold in: the least, the usual and the largest, two figures, and numbers."""
    if family.text("largest"):
        size = family.cell("size")
        yield from (f"{mm:g} mm" for mm in dict.fromkeys((size.low, size.value, size.high)))
        yield f"{size.low:g}..{size.value:g} mm" if size.low < size.value else f"{size.value:g} mm"
        if family.text("other"):
            yield f"{size.value / 2:g} x {size.value:g} mm"
    if family.text("seed"):
        yield "11/0"


CASES = [(family, size) for family in FAMILIES for size in dict.fromkeys(sizes(family))]


@pytest.mark.parametrize(("family", "size"), CASES, ids=lambda value: getattr(value, "name", value))
def test_it_is_read_checked_and_drawn(installed: Host, family: tables.Row, size: str) -> None:
    make = ", make: Czech" if size.endswith("/0") and "{make}" in family.text("seed") else ""
    text = PLAN.format(family=family.name, size=size, make=make)
    result = Checker(installed, keep=True, quantities=True).check_text(text)
    assert not result.failures and result.readable, [remark.says for remark in result.remarks]
    assert all(figure.svg for figure in drawings(result))
    ask = result.ask
    assert ask is not None
    bead = ask.plan.beads["it"]
    for what in ("outside", "length", "hole", "height"):
        found = ask.of(bead, what).worst
        assert 0 < found.low <= found.high
    # a hole leaves a bead round it; of small beads the extremes of both are never met together
    assert ask.of(bead, "hole").middle < ask.of(bead, "outside").middle
    try:
        grams = ask.of(bead, "per_gram").worst
        assert 0 < grams.low <= grams.high
    except Missing as missing:  # a round may be of anything
        assert missing.field == "`material` of `it`"


@pytest.mark.parametrize(
    ("written", "low", "high"), [("12", 11.5, 12.5), ("2.3", 2.25, 2.35), ("100", 99.5, 100.5)]
)
def test_a_count_per_gram_is_half_of_its_last_figure_off(
    written: str, low: float, high: float, installed: Host
) -> None:
    text = PLAN.format(family="round", size="6 mm", make=f", per_gram: {written}")
    ask = Checker(installed, keep=True, quantities=True).check_text(text).ask
    assert ask is not None
    grams = ask.of(ask.plan.beads["it"], "per_gram").worst
    assert [grams.low, grams.high] == pytest.approx([low, high])


def test_a_family_is_whole() -> None:
    """Each row has what its kind of size needs, in the words that code asks for."""
    for family in FAMILIES:
        largest = family.text("largest")
        assert largest in ("", "outside", "length", "height"), family.name
        assert largest or family.text("seed"), family.name
        assert family.text("edges") in ("", "sharp", "smooth"), family.name
        assert family.text("outline") in ("", *SHAPES), family.name
        if largest:
            least = family.cell("size").low
            for what in {"off", "length", "outside", "hole", "filled"} - {largest}:
                assert (what == "outside" and largest == "outside") or family.at(what, least)


SHAPES = ("barrel", "tube", "bicone", "box", "facets", "chip", "drop", "dagger")


def test_a_charlotte_is_culled_as_other_czech_beads_are(installed: Host) -> None:
    plan = "plan: 1\ntitle: Row\npiece: bracelet\nbeads: {it: BEAD}\nrun: [row]\nparts:\n"
    plan += "  row: {kind: strand, stitch: strung, beads: it, count: 100}\n"
    spare = {}
    for bead in ("13/0 charlotte", "13/0 round Czech", "11/0 cylinder", "6 mm glass pearl"):
        ask = Checker(installed, keep=True).check_text(plan.replace("BEAD", bead)).ask
        assert ask is not None
        spare[bead] = ask.of(ask.plan.beads["it"], "spare").middle
    assert list(spare.values()) == [15, 15, 5, 0]
