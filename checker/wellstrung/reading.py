"""From bytes to a tree that knows where everything stands.

The tree is built from libyaml's parse events with a stack of our own: composing very deep input
crashes some libyaml builds, and an own stack can refuse it at any depth. Whatever some YAML reader
would turn into another value (`010`, `1:30`, a date) is refused with what to write instead.
"""

from __future__ import annotations

import re
import stat
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import yaml

from wellstrung.place import Fault, Place

MAX_BYTES = 4 * 1024 * 1024
MAX_DEPTH = 64
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class Node:
    """A value with its place; `value` is the same as plain data."""

    __slots__ = ("place", "value")

    def __init__(self, place: Place, value: Any) -> None:
        self.place = place
        self.value = value


class Scalar(Node):
    """One word, number or text; `quoted` says that the author quoted it."""

    __slots__ = ("quoted", "text")

    def __init__(self, place: Place, value: Any, text: str, quoted: bool) -> None:
        super().__init__(place, value)
        self.text = text
        self.quoted = quoted


class Entry:
    """A key with what it names."""

    __slots__ = ("key", "node")

    def __init__(self, key: Scalar, node: Node) -> None:
        self.key = key
        self.node = node


class Mapping(Node):
    """Named entries, in the author's order."""

    __slots__ = ("entries",)

    def __init__(self, place: Place) -> None:
        super().__init__(place, {})
        self.entries: dict[str, Entry] = {}


class Sequence(Node):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, place: Place) -> None:
        super().__init__(place, [])
        self.items: list[Node] = []


class Read:
    """What was read: the text, its tree where it could be built, and what stood in the way."""

    __slots__ = ("faults", "file", "text", "tree")

    def __init__(self, file: str, text: str, tree: Mapping | None, faults: Iterable[Fault]) -> None:
        self.file = file
        self.text = text
        self.tree = tree
        self.faults = tuple(faults)


def read(path: Path) -> Read:
    """The tree of a plan file; a file that cannot be read gives faults, never an exception."""
    file = str(path)
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            return _refused(file, f"`{file}` is not a regular file: name a plan file")
        if status.st_size > MAX_BYTES:
            return _refused(file, f"`{file}` is larger than 4 MB: a plan is one piece")
        with path.open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        return _refused(file, f"`{file}` cannot be read: {reason.lower()}")
    if len(data) > MAX_BYTES:
        return _refused(file, f"`{file}` is larger than 4 MB: a plan is one piece")
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return _refused(file, f"`{file}` is written in UTF-16: save it as UTF-8")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return _refused(file, f"`{file}` is not UTF-8 in line {line}: save it as UTF-8", line)
    return read_text(text, file)


def read_text(text: str, file: str) -> Read:
    """The tree of a plan given as text."""
    bad = _FORBIDDEN.search(text)
    if bad:
        place = _place_at(text, bad.start(), file)
        says = f"there is a character here that YAML forbids (U+{ord(bad[0]):04X}): take it out"
        return Read(file, text, None, [Fault("plan-file", says, place)])
    builder = _Builder(file)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            if not builder.take(event):
                break
    except yaml.YAMLError as error:
        builder.faults.append(_syntax(error, text, file))
    except RecursionError:
        builder.faults.append(
            Fault(
                "plan-file",
                f"this nests deeper than {MAX_DEPTH}: a plan is flat",
                Place(file, 1, 1, 1, 1),
            )
        )
    tree = builder.tree
    if not builder.faults:
        if tree is None:
            builder.fault(
                "the file is empty: write a plan, or begin one from the README",
                Place(file, 1, 1, 1, 1),
            )
        elif not isinstance(tree, Mapping):
            said = builder.glued(tree) or "a plan is made of named entries: begin with `plan: 1`"
            builder.fault(said, tree.place)
    usable = tree if isinstance(tree, Mapping) and not builder.faults else None
    return Read(file, text, usable, sorted(builder.faults, key=lambda fault: fault.place))


def offset(text: str, line: int, column: int) -> int:
    """Where a line and column (from 1) stand in a text."""
    start = 0
    for _ in range(line - 1):
        match = _BREAK.search(text, start)
        if match is None:
            return len(text)
        start = match.end()
    return min(start + column - 1, len(text))


def replaced(text: str, edits: Iterable[tuple[Place, str]]) -> str:
    """The text with every place replaced by its new words; places must not overlap."""
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
    for start, end, new in spans:
        text = text[:start] + new + text[end:]
    return text


_BREAK = re.compile(r"\r\n|[\n\r\x85\u2028\u2029]")
_FORBIDDEN = re.compile(
    "[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)
_INT = re.compile(r"-?(0|[1-9]\d*)")
_FLOAT = re.compile(r"-?(0|[1-9]\d*)\.\d+")


#: Plain words that YAML readers disagree about, and what to write.
_SURPRISES = (
    (
        r"[-+]?0\d+",
        "begins with a zero, which some readers take for another number:"
        " write {bare}, or {quoted} if it is text",
    ),
    (r"[-+]?\d[\d_]*_[\d_]*(\.\d*)?", "has an underline inside a number: write {joined}"),
    (
        r"0[xob][0-9A-Fa-f_]+",
        "is a number in another base to some readers: write it in tens, or {quoted} if it is text",
    ),
    (
        r"[-+]?(\d+\.?\d*|\.\d+)[eE][-+]?\d+",
        "is a number to some readers and text to others: write it out in full",
    ),
    (r"[-+]?\.\d+", "has no figure before its point: write 0{plain}"),
    (r"[-+]?\d+\.", "has no figure after its point: write {plain}0"),
    (r"\+\d+(\.\d+)?", "needs no plus sign: write {unsigned}"),
    (
        r"\d+(:[0-5]?\d)+(\.\d*)?",
        "is a number in sixties to some readers: write a time with its unit, such as `90 min`,"
        " or {quoted} if it is text",
    ),
    (r"\d{4}-\d{1,2}-\d{1,2}([Tt ].*)?", "is a date to some readers: write {quoted}"),
    (
        r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)|NaN|nan",
        "is not a number that can be measured: write a figure",
    ),
    (r"~|null|Null|NULL", "stands for nothing: write a value, or take the line out"),
    (r"<<|=", "has a meaning of its own in YAML: write {quoted} if it is text"),
)
_FIRST_OF_SURPRISES = frozenset("-+.0123456789~nN<=")
#: All of them at once, since almost every size begins like one.
_SURPRISING = re.compile("|".join(f"(?:{pattern})" for pattern, _ in _SURPRISES))


class _Builder:
    """Builds the tree event by event, on a stack of its own."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.tree: Node | None = None
        self.faults: list[Fault] = []
        self._open: list[Mapping | Sequence] = []
        self._keys: list[Scalar | None] = []
        self._documents = 0

    def fault(self, says: str, place: Place, *also: Place) -> None:
        self.faults.append(Fault("plan-file", says, place, also=also))

    def take(self, event: Any) -> bool:
        """Take one event; False when nothing more can be made of the file."""
        kind = type(event)
        if kind is yaml.ScalarEvent:
            return self._scalar(event)
        if kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            return self._start(event, Mapping if kind is yaml.MappingStartEvent else Sequence)
        if kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            return self._end(event)
        if kind is yaml.AliasEvent:
            place = self._place(event)
            self.fault(
                f"`*{event.anchor}` repeats another place: write it out, parts have names", place
            )
            return self._add(Scalar(place, "", "", True))
        if kind is yaml.DocumentStartEvent:
            self._documents += 1
            if self._documents > 1:
                self.fault(
                    "a second plan begins here: put each plan in a file of its own",
                    self._place(event),
                )
                return False
        return True

    def _place(self, event: Any) -> Place:
        start, end = event.start_mark, event.end_mark
        return Place(self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)

    def _marked(self, event: Any, place: Place) -> None:
        if event.anchor is not None:
            self.fault(
                f"`&{event.anchor}` marks a place to repeat: take it out, parts have names", place
            )
        if event.tag is not None:
            name = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            self.fault(f"`{name}` is a tag: take it out, plain words and numbers will do", place)

    def _scalar(self, event: Any) -> bool:
        start, end = event.start_mark, event.end_mark
        place = Place(self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)
        text: str = event.value
        if event.anchor is not None or event.tag is not None:
            self._marked(event, place)
        if not event.implicit[0] and event.tag is None:
            return self._add(Scalar(place, text, text, True))
        return self._add(Scalar(place, self._plain(text, place), text, False))

    def _plain(self, text: str, place: Place) -> str | int | float | None:
        if not text:
            return None
        if text[0] in _FIRST_OF_SURPRISES:
            if _INT.fullmatch(text):
                return int(text) if len(text) < 19 else text
            if _FLOAT.fullmatch(text):
                return float(text)
            if not _SURPRISING.fullmatch(text):
                return text
            for pattern, says in _SURPRISES:
                if re.fullmatch(pattern, text):
                    self.fault(
                        f"`{text}` "
                        + says.format(
                            quoted=f'"{text}"',
                            plain=text,
                            unsigned=text.lstrip("+"),
                            bare=text.lstrip("+-0") or "0",
                            joined=text.replace("_", ""),
                        ),
                        place,
                    )
                    return text
        return text

    def _start(self, event: Any, kind: type[Mapping] | type[Sequence]) -> bool:
        place = self._place(event)
        if event.anchor is not None or event.tag is not None:
            self._marked(event, place)
        if len(self._open) >= MAX_DEPTH:
            self.fault(f"this nests deeper than {MAX_DEPTH}: a plan is flat", place)
            return False
        node = kind(place)
        if not self._add(node):
            return False
        self._open.append(node)
        self._keys.append(None)
        return True

    def _end(self, event: Any) -> bool:
        node = self._open.pop()
        self._keys.pop()
        end = event.end_mark
        place = node.place
        if event.start_mark.line == end.line and event.start_mark.column == end.column:
            # a block ends where the next thing begins; take the end of its last entry instead
            last = _last(node)
            node.place = place._replace(end_line=last.end_line, end_column=last.end_column)
        else:
            node.place = place._replace(end_line=end.line + 1, end_column=end.column + 1)
        return True

    def _add(self, node: Node) -> bool:
        if not self._open:
            self.tree = node
            return True
        holder = self._open[-1]
        if isinstance(holder, Sequence):
            if isinstance(node, Scalar) and node.value is None:
                self.fault(
                    "this line of the list is empty: write something, or take it out", node.place
                )
            holder.items.append(node)
            holder.value.append(node.value)
            return True
        key = self._keys[-1]
        if key is None:
            return self._key(node)
        self._keys[-1] = None
        if isinstance(node, Scalar) and node.value is None and not key.quoted and self.glued(key):
            self.fault(str(self.glued(key)), key.place)
        elif isinstance(node, Scalar) and node.value is None:
            self.fault(
                f"`{key.text}` has no value: write one, or take the line out; after a space, `#`"
                " begins a comment, so put a text that holds it in quotes",
                key.place,
            )
        name = key.text
        known = holder.entries.get(name)
        if known is not None:
            self.fault(f"`{name}` is there twice: keep one", key.place, known.key.place)
        holder.entries[name] = Entry(key, node)
        holder.value[name] = node.value
        return True

    def _key(self, node: Node) -> bool:
        if not isinstance(node, Scalar):
            self.fault("a name must be plain words, not a list or a group", node.place)
            return False
        if not node.quoted and node.value is None:
            self.fault("a name is missing before the colon: write one", node.place)
        self._keys[-1] = node
        return True

    @staticmethod
    def glued(node: Node) -> str | None:
        """What to say of `a:1`, where the space behind the colon is missing."""
        if isinstance(node, Scalar) and not node.quoted:
            found = _GLUED.match(node.text)
            if found:
                return _lacks_space(found)
        return None


_GLUED = re.compile(r"([A-Za-z_][\w -]*):([^\s/].*)")


def _lacks_space(found: re.Match[str]) -> str:
    return f"`{found[0]}` lacks a space after the colon: write `{found[1]}: {found[2]}`"


def _last(node: Mapping | Sequence) -> Place:
    if isinstance(node, Sequence):
        return node.items[-1].place if node.items else node.place
    if not node.entries:
        return node.place
    return next(reversed(node.entries.values())).node.place


def _refused(file: str, says: str, line: int = 1) -> Read:
    return Read(file, "", None, [Fault("plan-file", says, Place(file, line, 1, line, 1))])


def _place_at(text: str, at: int, file: str) -> Place:
    before = text[:at]
    breaks = list(_BREAK.finditer(before))
    line, column = len(breaks) + 1, at - (breaks[-1].end() if breaks else 0) + 1
    return Place(file, line, column, line, column + 1)


_PLAIN_WORDS = (
    ("found character '\\t'", "a tab stands where the line begins: indent with spaces"),
    (
        "found character that cannot start any token",
        "a tab or a sign such as @ or ` begins a value: indent with spaces,"
        " or put the text in quotes",
    ),
    (
        "mapping values are not allowed",
        "there is a colon too many here: put text that holds `: ` in quotes",
    ),
    (
        "could not find expected ':'",
        "a colon is missing in or above this line: write `name: value`",
    ),
    ("did not find expected ',' or '}'", "a comma or a closing } is missing: each { needs its }"),
    ("did not find expected ',' or ']'", "a comma or a closing ] is missing: each [ needs its ]"),
    (
        "did not find expected key",
        "this line does not line up with the ones above: give it the same indent",
    ),
    (
        "did not find expected '-' indicator",
        "this line does not line up with the list above: give it the same indent",
    ),
    ("found unexpected end of stream", "the file ends inside quotes or brackets: close them"),
    ("nesting depth", f"this nests deeper than {MAX_DEPTH}: a plan is flat"),
    ("did not find expected node content", "something is missing here: write a value"),
    ("found undefined tag handle", "this begins with !, which is a tag: put it in quotes"),
    (
        "block sequence entries are not allowed",
        "a list cannot begin on this line: begin it on the next",
    ),
)


def _syntax(error: yaml.YAMLError, text: str, file: str) -> Fault:
    """A syntax error of the parser, in plain words, at its line."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    problem = str(getattr(error, "problem", None) or "this cannot be read as YAML")
    lines = text.split("\n")
    line = min((mark.line + 1) if mark else 1, len(lines))
    column = min((mark.column + 1) if mark else 1, len(lines[line - 1]) + 1)
    said = next((says for words, says in _PLAIN_WORDS if words in problem), None)
    for near in (line, line - 1):  # a missing space is only noticed a line later
        found = _GLUED.match(lines[near - 1].strip()) if near else None
        if found and "colon" in (said or ""):
            start = lines[near - 1].index(found[0]) + 1
            place = Place(file, near, start, near, start + len(found[0]))
            return Fault("plan-file", _lacks_space(found), place)
    place = Place(file, line, column, line, column)
    return Fault("plan-file", said or f"this cannot be read: {problem}", place)
