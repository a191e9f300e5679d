"""Shape: what is wrong, in plain words, at the line where the author would mend it."""

from __future__ import annotations

from wellstrung.judging.checker import Checker
from wellstrung.reading import parser, schema


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
