"""`sizes`: one plan over a range of sizes."""

from __future__ import annotations

import argparse

from wellstrung.commands.checked import checked_alone, exit_code_of_list
from wellstrung.commands.output import looks, show
from wellstrung.commands.progress import doing
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError
from wellstrung.report import sizes_list
from wellstrung.what_if import size_range


def run(options: argparse.Namespace) -> int:
    """Check the plan at every size and list what changes; the exit code."""
    host = hosts.load(options.rule_files)
    plan, result = checked_alone(options, Checker(host, keep=True))
    doing("trying the sizes")
    try:
        found = size_range.over(plan, host, options.first, options.last, options.step)
    except size_range.NoSizes as why:
        raise HostError(str(why)) from why
    if options.form == "json":
        show(sizes_list.as_json(found))
    else:
        show(sizes_list.write(found, looks(options)))
    return exit_code_of_list(result)
