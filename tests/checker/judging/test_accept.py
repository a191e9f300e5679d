"""Acceptances: what a plan may accept of what is said of it, and what it may not."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.reading import tree
from wellstrung.report.text import write
from wellstrung.report.writer import Options

#: a cap so loose that it is a warning, one so tight that it is an error
LOOSE = ("bore: 10 mm, depth: 7 mm, outside: 11.5", "bore: 11.4 mm, depth: 7 mm, outside: 13")
TIGHT = ("bore: 10 mm", "bore: 6 mm")
WHOLE = ("", "")


def checked(checker: Checker, plan: str, change: tuple[str, str], *lines: str) -> PlanResult:
    accept = "".join(f"  - {line}\n" for line in lines)
    return checker.check_text(f"{plan.replace(*change)}accept:\n{accept}" if lines else plan)


def told(result: PlanResult) -> list[tuple[str, str, str]]:
    """Of the acceptances alone: level, place, words."""
    return [
        (remark.level, f"{remark.place.line}:{remark.place.column}", remark.says)
        for remark in result.remarks
        if remark.rule == "plan-shape"
    ]


@pytest.mark.parametrize(
    "line",
    [
        "{rule: cap-bore, part: cap, because: tried on the class samples}",
        "{rule: cap-bore, part: rope, because: tried on the class samples}",
        "{rule: cap-bore, because: tried on the class samples}",
    ],
)
def test_a_warning_is_accepted_with_its_reason(
    line: str, checker: Checker, whole_collar: str
) -> None:
    before = checker.check_text(whole_collar.replace(*LOOSE))
    assert before.outcome == "makeable with warnings"
    result = checked(checker, whole_collar, LOOSE, line)
    accepted = [remark for remark in result.remarks if remark.accepted is not None]
    assert [(remark.rule, remark.level, remark.accepted) for remark in accepted] == [
        ("cap-bore", "warning", "tried on the class samples")
    ]
    assert told(result) == []
    assert result.outcome == "makeable" and result.count("warning") == 0


def test_it_is_shown_as_accepted_with_its_reason(checker: Checker, whole_collar: str) -> None:
    line = "{rule: cap-bore, part: cap, because: tried on the class samples}"
    result = checked(checker, whole_collar, LOOSE, line)
    page = write(Result((result,)), Options(width=80))
    assert "1. WARNING, accepted: the bore of cap" in page
    assert "because    tried on the class samples" in page


def test_of_two_that_fit_the_later_gives_the_reason(checker: Checker, whole_collar: str) -> None:
    lines = ("{rule: cap-bore, because: the first}", "{rule: cap-bore, because: the second}")
    result = checked(checker, whole_collar, LOOSE, *lines)
    assert [r.accepted for r in result.remarks if r.accepted] == ["the second"]
    assert told(result) == []


@pytest.mark.parametrize(
    ("change", "line", "level", "column", "says"),
    [
        (
            WHOLE,
            "{rule: cap-bore, part: cap, because: why not}",
            "warning",
            12,
            "there is nothing to accept of `cap-bore` here: delete the line",
        ),
        (
            LOOSE,
            "{rule: cap-bore, part: frame, because: the wrong part}",
            "warning",
            12,
            "there is nothing to accept of `cap-bore` here: delete the line",
        ),
        (
            LOOSE,
            "{rule: cap-boer, because: why not}",
            "error",
            12,
            "there is no rule called `cap-boer`: write `cap-bore`",
        ),
        (
            LOOSE,
            "{rule: quite another, because: why not}",
            "error",
            12,
            "there is no rule called `quite another`: `wellstrung rules` lists them",
        ),
        (
            LOOSE,
            "{rule: cap-bore, part: cape, because: why not}",
            "error",
            28,
            "there is no part called `cape`: write `cap`",
        ),
        (
            LOOSE,
            "{rule: cap-bore, part: zzz, because: why not}",
            "error",
            28,
            "there is no part called `zzz`: delete the line",
        ),
        (
            TIGHT,
            "{rule: cap-bore, part: cap, because: it will give}",
            "warning",
            12,
            "`cap-bore` is an error here, and only a warning can be accepted: fix it, or measure",
        ),
        (
            WHOLE,
            "{rule: bench-air, because: the window is open}",
            "warning",
            12,
            "`bench-air` is a caution here, and only a warning can be accepted: delete the line,"
            " and heed it",
        ),
        (
            WHOLE,
            "{rule: spare-share, part: kelp, because: a bead is a part of it too}",
            "warning",
            12,
            "there is nothing to accept of `spare-share` here: delete the line",
        ),
    ],
)
def test_an_acceptance_that_accepts_nothing_is_told_at_its_line(
    change: tuple[str, str],
    line: str,
    level: str,
    column: int,
    says: str,
    checker: Checker,
    whole_collar: str,
) -> None:
    result = checked(checker, whole_collar, change, line)
    last = len(result.text.splitlines())
    assert told(result) == [(level, f"{last}:{column}", says)]
    assert not any(remark.accepted for remark in result.remarks)


@pytest.mark.parametrize("change", [TIGHT, WHOLE])
def test_errors_and_cautions_stay_as_they_are(
    change: tuple[str, str], checker: Checker, whole_collar: str
) -> None:
    lines = ("{rule: cap-bore, because: never mind}", "{rule: bench-air, because: never mind}")
    plain = checker.check_text(whole_collar.replace(*change))
    result = checked(checker, whole_collar, change, *lines)
    # two readings of a plan give margins of their own
    before, after = (
        [replace(remark, margin=None) for remark in one.remarks if remark.level != "warning"]
        for one in (plain, result)
    )
    assert before == after
    assert result.count("error") == plain.count("error")


def test_a_misspelt_word_of_an_acceptance_is_mended(checker: Checker, whole_collar: str) -> None:
    line = "{rule: cap-boer, part: cape, because: tried on the class samples}"
    text = checked(checker, whole_collar, LOOSE, line).text
    for _ in range(2):
        (remark,) = (r for r in checker.check_text(text).remarks if r.rule == "plan-shape")
        text = tree.replaced(text, [(edit.place, edit.new) for edit in remark.edits])
    assert told(checker.check_text(text)) == []


@pytest.mark.parametrize(
    "line",
    ["{rule: cap-bore, because: it will give}", "{rule: cap-boer, because: slip}"],
)
def test_an_acceptance_keeps_no_remedy_from_being_offered(
    line: str, checker: Checker, whole_collar: str
) -> None:
    result = checked(checker, whole_collar, TIGHT, line)
    (bore,) = (remark for remark in result.remarks if remark.rule == "cap-bore")
    assert bore.edits
