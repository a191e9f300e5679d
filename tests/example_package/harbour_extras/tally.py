"""One line a plan: a writer of reports, and a command that prints it."""

from __future__ import annotations

import argparse
from pathlib import Path

from wellstrung import check, load_plan
from wellstrung.judging.result import Result
from wellstrung.plugins.command import Command
from wellstrung.report.writer import Options, Writer


def _write(result: Result, options: Options) -> str:
    return "\n".join(f"{plan.title}: {plan.outcome}" for plan in result.plans)


def _options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("plans", nargs="+", type=Path)


def _run(options: argparse.Namespace) -> int:
    results = [check(load_plan(path)) for path in options.plans]
    print(_write(Result(tuple(results)), Options()))
    return int(any(result.outcome == "not makeable" for result in results))


TALLY = Writer("tally", _write)
COMMAND = Command("tally", "one line for each plan", _options, _run)
