"""What a page shows of the time since an earlier version: of a plan, and of a class."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import PurePath

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.versions import Change
from wellstrung.report.since import (
    Told,
    cells_of,
    changed,
    facts,
    is_as_it_was,
    lists,
    totals,
    verdict,
)

#: so many signs stand in a line on paper
_SIGNS = 90


class LastTime(Struct, frozen=True):
    """What became of a plan: the verdict, remarks by list, what else changed, and sizes."""

    verdict: str
    file: str
    outcome: str
    notes: tuple[str, ...]
    lists: Sequence[tuple[str, Sequence[Told]]]
    facts: Sequence[tuple[str, str]]
    changed: dict[str, list[Change]]
    more: int

    #: so many remarks of a list stand in full, on paper a line each, and the rest is counted
    most = 5

    @property
    def lines(self) -> int:
        """How many lines it takes on paper, those behind the front of a sheet included."""
        taken = 2 + len(self.notes)
        for _, told in self.lists:
            alone = sum(not one.number for one in told)
            taken += min(alone, self.most + 1) + (alone < len(told))
        said = sum(len(text) + 15 for _, text in self.facts)
        said += sum(
            len(one.before) + len(one.after) + 20 for each in self.changed.values() for one in each
        )
        return taken + math.ceil(said / _SIGNS)


class Class(Struct, frozen=True):
    """What became of the plans of a class, a row for each: its cells, and its verdict."""

    totals: str
    rows: Sequence[tuple[PlanResult, tuple[str, str, str]]]
    came: Sequence[str]
    gone: Sequence[str]


def last_time(result: PlanResult) -> LastTime | None:
    """The section of a sheet; None where there is no earlier version."""
    since = result.since
    if since is None:
        return None
    return LastTime(
        verdict(result),
        _short(since.file, result.file),
        since.outcome,
        since.notes,
        [] if is_as_it_was(since) else [*lists(result)],
        [*facts(replace(since, opened=()))],  # what is open stands on every sheet
        *changed(since),
    )


def of_class(result: Result) -> Class | None:
    """The section of the page of a class; None where it was not compared with an earlier one."""
    if not result.since:
        return None
    rows = [(plan, cells_of(plan.since)) for plan in result.plans if plan.since is not None]
    came = [result.called(plan) for plan in result.plans if plan.since is None]
    gone = [plan.title or PurePath(plan.file).name for plan in result.gone]
    return Class(totals(result, PurePath(result.since).name), rows, came, gone)


def _short(old: str, new: str) -> str:
    """The file of an earlier version without its way there, with its folder where it must be."""
    file = PurePath(old)
    return file.name if file.name != PurePath(new).name else "/".join(file.parts[-2:])
