"""A run with a group that repeats gets the report of the same run written out."""

from __future__ import annotations

from typing import Any

import pytest

from generated.choices import Seeded
from generated.layout import Layout
from generated.pieces_of_metal import links
from generated.plans import whole
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult


@pytest.mark.parametrize("seed", ["a", "b", "c", "d", "e", "f"])
def test_a_group_that_repeats_is_the_same_as_written_out(checker: Checker, seed: str) -> None:
    plan = whole(Seeded(seed), links)
    short = {**plan, "run": shortened(plan["run"])}
    long, found = (
        checker.check_text(Layout(Seeded(seed)).text(one), "plan.yaml") for one in (plan, short)
    )
    assert found.readable and judged(found) == judged(long)


def shortened(run: list[Any]) -> list[Any]:
    """The run with its longest row of one group written as that group and how often it stands."""
    rows = []
    for at in range(len(run)):
        for width in (1, 2):
            group, times = run[at : at + width], 1
            while run[at + width * times :][:width] == group:
                times += 1
            rows.append((width * times if times > 1 else 0, at, group, times))
    length, at, group, times = max(rows, key=lambda row: row[0])
    assert length, "no group stands twice in a row"
    return [*run[:at], {"repeat": times, "of": group}, *run[at + length :]]


def judged(result: PlanResult) -> tuple[Any, ...]:
    remarks = [(it.identity, it.level, it.says, it.needed) for it in result.remarks]
    margins = [(*it[:2], it.margin and it.margin.middle, it.note) for it in result.held]
    return sorted(remarks), margins, result.unjudged
