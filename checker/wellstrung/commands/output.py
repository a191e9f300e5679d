"""What a command writes: to the terminal, to files, and as its exit code."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path

from wellstrung.common.wording import nearest
from wellstrung.report.writer import Options

OK, WRONG, BROKEN = 0, 1, 2
#: Signs that some terminals lack.
ASCII = str.maketrans(
    {
        "±": "+/-",
        "×": "x",
        "π": "pi",
        "°": " deg",
        "²": "2",
        "½": "1/2",
        "┃": "|",
        "—": "-",
        "…": "...",
        "£": "GBP ",
        "€": "EUR ",
        "¥": "JPY ",
    }
)


def looks(options: argparse.Namespace) -> Options:
    """How to write for this terminal."""
    terminal = sys.stdout.isatty()
    return Options(
        width=max(40, min(columns(), 120)),
        colour=terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb",
        workings=getattr(options, "workings", False),
        trace=getattr(options, "trace", False),
        ascii_only=not (sys.stdout.encoding or "ascii").lower().startswith("utf"),
    )


def columns() -> int:
    """The width of the terminal: `COLUMNS` if it is set, or its own, or 80."""
    width = os.environ.get("COLUMNS", "")
    if width.isdecimal() and int(width):
        return int(width)
    try:
        return os.get_terminal_size(sys.stdout.fileno()).columns
    except (OSError, ValueError):
        return 80


def show(text: str) -> None:
    """Print, in ASCII where the terminal cannot show more."""
    encoding = sys.stdout.encoding or "ascii"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(ASCII).encode(encoding, "replace").decode(encoding)
    sys.stdout.write(text + "\n")
    sys.stdout.flush()


def show_as_is(text: str) -> None:
    """Print a file: in UTF-8 whatever the terminal shows, and with its own line ends.

    A spreadsheet recognizes UTF-8 by the mark before it; plain ASCII needs none.
    """
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("ascii" if text.isascii() else "utf-8-sig"))
    sys.stdout.buffer.flush()


def note(says: str) -> None:
    """A line beside the output, on the error stream."""
    print(f"wellstrung: {says}", file=sys.stderr)


def save(pages: Mapping[Path, str]) -> None:
    """Write pages and name the first; raises HostError if that cannot be done."""
    from wellstrung.plugins.host import HostError

    for path, page in pages.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(page, encoding="utf-8")
        except OSError as error:
            raise HostError(f"{path} cannot be written: {error.strerror or error}") from None
    more = f" and {len(pages) - 1} more beside it" if len(pages) > 1 else ""
    show(f"wrote {next(iter(pages))}{more}")


def unknown(what: str, names: Iterable[str], known: Iterable[str]) -> int | None:
    """Exit 2 with a note on the first name that is not known; None if all are."""
    choices = list(known)
    for name in names:
        if name not in choices:
            near = nearest(name, choices)
            advice = f"write `{near}`" if near else f"there are {', '.join(choices)}"
            note(f"there is no {what} called `{name}`: {advice}")
            return BROKEN
    return None
