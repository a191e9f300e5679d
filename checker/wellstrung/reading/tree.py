"""A tree of nodes that know their place in a file, and edits to the text at such places."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Any

import yaml

from wellstrung.common.places import Fault, Place

#: Line ends that every editor counts alike; the rarer ones of YAML 1.1 are forbidden instead.
BREAK = re.compile(r"\r\n|\n|\r")


class Node:
    """A value; `value` is the same as plain data.

    Its place is made when it is asked for: most nodes are never pointed to. Lines and columns count
    from 0, as the parser's marks do; the marks themselves would be many more things to keep.
    """

    __slots__ = ("column", "end_column", "end_line", "file", "line", "value")

    #: what it names, for what is no mapping
    entries: dict[str, Entry] = {}  # noqa: RUF012 - nothing is ever put in

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark, value: Any) -> None:
        self.file = file
        self.line = start.line
        self.column = start.column
        self.end_line = end.line
        self.end_column = end.column
        self.value = value

    @property
    def place(self) -> Place:
        """Where it stands."""
        return Place(
            self.file, self.line + 1, self.column + 1, self.end_line + 1, self.end_column + 1
        )


class Scalar(Node):
    """One word, number or text; `quoted` if the author quoted it."""

    __slots__ = ("quoted", "text")

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark, text: str) -> None:
        self.file = file
        self.line = start.line
        self.column = start.column
        self.end_line = end.line
        self.end_column = end.column
        self.value = self.text = text
        self.quoted = True


class Entry:
    """A key with what it names."""

    __slots__ = ("key", "node")

    def __init__(self, key: Scalar, node: Node) -> None:
        self.key = key
        self.node = node


class Mapping(Node):
    """Named entries, in the author's order."""

    __slots__ = ("entries",)

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark) -> None:
        super().__init__(file, start, end, {})
        self.entries: dict[str, Entry] = {}


class Sequence(Node):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark) -> None:
        super().__init__(file, start, end, [])
        self.items: list[Node] = []


class Read:
    """What was read: the text, its tree where it could be built, and what stood in the way."""

    __slots__ = ("faults", "file", "text", "tree")

    def __init__(self, file: str, text: str, tree: Mapping | None, faults: Iterable[Fault]) -> None:
        self.file = file
        self.text = text
        self.tree = tree
        self.faults = tuple(faults)


def offset(text: str, line: int, column: int) -> int:
    r"""Where a line and column (from 1) stand in a text.

    >>> offset("a: 1\nb: 2", 2, 4)
    8
    """
    starts = _line_starts(text)
    return min(starts[line - 1] + column - 1, len(text)) if line <= len(starts) else len(text)


@lru_cache(maxsize=2)  # a plan and its drawer: edits and messages ask for one place after another
def _line_starts(text: str) -> list[int]:
    return [0, *(match.end() for match in BREAK.finditer(text))]


def replaced(text: str, edits: Iterable[tuple[Place, str]]) -> str:
    """The text with every place replaced by its new words; places must not overlap.

    >>> replaced("bore: 8 mm", [(Place("plan.yaml", 1, 7, 1, 11), "9 mm")])
    'bore: 9 mm'
    """
    spans = sorted(
        (
            (
                offset(text, place.line, place.column),
                offset(text, place.end_line, place.end_column),
                new,
            )
            for place, new in edits
        ),
        reverse=True,
    )
    pieces, before = [], len(text)
    for start, end, new in spans:
        pieces += [text[end:before], new]
        before = start
    return text[:before] + "".join(reversed(pieces))
