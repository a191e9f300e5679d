"""Builds a tree from the parse events of libyaml, on a stack of its own.

Composing very deep input crashes some libyaml builds; an own stack refuses it at any depth.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cached_property
from typing import Any

import yaml

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault, Place
from wellstrung.reading.plain_values import Surprise, composed, plain_value
from wellstrung.reading.tree import BREAK, Entry, Mapping, Node, Scalar, Sequence
from wellstrung.reading.yaml_errors import (
    CANNOT_BEGIN,
    GLUED,
    MAX_DEPTH,
    SMART,
    lacks_space,
    short,
    within,
)
from wellstrung.reading.yaml_slips import EQUALS, no_value, quoted

MAX_FAULTS = 50
#: Said as what is forbidden: what is allowed has ranges so large that they are slow to compile.
FORBIDDEN = Pattern(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]"
)
#: A value that YAML cuts short: in `colour: reed #8` or `reed #a1b2c3` what follows is a comment,
#: but for braces cut open.
_CUT_SHORT = Pattern(r"[ \t]+#(?:[0-9]|[0-9a-fA-F]{6}(?![0-9A-Za-z])(?![^\n]*[}\]]))")
#: Fields of free text and of phrases, whose commas are no slips of anything else.
_IN_WORDS = frozenset({"because", "note", "title", "maker", "thread", "needle", "colour"})
#: a word and a number with its unit: more than a size
_SIZED = Pattern(r"(?=.*\d).*[A-Za-z]{4}")
#: Text in braces up to the next field or the end of them.
_UP_TO_NEXT_NAME = Pattern(r"[^{}\[\]]*?(?=,[^,{}\[\]]*:|[}\]]|$)")


class Builder:
    """Builds the tree event by event, on a stack of its own."""

    def __init__(self, text: str, file: str, name: str = "plan") -> None:
        self.file = file
        self._name = name
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
        return BREAK.split(self._text)

    def fault(self, says: str, place: Place, *also: Place, new: str | None = None) -> None:
        """Note what stands in the way."""
        # libyaml puts what is missing at the end one line behind the text
        line, column = within(place.line, place.column, self.lines)
        end_line, end_column = within(place.end_line, place.end_column, self.lines)
        place = Place(self.file, line, column, end_line, end_column)
        edits = () if new is None or line != end_line else (Edit(place, new),)
        self.faults.append(Fault("plan-file", says, place, also=also, edits=edits))

    def take(self, event: Any) -> bool:
        """Take one event; False at the end, and when nothing more can be made of the file."""
        taken = _TAKES[type(event)](self, event)
        if self.faults and len(self.faults) >= MAX_FAULTS:
            self.fault("there may be more below: fix these first", self._place(event))
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
        self.fault(CANNOT_BEGIN.format(sign="*", quoted=quoted(node.text)), node.place)
        return self._add(node)

    def _marked(self, event: Any, place: Place) -> None:
        if event.anchor is not None:
            self.fault(CANNOT_BEGIN.format(sign="&", quoted=quoted(f"&{event.anchor}")), place)
        if event.tag is not None:
            name = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            self.fault(f"`{name}` is a tag: delete it, or put it in quotes if it is text", place)

    def _scalar(self, event: Any) -> bool:
        text = composed(event.value)
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
            bad = FORBIDDEN.search(text)
            if bad:
                says = f"this text contains a character that cannot be shown ({code(bad)})"
                self.fault(f"{says}: delete it", node.place)
        elif event.style in "|>":
            self._block(node, event.style)
        return self._add(node)

    def _block(self, node: Scalar, sign: str) -> None:
        """End a block of text at its last word, not at whatever comes next."""
        if not node.text.strip():
            says = f"`{self._shown(sign)}` starts an empty block of text"
            node.end_line, node.end_column = node.line, node.column + 1
            self.fault(f"{says}: write the text below it, or put the value in quotes", node.place)
            return
        last = node.end_line - (node.end_column == 0)
        while not self.lines[last].strip():
            last -= 1
        node.end_line, node.end_column = last, len(self.lines[last].rstrip())

    def _plain(self, node: Scalar) -> str | int | float | None:
        try:
            return plain_value(node.text)
        except Surprise as says:
            self.fault(f"`{short(self._shown(node.text))}` {says}", node.place)
            return node.text

    def _look_behind(self, place: Place) -> None:
        """Refuse `colour: reed #8`, where the colour's number would be lost as a comment."""
        rest = self._rest_of_line(place.end_line, place.end_column)
        if not _CUT_SHORT.match(rest):
            return
        begins = place.column if place.line == place.end_line else 1
        value = self._rest_of_line(place.end_line, begins).strip()
        self.fault(
            f"`{short(self._shown(value))}` loses what follows #, which starts a comment:"
            " put the value in quotes, or a space after # if it is a comment",
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
            self.fault(f"this nests deeper than {MAX_DEPTH} levels: use fewer", node.place)
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
            glued = self.glued(key)
            if says := glued or self._empty_value(holder, key, node):
                new = GLUED.sub(r"\1: \2", key.text) if glued else None
                self.fault(says, key.place, new=new)
        name = key.text
        known = holder.entries.get(name)
        if known is not None:
            keep = "keep one"
            if isinstance(node, Mapping):
                keep = "give one of them another name, or delete it"
            elif isinstance(node, Sequence):
                keep = "put all of it under one"
            self.fault(f"`{name}` appears twice: {keep}", key.place, known.key.place)
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
            self.fault("a name must be on one line", node.place)
        self._keys[-1] = node
        return True

    def _empty_item(self, node: Node) -> str:
        comment = self._comment_behind(node.place)
        if comment:
            return f'`- {comment}` is empty, because # starts a comment: write - "{comment}"'
        return "this line of the list is empty: write something, or delete it"

    def _empty_value(self, holder: Mapping, key: Scalar, node: Node) -> str:
        """What to say of a name without a value, after the likeliest slip."""
        name = key.text
        if equals := EQUALS.fullmatch(name):
            return (
                f"`{equals[1]}` has an equals sign for its colon: write `{equals[1]}: {equals[2]}`"
            )
        comment = self._comment_behind(node.place)
        if comment:
            return (
                f"`{name}: {comment}` has no value, because # starts a comment:"
                f' write {name}: "{comment}"'
            )
        before = next(reversed(holder.entries.values()), None)
        if before and name[:1].isdigit() and isinstance(before.node.value, int):
            return (
                f"`{name}` has no value, because a comma ends an entry: write a decimal with a"
                f" point, {before.key.text}: {before.node.value}.{name}"
            )
        comma = self._comma_in_text(key, before)
        return no_value(name) if comma is None else comma

    def _comma_in_text(self, key: Scalar, before: Entry | None) -> str | None:
        """What to say of text in braces that a comma cuts; empty where that is said already."""
        smart = before is not None and str(before.node.value)[:1] in tuple(SMART)
        if before is None:
            return None
        words = before.key.text in _IN_WORDS or _is_phrase(before.node)
        if not (smart or words or " " in key.text):
            return None
        place, text = key.place, before.node
        if self._rest_of_line(place.end_line, place.end_column).lstrip().startswith(":"):
            return None
        if text.value is None:
            return ""
        if not isinstance(text, Scalar) or text.quoted:
            return None
        if text.text[:1] in SMART:
            meant = re.sub(f"[{SMART}]", "", f"{text.text}, {key.text}")
            return (
                f"`{text.text[:1]}` is a quote of a word processor: write plain ones,"
                f' {before.key.text}: "{meant}"'
            )
        at = text.place
        whole = _UP_TO_NEXT_NAME.match(self._rest_of_line(at.line, at.column))
        written = short(whole[0].strip() if whole else text.text)
        return (
            f"`{short(key.text)}` stands alone, because a comma ends the text before it: put the"
            f' text in quotes, {before.key.text}: "{written}"'
        )

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


def _is_phrase(node: Node) -> bool:
    """Whether a value has a size among words, as `6 mm glass pearl` has."""
    return isinstance(node, Scalar) and _SIZED.search(node.text) is not None


def code(found: re.Match[str]) -> str:
    """A forbidden character as messages name it."""
    return f"U+{ord(found[0]):04X}"


#: What takes an event of each kind.
_TAKES: dict[type[yaml.Event], Callable[[Builder, Any], bool]] = {
    yaml.ScalarEvent: Builder._scalar,
    yaml.MappingStartEvent: Builder._start,
    yaml.SequenceStartEvent: Builder._start,
    yaml.MappingEndEvent: Builder._end,
    yaml.SequenceEndEvent: Builder._end,
    yaml.AliasEvent: Builder._alias,
    yaml.DocumentStartEvent: Builder._document,
    yaml.DocumentEndEvent: Builder._pass,
    yaml.StreamStartEvent: Builder._pass,
    yaml.StreamEndEvent: Builder._pass,
}


def _last(node: Mapping | Sequence) -> Node:
    """The last entry of a node, or the node itself where it has none."""
    if isinstance(node, Sequence):
        return node.items[-1] if node.items else node
    return next(reversed(node.entries.values())).node if node.entries else node
