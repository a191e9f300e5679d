"""The command line. Exit: 0 no errors, 1 a plan has errors, 2 the checker could not do its job."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from importlib import import_module

from wellstrung.commands.output import BROKEN
from wellstrung.commands.parser import parser


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    if arguments is None:  # a process of its own: nothing that it loads is garbage
        gc.disable()
    options = parser().parse_args(arguments)
    from wellstrung.plugins.host import HostError  # loads plugins, which `--help` does without

    try:
        code: int = import_module(f"wellstrung.commands.{options.command}").run(options)
    except HostError as error:
        print(f"wellstrung: {error}", file=sys.stderr)
        return BROKEN
    except KeyboardInterrupt:
        print("wellstrung: stopped before the end", file=sys.stderr)
        return BROKEN
    except BrokenPipeError:  # the reader has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return BROKEN
    return code
