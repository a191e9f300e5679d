"""Threads, wires, cords and needles in a phrase: every word of it, at its place."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import example, given
from hypothesis import strategies as st

from wellstrung import tables
from wellstrung.reading import parser, tree
from wellstrung.short_forms import spelled_out

SAID = yaml.safe_load(Path(__file__).with_name("lines.yaml").read_text(encoding="utf-8"))
LINES = [
    (table, row.name)
    for table in ("threads", "cords", "elastics", "beading_wires", "memory_wires")
    for row in tables.load(table).rows.values()
]


def read(field: str, phrase: str) -> tuple[tree.Node, tuple[str, ...]]:
    text = (
        "parts:\n  reel: {kind: thread, type: nylon}\n  mine: {kind: needle, size: '#10 sharps'}\n"
        f'  rope:\n    {field}: "{phrase}"\n'
    )
    found, faults = spelled_out(parser.read_text(text, "plan.yaml"))
    assert found.tree is not None
    node = found.tree.entries["parts"].node.entries["rope"].node.entries[field].node
    return node, tuple(one.says for one in faults)


@pytest.mark.parametrize("phrase", SAID["threads"])
def test_a_thread(phrase: str) -> None:
    """What each field means, and the very words that say it."""
    node, faults = read("thread", str(phrase))
    assert faults == ()
    expected: dict[str, Any] = SAID["threads"][phrase]
    pairs = {
        name: each if isinstance(each, list) else [each] * 2 for name, each in expected.items()
    }
    assert node.value == {name: value for name, (value, _) in pairs.items()}
    line = f'    thread: "{phrase}"'
    for name, (_, words) in pairs.items():
        place = node.entries[name].node.place
        assert line[place.column - 1 : place.end_column - 1].strip('"') == str(words), name


@pytest.mark.parametrize("phrase", SAID["needles"])
def test_a_needle(phrase: str) -> None:
    node, faults = read("needle", str(phrase))
    assert (node.value, faults) == (SAID["needles"][phrase], ())


@pytest.mark.parametrize(
    ("field", "phrase"),
    [(field, phrase) for field in SAID["slips"] for phrase in SAID["slips"][field]],
)
def test_a_slip(field: str, phrase: str) -> None:
    assert read(field, str(phrase))[1] == (SAID["slips"][field][phrase],)


@pytest.mark.parametrize(("table", "row"), LINES)
def test_every_row_of_the_tables_can_be_said(table: str, row: str) -> None:
    """And reads as that row: its type and its size together are its name."""
    node, faults = read("thread", row)
    assert faults == ()
    assert isinstance(node, tree.Mapping)
    size = node.value.get("rating", node.value.get("size"))
    assert f"{node.value['type']} {size}" == row


@pytest.mark.parametrize("row", tables.load("needles").rows)
def test_every_needle_can_be_said(row: str) -> None:
    assert (read("needle", row)[0].value, read("needle", f"{row} needle")[0].value) == (row, row)


@pytest.mark.parametrize("name", tables.load("line_types").rows)
def test_the_example_of_every_type_is_one_that_the_tables_have(name: str) -> None:
    example = tables.load("line_types").rows[name].text("example")
    node, faults = read("thread", example)
    assert faults == ()
    size = node.value.get("rating", node.value.get("size"))
    assert f"{node.value['type']} {size}" in {row for _, row in LINES}
    meant = tables.line_may_be(name) or (name,)
    assert node.value["type"] in meant


@pytest.mark.parametrize(
    ("group", "fields"),
    [
        (
            "{type: fused line 8 lb, tail: 20 cm}",
            {"type": "fused", "rating": "8 lb", "tail": "20 cm"},
        ),
        (
            "{tail: 20 cm, type: fused, size: 8 lb}",
            {"tail": "20 cm", "type": "fused", "rating": "8 lb"},
        ),
        ("{type: Silk, size: No. 4}", {"type": "silk", "size": "4"}),
        ("{type: silk, size: 4}", {"type": "silk", "size": "4"}),
        ("{type: beading wire, size: 0.015}", {"type": "flexible wire", "size": "0.015 in"}),
        ("{type: horsehair, size: 3}", {"type": "horsehair", "size": 3}),
    ],
)
def test_fields_say_what_they_mean(group: str, fields: dict[str, object]) -> None:
    for kind, text in (
        ("rope", f"parts: {{rope: {{thread: {group}}}}}\n"),
        ("reel", f"parts: {{reel: {{kind: thread, {group[1:]}}}\n"),
    ):
        found, faults = spelled_out(parser.read_text(text, "plan.yaml"))
        assert found.tree is not None and faults == ()
        value = found.tree.value["parts"][kind]
        assert (value["thread"] if kind == "rope" else {n: value[n] for n in fields}) == fields


PIECES = (
    *"0123456789 ,;.±#/\"'-", "fused", "silk", "nylon", "braided", "line", "cord", "wire", "size",
    "D", "FF", "00", "No.", " lb", "kg", "mm", " in", "ply", "Tex", "tail", "turns", "strand",
    "reel", "doubled", "crystal", "٣", "²", "½", "beading", "sharps", "needle",
)  # fmt: skip


@given(st.lists(st.sampled_from(PIECES), max_size=12).map("".join) | st.text(max_size=40))
@example("4 mm 0.5 mm 8 lb D nylon")
@example("tail 5 ft 3 1/2 in reel")
def test_any_words_are_fields_or_a_fault(words: str) -> None:
    """Each field at words of the phrase, and one fault at most, in one line."""
    for field in ("thread", "needle"):
        reel = "parts:\n  reel: {kind: thread, type: nylon}\n  rope:\n"
        text = f"{reel}    {field}: {json.dumps(words)}\n"
        found = parser.read_text(text, "plan.yaml")
        if found.tree is None or found.faults:
            continue
        found, faults = spelled_out(found)
        assert found.tree is not None
        node = found.tree.entries["parts"].node.entries["rope"].node.entries[field].node
        assert len(faults) < 2 and all("\n" not in one.says for one in faults)
        places = [entry.node.place for entry in node.entries.values()]
        places += [one.place for one in faults]
        assert all(place.line == 4 and place.column > 4 for place in places)
        if not faults and field == "thread":
            assert {"type", "spool"} & node.value.keys()


@pytest.mark.parametrize("thread", ["silk No. 4, doubled", "reel, doubled, tail 9 cm"])
def test_a_doubled_line_passes_every_bead_of_its_strand_twice(thread: str) -> None:
    strand = f'{{kind: strand, stitch: knotted, thread: "{thread}"}}'
    text = f"parts:\n  reel: {{kind: thread, type: nylon}}\n  row: {strand}\n"
    found, faults = spelled_out(parser.read_text(text, "plan.yaml"))
    assert found.tree is not None and faults == ()
    row = found.tree.entries["parts"].node.entries["row"].node
    assert row.value["passes"] == 2 and "doubled" not in row.value["thread"]
