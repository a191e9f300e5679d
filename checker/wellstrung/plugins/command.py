"""What a command of the command line is."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from msgspec import Struct


class Command(Struct, frozen=True):
    """A command by name: a line of help, its options, and what runs it and gives the exit code.

    Exit 0 says that all is well, 1 that a plan is wrong, 2 that the command could not do its job.
    """

    name: str
    help: str
    options: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]
