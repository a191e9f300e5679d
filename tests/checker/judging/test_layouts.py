"""The same plan in block style, in flow style and as JSON gets the same advice, to the same end."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml

from generated.layout import flow
from wellstrung.judging.checker import Checker
from wellstrung.reading import parser, tree
from wellstrung.testing.cases import Case, cases, judged

RULES = Path(__file__).parents[2] / "rules"
#: rules whose edits add, replace or take out more than one word, and a few that replace one
RULES_WITH_EDITS = (
    "bezel-depth", "cap-bond", "class-time", "cure-time", "finish-before-glue", "fringe-lengths",
    "glue-mixes", "join-made", "no-eye", "part-use", "pot-life", "ring-room", "ring-through-eye",
    "thread-hold", "wrapped-too-soon",
)  # fmt: skip


def read(text: str) -> Any:
    found = parser.read_text(text, "plan.yaml").tree
    assert found is not None, text
    return found.value


def in_layouts(plan: Any) -> dict[str, str]:
    return {
        "block": yaml.safe_dump(plan, sort_keys=False, allow_unicode=True, width=1000),
        "flow": "".join(f"{key}: {flow(value)}\n" for key, value in plan.items()),
        "JSON": json.dumps(plan, ensure_ascii=False, indent=2),
        "JSON on one line": json.dumps(plan),
    }


def advice(text: str, case: Case, checker: Checker) -> list[Any]:
    """Each remark with its advice, and the plan that its edits make."""
    return [
        (one.rule, one.parts, one.says, one.remedy, after(text, one.edits))
        for one in judged(case, checker).check_text(text).remarks
    ]


def after(text: str, edits: Any) -> Any:
    return read(replaced(text, edits)) if edits else None


def replaced(text: str, edits: Any) -> str:
    return tree.replaced(text, [(edit.place, edit.new) for edit in edits])


@pytest.mark.parametrize("rule", RULES_WITH_EDITS)
def test_the_same_advice_in_every_layout(rule: str, checker: Checker) -> None:
    (file,) = RULES.glob(f"*/{rule}.yaml")
    case = next(one for one in cases(file) if one.pinned.get("edits"))
    expected = advice(case.text, case, checker)
    assert any(one[0] == rule and one[-1] for one in expected)
    for layout, text in in_layouts(read(case.text)).items():
        assert advice(text, case, checker) == expected, text
        if layout.startswith("JSON"):
            assert all(json.loads(edited) for edited in edited_texts(text, case, checker))


def edited_texts(text: str, case: Case, checker: Checker) -> list[str]:
    remarks = judged(case, checker).check_text(text).remarks
    return [replaced(text, one.edits) for one in remarks]


def test_a_word_corrected_in_json_stays_json(checker: Checker) -> None:
    plan = {"plan": 1, "titel": "Misspelt", "piece": "bracelet", "parts": {"a": {"kind": "strnd"}}}
    text = json.dumps(plan)
    edits = [edit for one in checker.check_text(text).remarks for edit in one.edits]
    assert [edit.new for edit in edits] == ['"title"', '"strand"']
    assert json.loads(replaced(text, edits))


def test_words_of_a_phrase_are_edited_in_every_layout(checker: Checker) -> None:
    said = "a line said in a phrase is edited at its rating"
    (case,) = (one for one in cases(RULES / "hold" / "crimp-hold.yaml") if one.name == said)
    expected = advice(case.text, case, checker)
    made = next(plan for rule, *_, plan in expected if rule == "crimp-hold")
    assert made["parts"]["strand"]["thread"] == "4 lb fused line, crystal"
    for text in in_layouts(read(case.text)).values():
        assert advice(text, case, checker) == expected, text
