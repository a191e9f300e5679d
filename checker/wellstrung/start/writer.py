"""A draft as the text of a plan, with its comments."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from textwrap import wrap
from typing import Any

import wellstrung_schemas
from wellstrung.start.leaves import Noted, Plan, plain

_WIDE = 100
#: YAML reads these as text only in quotes
_QUOTED = re.compile(
    r"[\[\]{},&*!|>'\"%@`]|: |:$| #|^[-?#:~]|^\s|\s$|^[\d.+]+$|^$"
    r"|^(?:yes|no|on|off|true|false|null|y|n)$",
    re.IGNORECASE,
)


def schema_line() -> str:
    """The first line, by which editors find the schema that completes and explains the fields."""
    schema = Path(wellstrung_schemas.__file__).with_name("editor.json")
    return f"# yaml-language-server: $schema={schema.as_uri()}"


def written(plan: Plan, *, head: tuple[str, ...] = ()) -> str:
    """The text of a plan; `head` are the comments at its top."""
    lines = [schema_line(), *(line for text in head for line in _comment(text, 0))]
    for name, value in plan.items():
        block = isinstance(_bare(value), (dict, list)) and name in _SECTIONS
        if block or name in _APART:
            lines.append("")
        lines += _section(name, value) if block else _field(name, value, 0)
    return "\n".join(lines) + "\n"


#: what has each of its entries on a line of its own
_SECTIONS = frozenset({"beads", "parts", "hung", "work", "supplies"})
#: what has an empty line before it, too
_APART = frozenset({"run", "supplies", "class"})


def _bare(value: Any) -> Any:
    return value.value if isinstance(value, Noted) else value


def _section(name: str, value: Any) -> Iterator[str]:
    if isinstance(value, Noted):
        yield from _comment(value.why, 0)
    yield f"{name}:"
    inside = _bare(value)
    if isinstance(inside, dict):
        for key, entry in inside.items():
            yield from _entry(key, entry)
    else:
        for entry in inside:
            yield from _commented(f"  - {flow(entry)}", _notes(entry), 2)


def _entry(name: str, entry: Any) -> Iterator[str]:
    """A part or a bead: on one line if that will do, or else each field on its own."""
    line = f"  {flow(name)}: {flow(entry)}"
    notes, inside = _notes(entry), _bare(entry)
    if len(line) <= _WIDE and len(notes) <= 1:
        yield from _commented(line, notes, 2)
        return
    if isinstance(entry, Noted):
        yield from _comment(entry.why, 2)
    yield f"  {flow(name)}:"
    for key, value in inside.items():
        yield from _field(key, value, 4)


def _field(name: str, value: Any, indent: int) -> Iterator[str]:
    space = " " * indent
    if _bare(value) is None:
        yield from (_comment(f"{name}: {value.why}", indent) if value is not None else ())
        return
    yield from _commented(f"{space}{name}: {flow(value)}", _notes(value), indent)


def _commented(line: str, notes: list[str], indent: int) -> Iterator[str]:
    said = "; ".join(notes)
    if not said:
        yield line
    elif len(line) + len(said) + 4 <= _WIDE:
        yield f"{line}  # {said}"
    else:
        yield from _comment(said, indent)
        yield line


def _comment(text: str, indent: int) -> list[str]:
    space = " " * indent
    return [f"{space}# {line}" for line in wrap(text, _WIDE - indent - 4)]


def _notes(value: Any, name: str = "") -> list[str]:
    """Every comment inside a value; those of its fields by their names."""
    notes = []
    if isinstance(value, Noted):
        notes.append(f"{name}: {value.why}" if name and value.why else value.why)
        value = value.value
    if isinstance(value, dict):
        notes += [note for key, one in value.items() for note in _notes(one, str(key))]
    elif isinstance(value, list):
        notes += [note for one in value for note in _notes(one, name)]
    return list(dict.fromkeys(note for note in notes if note))


def flow(value: Any) -> str:
    """A value on one line.

    >>> flow({"kind": "end cap", "opens": False, "size": "4", "count": 3})
    '{kind: end cap, opens: no, size: "4", count: 3}'
    """
    value = plain(value)
    if isinstance(value, dict):
        return f"{{{', '.join(f'{flow(key)}: {flow(one)}' for key, one in value.items())}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(flow, value))}]"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str) and _QUOTED.search(value):
        return json.dumps(value, ensure_ascii=False)
    return str(value)
