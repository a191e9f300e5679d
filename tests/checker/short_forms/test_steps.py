"""Steps of the work as one says them."""

from __future__ import annotations

import pytest

from wellstrung.common.places import Fault
from wellstrung.reading import parser, tree
from wellstrung.short_forms.step_lines import OfPlan
from wellstrung.short_forms.steps import step

PARTS = {
    **{
        name: name
        for name in (
            "rope",
            "cap",
            "ring",
            "small ring",
            "glue",
            "drop",
            "frame",
            "clasp",
            "moon",
            "tube",
        )
    },
    "pearl": "strand",
}
KINDS = {
    "rope": "woven rope", "cap": "end cap", "ring": "jump ring", "small ring": "jump ring",
    "glue": "adhesive", "drop": "pendant", "frame": "pendant", "strand": "strand",
    "clasp": "clasp", "moon": "embroidered cabochon", "tube": "crimp",
}  # fmt: skip
RUN = ("clasp", "small ring", "cap", "rope", "cap", "small ring", "clasp")


def said(phrase: str, *woven: str) -> tuple[tree.Mapping | None, list[Fault]]:
    read = parser.read_text(f"work:\n  - {phrase}\n", "plan.yaml")
    assert read.tree is not None
    work = read.tree.entries["work"].node
    assert isinstance(work, tree.Sequence) and isinstance(work.items[0], tree.Scalar)
    faults: list[Fault] = []
    return step(work.items[0], PARTS, woven, faults, OfPlan(KINDS, RUN)), faults


@pytest.mark.parametrize(
    ("phrase", "fields"),
    [
        ("weave rope", {"do": "weave", "part": "rope"}),
        ("Weave the rope", {"do": "weave", "part": "rope"}),
        ("wear it", {"do": "wear"}),
        ("bind 2 ends of rope", {"do": "finish thread", "part": "rope", "ends": 2}),
        ("whip both ends of rope", {"do": "finish thread", "part": "rope", "ends": 2}),
        (
            "tie a surgeon's knot with glue",
            {"do": "knot", "note": "surgeon's knot", "with": "glue", "part": "strand"},
        ),
        (
            "knot with a square knot",
            {"do": "knot", "note": "square knot", "part": "strand"},
        ),
        ("tie knot", {"do": "knot", "part": "strand"}),
        (
            "glue the stone of frame to its foundation with glue",
            {"do": "glue", "to": "foundation", "with": "glue", "part": "frame"},
        ),
        ("turn 2 loops at the drop", {"do": "wrap loop", "part": "drop", "times": 2}),
        ("make a loop in drop", {"do": "wrap loop", "part": "drop"}),
        ("wait 24 h", {"do": "wait", "time": "24 h"}),
        (
            "glue the cap to the rope with glue, 10 min",
            {"do": "glue", "to": "rope", "with": "glue", "part": "cap", "takes": "10 min"},
        ),
        (
            "glue cap to rope with glue, 2 times",
            {"do": "glue", "to": "rope", "with": "glue", "part": "cap", "joints": 2},
        ),
        (
            "glue cap to rope with glue, 2 joints",
            {"do": "glue", "to": "rope", "with": "glue", "part": "cap", "joints": 2},
        ),
        ("close ring ring", {"do": "close ring", "part": "ring"}),
        ("close the small ring 3 times", {"do": "close ring", "part": "small ring", "times": 3}),
        ("close rings ring x 2", {"do": "close ring", "part": "ring", "times": 2}),
        (
            "hang drop from frame by small ring, 7 times",
            {"do": "hang", "from": "frame", "by": "small ring", "part": "drop", "times": 7},
        ),
        ("string pearls", {"do": "string", "part": "strand"}),
        ("knot between the Pearls", {"do": "knot", "part": "strand"}),
        ("close rings twice", {"do": "close ring", "part": "ring", "times": 2}),
        (
            "glue the caps to the rope with glue",
            {"do": "glue", "to": "rope", "with": "glue", "part": "cap"},
        ),
        ("crimp both ends", {"do": "crimp", "part": "tube"}),
        ("crimp the tube at each end", {"do": "crimp", "part": "tube"}),
        ("turn a loop at each end of rope", {"do": "wrap loop", "part": "rope", "times": 2}),
        ("sew moon", {"do": "weave", "part": "moon"}),
        ("edge moon", {"do": "edge", "part": "moon"}),
        ("sew the edge of moon", {"do": "edge", "part": "moon"}),
        ("sew edge row of moon", {"do": "edge", "part": "moon"}),
        ("sew moon to rope", {"do": "sew", "to": "rope", "part": "moon"}),
        ("sew on drop to frame", {"do": "sew", "to": "frame", "part": "drop"}),
        ("weave in the tails of the rope", {"do": "finish thread", "part": "rope"}),
        ("crochet rope", {"do": "weave", "part": "rope"}),
        ("finish the thread of the rope", {"do": "finish thread", "part": "rope"}),
    ],
)
def test_a_step_is_read(phrase: str, fields: dict[str, object]) -> None:
    node, faults = said(phrase)
    assert not faults
    assert node is not None and node.value == fields
    for name, entry in node.entries.items():
        place = entry.node.place
        assert isinstance(entry.node, tree.Scalar), name
        assert phrase[place.column - 5 : place.end_column - 5] == entry.node.text


def test_what_is_sewn_round_already_is_sewn_at_its_edge() -> None:
    for phrase in ("sew moon", "sew edge row"):
        node, _ = said(phrase, "moon")
        assert node is not None and node.value == {"do": "edge", "part": "moon"}


def test_the_thread_to_finish_is_that_of_the_only_part_that_is_woven() -> None:
    node, _ = said("finish thread", "frame")
    assert node is not None and node.value == {"do": "finish thread", "part": "frame"}
    node, (one,) = said("finish thread", "frame", "drop")
    assert node is None and one.says.endswith("write it as in `finish thread rope`")
    node, (one,) = said("measure", "frame")
    assert node is None and one.says.endswith("write it as in `measure rope`")


@pytest.mark.parametrize(
    ("phrase", "says", "column"),
    [
        ("waeve rope", "`waeve rope` does not begin with a step: write `weave`", 5),
        ("glue cap to bits", "step `glue cap to bits` says `to bits`, which is not known: ", 14),
        ("weave 3 ropes", "step `weave 3 ropes` says `3`, which is not known: ", 11),
        (
            "assemble cap",
            "`assemble cap` does not begin with a step: write each join as a step of its own: ",
            5,
        ),
        (
            "rough up the inside of the caps",
            "`rough up the inside of the caps` does not begin with a step: write it in the step"
            " that glues, as in `prepared: [roughened]`",
            5,
        ),
        (
            "weave in the tails",
            "step `weave in the tails` does not name its part: write it as in `finish thread rope`",
            5,
        ),
        ("dance", "`dance` does not begin with a step: begin with one of `weave`, ", 5),
    ],
)
def test_what_says_no_step(phrase: str, says: str, column: int) -> None:
    node, (one,) = said(phrase)
    assert node is None
    assert one.says.startswith(says)
    assert one.place.column == column


@pytest.mark.parametrize(
    ("phrase", "advice", "written"),
    [
        (
            "sew the clasp on firmly",
            "write it as `sew clasp`, and what else it says in its `note`",
            "sew clasp",
        ),
        (
            "close the round rings",
            "write it as `close ring`, and what else it says in its `note`",
            "close ring",
        ),
        ("glue", "write it as in `glue cap to rope with glue`", ""),
        ("glue cap to bits", "write it as in `glue cap to rope with glue`", ""),
        ("let it dry", "write it as in `wait 24 h`", ""),
        ("put the pearls on the line", "write `string strand` or `knot strand`", ""),
        (
            "attach the clasp",
            "write `close ring` if a ring does it, `sew`, `glue`, `hang`, `crimp` or `wrap loop`;"
            " here `close ring small ring`",
            "",
        ),
        ("bring the cap round", "write `glue cap to rope with glue`", ""),
    ],
)
def test_free_words_are_answered_with_the_line_to_write(
    phrase: str, advice: str, written: str
) -> None:
    node, (one,) = said(phrase)
    assert node is None and one.remedy == advice
    assert [edit.new for edit in one.edits] == ([written] if written else [])
