"""The hooks: everything that a plugin can bring. A plugin is a module with any of these functions.

Register it under the entry-point group `wellstrung`, or name its file with `--rules`. Hooks only
collect; the checker calls what they return itself, one thing at a time, and their order never
matters. A plugin may say which version of the hooks it is written for, `WELLSTRUNG_PLUGIN = 1`: one
for another version stops the run.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import pluggy

if TYPE_CHECKING:
    from wellstrung.common.trade_words import TradeWord
    from wellstrung.derived.of_plan import Brought
    from wellstrung.model.parts import Kind, Stitch
    from wellstrung.plugins.command import Command
    from wellstrung.report.writer import Writer
    from wellstrung.rulebook import Rule
    from wellstrung.tables import Table

#: raised when a hook, or a record that one returns, changes so that plugins have to
VERSION = 1
GROUP = "wellstrung"
hookspec = pluggy.HookspecMarker(GROUP)
hookimpl = pluggy.HookimplMarker(GROUP)


@hookspec
def wellstrung_rules() -> Sequence[Rule]:  # type: ignore[empty-body]
    """Rules to check plans against."""


@hookspec
def wellstrung_kinds() -> Sequence[Kind]:  # type: ignore[empty-body]
    """Kinds of parts, each with its schema fragment."""


@hookspec
def wellstrung_stitches() -> Sequence[Stitch]:  # type: ignore[empty-body]
    """Stitches for woven parts."""


@hookspec
def wellstrung_quantities() -> Sequence[Brought]:  # type: ignore[empty-body]
    """Quantities of the whole piece, or of each step of its work."""


@hookspec
def wellstrung_writers() -> Sequence[Writer]:  # type: ignore[empty-body]
    """Report writers, each reachable as `--as NAME`."""


@hookspec
def wellstrung_tables() -> Sequence[Table]:  # type: ignore[empty-body]
    """Trade tables, each from `wellstrung.tables.read`; one by the name of ours adds rows to it."""


@hookspec
def wellstrung_words() -> Sequence[TradeWord]:  # type: ignore[empty-body]
    """Words of the trade that plans may use for one of theirs, each at its place."""


@hookspec
def wellstrung_commands() -> Sequence[Command]:  # type: ignore[empty-body]
    """Commands of the command line."""
