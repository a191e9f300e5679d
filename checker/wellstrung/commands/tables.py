"""`tables`: every reference value, with its grade and sources."""

from __future__ import annotations

import argparse

from wellstrung import tables
from wellstrung.commands.output import OK, looks, show, unknown
from wellstrung.plugins import host as hosts
from wellstrung.report import table_list


def run(options: argparse.Namespace) -> int:
    """List the tables, or those named; the exit code."""
    hosts.load()  # plugins may bring tables
    refused = unknown("table", options.names, tables.names(), "wellstrung tables")
    if refused is not None:
        return refused
    if options.form == "json":
        show(table_list.as_json(options.names))
    else:
        show(table_list.write(options.names, looks(options)))
    return OK
