"""The plans that a command names, checked, and the exit code of what was found."""

from __future__ import annotations

import argparse
import gc
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from typing import TypeVar

from wellstrung.commands.files import Benches, Say, drawer, plans
from wellstrung.commands.output import BROKEN, OK, WRONG, note
from wellstrung.commands.progress import counted_off
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Counted, Failure, PlanResult, Result, Together
from wellstrung.plugins.error import HostError

P = TypeVar("P")


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
    check, notes = checking(options, checker, alone=len(files) == 1), Notes()
    for file in counted_off(files, len(files)):
        result = check(file)
        notes.add(result)
        yield result


def note_benches(files: Iterable[Path], options: argparse.Namespace, checker: Checker) -> None:
    """Note which bench files are not used; raises HostError where a named file is unusable."""
    benches = Benches(checker.installed, options.bench)
    if options.drawer is not None:
        drawer(options.drawer, checker.installed)
    for file in files:
        with suppress(HostError):  # said of its plan
            benches.of(file)


class Notes:
    """What of the drawers of plans is not used, each noted once."""

    def __init__(self) -> None:
        self._noted: set[str] = set()

    def add(self, plan: Counted) -> None:
        """Note what was not noted before."""
        for says in plan.notes:
            if says not in self._noted:
                self._noted.add(says)
                note(says)


def checking(
    options: argparse.Namespace, checker: Checker, *, alone: bool, say: Say | None = note
) -> Callable[[Path], PlanResult]:
    """What checks a plan by its bench; raises HostError where a named bench or drawer is unusable.

    A plan whose own bench cannot be used is not checked, and stops no other unless it is `alone`.
    """
    benches = Benches(checker.installed, options.bench, say=say)
    kept = drawer(options.drawer, checker.installed) if options.drawer is not None else None

    def check(file: Path) -> PlanResult:
        try:
            bench = benches.of(file)
        except HostError as error:
            if alone:
                raise
            failure = Failure("", "", f"{file} is not checked: {error}")
            return PlanResult(str(file), failures=(failure,), readable=False)
        return checker.check_file(file, bench, kept)

    return check


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
