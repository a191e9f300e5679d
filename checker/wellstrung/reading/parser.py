"""From bytes to a tree, or to faults that say what to write instead; never an exception."""

from __future__ import annotations

import codecs
import stat
import sys
from functools import cache
from pathlib import Path, PurePath
from typing import NamedTuple

import yaml

from wellstrung.common.places import Fault, Place
from wellstrung.common.wording import spelt_out
from wellstrung.reading.builder import FORBIDDEN, Builder, code
from wellstrung.reading.tree import BREAK, Mapping, Read
from wellstrung.reading.yaml_errors import fault_of

MAX_BYTES = 4 * 1024 * 1024
#: the name by which a command reads one plan from standard input
STDIN = Path("-")
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class Expected(NamedTuple):
    """What a file should hold: its name, and what to say of one that is empty or has no keys."""

    name: str
    empty: str
    begin: str


PLAN = Expected(
    "plan",
    "write a plan, or begin one from the README",
    "a plan is made of named entries: begin with `plan: 1`",
)


def read(path: Path, expected: Expected = PLAN) -> Read:
    """The tree of a plan file; a file that cannot be read gives faults, never an exception.

    >>> read(Path("no such plan.yaml")).faults[0].says
    '`no such plan.yaml` cannot be read: no such file or directory'
    """
    found = text_of(path, expected)
    return found if found.faults else read_text(found.text, found.file, expected)


def text_of(path: Path, expected: Expected = PLAN) -> Read:
    """The text of a file, not looked at yet; or faults, never an exception."""
    file = "standard input" if path == STDIN else called(path)
    try:
        if path == STDIN:
            data = _standard_input()
        else:
            if not stat.S_ISREG(path.stat().st_mode):
                says = f"`{file}` is not a regular file: name a {expected.name}"
                return _refused(file, says)
            with path.open("rb") as stream:
                data = stream.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        return _refused(file, f"`{file}` cannot be read: {reason.lower()}")
    if len(data) > MAX_BYTES:
        says = f"`{file}` is larger than 4 MB, more than any {expected.name} needs"
        return _refused(file, says)
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
    return Read(file, text, None, ())


def read_text(text: str, file: str, expected: Expected = PLAN) -> Read:
    """The tree of a plan given as text.

    >>> tree = read_text("cap: {kind: end cap, bore: 8 mm}", "plan.yaml").tree
    >>> tree.value
    {'cap': {'kind': 'end cap', 'bore': '8 mm'}}
    >>> tree.entries["cap"].node.entries["bore"].node.place
    Place(file='plan.yaml', line=1, column=28, end_line=1, end_column=32)
    >>> read_text("wire: +5", "plan.yaml").faults[0].says
    '`wire: +5` needs no plus sign: write 5'
    """
    read = allowed(text, file, expected)
    if read.faults:
        return read
    text = read.text
    builder = Builder(text, file, expected.name)
    try:
        parser = _LOADER(text)
        try:
            while builder.take(parser.get_event()):
                pass
        finally:
            parser.dispose()
    # beside its own errors the parser in Python lets some of chr() and int() through
    except (yaml.YAMLError, ValueError) as error:
        slip = fault_of(error, builder.lines, file)
        if not any(_same_cause(fault, slip) for fault in builder.faults):
            builder.faults.append(slip)
    tree = builder.tree
    if not builder.faults:
        if tree is None:
            builder.fault(f"the file is empty: {expected.empty}", Place(file, 1, 1, 1, 1))
        elif not isinstance(tree, Mapping):
            builder.fault(builder.glued(tree) or expected.begin, tree.place)
    usable = tree if isinstance(tree, Mapping) and not builder.faults else None
    return Read(file, text, usable, sorted(builder.faults, key=lambda fault: fault.place))


def called(path: PurePath) -> str:
    r"""What reports call a file: alike on every system, and spelt out where it is not plain.

    >>> from pathlib import PureWindowsPath
    >>> called(PureWindowsPath("class\\gangway.yaml"))
    'class/gangway.yaml'
    """
    return spelt_out(path.as_posix())


@cache  # it can be read once
def _standard_input() -> bytes:
    if sys.stdin is None:  # as Python leaves it where it is closed
        raise ValueError("it is closed")
    return sys.stdin.buffer.read(MAX_BYTES + 1)


def allowed(text: str, file: str, expected: Expected) -> Read:
    """A text, or the fault of a character that no file of ours may hold."""
    text = text.removeprefix("\ufeff")
    bad = FORBIDDEN.search(text)
    if bad is None:
        return Read(file, text, None, ())
    place = _place_at(text, bad.start(), file)
    says = f"a {expected.name} cannot contain this character ({code(bad)}): delete it"
    return Read(file, _defused(text), None, [Fault("plan-file", says, place)])


def _same_cause(fault: Fault, slip: Fault) -> bool:
    """Whether a slip explains a fault of the parser: at the same place, or a # hides a bracket."""
    same_line = fault.place.line == slip.place.line
    return same_line and (fault.place.column == slip.place.column or "#" in fault.says)


def _wide_encoding(data: bytes) -> str:
    """UTF-16 or UTF-32, recognized by a mark or by the zeros of a first ASCII letter.

    As YAML 1.2, 5.2, distinguishes them (from memory).
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


def _defused(text: str) -> str:
    """A refused text for reports, every place as it was but nothing that steers a terminal."""
    return FORBIDDEN.sub("\ufffd", text)


def _refused(file: str, says: str) -> Read:
    return Read(file, "", None, [Fault("plan-file", says, Place(file, 1, 1, 1, 1))])


def _place_at(text: str, at: int, file: str) -> Place:
    breaks = list(BREAK.finditer(text, 0, at))
    line, column = len(breaks) + 1, at - (breaks[-1].end() if breaks else 0) + 1
    return Place(file, line, column, line, column + 1)
