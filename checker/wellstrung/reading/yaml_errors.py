"""Errors of the YAML parser, in the words of someone who writes plans.

libyaml and the parser in Python name the same slip differently and often notice it late; a fault
points to where the author would fix it.
"""

from __future__ import annotations

import re
from typing import Any

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.reading.yaml_slips import (
    behind_its_end,
    fault_on,
    indent,
    line_above,
    mendable,
    quoted,
    sign_at,
    sign_place,
    slip_in_signs,
)

MAX_DEPTH = 64
#: A name whose colon lacks its space; `//` is left to addresses.
GLUED = Pattern(r"([A-Za-z_][\w -]*):([^\s/].*)")

#: Quotes of word processors.
SMART = "“”„«»‘’‚"
CANNOT_BEGIN = "a text cannot begin with {sign}: put it in quotes, {quoted}"

#: Words of the parser (in C and in Python), and what they mean; `{sign}` is the sign that is
#: there. "begins" points to where the thing began, "noticed" to where it went wrong.
_PLAIN_WORDS = (
    ("name is missing", "noticed", "a name is missing before the colon: write one"),
    ("nesting depth", "noticed", f"this nests deeper than {MAX_DEPTH} levels: use fewer"),
    ("tab character|character '\\\\t'", "noticed", "there is a tab here: indent with spaces"),
    ("cannot start any token", "noticed", CANNOT_BEGIN),
    ("an alias|an anchor|a tag|a block scalar|undefined tag", "begins", CANNOT_BEGIN),
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
    (
        "unexpected (end of stream|document)",
        "begins",
        "the quote that begins here is not closed: write {sign} at the end of the text",
    ),
    ("keys are not allowed", "noticed", CANNOT_BEGIN),
    (
        "could not find expected ':'",
        "begins",
        "a colon is missing in or above this line: write `name: value`",
    ),
    (
        "a flow mapping",
        "bracket",
        "this {{ is not closed, or a comma is missing in it: write its }} or the comma",
    ),
    (
        "a flow sequence",
        "bracket",
        "this [ is not closed, or a comma is missing in it: write its ] or the comma",
    ),
    (
        "entries are not allowed",
        "noticed",
        "a list cannot begin on this line: begin it on the next",
    ),
    ("node content.*,$", "noticed", "there is a comma too many here: delete it"),
    ("node content", "noticed", "something is missing here: write a value"),
    (
        "document start",
        "noticed",
        "this does not belong to the plan above: delete it, or line it up",
    ),
    (
        "expected key|a block mapping",
        "noticed",
        "this line is indented by {here}, and the one above by {above}: give it the same indent",
    ),
    (
        "'-' indicator|a block collection",
        "noticed",
        "this line is indented by {here}, and the one above by {above}: give it the same indent",
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
                new = f"{found[1]}: {found[2]}"
                return fault_on(found[0], lacks_space(found), near, lines, file, new)
    if slip := slip_in_signs(begins, noticed, problem, lines, file):
        return slip
    if "node content" in problem:
        problem += sign_at(noticed, lines)
    if "start any token" in problem and sign_at(noticed, lines) == "\t":
        problem = "tab character"
    if sign_at(noticed, lines) == ":" and re.search(
        "expected key|expected <block end>|node content", problem
    ):
        problem = "name is missing"
    if values:
        return _colon_too_many(noticed, lines, file)
    before = lines[noticed[0] - 1][: noticed[1] - 1].rstrip()
    if "a block " in problem and before[-1:] and before[-1:] in "'\"]}":
        return behind_its_end(noticed, lines, file)
    for words, where, says in _PLAIN_WORDS:
        if re.search(words, problem):
            at = noticed if where == "noticed" else begins
            if where == "bracket" and begins[0] == noticed[0] and sign_at(noticed, lines):
                at = noticed
            value, place = _value_at(at, lines), sign_place(at, lines, file)
            whole, new = place._replace(end_column=at[1] + len(value)), quoted(value)
            certain = says is CANNOT_BEGIN and lines[at[0] - 1].endswith(value) and "#" not in value
            doubled = re.search(r'"([^"]*)""', lines[at[0] - 1])
            if "unexpected" in problem and doubled:
                meant = quoted(f'{doubled[1]}"')
                says = f"the inch mark ends this text: put it in single quotes, {meant}"
            else:
                says = says.format(
                    sign=sign_at(at, lines),
                    quoted=new,
                    here=_spaces(lines[noticed[0] - 1]),
                    above=_spaces(line_above(noticed[0], lines)),
                )
            return mendable(says, place, whole, new if certain else None)
    says = "this cannot be read as YAML: look at the quotes, brackets and indents here"
    return Fault("plan-file", says, sign_place(noticed, lines, file))


def _value_at(at: tuple[int, int], lines: list[str]) -> str:
    """The text that begins at a place, up to its comma, bracket or line end."""
    found = re.match(r"[^,{}\[\]]*", lines[at[0] - 1][at[1] - 1 :])
    return found[0].strip() if found else ""


def _spaces(line: str) -> str:
    count = indent(line)
    return f"{count} space{'s' if count > 1 else ''}" if count else "none"


def _at(mark: Any, lines: list[str], otherwise: tuple[int, int] = (1, 1)) -> tuple[int, int]:
    """The line and column of a mark, from 1."""
    return within(mark.line + 1, mark.column + 1, lines) if mark is not None else otherwise


def _colon_too_many(noticed: tuple[int, int], lines: list[str], file: str) -> Fault:
    """`title: Ring: the sequel`, or a line indented under one that already has its value."""
    found = re.match(r"[\s-]*([^:#]+):[ \t]+(.*:([ \t].*)?)$", lines[noticed[0] - 1])
    if found and found[2].startswith("("):
        inner = found[2].strip().removeprefix("(").removesuffix(")")
        says = f"fields stand in braces, not in round brackets: write {{{inner}}}"
        return fault_on(found[2].strip(), says, noticed[0], lines, file, f"{{{inner}}}")
    above = re.fullmatch(r"\s*([A-Za-z_][\w -]*)", line_above(noticed[0], lines))
    if not found and above and indent(above[0]) < indent(lines[noticed[0] - 1]):
        number = noticed[0] - 1
        while above[0] != lines[number - 1]:
            number -= 1
        says = f"`{above[1]}` lacks its colon: write `{above[1]}:`"
        return fault_on(above[1], says, number, lines, file, f"{above[1]}:")
    if not found:
        says = (
            "this line is indented more than the one above, which already has its value:"
            " give both the same indent"
        )
        return Fault("plan-file", says, sign_place(noticed, lines, file))
    value = found[2].rstrip()
    if re.fullmatch(r"[\w ]+: [^,:]+(, [\w ]+: [^,:]+)+", value):
        says = f"fields on one line stand in braces: write {{{value}}}"
        return fault_on(value, says, noticed[0], lines, file, f"{{{value}}}")
    meant = value if value.strip(SMART) == value else re.sub(f"[{SMART}]", "", value)
    says = f"`{short(f'{found[1]}: {value}')}` has one colon too many: put the text in quotes"
    if meant != value:
        says = f"`{value[0]}` is a quote of a word processor: write plain ones"
    if len(value) <= 60 and "'" not in value:
        says += f", {found[1]}: {quoted(meant)}"
    certain = "'" not in value and "#" not in value
    return fault_on(value, says, noticed[0], lines, file, quoted(meant) if certain else None)


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
