"""`sheet`: one page about a plan."""

from __future__ import annotations

import argparse
from pathlib import Path

from wellstrung.commands.checked import checked_alone, exit_code, inputs
from wellstrung.commands.output import looks, save
from wellstrung.commands.progress import doing
from wellstrung.commands.since import since_last_time
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError
from wellstrung.report.pages import sheet
from wellstrung.report.pages.slip import slip
from wellstrung.report.pages.steps import steps


def run(options: argparse.Namespace) -> int:
    """Check the plan and write its page; the exit code."""
    checker = Checker(hosts.load(options.rule_files), quantities=True)
    result = since_last_time(checked_alone(options, checker)[1], options, checker)
    plan = result.plans[0]
    doing("drawing the page")
    write, name = (steps, "-steps.html") if options.steps else (sheet, ".html")
    if options.slip:
        if plan.ask is None or plan.ask.plan.section("repair") is None:
            raise HostError(f"{plan.file} is of no repair: a slip needs its `repair`, what came")
        write, name = slip, "-slip.html"
    page = {options.out or Path(Path(plan.file).stem + name): write(plan, checker, looks(options))}
    save(page, inputs(options, result), force=options.force)
    return exit_code(result)
