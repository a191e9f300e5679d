"""Shape: what is wrong, in plain words, at the line where the author would mend it."""

from __future__ import annotations

import pytest

from wellstrung.checking import Checker

#: (what is changed in the collar, [(line:column, what is said)])
CASES: dict[str, tuple[dict[str, str], list[tuple[str, str]]]] = {
    "an unknown field of a part": (
        {"bore: 10 mm": "boar: 10 mm"},
        [
            ("15:24", "`boar` is not a field of `cap` (an end cap): write `bore`"),
        ],
    ),
    "an unknown field of the plan": (
        {"piece: necklace": "piece: necklace\nsuplies: []"},
        [("4:1", "`suplies` is not a field of the plan: write `supplies`")],
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
                "`glue` does not say its `kind`: write one of `woven rope`, `end cap`, `jump ring`,"
                " `pendant`, `connector`, `clasp`, `chain`, `chain piece`, `adhesive`, `thread`,"
                " `needle`",
            )
        ],
    ),
    "an unknown verb": (
        {"{do: weave": "{do: weeve"},
        [("28:10", "there is no step called `weeve`: write `weave`")],
    ),
    "a step that lacks what it needs": (
        {", with: glue": ""},
        [("30:6", "step 3 lacks `with`: write `with: glue`")],
    ),
    "a bare number for a length": (
        {"bore: 10 mm": "bore: 10"},
        [("15:30", "`bore` of `cap`: a length needs a unit: write `10 mm` or `10 cm`")],
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
        [("15:30", "`bore` of `cap`: `-10 mm` is negative: a length is more than 0")],
    ),
    "no eyes": (
        {"bottom_eyes: {count: 7": "bottom_eyes: {count: 0"},
        [("18:95", "`count` of `bottom_eyes` of `frame` is 0: write 1 or more")],
    ),
    "a word for a number": (
        {"bottom_eyes: {count: 7": "bottom_eyes: {count: seven"},
        [
            (
                "18:95",
                "`count` of `bottom_eyes` of `frame` is `seven`, and a whole number is needed,"
                " such as `2`",
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
        [("22:3", "`my.glue` cannot be a name: a name has no point in it, choose another")],
    ),
    "a name that is kept": (
        {"  glue: {kind: adhesive": "  piece: {kind: adhesive"},
        [("22:3", "`piece` cannot be a name: it is kept for the program, choose another")],
    ),
    "several faults at once": (
        {"bore: 10 mm": "bore: 10", "{do: weave": "{do: weeve", "every: 8": "every: many"},
        [
            ("15:30", "`bore` of `cap`: a length needs a unit: write `10 mm` or `10 cm`"),
            ("28:10", "there is no step called `weeve`: write `weave`"),
            (
                "32:34",
                "`every` of step 5 is `many`, and a whole number is needed, such as `8`",
            ),
        ],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_fault(name: str, checker: Checker, collar: str) -> None:
    changes, expected = CASES[name]
    text = collar
    for old, new in changes.items():
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    result = checker.check_text(text)
    assert [
        (f"{remark.place.line}:{remark.place.column}", remark.says) for remark in result.remarks
    ] == expected
    assert {remark.rule for remark in result.remarks} == {"plan-shape"}
    assert result.outcome == "not makeable" and not result.held


def test_a_misspelt_word_comes_with_the_edit_that_mends_it(checker: Checker, collar: str) -> None:
    (remark,) = checker.check_text(collar.replace("{do: weave", "{do: weeve")).remarks
    assert [edit.new for edit in remark.edits] == ["weave"]
    assert remark.edits[0].place == remark.place
