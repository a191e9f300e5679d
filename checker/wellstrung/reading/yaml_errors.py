"""Errors of the YAML parser, in the words of someone who writes plans.

libyaml and the parser in Python name the same slip differently and often notice it late; a fault
points to where the author would fix it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from wellstrung.common.places import Edit, Fault, Place

MAX_DEPTH = 64
#: A name whose colon lacks its space; `//` is left to addresses.
GLUED = re.compile(r"([A-Za-z_][\w -]*):([^\s/].*)")

#: Spaces of word processors, which are none to the parser.
_ODD_SPACE = re.compile("[\u00a0\u2000-\u200b\u202f\u3000]")
#: What people write for the dash of a list, and a dash without its space.
_LIKE_A_DASH = re.compile(r"\s*([*•‣▪·–—−]|[0-9]+[.)]|-)(?=\s?\S)")
EQUALS = re.compile(r"[\s-]*([A-Za-z_][\w -]*?) *= *(\S.*?) *$")
#: The start of a value that a comment cuts short, in braces, and the comment.
_HIDDEN = re.compile(r"[:,]\s([^,:{}\[\]\"']*)(?<=\s)(#[^\s,}\]]+)")
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
                return _fault_on(found[0], lacks_space(found), near, lines, file, new)
    if slip := _odd_space({begins[0], noticed[0] - 1, noticed[0]}, lines, file):
        return slip
    slip = (
        _equals(begins, problem, lines, file)
        or _in_braces(begins, noticed, problem, lines, file)
        or _of_a_list(begins, noticed, problem, lines, file)
    )
    if slip:
        return slip
    if "node content" in problem:
        problem += _sign_at(noticed, lines)
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
        return _behind_its_end(noticed, lines, file)
    for words, where, says in _PLAIN_WORDS:
        if re.search(words, problem):
            at = noticed if where == "noticed" else begins
            if where == "bracket" and begins[0] == noticed[0] and _sign_at(noticed, lines):
                at = noticed
            value, place = _value_at(at, lines), _sign(at, lines, file)
            whole, new = place._replace(end_column=at[1] + len(value)), quoted(value)
            certain = says is CANNOT_BEGIN and lines[at[0] - 1].endswith(value) and "#" not in value
            says = says.format(
                sign=_sign_at(at, lines),
                quoted=new,
                here=_spaces(lines[noticed[0] - 1]),
                above=_spaces(_above(noticed[0], lines)),
            )
            return _mendable(says, place, whole, new if certain else None)
    says = "this cannot be read as YAML: look at the quotes, brackets and indents here"
    return Fault("plan-file", says, _sign(noticed, lines, file))


def _odd_space(numbers: Iterable[int], lines: list[str], file: str) -> Fault | None:
    """A space of a word processor in one of these lines."""
    for number in sorted(numbers):
        found = _ODD_SPACE.search(lines[number - 1]) if number else None
        if found:
            at = (number, found.start() + 1)
            says = f"this space is one of a word processor (U+{ord(found[0]):04X})"
            *_, last = _ODD_SPACE.finditer(lines[number - 1])
            place = _sign(at, lines, file)
            all_of_them = place._replace(end_column=last.end() + 1)
            plain = _ODD_SPACE.sub(" ", lines[number - 1][found.start() : last.end()])
            return _mendable(f"{says}: write a plain one", place, all_of_them, plain)
    return None


def _equals(begins: tuple[int, int], problem: str, lines: list[str], file: str) -> Fault | None:
    """`around = 8`, where a colon is meant."""
    found = EQUALS.match(lines[begins[0] - 1])
    if found is None or "could not find expected ':'" not in problem:
        return None
    says = f"`{found[1]}` has an equals sign for its colon: write `{found[1]}: {found[2]}`"
    return _fault_on(f"{found[1]}", says, begins[0], lines, file)


def _in_braces(
    begins: tuple[int, int], noticed: tuple[int, int], problem: str, lines: list[str], file: str
) -> Fault | None:
    """A comma that is missing between two fields, or a bracket that a comment hides."""
    if "a flow " not in problem or "node content" in problem:
        return None
    opening, line = lines[begins[0] - 1], lines[noticed[0] - 1]
    hidden = _HIDDEN.search(opening, begins[1] - 1)
    if hidden:
        value = quoted(f"{hidden[1]}{hidden[2]}".strip())
        says = f"`{hidden[2]}` and all that follows is a comment to YAML: put the text in quotes"
        place = Place(file, begins[0], hidden.start(2) + 1, begins[0], hidden.end() + 1)
        hides = place._replace(column=hidden.start(1) + 1, end_column=hidden.end() + 1)
        return _mendable(f"{says}, {value}", place, hides, value)
    deeper = _indent(line) > _indent(opening) or opening[:1] in ("{", "[")
    if begins[0] != noticed[0] and not deeper:
        return None
    sign = _sign_at(noticed, lines)
    if sign == ":":
        found = re.search(r"([\w-]+|\"[^\"]*\"|'[^']*')\s*$", line[: noticed[1] - 1])
    else:
        found = re.compile(r"(\"[^\"]*\"|'[^']*')").match(line, noticed[1] - 1)
    if found is None:
        return None
    at = (noticed[0], found.start(1) + 1)
    says = f"a comma is missing before `{found[1]}`: write `, {found[1]}`"
    return Fault("plan-file", says, Place(file, *at, at[0], at[1] + len(found[1])))


def _of_a_list(
    begins: tuple[int, int], noticed: tuple[int, int], problem: str, lines: list[str], file: str
) -> Fault | None:
    """A line that should begin with a dash and does not, or should not and does."""
    line = lines[noticed[0] - 1]
    first = line[: noticed[1] - 1].strip() == ""
    sign = _LIKE_A_DASH.match(line)
    if "an alias" in problem:
        line = lines[begins[0] - 1]
        sign = _LIKE_A_DASH.match(line)
        if sign and line[sign.end() : sign.end() + 1] == " ":
            says = f"a line of a list begins with a dash: write `- ` for `{sign[1]}`"
            return _fault_on(sign[1], says, begins[0], lines, file, "-")
        return None
    in_list = "'-' indicator" in problem or "a block collection" in problem
    if not first or not (in_list or "expected key" in problem or "a block mapping" in problem):
        return None
    if not in_list:
        if sign is None or sign[1] != "-":
            return None
        says = "this line begins with a dash, and the ones above it do not: delete the dash"
        return _fault_on("-", says, noticed[0], lines, file)
    if sign:
        why = "this dash lacks a space" if sign[1] == "-" else "a line of a list begins with a dash"
        says = f"{why}: write `- ` for `{sign[1]}`"
        new = "-" if line[sign.end() : sign.end() + 1] == " " else "- "
        return _fault_on(sign[1], says, noticed[0], lines, file, new)
    if noticed[1] < begins[1]:
        return None
    says = "this line lacks its dash, as each line of a list has one: write `- ` before it"
    return Fault("plan-file", says, _sign(noticed, lines, file))


def _behind_its_end(noticed: tuple[int, int], lines: list[str], file: str) -> Fault:
    """`'Skipper's rope'`, or a bracket too many."""
    sign, line = _sign_at(noticed, lines), lines[noticed[0] - 1]
    if sign and sign in "}])":
        says = f"there is a {sign} too many here: delete it"
        return Fault("plan-file", says, _sign(noticed, lines, file))
    found = re.search(r":\s+((['\"]).*?)\s*$", line)
    if found is None:
        says = "there is text after a closing bracket: delete it, or put the whole text in quotes"
        return Fault("plan-file", says, _sign(noticed, lines, file))
    text = found[1].strip("'") if found[2] == "'" else found[1]
    apostrophe = "an apostrophe ends this text, which begins with one"
    why = apostrophe if found[2] == "'" else "there is text after the closing quote"
    says = f"{why}: put the whole text in quotes, {quoted(text)}"
    place = _sign(noticed, lines, file)
    within = place._replace(column=found.start(1) + 1, end_column=found.end(1) + 1)
    certain = "#" not in text and not ("'" in text and '"' in text)
    return _mendable(says, place, within, quoted(text) if certain else None)


def quoted(text: str) -> str:
    """A text in quotes that YAML reads as it stands.

    >>> print(quoted("Skipper's rope"), quoted('3" wide'))
    "Skipper's rope" '3" wide'
    """
    return f"'{text}'" if '"' in text or "\\" in text else f'"{text}"'


def _value_at(at: tuple[int, int], lines: list[str]) -> str:
    """The text that begins at a place, up to its comma, bracket or line end."""
    found = re.match(r"[^,{}\[\]]*", lines[at[0] - 1][at[1] - 1 :])
    return found[0].strip() if found else ""


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _above(number: int, lines: list[str]) -> str:
    """The line above one, comments and blank lines aside."""
    return next((line for line in reversed(lines[: number - 1]) if line.strip(" #")), "")


def _spaces(line: str) -> str:
    count = _indent(line)
    return f"{count} space{'s' if count > 1 else ''}" if count else "none"


def _at(mark: Any, lines: list[str], otherwise: tuple[int, int] = (1, 1)) -> tuple[int, int]:
    """The line and column of a mark, from 1."""
    return within(mark.line + 1, mark.column + 1, lines) if mark is not None else otherwise


def _sign_at(at: tuple[int, int], lines: list[str]) -> str:
    return lines[at[0] - 1][at[1] - 1 : at[1]]


def _sign(at: tuple[int, int], lines: list[str], file: str) -> Place:
    return Place(file, *at, at[0], at[1] + len(_sign_at(at, lines)))


def _fault_on(
    words: str, says: str, line: int, lines: list[str], file: str, new: str | None = None
) -> Fault:
    start = lines[line - 1].index(words) + 1
    place = Place(file, line, start, line, start + len(words))
    return _mendable(says, place, place, new)


def _mendable(says: str, place: Place, instead: Place, new: str | None) -> Fault:
    """A fault with what to write instead of what; without an edit where that is not certain."""
    return Fault("plan-file", says, place, edits=() if new is None else (Edit(instead, new),))


def _colon_too_many(noticed: tuple[int, int], lines: list[str], file: str) -> Fault:
    """`title: Ring: the sequel`, or a line indented under one that already has its value."""
    found = re.match(r"[\s-]*([^:#]+):[ \t]+(.*:([ \t].*)?)$", lines[noticed[0] - 1])
    if found and found[2].startswith("("):
        inner = found[2].strip().removeprefix("(").removesuffix(")")
        says = f"fields stand in braces, not in round brackets: write {{{inner}}}"
        return _fault_on(found[2].strip(), says, noticed[0], lines, file, f"{{{inner}}}")
    if not found:
        says = (
            "this line is indented more than the one above, which already has its value:"
            " give both the same indent"
        )
        return Fault("plan-file", says, _sign(noticed, lines, file))
    value = found[2].rstrip()
    meant = value if value.strip(SMART) == value else re.sub(f"[{SMART}]", "", value)
    says = f"`{short(f'{found[1]}: {value}')}` has one colon too many: put the text in quotes"
    if meant != value:
        says = f"`{value[0]}` is a quote of a word processor: write plain ones"
    if len(value) <= 60 and "'" not in value:
        says += f", {found[1]}: {quoted(meant)}"
    certain = "'" not in value and "#" not in value
    return _fault_on(value, says, noticed[0], lines, file, quoted(meant) if certain else None)


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
