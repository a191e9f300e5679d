"""What an evening class adds: the hooks, each with what it brings from a file of its own."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from harbour_extras.float import FLOAT
from harbour_extras.gangway_stitch import GANGWAY
from harbour_extras.rules import FLOATS, HIGH_FLOAT
from harbour_extras.tally import COMMAND, TALLY
from wellstrung import tables
from wellstrung.common.trade_words import TradeWord
from wellstrung.model.parts import Kind, Stitch
from wellstrung.plugins.command import Command
from wellstrung.plugins.hooks import hookimpl
from wellstrung.report.writer import Writer
from wellstrung.rulebook import Rule

WELLSTRUNG_PLUGIN = 1


@hookimpl
def wellstrung_rules() -> Sequence[Rule]:
    """Rules about floats."""
    return [FLOATS, HIGH_FLOAT]


@hookimpl
def wellstrung_kinds() -> Sequence[Kind]:
    """The cork float."""
    return [FLOAT]


@hookimpl
def wellstrung_stitches() -> Sequence[Stitch]:
    """The gangway stitch."""
    return [GANGWAY]


@hookimpl
def wellstrung_words() -> Sequence[TradeWord]:
    """What the class calls a float."""
    return [TradeWord("bobber", "kind", "cork float")]


@hookimpl
def wellstrung_tables() -> Sequence[tables.Table]:
    """What floats weigh."""
    return [tables.read(Path(__file__).parent / "floats.json")]


@hookimpl
def wellstrung_writers() -> Sequence[Writer]:
    """One line a plan."""
    return [TALLY]


@hookimpl
def wellstrung_commands() -> Sequence[Command]:
    """The same line as a command."""
    return [COMMAND]
