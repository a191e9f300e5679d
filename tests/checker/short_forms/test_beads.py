"""Beads as people say them: each phrase means fields, or the message says what to write."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.judging.checker import Checker
from wellstrung.reading import parser
from wellstrung.short_forms import beads, spelled_out

CASES = yaml.safe_load((Path(__file__).parent / "beads.yaml").read_text(encoding="utf-8"))
PLAN = """\
plan: 1
title: Strand
piece: bracelet
beads:
  it: {bead}
parts:
  row: {{kind: strand, stitch: strung, beads: it, length: 15 cm}}
run: [row]
"""


@pytest.mark.parametrize("case", CASES["read"], ids=lambda case: case["said"])
def test_a_phrase_means_fields(case: dict[str, Any], checker: Checker) -> None:
    read, faults = spelled_out(parser.read_text(f"beads:\n  it: {case['said']}\n", "plan.yaml"))
    assert read.tree is not None and not faults
    node = read.tree.entries["beads"].node.entries["it"].node
    assert node.value == case["means"]
    places = {name: node.entries[name].node.place for name in case["means"]}
    assert places == {
        name: Place("plan.yaml", 2, start, 2, end) for name, (start, end) in case["at"].items()
    }
    result = checker.check_text(PLAN.format(bead=case["said"]))
    assert result.readable and not result.failures


@pytest.mark.parametrize("case", CASES["refused"], ids=lambda case: case["said"])
def test_a_message_says_what_to_write(case: dict[str, Any], checker: Checker) -> None:
    result = checker.check_text(PLAN.format(bead=case["said"]))
    assert not result.failures
    assert [remark.says for remark in result.remarks] == [case["says"]]
    assert [edit.new for remark in result.remarks for edit in remark.edits] == case.get("edits", [])


def test_a_phrase_where_a_name_should_stand(checker: Checker) -> None:
    plan = PLAN.format(bead="8/0 round Czech").replace("beads: it", "beads: 6 mm glass pearl")
    (slip,) = checker.check_text(plan).remarks
    assert slip.says == (
        "`6 mm glass pearl` is not the name of a bead in the plan: write it under `beads:` by a"
        " name of your own, as in `my bead: 6 mm glass pearl`, and that name here"
    )


@pytest.mark.parametrize(
    "family", tables.load("other_beads").rows.values(), ids=lambda row: row.name
)
def test_the_example_of_a_family_is_read_as_one_of_it(family: tables.Row) -> None:
    for said in family.text("example").split(", "):
        read, faults = spelled_out(parser.read_text(f"beads: {{it: {said}}}\n", "plan.yaml"))
        assert read.tree is not None and not faults
        kind = read.tree.entries["beads"].node.entries["it"].node.value["type"]
        assert kind in (family.name, *family.text("either").split(", ")), said


def test_no_word_means_two_families() -> None:
    words = [word for word, _ in beads.words_of_types()]
    assert len(words) == len(set(words))


@pytest.mark.parametrize("colour", CASES["colours"])
def test_no_colour_is_taken_for_a_slip(colour: str) -> None:
    read, faults = spelled_out(
        parser.read_text(f'beads: {{it: "8/0 round Japanese, {colour}"}}\n', "plan.yaml")
    )
    assert read.tree is not None and not faults
    assert read.tree.entries["beads"].node.entries["it"].node.value["colour"] == colour
