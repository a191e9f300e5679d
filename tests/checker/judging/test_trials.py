"""Remedies are tried on copies of the plan, and however many remarks there are, on a few copies."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.judging.judge import Judge
from wellstrung.judging.trials import MOST_READ, MOST_TRIALS

_HEAD = """\
plan: 1
title: Long
piece: necklace
parts:
  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}
"""


def _spare(count: int) -> str:
    """A plan with so many rings that nothing uses."""
    ring = "{kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}"
    spare = "".join(f"  spare {n}: {ring}\n" for n in range(count))
    return f"{_HEAD}{spare}run: [ring, ring]\n"


def _thick(count: int) -> str:
    """A plan with so many rings, each too thick for its size by an amount of its own."""
    rings = "".join(
        f"  loop {n}: {{kind: jump ring, outside: 5 mm, wire: {2 + n / 1000} mm, closing: open}}\n"
        for n in range(count)
    )
    return f"{_HEAD}{rings}run: [{', '.join(f'loop {n}, ring' for n in range(count))}]\n"


@pytest.fixture
def checks(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """Grows by one with each full check."""
    made: list[int] = []
    run = Judge.run

    def counted(self: Judge, subjects: object) -> None:
        made.append(1)
        run(self, subjects)  # type: ignore[arg-type]

    monkeypatch.setattr(Judge, "run", counted)
    return made


def test_alike_remarks_are_one_that_names_all(checker: Checker, checks: list[int]) -> None:
    result = checker.check_text(_spare(50))
    (remark,) = result.numbered
    assert remark.parts == tuple(f"spare {n}" for n in range(50))
    assert "the same goes for `spare 1`, `spare 2`" in remark.says
    assert remark.says.endswith(" and 9 more")
    assert len(remark.also) == 49
    assert len(remark.edits) == 50, "all can be taken out at once"
    assert len(checks) == 2


def test_a_few_alike_remarks_stay_apart(checker: Checker) -> None:
    result = checker.check_text(_spare(3))
    assert [remark.parts for remark in result.numbered] == [(f"spare {n}",) for n in range(3)]
    assert all(len(remark.edits) == 1 for remark in result.numbered)


def test_a_part_that_is_accepted_stays_by_itself(checker: Checker) -> None:
    line = "accept: [{rule: part-use, part: spare 2, because: it is for repairs}]\n"
    accepted, counted = checker.check_text(_spare(9) + line).numbered[::-1]
    if accepted.accepted is None:
        accepted, counted = counted, accepted
    assert accepted.parts == ("spare 2",)
    assert counted.accepted is None and len(counted.parts) == 8


@pytest.mark.parametrize("count", [30, 120])
def test_however_many_remarks_a_few_full_checks(
    count: int, checker: Checker, checks: list[int]
) -> None:
    result = checker.check_text(_thick(count))
    assert len(result.numbered) >= count
    assert 1 < len(checks) <= 1 + MOST_TRIALS
    assert all(remark.remedy for remark in result.numbered), "words where nothing was tried"


def test_a_very_long_plan_is_not_tried(checker: Checker, checks: list[int]) -> None:
    result = checker.check_text(_spare(5) + "#" * MOST_READ)
    assert len(checks) == 1
    assert result.numbered[0].remedy and not result.numbered[0].edits
