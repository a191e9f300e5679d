"""Threads and needles said in a phrase count wherever a line matters, from the knot to the shop."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from wellstrung import tables
from wellstrung.derived.line_and_needle import of_type
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.model.parts import Part
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity
from wellstrung.reading.bench import read_text as read_bench
from wellstrung.report.pages import sheet

SHOPS = yaml.safe_load(Path(__file__).with_name("shops.yaml").read_text(encoding="utf-8"))
#: what asks for the thickness or the strength of a line, or for how much there is of it
ASK = {"string-in-hole", "needle-pass", "thread-hold", "crimp-hold", "crimp-bore", "thread-enough"}
PLAN = """
plan: 1
title: Said as in a shop
piece: necklace
beads:
  pearl: {type: other, outside: 6 mm, length: 6 mm, hole: 2.5 mm, per_gram: 3, edges: smooth}
parts:
  reel: "LINE, 45 m"
  strand: {kind: strand, stitch: STITCH, beads: pearl, count: 60, thread: "reel, tail 20 cm", needle: "NEEDLE"}
  crimp: {kind: crimp, inside: 2 mm, length: 2 mm, mass: 0.1 g}
  hook: {kind: clasp, type: hook, closed_length: 16 mm, mass: 2 g, a: {eye: {hole: 2 mm, wire: 1 mm}}, b: {eye: {hole: 4 mm, wire: 1 mm}}}
run: [hook.a, crimp, strand, crimp, hook.b]
supplies:
  - {thread: reel, spools: 1}
"""  # noqa: E501


def checked(
    installed: Host, line: str, needle: str = "none", stitch: str = "strung"
) -> tuple[PlanResult, Part]:
    prices = "bench: 1\nprices: {reel: 9 EUR per spool, hook: 1 EUR each, pearl: 1 EUR each,"
    bench, _ = read_bench(f"{prices} crimp: 1 EUR each}}\n", "bench.yaml")
    assert bench is not None
    text = PLAN.replace("LINE", line).replace("NEEDLE", needle).replace("STITCH", stitch)
    result = Checker(installed, bench=bench, quantities=True).check_text(text)
    assert result.readable and not result.failures, [one.says for one in result.remarks]
    assert result.ask is not None
    return result, result.ask.plan.parts["strand"]


def as_rows(quantity: Quantity, names: list[str], column: str) -> None:
    """A quantity has the range of all its rows."""
    rows = [*tables.load("needles").rows.values()]
    rows += [row for name in tables.load("line_types").rows for row in of_type(name)]
    cells = [row.cell(column) for row in rows if row.name in names]
    low, high = min(cell.low for cell in cells), max(cell.high for cell in cells)
    assert (quantity.worst.low, quantity.worst.high) == pytest.approx((low, high), rel=0.01)


@pytest.mark.parametrize("line", SHOPS["threads"])
def test_a_thread(line: str, installed: Host) -> None:
    """Its thickness and strength are those of its rows; no check lacks it; it is bought, priced."""
    rows = SHOPS["threads"][line]
    result, strand = checked(installed, line)
    assert result.ask is not None
    as_rows(result.ask.of(strand, "line"), rows, "diameter")
    if not strand.thread.stretches:  # which is stretched over a hand, and sold without a rating
        as_rows(result.ask.of(strand, "breaking"), rows, "breaking")
    missing = {field for check in result.unjudged if check.rule in ASK for field in check.missing}
    assert not missing or strand.thread.stretches
    asked = [check.missing[0] for check in result.unjudged if check.rule == "line-type"]
    assert bool(asked) == (len(rows) > 1)
    (bought,) = (
        one for one in shopping.needed(understood([result]), 1, on_hand=False) if one.name == "reel"
    )
    assert bought.describes.startswith(strand.of_thread("type"))
    assert bought.price is not None and not bought.missing
    assert result.ask.cost("EUR").middle == pytest.approx(9 + 1 + 60 + 2)
    assert "<svg" in sheet(result)


@pytest.mark.parametrize("needle", SHOPS["needles"])
def test_a_needle(needle: str, installed: Host) -> None:
    result, strand = checked(installed, "nylon D", needle)
    assert result.ask is not None
    rows = SHOPS["needles"][needle]
    if rows:
        as_rows(result.ask.of(strand, "needle"), rows, "wire")
    judged = [one.rule for one in result.held] + [one.rule for one in result.remarks]
    assert ("needle-pass" in judged) == bool(rows)
    assert not [one for one in result.unjudged if one.rule == "needle-pass"]


@pytest.mark.parametrize("line", ["silk No. 4", "nylon D", "braided line 10 lb", "leather 1 mm"])
def test_a_knot_between_beads_follows_the_line(line: str, installed: Host) -> None:
    result, strand = checked(installed, line, stitch="knotted")
    assert result.ask is not None
    thick, knot = result.ask.of(strand, "line"), result.ask.of(strand, "knot")
    assert knot.worst.low == pytest.approx(1.25 * thick.worst.low)
    assert knot.worst.high == pytest.approx(2.2 * thick.worst.high)
