"""Text in styles, wrapped for a terminal.

`rich` can do this too, and draws our tables, but importing it for a few lines of text took a tenth
of a cold check.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Self

from wellstrung.common.patterns import Pattern

if TYPE_CHECKING:
    from rich.text import Text as RichText

_WORD = Pattern(r"\s*\S+\s*")
#: what a terminal sets and undoes each style by
_CODES = {"bold": "1", "dim": "2", "red": "31", "green": "32", "yellow": "33", "cyan": "36"}
#: signs below this one take a column each
_FIRST_WIDER = "\u0300"


class Text:
    r"""Words, each piece in its own style, such as `bold red`; `whole` words are never cut.

    >>> text = Text("a ring ", "bold").append("of 5 mm")
    >>> [line.plain for line in text.wrap(10)], text[2:].shown(colour=True)
    (['a ring of', '5 mm'], '\x1b[1mring \x1b[0mof 5 mm')
    """

    def __init__(self, text: str = "", style: str = "", *, whole: bool = False) -> None:
        self._pieces: list[tuple[str, str]] = []
        self._whole = whole
        self.append(text, style)

    def append(self, text: str, style: str = "") -> Self:
        """Put more behind it; returns itself."""
        if text:
            self._pieces.append((text.replace("\t", " "), style))
        return self

    def __add__(self, other: Text) -> Text:
        both = Text(whole=self._whole or other._whole)
        both._pieces = [*self._pieces, *other._pieces]
        return both

    def __bool__(self) -> bool:
        return bool(self._pieces)

    @property
    def plain(self) -> str:
        """Its words alone."""
        return "".join(text for text, _ in self._pieces)

    def shown(self, *, colour: bool) -> str:
        """As a terminal takes it."""
        if not colour:
            return self.plain
        return "".join(_set(text, style) if style else text for text, style in self._pieces)

    def __getitem__(self, part: slice) -> Text:
        start, end, _ = part.indices(len(self.plain))
        found, at = Text(whole=self._whole), 0
        for text, style in self._pieces:
            found.append(text[max(0, start - at) : max(0, end - at)], style)
            at += len(text)
        return found

    def wrap(self, width: int) -> list[Text]:
        """Its lines, none of them wider, without blanks at their ends."""
        lines, at = [], 0
        for line in self.plain.split("\n"):
            ends = [*_breaks(line, width, whole=self._whole), len(line)]
            for start, end in zip([0, *ends], ends, strict=False):
                lines.append(self[at + start : at + start + len(line[start:end].rstrip())])
            at += len(line) + 1
        return lines

    def __rich__(self) -> RichText:
        """The same in a table of `rich`."""
        from rich.text import Text as RichText

        return RichText.assemble(*self._pieces)


def columns_of(text: str) -> int:
    """How many columns of a terminal a text takes.

    >>> columns_of("± 5 mm"), columns_of("海")
    (6, 2)
    """
    if not text or max(text) < _FIRST_WIDER:
        return len(text)
    from rich.cells import cell_len

    return cell_len(text)


def _breaks(text: str, width: int, *, whole: bool) -> list[int]:
    """Where the lines of a paragraph begin, but for the first."""
    found, used = [], 0
    for word in _WORD.finditer(text):
        start, takes = word.start(), columns_of(word[0].rstrip())
        if used + takes <= width:
            used += columns_of(word[0])
            continue
        pieces = [word[0]] if whole or takes <= width else _cut(word[0], width)
        for piece in pieces:
            if start:
                found.append(start)
            start += len(piece)
        used = columns_of(pieces[-1])
    return found


def _cut(word: str, width: int) -> list[str]:
    """A word in pieces, each as long as fits."""
    if max(word) < _FIRST_WIDER:
        return [word[at : at + width] for at in range(0, len(word), width)]
    from rich.cells import chop_cells

    return chop_cells(word, width)


def _set(text: str, style: str) -> str:
    return f"\x1b[{';'.join(_CODES[word] for word in style.split())}m{text}\x1b[0m"
