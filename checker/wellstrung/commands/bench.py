"""`bench`: every setting there is, and what the bench of a plan makes of it."""

from __future__ import annotations

import argparse
from pathlib import Path

from wellstrung.commands.files import BENCH_FILE, Benches, holds
from wellstrung.commands.output import OK, looks, show
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError
from wellstrung.reading.settings import Bench
from wellstrung.report import bench_list


def run(options: argparse.Namespace) -> int:
    """List the settings, with those of a bench in force; the exit code."""
    host = hosts.load(options.rule_files)
    bench, result = _of_file(options.file, host) if options.file is not None else (None, None)
    lines = shopping.needed(understood([result])) if result is not None else []
    prices = {line.name: line.price.text if line.price else "" for line in lines}
    plan = result.ask.plan if result is not None and result.ask is not None else None
    settings = bench_list.listed(host, bench, prices, plan)
    if options.form == "json":
        show(bench_list.as_json(settings, bench, host.measures))
    else:
        show(bench_list.write(settings, bench, host.measures, looks(options), plan))
    return OK


def _of_file(file: Path, host: hosts.Host) -> tuple[Bench | None, PlanResult | None]:
    """The bench that a file is, or that its plan goes by, and the plan itself."""
    if not file.exists():
        raise HostError(f"`{file}` is not there: name a plan, a bench file or a folder")
    if file.is_dir():  # as for a plan in it
        return Benches(host, None).of(file / BENCH_FILE), None
    if holds(file) == "bench":
        return Benches(host, file).of(file), None
    bench = Benches(host, None).of(file)
    return bench, Checker(host, keep=True, trials=0).check_file(file, bench)
