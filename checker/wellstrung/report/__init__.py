"""Report writers, one module a writer, all fed the same result."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.judging.result import Result
from wellstrung.report.writer import Options, Writer


def _terminal(result: Result, options: Options) -> str:
    from wellstrung.report.text import write

    return write(result, options)


def _json(result: Result, options: Options) -> str:
    from wellstrung.report.json import write

    return write(result, ascii_only=options.ascii_only)


def _json_lines(result: Result, options: Options) -> str:
    from wellstrung.report.json import write_lines

    return write_lines(result, ascii_only=options.ascii_only)


def _sarif(result: Result, options: Options) -> str:
    from wellstrung.report.sarif import write

    return write(result, options)


def _pages(result: Result, options: Options) -> Mapping[str, str]:
    from wellstrung.judging.checker import Checker
    from wellstrung.report.pages import folder

    trying = Checker(options.installed) if options.installed is not None else None
    return folder(result, trying)


WRITERS = (
    Writer("text", _terminal),
    Writer("json", _json, quantities=True),
    Writer("jsonl", _json_lines, quantities=True),
    Writer("sarif", _sarif),
    Writer("html", quantities=True, pages=_pages),
)
