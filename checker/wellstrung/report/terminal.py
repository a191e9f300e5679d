"""Text for a terminal: a page of a set width, and how levels, places and counts are written."""

from __future__ import annotations

from collections.abc import Iterable
from io import StringIO
from typing import TYPE_CHECKING

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from wellstrung.common.places import Place
from wellstrung.common.wording import visible
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
#: lines of a page: without a number `rich` asks the terminal at every line, 8 % of a long report
_NO_LIMIT = 1_000_000


class Page:
    """A page of a set width that collects what is printed on it."""

    def __init__(self, options: Options) -> None:
        self._out = StringIO()
        self.ascii_only = options.ascii_only
        self.console = Console(
            file=self._out,
            width=options.width,
            height=_NO_LIMIT,
            color_system="standard" if options.colour else None,
            force_terminal=options.colour,
            markup=False,
            highlight=False,
            emoji=False,
            legacy_windows=False,
            _environ={},
        )

    def line(self, text: str | Text = "", indent: int = 0, style: str = "") -> None:
        """A paragraph, wrapped and indented; a blank line without text."""
        if not text:
            self.console.print()
            return
        body = text if isinstance(text, Text) else Text(text, style=style)
        self.console.print(Padding(body, (0, 0, 0, indent), expand=False))

    def path(self, text: str, indent: int = 0, style: str = "") -> None:
        """A line that is never wrapped, so that a terminal can follow it."""
        self.console.print(Text(" " * indent + text, style=style), soft_wrap=True)

    def pair(self, name: str, text: str, indent: int, style: str = "", gap: int = 11) -> None:
        """A short name and the text that belongs to it, hanging."""
        if not text:
            return
        room = max(20, self.console.width - indent - gap)
        lines = Text(text).wrap(self.console, room)
        for number, line in enumerate(lines):
            line.rstrip()
            head = Text(name.ljust(gap) if number == 0 else " " * gap, style=style)
            self.console.print(Text(" " * indent) + head + line, soft_wrap=True)

    def hanging(self, text: Text, hang: int, indent: int = 0) -> None:
        """A paragraph from `indent` on, whose further lines begin at `hang`."""
        text.expand_tabs(1)
        first = text.wrap(self.console, max(20, self.console.width - indent))[0]
        begun = len(first.plain.rstrip())
        begun += len(text.plain[begun:]) - len(text.plain[begun:].lstrip())
        rest = text[begun:].wrap(self.console, max(20, self.console.width - hang))
        for at, line in ((indent, first), *((hang, one) for one in rest if one)):
            line.rstrip()
            self.console.print(Text(" " * at) + line, soft_wrap=True)

    def several(self, name: str, texts: Iterable[str], indent: int) -> None:
        """Several texts that belong to one name, each from a new line."""
        for number, text in enumerate(texts):
            self.pair("" if number else name, text, indent)

    def table(self) -> Table:
        """A table to fill in and to print on the console."""
        from rich import box  # most pages have no table
        from rich.table import Table

        return Table(
            box=box.ASCII2 if self.ascii_only else box.SIMPLE, pad_edge=False, show_edge=False
        )

    def text(self) -> str:
        """The whole page, without blanks at the ends of lines."""
        lines = [line.rstrip() for line in self._out.getvalue().rstrip().split("\n")]
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
