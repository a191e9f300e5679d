"""Lines of `hung` as one says them."""

from __future__ import annotations

from typing import Any

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.reading import parser
from wellstrung.short_forms import spelled_out

PARTS = """\
parts:
  drop: {kind: pendant, height: 12 mm, top_eyes: {hole: 2 mm, wire: 1 mm}}
  bar of beads: {kind: pendant, height: 12 mm, bottom_eyes: {count: 3, hole: 2 mm, wire: 1 mm}}
  ring: 5 mm jump ring 20 AWG
"""


def spelled(line: str) -> tuple[Any, list[str]]:
    read, faults = spelled_out(parser.read_text(f"{PARTS}hung:\n  - {line}\n", "plan.yaml"))
    assert read.tree is not None
    return read.tree.value["hung"][0], [one.says for one in faults]


@pytest.mark.parametrize(
    ("line", "fields"),
    [
        ("drop from ring", {"part": "drop", "from": "ring"}),
        ("hang the drop from a ring", {"part": "drop", "from": "ring"}),
        ("2 drops from ring", {"part": "drop", "from": "ring", "times": 2}),
        ("two drops hang on each ring", {"part": "drop", "from": "ring", "times": 2}),
        ("3 x drop onto ring", {"part": "drop", "from": "ring", "times": 3}),
        ("a pair of drops from ring", {"part": "drop", "from": "ring", "times": 2}),
        ("drop from bar of beads by ring", {"part": "drop", "from": "bar of beads", "by": "ring"}),
        ("Drop from Ring by thread", {"part": "drop", "from": "ring", "by": "thread"}),
        (
            "3 drops from the bottom eyes of bar of beads with rings, as tried",
            {
                "part": "drop",
                "from": {"part": "bar of beads", "eyes": "bottom"},
                "by": "ring",
                "times": 3,
                "note": "as tried",
            },
        ),
        ("drip from rung by rang", {"part": "drip", "from": "rung", "by": "rang"}),
    ],
)
def test_a_line_is_its_fields(line: str, fields: dict[str, Any]) -> None:
    assert spelled(line) == (fields, [])


@pytest.mark.parametrize("line", ["drop", "drop by ring", "from ring", "2 drops"])
def test_a_line_without_what_it_hangs_from_is_answered(line: str) -> None:
    do = "write it as in `drop from link` or `2 drops from link by ring`"
    assert spelled(line)[1] == [f"`{line}` does not say what hangs from what: {do}"]


@pytest.mark.parametrize(
    ("line", "at", "says"),
    [
        ("drip from ring", 5, "there is no part called `drip`: write `drop`"),
        ("2 drops from rang", 18, "there is no part called `rang`: write `ring`"),
        ("drop from bar by rig", 22, "there is no part called `rig`: write `ring`"),
        ("drop from side of bar", 23, "there is no set of eyes of `bar` called `side`"),
    ],
)
def test_what_is_not_known_is_named_at_its_own_words(line: str, at: int, says: str) -> None:
    text = PARTS.replace("bar of beads", "bar")
    plan = f"plan: 1\ntitle: x\npiece: bracelet\n{text}run: [ring]\nhung:\n  - {line}\n"
    (one,) = Checker(host.load(), trials=0).check_text(plan).remarks
    assert (one.place.line, one.place.column, one.says) == (10, at, says)
