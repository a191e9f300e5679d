"""Supplies as they are bought are the fields that they mean, and hold what the tables say."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Remark, Unjudged
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.short_forms import spelled_out

SAID = yaml.safe_load(Path(__file__).with_name("supplies.yaml").read_text(encoding="utf-8"))
OF = """\
beads: {kelp: 8/0 round Japanese, sea glass: 11/0}
parts:
  small: 5 mm jump ring
  line: {kind: thread, type: fused, rating: 8 lb}
  silk: {kind: thread, type: silk}
  cable: cable chain 3 mm
  glue: {kind: adhesive, type: two-part epoxy}
"""
PLAN = """\
plan: 1
title: Packs as they are sold
piece: bracelet
beads:
  kelp: 11/0 round Czech
  gull: {{type: other, outside: 6 mm, length: 6 mm, hole: 1 mm, per_gram: 4, edges: smooth}}
parts:
  rope: {{kind: woven rope, stitch: tubular herringbone, beads: kelp, around: 6, length: 17 cm}}
  strand: {{kind: strand, stitch: strung, beads: gull, count: 30, thread: {{spool: silk}}}}
  silk: {{kind: thread, type: silk}}
run: [rope]
hung: [{{part: strand, from: rope, by: thread}}]
supplies: [{line}]
"""


def spelled(line: str) -> tuple[Any, tuple[str, ...]]:
    read, faults = spelled_out(parser.read_text(f"{OF}supplies:\n  - {line}\n", "plan.yaml"))
    assert read.tree is not None
    return read.tree.value["supplies"][0], tuple(one.says for one in faults)


@pytest.mark.parametrize(
    ("others", "of"), [("", "link"), ("  pin: {kind: wire link, wire: 22 AWG}\n", "link")]
)
def test_wire_is_named_by_its_gauge_where_one_link_is_of_it(others: str, of: str) -> None:
    text = f"parts:\n  link: {{kind: wire link, wire: 20 AWG}}\n{others}"
    read, faults = spelled_out(
        parser.read_text(f"{text}supplies:\n  - 3 m of 20 AWG wire\n", "plan.yaml")
    )
    assert read.tree is not None and not faults
    assert read.tree.value["supplies"][0] == {"part": of, "length": "3 m"}


@pytest.mark.parametrize(("line", "fields"), SAID["lines"], ids=[one[0] for one in SAID["lines"]])
def test_a_line_is_its_fields(line: str, fields: dict[str, Any]) -> None:
    assert spelled(line) == (fields, ())


@pytest.mark.parametrize(("line", "says"), SAID["bad"], ids=[one[0] for one in SAID["bad"]])
def test_what_is_not_understood_is_said(line: str, says: str) -> None:
    assert spelled(line)[1] == (says,)


@pytest.mark.parametrize("entry", ["fused 8 lb, tail 3 in", "{type: fused}"])
def test_a_line_of_what_could_not_be_read_is_left_alone(entry: str) -> None:
    """`spool of line` was answered with `line` being no thread, beside the slip on `line`."""
    text = f"parts:\n  line: {entry}\nsupplies:\n  - spool of line 9 m\n"
    _, faults = spelled_out(parser.read_text(text, "plan.yaml"))
    assert not [one for one in faults if one.place.line > 2]


@pytest.mark.parametrize(
    ("line", "what", "low", "high"),
    [
        # 12 strands of 12 to 14 in, of beads of 1.45 mm
        ("hank of kelp", "beads.kelp.on_hand", 1120, 3220),
        ("half hank of kelp", "beads.kelp.on_hand", 1120, 1610),
        ("2 loops of kelp", "beads.kelp.on_hand", 370, 540),
        # printed: 66 to 67 beads of 6 mm on 16 in
        ("16 in strand of gull", "beads.gull.on_hand", 64, 69),
        ("strand of gull", "beads.gull.on_hand", 59, 69),
        ("40 count gull", "beads.gull.on_hand", 40, 40),
        ("card of silk", "silk.on_hand", 2000, 2000),
    ],
)
def test_a_pack_holds_what_it_usually_does(
    line: str, what: str, low: float, high: float, installed: Host
) -> None:
    result = Checker(installed, quantities=True).check_text(PLAN.format(line=line))
    assert result.readable and result.ask is not None
    held = result.ask.get(what)
    assert low <= held.worst.low and held.worst.high <= high
    assert any("trade tables" in leaf.source for leaf in held.leaves) == ("count" not in line)


@pytest.mark.parametrize(
    ("line", "verdict"),
    [
        ("2 hanks of kelp", "held"),
        ("2 strands of kelp 10 in", "short"),
        ("2 tubes of kelp", "`pack` of `kelp`"),
        ("3 loops of kelp", "short"),
    ],
)
def test_enough_beads_in_packs_as_they_are_sold(line: str, verdict: str, checker: Checker) -> None:
    result = checker.check_text(PLAN.format(line=line.strip("'")))
    assert result.readable, [one.says for one in result.remarks]
    lacks = [one.missing[0] for one in result.unjudged if _of_kelp(one)]
    raised = [one for one in result.remarks if _of_kelp(one)]
    found = "short" if raised else lacks[0] if lacks else "held"
    assert found == verdict


def _of_kelp(one: Remark | Unjudged) -> bool:
    return one.rule == "beads-enough" and one.parts[0] == "kelp"
