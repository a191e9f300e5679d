"""A tree of nodes that know their place in a file, and edits to the text at such places."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from collections.abc import Mapping as Fields
from copy import copy
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
    """Named entries, in the author's order; `added` are those that nobody wrote."""

    __slots__ = ("added", "entries")

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark) -> None:
        super().__init__(file, start, end, {})
        self.entries: dict[str, Entry] = {}
        self.added: frozenset[str] = frozenset()

    @property
    def written(self) -> dict[str, Entry]:
        """The entries that the author wrote, in a phrase or one by one."""
        return {name: entry for name, entry in self.entries.items() if name not in self.added}


class Spelled(Mapping):
    """Named entries that the author said in a phrase, each at the place of its own words."""

    __slots__ = ()

    def __init__(self, said: Node, fields: Fields[str, Node | None]) -> None:
        self.file = said.file
        self.line, self.column = said.line, said.column
        self.end_line, self.end_column = said.end_line, said.end_column
        self.entries = {
            name: Entry(_named(name, node), node) for name, node in fields.items() if node
        }
        self.added = frozenset()
        self.value = {name: entry.node.value for name, entry in self.entries.items()}


class Sequence(Node):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, file: str, start: yaml.Mark, end: yaml.Mark) -> None:
        super().__init__(file, start, end, [])
        self.items: list[Node] = []


def with_nodes(old: Mapping, new: Fields[str, Node]) -> Mapping:
    """A group with other nodes under some of its names; the very same if none is other."""
    if all(new[name] is one.node for name, one in old.entries.items() if name in new):
        return old
    return group(
        old, {name: Entry(one.key, new.get(name, one.node)) for name, one in old.entries.items()}
    )


def with_fields(old: Mapping, fields: Fields[str, Node]) -> Mapping:
    """A group with other fields: those that it had keep their key."""
    had = old.entries
    return group(
        old,
        {
            name: Entry(had[name].key if name in had else _named(name, node), node)
            for name, node in fields.items()
        },
    )


def meaning(said: Scalar, value: str) -> Scalar:
    """The author's words, with the value that they mean."""
    words = copy(said)
    words.value = value
    return words


def with_items(listed: Sequence, items: list[Node]) -> Sequence:
    """A list of these items, at the place of another; the very same if none is other."""
    if [*map(id, items)] == [*map(id, listed.items)]:
        return listed
    changed = copy(listed)
    changed.items = items
    changed.value = [item.value for item in items]
    return changed


def implied(said: Node, value: str) -> Scalar:
    """A value that the author did not write: it stands where what implies it stands."""
    word = Scalar.__new__(Scalar)
    word.file = said.file
    word.line, word.column = said.line, said.column
    word.end_line, word.end_column = said.end_line, said.end_column
    word.value = word.text = value
    word.quoted = False
    return word


def implied_data(said: Node, value: Any) -> Node:
    """A word, a list or a group that the author did not write, at the place of what implies it."""
    if isinstance(value, dict):
        return Spelled(said, {name: implied_data(said, one) for name, one in value.items()})
    if isinstance(value, list):
        return sequence(said, [implied_data(said, one) for one in value])
    return implied(said, value)


def without(old: Mapping, name: str) -> Mapping:
    """A group without one of its fields."""
    return group(old, {one: entry for one, entry in old.entries.items() if one != name})


def with_more(old: Mapping, more: Fields[str, Node]) -> Mapping:
    """A group with fields that the author did not write as they are."""
    new = {name: Entry(_named(name, node), node) for name, node in more.items()}
    changed = group(old, old.entries | new)
    changed.added = old.added | more.keys()
    return changed


#: what YAML would not read as text as it stands, between the commas of `{...}`
_NEEDS_QUOTES = re.compile(r"[,\[\]{}:#&*!|>'\"%@`\\]|^[-?]|^[\d.]+$")


def written(node: Node) -> str:
    """A value as it is written between the commas of `{...}`."""
    text = str(node.value)
    needs = isinstance(node.value, str) and _NEEDS_QUOTES.search(text)
    return json.dumps(text, ensure_ascii=False) if needs else text


def _named(name: str, node: Node) -> Scalar:
    key = implied(node, name)
    key.quoted = True
    return key


def group(at: Mapping, entries: dict[str, Entry]) -> Mapping:
    """A group of these entries, at the place of another."""
    node = copy(at)
    node.entries = entries
    node.value = {name: entry.node.value for name, entry in entries.items()}
    return node


def sequence(at: Node, items: list[Node]) -> Sequence:
    """A list of nodes, at the place of another."""
    node = Sequence.__new__(Sequence)
    for name in ("file", "line", "column", "end_line", "end_column"):
        setattr(node, name, getattr(at, name))
    node.items, node.value = items, [item.value for item in items]
    return node


class Read:
    """What was read: the text, its tree where it could be built, and what stood in the way.

    `notes` say what of it is not used.
    """

    __slots__ = ("faults", "file", "notes", "text", "tree")

    def __init__(
        self,
        file: str,
        text: str,
        tree: Mapping | None,
        faults: Iterable[Fault],
        notes: Iterable[str] = (),
    ) -> None:
        self.file = file
        self.text = text
        self.tree = tree
        self.faults = tuple(faults)
        self.notes = tuple(notes)


def offset(text: str, line: int, column: int) -> int:
    r"""Where a line and column (from 1) stand in a text.

    >>> offset("a: 1\nb: 2", 2, 4)
    8
    """
    starts = line_starts(text)
    return min(starts[line - 1] + column - 1, len(text)) if line <= len(starts) else len(text)


@lru_cache(maxsize=2)  # a plan and its drawer: edits and messages ask for one place after another
def line_starts(text: str) -> list[int]:
    """Where each line of a text begins."""
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
        key=lambda span: span[:2],  # what is added at one place stays in its order
    )
    pieces, before = [], len(text)
    for start, end, new in reversed(spans):
        pieces += [text[end:before], new]
        before = start
    return text[:before] + "".join(reversed(pieces))
