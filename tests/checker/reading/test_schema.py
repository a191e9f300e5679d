"""Shape: what is wrong, in plain words, at the line where the author would mend it."""

from __future__ import annotations

import pytest

from wellstrung.common.wording import listed
from wellstrung.judging.checker import Checker
from wellstrung.kinds import KINDS
from wellstrung.reading import parser, schema, tree
from wellstrung.testing.cases import changed

#: (what is changed in the collar, [(line:column, what is said)])
CASES: dict[str, tuple[dict[str, str], list[tuple[str, str]]]] = {
    "an unknown field of a part": (
        {"bore: 10 mm": "boer: 10 mm"},
        [
            ("15:24", "`boer` is not a field of `cap` (an end cap): write `bore`"),
        ],
    ),
    "an unknown field of the plan": (
        {"piece: necklace": "piece: necklace\nwerer: {neck: 37 cm}"},
        [("4:1", "`werer` is not a field of the plan: write `wearer`")],
    ),
    "an unknown field beside the one it resembles": (
        {
            "length: 15 mm, eye: {hole: 2.4 mm, wire: 1.2 mm}": (
                "length: 15 mm, eye: {hole: 2.4 mm, hole2: 1 mm}"
            )
        },
        [
            (
                "15:103",
                "`hole2` is not a field of `eye` of `cap`: it takes `hole`, `wire`, `through`,"
                " `opens`, `edge`, `faces`",
            )
        ],
    ),
    "a field of the eye written beside it": (
        {"depth: 7 mm, outside": "wire: 1 mm, depth: 7 mm, outside"},
        [
            (
                "15:37",
                "`wire` is not a field of `cap` (an end cap): it belongs in `eye`, as in"
                " `eye: {wire: 1 mm}`",
            ),
        ],
    ),
    "a thread by the name of its part": (
        {"    around: 10": "    thread: line\n    around: 10"},
        [
            (
                "11:13",
                "`thread` of `rope` is `line`: write a group of fields, such as `{type: braided,"
                " rating: 8 lb, tail: 20 cm}`, or name a part as in `{spool: line}`",
            )
        ],
    ),
    "a field in capitals": (
        {"bore: 10 mm": "BORE: 10 mm"},
        [("15:24", "`BORE` is not a field of `cap` (an end cap): write `bore`")],
    ),
    "one of several choices misspelt": (
        {"    length: 39.7 cm": "    lenght: 39.7 cm"},
        [("13:5", "`lenght` is not a field of `rope` (a woven rope): write `length`")],
    ),
    "a field misspelt in one place and missing in another": (
        {
            "loop: {length: 5 mm": "loop: {lenght: 5 mm",
            "bar: {length: 12 mm, width": "bar: {width",
        },
        [
            (
                "19:65",
                "`lenght` is not a field of `loop` of `links` of `bar chain`: write `length`",
            ),
            ("19:109", "`bar` of `links` of `bar chain` lacks `length`: write `length: 5 mm`"),
        ],
    ),
    "several fields missing in one place": (
        {"  - {part: frame, from: rope, by: carrier, times: 2}": "  - {by: carrier}"},
        [
            ("25:6", "entry 1 of `hung` lacks `part`: write `part:` and the name of a part"),
            ("25:6", "entry 1 of `hung` lacks `from`: write `from: rope`"),
        ],
    ),
    "an empty entry": (
        {"  - {chain: bar chain, length: 45 cm}": "  - {}"},
        [
            (
                "36:5",
                "entry 1 of `supplies` lacks one of `bead`, `part`, `chain` or `thread`: write one",
            )
        ],
    ),
    "a step without its verb": (
        {"{do: weave, part: rope}": "{part: rope}"},
        [("28:6", "entry 1 of `work` lacks `do`: write `do: weave`")],
    ),
    "a list for a kind": (
        {"glue: {kind: adhesive": "glue: {kind: [adhesive]"},
        [
            (
                "22:16",
                f"`kind` is a list: it takes {listed(kind.name for kind in KINDS)}",
            )
        ],
    ),
    "a size for a group": (
        {"length: 15 mm, eye: {hole: 2.4 mm, wire: 1.2 mm}": "length: 15 mm, eye: 2.4 mm"},
        [
            (
                "15:88",
                "`eye` of `cap` is `2.4 mm`: write a group of fields, such as"
                " `{hole: 2.4 mm, wire: 1.2 mm}`",
            )
        ],
    ),
    "a word for a list": (
        {"pattern: [loop, bar]": "pattern: loop"},
        [("19:37", "`pattern` of `bar chain` is `loop`: write a list, such as `[loop, bar]`")],
    ),
    "a list for a size": (
        {"bore: 10 mm": "bore: [10 mm]"},
        [("15:30", "`bore` of `cap` is a list: write a length, such as `10 mm`")],
    ),
    "a number for words": (
        {"title: Test collar": "title: 2026"},
        [("2:8", '`title` is `2026`: write "2026" in quotes')],
    ),
    "quotes round a number": (
        {"plan: 1": 'plan: "1"'},
        [("1:7", "`plan` is `1`: write it without quotes")],
    ),
    "text over several lines": (
        {"piece: necklace": "piece: |\n  neck\n  lace"},
        [
            (
                "3:8",
                "`piece` is `neck lace`: write `necklace`",
            )
        ],
    ),
    "figures that are not of this keyboerd": (
        {"bore: 10 mm": "bore: \u0663 mm"},
        [("15:30", "`bore` of `cap` is `\u0663 mm`: write it as in `10 mm`")],
    ),
    "half a clasp for a part": (
        {"{do: weave, part: rope}": "{do: weave, part: rope.a}"},
        [("28:23", "`part` of step 1 is `rope.a`: a name has no full stop in it, delete it")],
    ),
    "half a clasp to hang from": (
        {"from: rope, by: carrier, times": "from: toggle.a, by: carrier, times"},
        [
            (
                "25:25",
                "`from` of entry 1 of `hung` is `toggle.a`: write a part and its eyes, as"
                " `{part: toggle, eyes: a}`",
            )
        ],
    ),
    "an empty name": (
        {"  glue: {kind: adhesive": '  "": {kind: adhesive'},
        [("22:3", "a name is empty: write one")],
    ),
    "more than anyone hangs": (
        {"times: 7": "times: 70000000"},
        [("26:71", "`times` of entry 2 of `hung` is `70000000`: write 10000 or less")],
    ),
    "an unknown kind": (
        {"small: {kind: jump ring": "small: {kind: jumpring"},
        [("17:17", "there is no kind of part called `jumpring`: write `jump ring`")],
    ),
    "a part without a kind": (
        {"glue: {kind: adhesive, type": "glue: {type"},
        [
            (
                "22:3",
                f"`glue` has no `kind`: write one of {listed(kind.name for kind in KINDS)}",
            )
        ],
    ),
    "an unknown verb": (
        {"{do: weave": "{do: weeve"},
        [("28:10", "there is no step called `weeve`: write `weave`")],
    ),
    "a step that lacks what it needs": (
        {", with: glue": ""},
        [("30:6", "step 3 lacks `with`: write `with:` and the name of a part")],
    ),
    "joints counted as times": (
        {"joints: 2": "times: 2"},
        [("30:49", "`times` is not a field of step 3: write `joints`")],
    ),
    "a bare number for a length": (
        {"bore: 10 mm": "bore: 10"},
        [("15:30", "`bore` of `cap`: a length needs a unit: write `10 mm` or `10 cm`")],
    ),
    "a bare number for what is woven by length": (
        {"length: 39.7 cm": "length: 39.7"},
        [("13:13", "`length` of `rope`: a length needs a unit: write `39.7 cm` or `39.7 mm`")],
    ),
    "the same in a plan in inches": (
        {"46 cm ± 1 cm": "18 in ± 1/2 in", "length: 39.7 cm": "length: 15.6"},
        [("13:13", "`length` of `rope`: a length needs a unit: write `15.6 in` or `15.6 cm`")],
    ),
    "the length asked for in a plan in inches": (
        {"46 cm ± 1 cm": "18.25 ± 0.5", "length: 39.7 cm": "length: 15 5/8 in"},
        [
            (
                "4:18",
                "`finished_length`: a length needs a unit: write `18.25 ± 0.5 in` or"
                " `18.25 ± 0.5 cm`",
            )
        ],
    ),
    "a bare number nearer to what is in inches, in a plan with both": (
        {
            "bore: 10 mm": "bore: 0.4",
            "outside: 16 mm, wire: 16 AWG": "outside: 5/8 in, wire: 16 AWG",
        },
        [("15:30", "`bore` of `cap`: a length needs a unit: write `0.4 in` or `0.4 mm`")],
    ),
    "a bare number beyond any piece in other units": (
        {
            "bore: 10 mm": "bore: 400000",
            "outside: 16 mm, wire: 16 AWG": "outside: 2 in, wire: 16 AWG",
        },
        [("15:30", "`bore` of `cap`: a length needs a unit: write `400000 mm` or `400000 cm`")],
    ),
    "an unknown unit": (
        {"depth: 7 mm": "depth: 7 mn"},
        [("15:44", "`depth` of `cap`: `mn` in `7 mn` is not a unit of length: write `7 mm`")],
    ),
    "a bare gauge": (
        {"outside: 6 mm, wire: 18 AWG": "outside: 6 mm, wire: 18 ga"},
        [
            (
                "17:49",
                "`wire` of `small`: `18 ga` may be 18 AWG (1.02 mm) or 18 SWG (1.22 mm):"
                " write which",
            )
        ],
    ),
    "a tolerance above its value": (
        {"bore: 10 mm": "bore: 10 ± 12 mm"},
        [
            (
                "15:30",
                "`bore` of `cap`: in `10 ± 12 mm` the tolerance is as large as the value: write a"
                " smaller one",
            )
        ],
    ),
    "a range the wrong way round": (
        {"finished_length: 46 cm ± 1 cm": "finished_length: 47..45 cm"},
        [
            (
                "4:18",
                "`finished_length`: `47..45 cm` runs from the larger to the smaller: write the"
                " smaller first",
            )
        ],
    ),
    "a negative size": (
        {"bore: 10 mm": "bore: -10 mm"},
        [("15:30", "`bore` of `cap`: `-10 mm` is negative: a length must be more than 0")],
    ),
    "no eyes": (
        {"bottom_eyes: {count: 7": "bottom_eyes: {count: 0"},
        [("18:95", "`count` of `bottom_eyes` of `frame` is `0`: write 1 or more")],
    ),
    "a word for a number": (
        {"bottom_eyes: {count: 7": "bottom_eyes: {count: seven"},
        [
            (
                "18:95",
                "`count` of `bottom_eyes` of `frame` is `seven`: write a whole number, such as `2`",
            )
        ],
    ),
    "a choice that is none": (
        {"closing: soldered": "closing: sodered"},
        [("16:69", "`closing` of `carrier` is `sodered`: write `soldered`")],
    ),
    "two of what there may be one": (
        {"    length: 39.7 cm\n": "    length: 39.7 cm\n    rounds: 200\n"},
        [("14:5", "`rope` (a woven rope) has `length` and `rounds`: keep one")],
    ),
    "none of what must be one": (
        {"    length: 39.7 cm\n": ""},
        [("8:3", "`rope` (a woven rope) lacks one of `length`, `rounds` or `rows`: write one")],
    ),
    "two goals": (
        {"finished_length: 46 cm ± 1 cm": "finished_length: 46 cm ± 1 cm\ninside: 44 cm ± 1 cm"},
        [("5:1", "the plan has `finished_length` and `inside`: keep one")],
    ),
    "a switch for a word": (
        {"{kind: adhesive, type": "{kind: adhesive, note: no, type"},
        [("22:32", '`note` of `glue`: `no` is a switch to some readers: write "no" in quotes')],
    ),
    "a point in a name": (
        {"  glue: {kind: adhesive": "  my.glue: {kind: adhesive"},
        [("22:3", "`my.glue` cannot be a name: a name has no full stop in it, choose another")],
    ),
    "a name that is kept": (
        {"  glue: {kind: adhesive": "  piece: {kind: adhesive"},
        [("22:3", "`piece` cannot be a name: it is reserved, choose another")],
    ),
    "several faults at once": (
        {"bore: 10 mm": "bore: 10", "{do: weave": "{do: weeve", "every: 8": "every: many"},
        [
            ("15:30", "`bore` of `cap`: a length needs a unit: write `10 mm` or `10 cm`"),
            ("28:10", "there is no step called `weeve`: write `weave`"),
            (
                "32:34",
                "`every` of step 5 is `many`: write a whole number, such as `8`",
            ),
        ],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_fault(name: str, checker: Checker, collar: str) -> None:
    changes, expected = CASES[name]
    text = changed(collar, changes)
    result = checker.check_text(text)
    assert [
        (f"{remark.place.line}:{remark.place.column}", remark.says) for remark in result.remarks
    ] == expected
    assert {remark.rule for remark in result.remarks} == {"plan-shape"}
    assert result.outcome == "not checked yet" and not result.held


@pytest.mark.parametrize("name", CASES)
def test_an_offered_edit_mends_its_fault(name: str, checker: Checker, collar: str) -> None:
    text = collar
    for old, new in CASES[name][0].items():
        text = text.replace(old, new)
    for remark in checker.check_text(text).remarks:
        if remark.edits:
            edits = [(edit.place, edit.new) for edit in remark.edits]
            after = checker.check_text(tree.replaced(text, edits))
            left = [(one.rule, one.says) for one in after.remarks]
            assert ("plan-shape", remark.says) not in left and "plan-file" not in dict(left)


def test_a_misspelt_word_comes_with_the_edit_that_mends_it(checker: Checker, collar: str) -> None:
    (remark,) = checker.check_text(collar.replace("{do: weave", "{do: weeve")).remarks
    assert [edit.new for edit in remark.edits] == ["weave"]
    assert remark.edits[0].place == remark.place


def test_where_the_validators_differ_the_plan_is_refused_all_the_same() -> None:
    # Python's `$` takes a line's end before it, the compiled validator's does not
    fields = {"kind": {"const": "glue pot"}, "lot": {"type": "string", "pattern": "^[0-9]+$"}}
    known = schema.Known({"glue pot": {"type": "object", "properties": fields}})
    text = """plan: 1
title: Pot
piece: brooch
parts:
  pot:
    kind: glue pot
    lot: "12\\n"
"""
    faults = schema.check(parser.read_text(text, "plan.yaml"), known)
    assert [(fault.place.line, fault.says) for fault in faults] == [
        (5, "`pot` (a glue pot) does not fit its schema: compare its fields")
    ]
