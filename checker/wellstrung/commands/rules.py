"""`rules`: what is checked, and why."""

from __future__ import annotations

import argparse

from wellstrung.commands.output import OK, looks, show, unknown
from wellstrung.plugins import host as hosts
from wellstrung.report import rule_list


def run(options: argparse.Namespace) -> int:
    """List the rules, or show those named; the exit code."""
    host = hosts.load(options.rule_files)
    refused = unknown("rule", options.names, host.rules, "wellstrung rules")
    if refused is not None:
        return refused
    if options.form == "json":
        show(rule_list.as_json(host, options.names))
    else:
        show(rule_list.write(host, options.names, looks(options)))
    return OK
