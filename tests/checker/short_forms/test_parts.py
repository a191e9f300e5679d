"""Findings in a phrase are the fields that they mean, and what they leave out is assumed."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
import yaml

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.derived.of_plan import Quantities
from wellstrung.derived.taken import asked_for
from wellstrung.judging.checker import Checker
from wellstrung.model.plan import Plan
from wellstrung.quantity.assumed import ASSUMED
from wellstrung.reading import parser, tree
from wellstrung.short_forms import spelled_out

HERE = Path(__file__).parent
SAID = yaml.safe_load((HERE / "parts.yaml").read_text(encoding="utf-8"))
BAD = yaml.safe_load((HERE / "bad_parts.yaml").read_text(encoding="utf-8"))
#: every row of a finding, with what a shop calls it
ROWS = [
    (name, row)
    for name in tables.names()
    for row in tables.load(name).rows.values()
    if row.text("said")
]
PLAN = """\
plan: 1
title: One finding
piece: bracelet
beads: {{seed: 8/0 round Japanese}}
parts:
  it: {it}
  cover: crimp cover 3 mm
  rope: {{kind: strand, stitch: strung, beads: seed, length: 18 cm}}
run: [rope]
"""


def spelled(phrase: str) -> tuple[tree.Node, tuple[str, ...]]:
    read, faults = spelled_out(parser.read_text(f"parts:\n  it: {phrase}\n", "plan.yaml"))
    assert read.tree is not None
    return read.tree.entries["parts"].node.entries["it"].node, tuple(one.says for one in faults)


def planned(it: str, checker: Checker) -> Plan:
    result = checker.check_text(PLAN.format(it=it))
    assert result.readable and result.ask is not None, [one.says for one in result.remarks]
    return result.ask.plan


@pytest.fixture(scope="module")
def keeping(installed: Any) -> Checker:
    return Checker(installed, keep=True)


@pytest.mark.parametrize(
    ("said", "called"),
    [
        ("fishhook clasp 14 mm", "fishhook clasp"),
        ("{kind: fishhook clasp, size: 14 mm}", "fishhook clasp"),
        ("{kind: clasp, type: fishhook clasp, size: 14 mm}", "fishhook clasp"),
        ("trigger clasps 12 mm", "trigger clasp"),
        ("box clasp 14 mm", "box clasp"),
        ("double ring 6 mm", "double ring"),
        ("6 mm soldered jump ring", "soldered jump ring"),
        ("{kind: jumpring, size: 5 mm, closing: soldered}", "soldered jumpring"),
        ("headpins 2 in", "head pin"),
        ("S-hook 20 mm", "S-clasp"),
    ],
)
def test_a_list_asks_a_shop_in_the_authors_word(keeping: Checker, said: str, called: str) -> None:
    assert asked_for(planned(said, keeping).parts["it"]) == called


@pytest.mark.parametrize(("phrase", "fields", "where"), SAID, ids=[said[0] for said in SAID])
def test_a_phrase_is_its_fields(
    phrase: str, fields: dict[str, Any], where: dict[str, list[int]]
) -> None:
    node, faults = spelled(phrase)
    assert not faults
    assert node.value == fields
    places = {name: node.entries[name].node.place for name in where}
    assert places == {
        name: Place("plan.yaml", 2, start, 2, end) for name, (start, end) in where.items()
    }


@pytest.mark.parametrize(("phrase", "says"), BAD, ids=[bad[0] for bad in BAD])
def test_what_is_not_understood_is_said(phrase: str, says: str) -> None:
    assert spelled(phrase)[1] == (says,)


@pytest.mark.parametrize(
    "words",
    [
        ("lobster claw", "12 mm", "sterling silver"),
        ("jump rings", "5 mm", "20 AWG", "antique brass"),
        ("Head Pin", "50 mm", "22 AWG"),
    ],
    ids=lambda words: words[0],
)
def test_words_may_stand_in_any_order(words: tuple[str, ...]) -> None:
    said = [spelled(" ".join(order)) for order in permutations(words)]
    assert all(found.value == said[0][0].value and not faults for found, faults in said)


@pytest.mark.parametrize(("table", "row"), ROWS, ids=[row.name for _, row in ROWS])
def test_every_row_of_a_finding_is_said_in_a_phrase(
    table: str, row: tables.Row, keeping: Checker
) -> None:
    said = row.text("said")
    node, faults = spelled(said)
    assert not faults, said
    sizeless = {**node.value, "size": "usual"}
    for it in (said, yaml.safe_dump(sizeless, default_flow_style=True, width=999).strip()):
        plan = planned(it, keeping)
        part, cells = plan.parts["it"], [column for column in row.cells if column != "size"]
        assert part.kind.sold is not None and part.kind.sold.table == table
        assert part.kind.sold.row(part.kind.name, part.node) == row
        for column in cells:
            found = part.assumed(*column.split("."))
            assert found is not None
            assert found.worst.low <= found.middle <= found.worst.high
            assert found.worst.low > 0
            assert found.source.startswith("assumed, trade tables, ")


@pytest.mark.parametrize("said", [said[0] for said in SAID])
def test_what_a_finding_adds_to_the_run_is_always_known(said: str, keeping: Checker) -> None:
    """No finding without its sizes stops a count or a length."""
    plan = planned(f'"{said}"', keeping)
    part, ask = plan.parts["it"], Quantities(plan)
    for what in _adds(part.kind.quantities):
        value = ask.of(part, what)
        assert value.worst.high >= value.worst.low
        assert all(leaf.source for leaf in value.leaves if leaf.grade == ASSUMED)


def _adds(quantities: Any) -> Iterator[str]:
    yield from (what for what in ("along", "a.along", "b.along") if what in quantities)


def test_a_brooch_pin_that_says_not_what_it_is_behind_is_completed_by_the_only_part() -> None:
    panel = "  panel: {kind: woven band, stitch: square, beads: seed, across: 9, rows: 9}\n"
    pin = "  pin: brooch pin 20 mm, sewn on\n"
    read, (one,) = spelled_out(parser.read_text(f"parts:\n{panel}{pin}", "plan.yaml"))
    assert read.tree is not None
    assert one.says == (
        "`pin` (a brooch pin) does not say what it is behind:"
        " write `brooch pin 20 mm, sewn on, behind panel`"
    )
    assert [edit.new for edit in one.edits] == ["brooch pin 20 mm, sewn on, behind panel"]
    two = panel.replace("panel", "frame") + panel
    _, (one,) = spelled_out(parser.read_text(f"parts:\n{two}{pin}", "plan.yaml"))
    assert (
        one.remedy == "write it as in `brooch pin 20 mm, sewn on, behind frame`" and not one.edits
    )


@pytest.mark.parametrize(
    ("phrase", "fields"),
    [
        (
            "brooch pin 30 mm, sewn on, behind panel",
            {"length": "30 mm", "held": "sewn", "behind": "panel"},
        ),
        (
            "bar pin 32 mm, brass, glued to the panel",
            {"length": "32 mm", "held": "glued", "behind": "panel", "metal": "brass"},
        ),
    ],
)
def test_a_brooch_pin_says_what_it_is_behind(phrase: str, fields: dict[str, str]) -> None:
    node, faults = spelled(f'"{phrase}"')
    assert not faults and node.value == {"kind": "brooch pin"} | fields
