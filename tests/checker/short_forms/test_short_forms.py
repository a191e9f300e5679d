"""Phrases are spelled out as fields, each at the place of its own words."""

from __future__ import annotations

import pytest

from wellstrung.common.places import Place
from wellstrung.reading import parser, tree
from wellstrung.short_forms import spelled_out


def spelled(section: str, phrase: str) -> tuple[tree.Node, tuple[str, ...]]:
    read, faults = spelled_out(parser.read_text(f"{section}:\n  it: {phrase}\n", "plan.yaml"))
    assert read.tree is not None
    return read.tree.entries[section].node.entries["it"].node, tuple(one.says for one in faults)


@pytest.mark.parametrize(
    ("phrase", "fields", "where"),
    [
        pytest.param(
            "8/0 round Japanese, matte green",
            {"type": "round", "size": "8/0", "make": "Japanese", "colour": "matte green"},
            {"size": (7, 10), "make": (17, 25), "colour": (27, 38)},
            id="every word of a seed bead",
        ),
        pytest.param(
            '"11/0 Cylinder"',
            {"type": "cylinder", "size": "11/0"},
            {"size": (8, 12), "type": (13, 21)},
            id="in quotes",
        ),
        pytest.param(
            "15/0", {"type": "round", "size": "15/0"}, {"size": (7, 11)}, id="round is implied"
        ),
    ],
)
def test_beads(phrase: str, fields: dict[str, str], where: dict[str, tuple[int, int]]) -> None:
    node, faults = spelled("beads", phrase)
    assert not faults
    assert node.value == fields
    places = {name: node.entries[name].node.place for name in where}
    assert places == {
        name: Place("plan.yaml", 2, start, 2, end) for name, (start, end) in where.items()
    }


def test_a_phrase_over_two_lines_stands_at_its_whole_place() -> None:
    node, _ = spelled("beads", "8/0 round\n      Japanese")
    assert node.value == {"type": "round", "size": "8/0", "make": "Japanese"}
    assert node.entries["make"].node.place == node.place


def test_what_is_no_phrase_stays_the_very_same() -> None:
    read = parser.read_text("beads: {it: {type: round, size: 8/0}}\n", "plan.yaml")
    assert spelled_out(read) == (read, ())
