"""Errors of the YAML parser, in the words of someone who writes plans.

libyaml and the parser in Python name the same slip differently and often notice it late; a fault
points to where the author would fix it.
"""

from __future__ import annotations

import re
from typing import Any

from msgspec.structs import replace

from wellstrung.common.places import Edit, Fault, Place

MAX_DEPTH = 64
#: A name whose colon lacks its space; `//` is left to addresses.
GLUED = re.compile(r"([A-Za-z_][\w -]*):([^\s/].*)")

#: Words of the parser (in C and in Python), and what they mean; `{sign}` is the sign that is
#: there. "begins" points to where the thing began, "noticed" to where it went wrong.
_PLAIN_WORDS = (
    ("name is missing", "noticed", "a name is missing before the colon: write one"),
    ("nesting depth", "noticed", f"this nests deeper than {MAX_DEPTH} levels: use fewer"),
    ("tab character|character '\\\\t'", "noticed", "there is a tab here: indent with spaces"),
    ("cannot start any token", "noticed", "a text cannot begin with {sign}: put it in quotes"),
    (
        "an alias|an anchor|a tag|a block scalar|undefined tag",
        "begins",
        "a text cannot begin with {sign}: put it in quotes",
    ),
    (
        "a directive|YAML d|TAG d|duplicate",
        "noticed",
        "a plan has no lines with %: delete this one",
    ),
    (
        "escape|hexdecimal",
        "noticed",
        "a backslash inside double quotes starts an escape sequence: use single quotes",
    ),
    ("unexpected (end of stream|document)", "begins", "this quote is not closed: close it"),
    ("keys are not allowed", "noticed", "a text cannot begin with {sign}: put it in quotes"),
    (
        "could not find expected ':'",
        "begins",
        "a colon is missing in or above this line: write `name: value`",
    ),
    ("a flow mapping", "bracket", "a comma or a closing }} is missing: each {{ needs its }}"),
    ("a flow sequence", "bracket", "a comma or a closing ] is missing: each [ needs its ]"),
    (
        "entries are not allowed",
        "noticed",
        "a list cannot begin on this line: begin it on the next",
    ),
    ("node content", "noticed", "something is missing here: write a value"),
    (
        "document start",
        "noticed",
        "this does not belong to the plan above: delete it, or line it up",
    ),
    (
        "expected key|a block mapping",
        "noticed",
        "this line does not line up with the ones above: give it the same indent",
    ),
    (
        "'-' indicator|a block collection",
        "noticed",
        "this line does not line up with the list above: give it the same indent",
    ),
)


def fault_of(error: Exception, lines: list[str], file: str) -> Fault:
    """A syntax error of the parser, in plain words, at its line."""
    noticed = _at(getattr(error, "problem_mark", None), lines)
    begins = _at(getattr(error, "context_mark", None), lines, noticed)
    problem = f"{getattr(error, 'context', None)}: {getattr(error, 'problem', None)}"
    values = "values are not allowed" in problem
    if values or "could not find expected ':'" in problem:
        # a missing space is only noticed a line later
        for near in (begins[0], noticed[0], noticed[0] - 1):
            found = GLUED.match(lines[near - 1].strip(" -")) if near else None
            if found:
                fault = _fault_on(found[0], lacks_space(found), near, lines, file)
                gap = fault.place.column + len(found[1]) + 1
                return replace(fault, edits=(Edit(Place(file, near, gap, near, gap), " "),))
    if "start any token" in problem and _sign_at(noticed, lines) == "\t":
        problem = "tab character"
    if _sign_at(noticed, lines) == ":" and re.search(
        "expected key|expected <block end>|node content", problem
    ):
        problem = "name is missing"
    if values:
        return _colon_too_many(noticed, lines, file)
    before = lines[noticed[0] - 1][: noticed[1] - 1].rstrip()
    if "a block " in problem and before[-1:] and before[-1:] in "'\"]}":
        says = "there is text after a closing quote or bracket: put the whole text in quotes"
        return Fault("plan-file", says, _sign(noticed, lines, file))
    for words, where, says in _PLAIN_WORDS:
        if re.search(words, problem):
            at = noticed if where == "noticed" else begins
            if where == "bracket" and begins[0] == noticed[0] and _sign_at(noticed, lines):
                at = noticed
            sign = _sign_at(at, lines)
            return Fault("plan-file", says.format(sign=sign), _sign(at, lines, file))
    says = "this cannot be read as YAML: look at the quotes, brackets and indents here"
    return Fault("plan-file", says, _sign(noticed, lines, file))


def _at(mark: Any, lines: list[str], otherwise: tuple[int, int] = (1, 1)) -> tuple[int, int]:
    """The line and column of a mark, from 1."""
    return within(mark.line + 1, mark.column + 1, lines) if mark is not None else otherwise


def _sign_at(at: tuple[int, int], lines: list[str]) -> str:
    return lines[at[0] - 1][at[1] - 1 : at[1]]


def _sign(at: tuple[int, int], lines: list[str], file: str) -> Place:
    return Place(file, *at, at[0], at[1] + len(_sign_at(at, lines)))


def _fault_on(words: str, says: str, line: int, lines: list[str], file: str) -> Fault:
    start = lines[line - 1].index(words) + 1
    return Fault("plan-file", says, Place(file, line, start, line, start + len(words)))


def _colon_too_many(noticed: tuple[int, int], lines: list[str], file: str) -> Fault:
    """`title: Ring: the sequel`, or a line indented under one that already has its value."""
    found = re.match(r"[\s-]*([^:#]+):[ \t]+(.*:([ \t].*)?)$", lines[noticed[0] - 1])
    if not found:
        says = (
            "this line is indented more than the one above, which already has its value:"
            " give both the same indent"
        )
        return Fault("plan-file", says, _sign(noticed, lines, file))
    value = found[2].rstrip()
    quoted = f"'{value}'" if '"' in value else f'"{value}"'
    says = f"`{short(f'{found[1]}: {value}')}` has one colon too many: put the text in quotes"
    if len(value) <= 60 and "'" not in value:
        says += f", {found[1]}: {quoted}"
    fault = _fault_on(value, says, noticed[0], lines, file)
    certain = "'" not in value and "#" not in value
    return replace(fault, edits=(Edit(fault.place, quoted),)) if certain else fault


def within(line: int, column: int, lines: list[str]) -> tuple[int, int]:
    """A line and column, or the end of the text if they lie behind it."""
    if line > len(lines):
        return len(lines), len(lines[-1]) + 1
    return line, min(column, len(lines[line - 1]) + 1)


def lacks_space(found: re.Match[str]) -> str:
    """What to say of `a:1`, found by `GLUED`."""
    return f"`{found[0]}` lacks a space after the colon: write `{found[1]}: {found[2]}`"


def short(text: str) -> str:
    """A text as a message quotes it."""
    return text if len(text) <= 60 else f"{text[:57]}..."
