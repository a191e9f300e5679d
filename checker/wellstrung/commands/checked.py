"""The plans that a command names, checked, and the exit code of what was found."""

from __future__ import annotations

import argparse
import gc
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from wellstrung.commands.files import Benches, drawer, plans
from wellstrung.commands.output import BROKEN, OK, WRONG, note
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Failure, PlanResult, Result, Together
from wellstrung.plugins.error import HostError
from wellstrung.reading import tree

#: From so many plans on, a run at a terminal shows how far it is.
_LONG_RUN = 20


def plan_files(options: argparse.Namespace) -> list[Path]:
    """The plans that are named; raises HostError if there is none."""
    files = list(plans(options.plans, bench_is_named=options.bench is not None))
    earlier = getattr(options, "since", None)
    if earlier is not None:  # which may lie in the folder to check
        at = earlier.resolve()
        ways = [(file, file.resolve()) for file in files]
        files = [file for file, way in ways if at != way and at not in way.parents] or files
    if not files:
        raise HostError("there is no plan (a .yaml file that begins with `plan: 1`) here")
    return files


def only_plan(files: Sequence[Path]) -> Path:
    """The one plan that a command takes; raises HostError if a folder holds several."""
    if len(files) > 1:
        raise HostError(f"there are {len(files)} plans here: name one")
    return files[0]


def checked(options: argparse.Namespace, checker: Checker) -> Result:
    """The result of every plan named, each by its bench; raises HostError if there is no plan."""
    return checked_files(plan_files(options), options, checker)


def checked_files(files: Sequence[Path], options: argparse.Namespace, checker: Checker) -> Result:
    """The result of each of these plans, by its bench."""
    return Result(tuple(one_by_one(files, options, checker)))


def one_by_one(
    files: Sequence[Path], options: argparse.Namespace, checker: Checker
) -> Iterator[PlanResult]:
    """The same while it checks them, for a report that keeps none."""
    if not gc.isenabled():
        collect_new_garbage()
    benches = Benches(checker.installed, options.bench)
    kept = drawer(options.drawer, checker.installed) if options.drawer is not None else None
    alone, noted = len(files) == 1, set()
    for file in _watched(files):
        result = _checked(checker, file, benches, kept, alone=alone)
        for says in result.notes:
            if says not in noted:
                note(says)
                noted.add(says)
        yield result


def _checked(
    checker: Checker, file: Path, benches: Benches, kept: tree.Read | None, *, alone: bool
) -> PlanResult:
    """A plan by its bench; one whose bench cannot be used is not checked, and stops no other."""
    try:
        bench = benches.of(file)
    except HostError as error:
        if alone:
            raise
        failure = Failure("", "", f"{file} is not checked: {error}")
        return PlanResult(str(file), failures=(failure,), readable=False)
    return checker.check_file(file, bench, kept)


def checked_alone(options: argparse.Namespace, checker: Checker) -> tuple[PlanResult, Result]:
    """The one plan that a command takes; raises HostError if a folder holds several."""
    result = checked_files([only_plan(plan_files(options))], options, checker)
    return result.plans[0], result


def inputs(options: argparse.Namespace, result: Result) -> list[Path]:
    """Every file that was read for a result: plans, benches, drawers and rules.

    In a folder that is every file that could be read.
    """
    named = [*options.rule_files, *(path for path in (options.bench, options.drawer) if path)]
    plans = [one for path in options.plans for one in (path, *path.rglob("*.y*ml"))]
    plans += [Path(plan.since.file) for plan in result.plans if plan.since is not None]
    benches = [Path(plan.bench) for plan in result.plans if plan.bench]
    drawers = [Path(file) for plan in result.plans for file in plan.beside]
    return [*named, *plans, *benches, *drawers]


def collect_new_garbage() -> None:
    """All that is loaded stays: look for garbage among what is new, and seldom.

    Results are kept until they are written, so that looking through them often finds nothing.
    """
    gc.freeze()
    gc.set_threshold(20_000)
    gc.enable()


def exit_code(found: Together, *, strict: bool = False) -> int:
    """The exit code of a report; with `strict`, warnings count as errors."""
    if found.failures:
        return BROKEN
    wrong = found.count("error") or found.not_checked
    return WRONG if wrong or (strict and found.count("warning")) else OK


def exit_code_of_list(result: Result) -> int:
    """The exit code of a list, which shows no remarks: internal errors are noted beside it."""
    for failure in result.failures:
        note(failure.says)
    return exit_code(result)


def _watched(files: Sequence[Path]) -> Iterable[Path]:
    """The files one by one, with a progress bar if they are many and a person is watching."""
    if len(files) < _LONG_RUN or not sys.stderr.isatty():
        return files
    from rich.console import Console
    from rich.progress import track

    return track(files, "checking", console=Console(stderr=True), transient=True)
