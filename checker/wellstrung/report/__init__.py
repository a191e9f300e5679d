"""Report writers, one module a writer, all fed the same result."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from wellstrung.judging.result import Result


class Options(Struct, frozen=True):
    """How a report is wanted: `width` in columns; colour, workings and ASCII for the terminal."""

    width: int = 80
    colour: bool = False
    workings: bool = False
    ascii_only: bool = False


class Writer(Struct, frozen=True):
    """A report by name; `quantities` says that it prints every quantity of every plan.

    One that makes several files gives them as `pages`, text by file name, to be put in a folder.
    """

    name: str
    write: Callable[[Result, Options], str] | None = None
    quantities: bool = False
    pages: Callable[[Result], Mapping[str, str]] | None = None


def _terminal(result: Result, options: Options) -> str:
    from wellstrung.report.text import write

    return write(result, options)


def _json(result: Result, options: Options) -> str:
    from wellstrung.report.json import write

    return write(result)


def _pages(result: Result) -> Mapping[str, str]:
    from wellstrung.report.pages import folder

    return folder(result)


WRITERS = (
    Writer("text", _terminal),
    Writer("json", _json, quantities=True),
    Writer("html", quantities=True, pages=_pages),
)
