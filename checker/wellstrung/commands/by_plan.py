"""A report written plan by plan, by this process or by several, and what the plans total."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from msgspec.structs import replace

from wellstrung.commands.checked import (
    Notes,
    checked_files,
    note_benches,
    one_by_one,
    plan_files,
)
from wellstrung.commands.output import looks, show
from wellstrung.commands.progress import counted_off
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Summary
from wellstrung.judging.summary import Totals, summary
from wellstrung.report.writer import Options, PlanByPlan

#: A process takes as long to start as some twenty plans to check, so each has more than that to do.
_EACH_AT_LEAST = 40


def plan_by_plan(writer: PlanByPlan, options: argparse.Namespace, checker: Checker) -> Totals:
    """Write each plan as soon as it is checked; what they total.

    Plans that are compared with earlier ones are all checked before: which follows which may depend
    on the others.
    """
    files = plan_files(options)
    look = replace(looks(options), several=len(files) > 1)
    count = worth(files, options.workers) if options.since is None else 1
    written: Iterable[tuple[str, Summary]]
    if count > 1:
        written = _by_workers(files, options, checker, look, count)
    elif options.since is None:
        written = _by_this_process(one_by_one(files, options, checker), writer, look)
    else:
        from wellstrung.commands.since import since_last_time  # few runs compare

        whole = since_last_time(checked_files(files, options, checker), options, checker)
        look = replace(look, compared=whole)
        written = [(writer.each(one, look), summary(one)) for one in whole.plans]
    kept: list[Summary] = []

    def counted() -> Iterator[tuple[str, Summary]]:
        for text, plan in written:
            kept.append(plan)
            yield text, plan

    for piece in writer.whole(counted(), look):
        show(piece)
    return Totals(kept)


def _by_this_process(
    results: Iterable[PlanResult], writer: PlanByPlan, look: Options
) -> Iterator[tuple[str, Summary]]:
    for result in results:
        yield writer.each(result, look), summary(result)
        result.let_go()


def _by_workers(
    files: Sequence[Path], options: argparse.Namespace, checker: Checker, look: Options, count: int
) -> Iterator[tuple[str, Summary]]:
    """The same by several processes; what is noted beside the report is noted by this one."""
    from wellstrung.commands.workers import by_workers  # few runs are long enough

    note_benches(files, options, checker)
    notes = Notes()
    for text, plan in counted_off(by_workers(files, options, look, count), len(files)):
        notes.add(plan)
        yield text, plan


def worth(files: Sequence[Path], asked: int | None) -> int:
    """How many processes to check with: as many as asked for, or as pay; 1 is this one alone.

    What is no file, such as standard input, can be read by this process alone.
    """
    if asked is None:
        asked = min(_processors(), len(files) // _EACH_AT_LEAST)
    several = asked > 1 and len(files) > 1 and all(map(os.path.isfile, files))
    return min(asked, len(files)) if several else 1


def _processors() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
