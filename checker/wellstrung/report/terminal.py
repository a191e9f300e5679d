"""Text for a terminal: a page of a set width, and how levels, places and counts are written."""

from __future__ import annotations

from collections.abc import Iterable
from io import StringIO
from typing import TYPE_CHECKING

from wellstrung.common.places import Place
from wellstrung.common.wording import visible
from wellstrung.report.styled import Text
from wellstrung.report.writer import Options

if TYPE_CHECKING:
    from rich.table import Table

#: each level is a word; colour only repeats it
STYLES = {
    "slip": "bold red",
    "error": "bold red",
    "warning": "bold yellow",
    "caution": "bold cyan",
}
OUTCOMES = {
    "makeable": "bold green",
    "makeable with warnings": "bold yellow",
    "not makeable": "bold red",
    "not fully checked": "bold red",
    "nothing wrong found": "bold yellow",
    "no error found": "bold yellow",
    "not checked yet": "bold red",
}


class Page:
    """A page of a set width that collects what is printed on it."""

    def __init__(self, options: Options) -> None:
        self._lines: list[str] = []
        self.width = options.width
        self.ascii_only = options.ascii_only
        self._colour = options.colour

    def put(self, text: Text, indent: int = 0) -> None:
        """A line as it is, however long."""
        self._lines.append(" " * indent + text.shown(colour=self._colour))

    def line(self, text: str | Text = "", indent: int = 0, style: str = "") -> None:
        """A paragraph, wrapped and indented; a blank line without text."""
        body = text if isinstance(text, Text) else Text(text, style)
        for line in body.wrap(max(1, self.width - indent)):
            self.put(line, indent)

    def path(self, text: str, indent: int = 0, style: str = "") -> None:
        """A line that is never wrapped, so that a terminal can follow it."""
        self.put(Text(text, style), indent)

    def pair(self, name: str, text: str, indent: int, style: str = "", gap: int = 11) -> None:
        """A short name and the text that belongs to it, hanging."""
        if not text:
            return
        for line in Text(text).wrap(max(20, self.width - indent - gap)):
            self.put(Text(name.ljust(gap), style) + line, indent)
            name = ""

    def hanging(self, text: Text, hang: int, indent: int = 0) -> None:
        """A paragraph from `indent` on, whose further lines begin at `hang`."""
        first = text.wrap(max(20, self.width - indent))[0]
        self.put(first, indent)
        begun = len(first.plain)
        begun += len(text.plain[begun:]) - len(text.plain[begun:].lstrip())
        for line in text[begun:].wrap(max(20, self.width - hang)):
            if line:
                self.put(line, hang)

    def several(self, name: str, texts: Iterable[str], indent: int) -> None:
        """Several texts that belong to one name, each from a new line."""
        for number, text in enumerate(texts):
            self.pair("" if number else name, text, indent)

    def table(self) -> Table:
        """A table to fill in and to draw."""
        from rich import box  # most pages have no table
        from rich.table import Table

        return Table(
            box=box.ASCII2 if self.ascii_only else box.SIMPLE, pad_edge=False, show_edge=False
        )

    def draw(self, table: Table) -> None:
        """A table that is filled in, as wide as the page."""
        from rich.console import Console

        out = StringIO()
        Console(
            file=out,
            width=self.width,
            color_system="standard" if self._colour else None,
            force_terminal=self._colour,
            highlight=False,
            legacy_windows=False,
            _environ={},
        ).print(table)
        self._lines.append(out.getvalue().rstrip("\n"))

    def text(self) -> str:
        """The whole page, without blanks at the ends of lines."""
        lines = [line.rstrip() for line in "\n".join(self._lines).rstrip().split("\n")]
        return visible("\n".join(lines))


def where(place: Place) -> str:
    """A place as `file:line:column`."""
    return f"{place.file}:{place.line}:{place.column}"


def counted(number: int, word: str) -> str:
    """A count with its word.

    >>> counted(1, "error"), counted(0, "warning")
    ('1 error', '0 warnings')
    """
    return f"{number} {word}{'' if number == 1 else 's'}"
