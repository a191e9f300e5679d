"""`cuts`: what to cut, from which length."""

from __future__ import annotations

import argparse

from wellstrung.commands.checked import checked, exit_code_of_list
from wellstrung.commands.output import looks, show
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import cutting
from wellstrung.plugins import host as hosts
from wellstrung.report import cuts_list


def run(options: argparse.Namespace) -> int:
    """Check the plans and list their cuts; the exit code."""
    result = checked(options, Checker(hosts.load(options.rule_files), keep=True))
    found = cutting.listed(understood(result.plans), options.makers)
    if options.form == "json":
        show(cuts_list.as_json(result.plans, options.makers, found))
    else:
        show(cuts_list.write(result.plans, options.makers, found, looks(options)))
    return exit_code_of_list(result)
