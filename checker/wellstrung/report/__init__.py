"""Report writers, one module a writer, all fed the same result."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from wellstrung.records import record

if TYPE_CHECKING:
    from wellstrung.checking import Result


@record
class Options:
    """How a report is wanted: `width` in columns; colour, workings and ASCII for the terminal."""

    width: int = 80
    colour: bool = False
    workings: bool = False
    ascii_only: bool = False


@record
class Writer:
    """A report by name; `quantities` says that it prints every quantity of every plan."""

    name: str
    write: Callable[[Result, Options], str]
    quantities: bool = False


def _terminal(result: Result, options: Options) -> str:
    from wellstrung.report.terminal import write

    return write(result, options)


def _json(result: Result, options: Options) -> str:
    from wellstrung.report.json_report import write

    return write(result)


WRITERS = (Writer("text", _terminal), Writer("json", _json, quantities=True))
