"""`completion`: a script by which a shell completes commands, options, names and plan files."""

from __future__ import annotations

import argparse

import shtab

from wellstrung import tables
from wellstrung.commands.files import PLAN_ENDINGS
from wellstrung.commands.output import OK, show
from wellstrung.commands.parser import add_brought, commands_of, parser
from wellstrung.plugins import host as hosts

#: folders, and files that may be plans
_PLAN = shtab.glob(*(f"*{ending}" for ending in PLAN_ENDINGS))


def run(options: argparse.Namespace) -> int:
    """Print the script for a shell, with the names of all that is installed; the exit code."""
    whole, host = parser(), hosts.load()
    add_brought(whole, host.commands)
    names = {"rules": list(host.rules), "tables": list(tables.names())}
    for command, its in commands_of(whole).choices.items():
        for action in its._actions:
            if action.dest in ("plans", "since"):
                action.complete = _PLAN  # type: ignore[attr-defined]
            elif action.dest == "names" and command in names:
                action.choices = names[command]
            elif action.dest == "form" and action.choices is None:
                action.choices = list(host.writers)
            elif action.type is not None and action.metavar == "FILE":
                action.complete = shtab.FILE  # type: ignore[attr-defined]
            elif action.metavar == "DIR":
                action.complete = shtab.DIRECTORY  # type: ignore[attr-defined]
    show(shtab.complete(whole, options.shell))
    return OK
