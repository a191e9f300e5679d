"""From bytes to a tree that knows where everything stands.

The tree is built from libyaml's parse events with a stack of our own: composing very deep input
crashes some libyaml builds, and an own stack can refuse it at any depth. Whatever some YAML reader
would turn into another value (`010`, `1:30`, a date) is refused with what to write instead.
"""

from __future__ import annotations

import codecs
import re
import stat
from collections.abc import Callable, Iterable
from functools import cached_property
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from wellstrung.common.places import Fault, Place
from wellstrung.reading.yaml_errors import GLUED, MAX_DEPTH, lacks_space, short, told, within

MAX_BYTES = 4 * 1024 * 1024
MAX_FAULTS = 50
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


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
    """One word, number or text; `quoted` says that the author quoted it."""

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


class Wanted(NamedTuple):
    """What a file should hold: its name, and what to do about one that is empty or no mapping."""

    name: str
    empty: str
    begin: str


PLAN = Wanted(
    "plan",
    "write a plan, or begin one from the README",
    "a plan is made of named entries: begin with `plan: 1`",
)


def read(path: Path, wanted: Wanted = PLAN) -> Read:
    """The tree of a plan file; a file that cannot be read gives faults, never an exception.

    >>> read(Path("no such plan.yaml")).faults[0].says
    '`no such plan.yaml` cannot be read: no such file or directory'
    """
    file = _printable(path)
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            return _refused(file, f"`{file}` is not a regular file: name a {wanted.name} file")
        if status.st_size > MAX_BYTES:
            return _refused(file, f"`{file}` is larger than 4 MB: a plan is one piece")
        with path.open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        return _refused(file, f"`{file}` cannot be read: {reason.lower()}")
    if len(data) > MAX_BYTES:
        return _refused(file, f"`{file}` is larger than 4 MB: a plan is one piece")
    wide = _wide_encoding(data)
    if wide:
        return _refused(file, f"`{file}` is written in {wide}: save it as UTF-8")
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        text = data.decode("utf-8", "replace")
        before = data[: error.start].decode("utf-8")
        place = _place_at(text, len(before), file)
        says = f"`{file}` is not UTF-8 in line {place.line}: save it as UTF-8"
        return Read(file, _defused(text), None, [Fault("plan-file", says, place)])
    return read_text(text, file, wanted)


def read_text(text: str, file: str, wanted: Wanted = PLAN) -> Read:
    """The tree of a plan given as text.

    >>> tree = read_text("cap: {kind: end cap, bore: 8 mm}", "plan.yaml").tree
    >>> tree.value
    {'cap': {'kind': 'end cap', 'bore': '8 mm'}}
    >>> tree.entries["cap"].node.entries["bore"].node.place
    Place(file='plan.yaml', line=1, column=28, end_line=1, end_column=32)
    >>> read_text("wire: +5", "plan.yaml").faults[0].says
    '`wire: +5` needs no plus sign: write 5'
    """
    text = text.removeprefix("\ufeff")
    bad = _FORBIDDEN.search(text)
    if bad:
        place = _place_at(text, bad.start(), file)
        says = (
            f"there is a character here that no {wanted.name} may hold ({_code(bad)}): take it out"
        )
        return Read(file, _defused(text), None, [Fault("plan-file", says, place)])
    builder = _Builder(text, file, wanted)
    try:
        parser = _LOADER(text)
        try:
            while builder.take(parser.get_event()):
                pass
        finally:
            parser.dispose()
    # beside its own errors the parser in Python lets some of chr() and int() through
    except (yaml.YAMLError, ValueError) as error:
        slip = told(error, builder.lines, file)
        if all(fault.place[:3] != slip.place[:3] for fault in builder.faults):
            builder.faults.append(slip)
    tree = builder.tree
    if not builder.faults:
        if tree is None:
            builder.fault(
                f"the file is empty: {wanted.empty}",
                Place(file, 1, 1, 1, 1),
            )
        elif not isinstance(tree, Mapping):
            said = builder.glued(tree) or wanted.begin
            builder.fault(said, tree.place)
    usable = tree if isinstance(tree, Mapping) and not builder.faults else None
    return Read(file, text, usable, sorted(builder.faults, key=lambda fault: fault.place))


def offset(text: str, line: int, column: int) -> int:
    r"""Where a line and column (from 1) stand in a text.

    >>> offset("a: 1\nb: 2", 2, 4)
    8
    """
    start = 0
    for _ in range(line - 1):
        match = _BREAK.search(text, start)
        if match is None:
            return len(text)
        start = match.end()
    return min(start + column - 1, len(text))


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
    for start, end, new in spans:
        text = text[:start] + new + text[end:]
    return text


#: Line ends that every editor counts alike; the rarer ones of YAML 1.1 are forbidden instead.
_BREAK = re.compile(r"\r\n|\n|\r")
#: Said as what is forbidden: what is allowed has ranges so large that they are slow to compile.
_FORBIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]"
)
#: Up to 15 figures, which a float holds exactly.
_INT = re.compile(r"-?(0|[1-9][0-9]{0,14})")
_FLOAT = re.compile(r"-?(0|[1-9][0-9]{0,14})\.[0-9]+")

#: Plain words that YAML readers disagree about, and what to write.
_SURPRISES = (
    (
        r"[-+]?0[0-9]+(\.[0-9]*)?",
        "begins with a zero, which some readers take for another number:"
        " write {number}, or {quoted} in quotes if it is text",
    ),
    (
        r"(?=.*_)[-+]?([0-9][0-9_]*(\.[0-9_]*)?|\.[0-9][0-9_]*)",
        "has an underline inside a number: write {number}, or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?0(b[01_]+|o[0-7_]+|x[0-9A-Fa-f_]+)",
        "is a number in another base to some readers: write it in tens,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?([0-9][0-9_]*\.?[0-9_]*|\.[0-9][0-9_]*)[eE][-+]?[0-9]+",
        "is a number to some readers and text to others: write it out in full,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?[0-9]{16,}(\.[0-9]*)?",
        "has more figures than a number can hold: write fewer, or {quoted} in quotes if it is text",
    ),
    (r"[-+]?\.[0-9]+", "has no figure before its point: write {number}"),
    (r"[-+]?[0-9]+\.", "has no figure after its point: write {number}"),
    (r"\+[0-9]+(\.[0-9]+)?", "needs no plus sign: write {number}"),
    (
        r"[-+]?[0-9][0-9_]*(:[0-5]?[0-9])+(\.[0-9_]*)?",
        "is a number in sixties to some readers: write a time with its unit, such as `90 min`,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(([Tt]|[ \t]+)[0-9].*)?",
        "is a date to some readers: write {quoted} in quotes",
    ),
    (
        r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)|NaN",
        "is not a number that can be measured: write a figure",
    ),
    (r"~|null|Null|NULL", "stands for nothing: write a value, or take the line out"),
    (r"<<|=", "has a meaning of its own in YAML: write {quoted} in quotes if it is text"),
)
_FIRST_OF_SURPRISES = frozenset("-+.0123456789~nN<=")
#: All of them at once, since almost every size begins like one.
_SURPRISING = re.compile("|".join(f"(?:{pattern})" for pattern, _ in _SURPRISES))
#: A value that YAML cuts short: in `colour: reed #8` the `#8` is a comment.
_CUT_SHORT = re.compile(r"[ \t]+#[0-9]")


class _Builder:
    """Builds the tree event by event, on a stack of its own."""

    def __init__(self, text: str, file: str, wanted: Wanted = PLAN) -> None:
        self.file = file
        self._name = wanted.name
        self.tree: Node | None = None
        self.faults: list[Fault] = []
        self._text = text
        self._may_cut_short = _CUT_SHORT.search(text) is not None
        self._open: list[Mapping | Sequence] = []
        self._keys: list[Scalar | None] = []
        self._documents = 0

    @cached_property
    def lines(self) -> list[str]:
        """The text line by line; most plans are read without it."""
        return _BREAK.split(self._text)

    def fault(self, says: str, place: Place, *also: Place) -> None:
        """Note what stands in the way."""
        # libyaml puts what is missing at the end one line behind the text
        line, column = within(place.line, place.column, self.lines)
        end_line, end_column = within(place.end_line, place.end_column, self.lines)
        place = Place(self.file, line, column, end_line, end_column)
        self.faults.append(Fault("plan-file", says, place, also=also))

    def take(self, event: Any) -> bool:
        """Take one event; False at the end, and when nothing more can be made of the file."""
        taken = _TAKES[type(event)](self, event)
        if self.faults and len(self.faults) >= MAX_FAULTS:
            self.fault("there may be more below: put these right first", self._place(event))
            return False
        return taken

    def _place(self, event: Any) -> Place:
        start, end = event.start_mark, event.end_mark
        return Place(self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)

    def _rest_of_line(self, line: int, column: int) -> str:
        return self.lines[line - 1][column - 1 :] if line <= len(self.lines) else ""

    def _shown(self, text: str) -> str:
        """A value as the author would look for it: with its name, where it has one."""
        key = self._keys[-1] if self._keys else None
        return f"{key.text}: {text}" if key is not None else text

    def _pass(self, event: Any) -> bool:
        return type(event) is not yaml.StreamEndEvent

    def _document(self, event: Any) -> bool:
        self._documents += 1
        if self._documents == 1:
            return True
        says = f"a second {self._name} begins here: put each {self._name} in a file of its own"
        self.fault(says, self._place(event))
        return False

    def _alias(self, event: Any) -> bool:
        node = Scalar(self.file, event.start_mark, event.end_mark, f"*{event.anchor}")
        self.fault(
            f"`{node.text}` repeats another place: write it out, or put it in quotes if it is text",
            node.place,
        )
        return self._add(node)

    def _marked(self, event: Any, place: Place) -> None:
        if event.anchor is not None:
            self.fault(
                f"`&{event.anchor}` marks a place to repeat: take it out, or put it in quotes if"
                " it is text",
                place,
            )
        if event.tag is not None:
            name = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            self.fault(f"`{name}` is a tag: take it out, or put it in quotes if it is text", place)

    def _scalar(self, event: Any) -> bool:
        text: str = event.value
        node = Scalar(self.file, event.start_mark, event.end_mark, text)
        if event.anchor is not None or event.tag is not None:
            self._marked(event, node.place)
        elif not event.style:
            if self._may_cut_short and text:
                self._look_behind(node.place)
            if ":" in text:
                self._look_for_glue(node.place)
            node.value, node.quoted = self._plain(node), False
        elif event.style == '"':
            bad = _FORBIDDEN.search(text)
            if bad:
                says = f"this text holds a character that cannot be shown ({_code(bad)})"
                self.fault(f"{says}: take it out", node.place)
        elif event.style in "|>":
            self._block(node, event.style)
        return self._add(node)

    def _block(self, node: Scalar, sign: str) -> None:
        """End a block of text at its last word, not at whatever comes next."""
        if not node.text.strip():
            says = f"`{self._shown(sign)}` begins a block of text that is empty"
            node.end_line, node.end_column = node.line, node.column + 1
            self.fault(f"{says}: write the text below it, or put the value in quotes", node.place)
            return
        last = node.end_line - (node.end_column == 0)
        while not self.lines[last].strip():
            last -= 1
        node.end_line, node.end_column = last, len(self.lines[last].rstrip())

    def _plain(self, node: Scalar) -> str | int | float | None:
        text = node.text
        if not text:
            return None
        # almost every size has a space in it, and of all surprises only a date has
        if text[0] in _FIRST_OF_SURPRISES and (" " not in text or text[:4].isdigit()):
            if _INT.fullmatch(text):
                return int(text)
            if _FLOAT.fullmatch(text):
                return float(text)
            if not _SURPRISING.fullmatch(text):
                return text
            says = next(says for pattern, says in _SURPRISES if re.fullmatch(pattern, text))
            said = says.format(quoted=f'"{short(text)}"', number=_tidied(text))
            self.fault(f"`{short(self._shown(text))}` {said}", node.place)
        return text

    def _look_behind(self, place: Place) -> None:
        """Refuse `colour: reed #8`, where the colour's number would be lost as a comment."""
        rest = self._rest_of_line(place.end_line, place.end_column)
        if not _CUT_SHORT.match(rest):
            return
        begins = place.column if place.line == place.end_line else 1
        value = self._rest_of_line(place.end_line, begins).strip()
        self.fault(
            f"`{short(self._shown(value))}` loses what follows #, which begins a comment:"
            " put the value in quotes, or a space behind # if it is a comment",
            place,
        )

    def _look_for_glue(self, place: Place) -> None:
        """Refuse `bore:8 mm` on a line of its own, where a name with its value is meant."""
        if not self._open or (isinstance(self._open[-1], Mapping) and self._keys[-1] is None):
            return
        line = self.lines[place.line - 1]
        found = GLUED.match(line[place.column - 1 :].rstrip())
        if found and not line[: place.column - 1].strip(" -"):
            self.fault(f'{lacks_space(found)}, or "{found[0]}" in quotes if it is text', place)

    def _start(self, event: Any) -> bool:
        kind = Mapping if type(event) is yaml.MappingStartEvent else Sequence
        node = kind(self.file, event.start_mark, event.end_mark)
        if event.anchor is not None or event.tag is not None:
            self._marked(event, node.place)
        if len(self._open) >= MAX_DEPTH:
            self.fault(f"this nests deeper than {MAX_DEPTH}: a plan is flat", node.place)
            return False
        if not self._add(node):
            return False
        self._open.append(node)
        self._keys.append(None)
        return True

    def _end(self, event: Any) -> bool:
        node = self._open.pop()
        self._keys.pop()
        start, end = event.start_mark, event.end_mark
        # a block ends where the next thing begins; take the end of its last entry instead
        if start.line == end.line and start.column == end.column:
            last = _last(node)
            node.end_line, node.end_column = last.end_line, last.end_column
        else:
            node.end_line, node.end_column = end.line, end.column
        return True

    def _add(self, node: Node) -> bool:
        if not self._open:
            self.tree = node
            return True
        holder = self._open[-1]
        if isinstance(holder, Sequence):
            if node.value is None:
                self.fault(self._empty_item(node), node.place)
            holder.items.append(node)
            holder.value.append(node.value)
            return True
        key = self._keys[-1]
        if key is None:
            return self._key(node)
        self._keys[-1] = None
        if node.value is None:
            self.fault(self.glued(key) or self._empty_value(holder, key, node), key.place)
        name = key.text
        known = holder.entries.get(name)
        if known is not None:
            self.fault(f"`{name}` is there twice: keep one", key.place, known.key.place)
            return True
        holder.entries[name] = Entry(key, node)
        holder.value[name] = node.value
        return True

    def _key(self, node: Node) -> bool:
        if not isinstance(node, Scalar):
            self.fault("a name must be plain words, not a list or a group", node.place)
            return False
        if node.value is None:
            self.fault("a name is missing before the colon: write one", node.place)
        elif "\n" in node.text:
            self.fault("a name must stand on one line: write it on one", node.place)
        self._keys[-1] = node
        return True

    def _empty_item(self, node: Node) -> str:
        comment = self._comment_behind(node.place)
        if comment:
            return f'`- {comment}` is empty, because # begins a comment: write - "{comment}"'
        return "this line of the list is empty: write something, or take it out"

    def _empty_value(self, holder: Mapping, key: Scalar, node: Node) -> str:
        """What to say of a name without a value, after the likeliest slip."""
        name = key.text
        comment = self._comment_behind(node.place)
        if comment:
            return (
                f"`{name}: {comment}` has no value, because # begins a comment:"
                f' write {name}: "{comment}"'
            )
        before = next(reversed(holder.entries.values()), None)
        if before and name[:1].isdigit() and isinstance(before.node.value, int):
            return (
                f"`{name}` has no value, because a comma ends an entry: write a decimal with a"
                f" point, {before.key.text}: {before.node.value}.{name}"
            )
        return f"`{name}` has no value: write one, or take the line out"

    def _comment_behind(self, place: Place) -> str:
        """A comment that looks like a lost value, `#8`; one with a space is meant as a comment."""
        found = re.match(r":?[ \t]*(#[^\s#].*)", self._rest_of_line(place.line, place.column))
        return found[1].rstrip() if found else ""

    @staticmethod
    def glued(node: Node) -> str | None:
        """What to say of `a:1`, where the space behind the colon is missing."""
        if isinstance(node, Scalar) and not node.quoted:
            found = GLUED.match(node.text)
            if found:
                return lacks_space(found)
        return None


def _tidied(text: str) -> str:
    """A number as any reader takes it: `-.5` is -0.5, `010` is 10, `1_000.` is 1000.0."""
    sign = "-" if text.startswith("-") else ""
    whole, point, part = text.lstrip("+-").replace("_", "").partition(".")
    return sign + (whole.lstrip("0") or "0") + (f".{part or '0'}" if point else "")


def _code(found: re.Match[str]) -> str:
    return f"U+{ord(found[0]):04X}"


#: What takes an event of each kind.
_TAKES: dict[type[yaml.Event], Callable[[_Builder, Any], bool]] = {
    yaml.ScalarEvent: _Builder._scalar,
    yaml.MappingStartEvent: _Builder._start,
    yaml.SequenceStartEvent: _Builder._start,
    yaml.MappingEndEvent: _Builder._end,
    yaml.SequenceEndEvent: _Builder._end,
    yaml.AliasEvent: _Builder._alias,
    yaml.DocumentStartEvent: _Builder._document,
    yaml.DocumentEndEvent: _Builder._pass,
    yaml.StreamStartEvent: _Builder._pass,
    yaml.StreamEndEvent: _Builder._pass,
}


def _last(node: Mapping | Sequence) -> Node:
    """The last entry of a node, or the node itself where it has none."""
    if isinstance(node, Sequence):
        return node.items[-1] if node.items else node
    return next(reversed(node.entries.values())).node if node.entries else node


def _wide_encoding(data: bytes) -> str:
    """UTF-16 or UTF-32, told by a mark or by the zeros of a first ASCII letter.

    As YAML 1.2, 5.2, tells them apart (from memory).
    """
    head = data[:4]
    zeros = [byte == 0 for byte in head]
    if (
        head in (b"\xff\xfe\0\0", b"\0\0\xfe\xff")
        or zeros[1:] == [True] * 3
        or (zeros == [True, True, True, False])
    ):
        return "UTF-32"
    if head[:2] in (b"\xff\xfe", b"\xfe\xff") or sorted(zeros[:2]) == [False, True]:
        return "UTF-16"
    return ""


def _printable(path: Path) -> str:
    """A file's name for reports: it may hold bytes that are no text, or steer a terminal."""
    return "".join(
        sign if sign.isprintable() else sign.encode("unicode_escape").decode() for sign in str(path)
    )


def _defused(text: str) -> str:
    """A refused text for reports, every place as it was but nothing that steers a terminal."""
    return _FORBIDDEN.sub("\ufffd", text)


def _refused(file: str, says: str) -> Read:
    return Read(file, "", None, [Fault("plan-file", says, Place(file, 1, 1, 1, 1))])


def _place_at(text: str, at: int, file: str) -> Place:
    breaks = list(_BREAK.finditer(text, 0, at))
    line, column = len(breaks) + 1, at - (breaks[-1].end() if breaks else 0) + 1
    return Place(file, line, column, line, column + 1)
