"""The command line. Exit: 0 no errors, 1 a plan has errors, 2 the checker could not do its job."""

from __future__ import annotations

import os
import sys
from argparse import ArgumentParser
from collections.abc import Mapping, Sequence
from contextlib import nullcontext
from importlib import import_module
from typing import TYPE_CHECKING

from wellstrung.commands.output import BROKEN, note
from wellstrung.commands.parser import add_brought, commands_of, parser
from wellstrung.commands.progress import at_work
from wellstrung.plugins import entry_points
from wellstrung.plugins.error import HostError

if TYPE_CHECKING:
    from wellstrung.plugins.command import Command


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    if sys.stdout is None:  # as Python leaves it where it is closed
        note("the output is closed: nothing can be shown")
        return BROKEN
    try:
        whole = parser()
        others = _commands_of_others(whole, sys.argv[1:] if arguments is None else arguments)
        options = whole.parse_args(arguments)
        other = others.get(options.command)
        run = other.run if other else import_module(f"wellstrung.commands.{options.command}").run
        alone = other or options.command == "start" or getattr(options, "watch", False)
        with nullcontext() if alone else at_work():  # those write by themselves, and wait
            code: int = run(options)
    except HostError as error:
        note(str(error))
        return BROKEN
    except KeyboardInterrupt:
        note("stopped before the end")
        return BROKEN
    except BrokenPipeError:  # the reader has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return BROKEN
    except OSError as error:  # as of a current folder that is gone
        note(f"{error.filename or 'a file or a folder'}: {(error.strerror or str(error)).lower()}")
        return BROKEN
    return code


def _commands_of_others(whole: ArgumentParser, arguments: Sequence[str]) -> Mapping[str, Command]:
    """The commands that plugins bring, added to the parser where one of ours is not named."""
    ours = commands_of(whole).choices
    if next(iter(arguments), "") in ours or not entry_points.others("wellstrung"):
        return {}
    from wellstrung.plugins.host import load

    found = load().commands
    add_brought(whole, found)
    return found
