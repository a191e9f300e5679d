"""Slips in the signs of YAML that have an answer of their own, found where the parser stumbles."""

from __future__ import annotations

import re
from collections.abc import Iterable

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault, Place

At = tuple[int, int]

#: Spaces of word processors, which are none to the parser.
_ODD_SPACE = Pattern("[\u00a0\u2000-\u200b\u202f\u3000]")
#: What people write for the dash of a list, and a dash without its space.
_LIKE_A_DASH = Pattern(r"\s*([*•‣▪·–—−]|[0-9]+[.)]|-)(?=\s?\S)")
EQUALS = Pattern(r"[\s-]*([A-Za-z_][\w -]*?) *= *(\S.*?) *$")
#: by the definition of YAML 1.2, section 7.4, of a name that needs no question mark
_LONGEST_NAME = 1024
_LONG_NAME = Pattern(rf"[\s-]*([^\s:](?:[^:]|:(?!\s)){{{_LONGEST_NAME},}}):(?:\s|$)")
#: The start of a value that a comment cuts short, in braces, and the comment.
_HIDDEN = Pattern(r"[:,]\s([^,:{}\[\]\"']*)(?<=\s)(#[^\s,}\]]+)")


def slip_in_signs(
    begins: At, noticed: At, problem: str, lines: list[str], file: str
) -> Fault | None:
    """The fault of a slip that is known by its signs; None where there is none such."""
    return (
        _odd_space({begins[0], noticed[0] - 1, noticed[0]}, lines, file)
        or _too_long({begins[0], noticed[0]}, lines, file)
        or _equals(begins, problem, lines, file)
        or _colon_missing(begins, problem, lines, file)
        or _in_braces(begins, noticed, problem, lines, file)
        or _of_a_list(begins, noticed, problem, lines, file)
    )


def _odd_space(numbers: Iterable[int], lines: list[str], file: str) -> Fault | None:
    """A space of a word processor in one of these lines."""
    for number in sorted(numbers):
        found = _ODD_SPACE.search(lines[number - 1]) if number else None
        if found:
            at = (number, found.start() + 1)
            says = f"this space is one of a word processor (U+{ord(found[0]):04X})"
            *_, last = _ODD_SPACE.finditer(lines[number - 1])
            place = sign_place(at, lines, file)
            all_of_them = place._replace(end_column=last.end() + 1)
            plain = _ODD_SPACE.sub(" ", lines[number - 1][found.start() : last.end()])
            return mendable(f"{says}: write a plain one", place, all_of_them, plain)
    return None


def _too_long(numbers: Iterable[int], lines: list[str], file: str) -> Fault | None:
    """A name in one of these lines that is longer than YAML lets one be."""
    for number in sorted(numbers):
        found = _LONG_NAME.match(lines[number - 1]) if number else None
        if found:
            return fault_on(found[1], _says_too_long(found[1]), number, lines, file)
    return None


def no_value(name: str) -> str:
    """What to say of a name without a value; in braces a name that is too long has none either."""
    long = len(name) > _LONGEST_NAME
    return _says_too_long(name) if long else f"`{name}` has no value: write one, or delete the line"


def _says_too_long(name: str) -> str:
    most = f"{_LONGEST_NAME:,}"
    return f"this name is {len(name):,} signs long, and a name has at most {most}: shorten it"


def _equals(begins: At, problem: str, lines: list[str], file: str) -> Fault | None:
    """`around = 8`, where a colon is meant."""
    found = EQUALS.match(lines[begins[0] - 1])
    if found is None or "could not find expected ':'" not in problem:
        return None
    says = f"`{found[1]}` has an equals sign for its colon: write `{found[1]}: {found[2]}`"
    return fault_on(f"{found[1]}", says, begins[0], lines, file)


def _colon_missing(begins: At, problem: str, lines: list[str], file: str) -> Fault | None:
    """`outside 5 mm` on a line of its own, or `-ring` among the lines of a list."""
    if "could not find expected ':'" not in problem:
        return None
    line = lines[begins[0] - 1]
    if re.match(r"\s*-(?=[^\s-])", line):
        says = "this dash lacks a space: write `- ` for `-`"
        return fault_on("-", says, begins[0], lines, file, "- ")
    found = re.fullmatch(r"\s*([A-Za-z_]\w*) ([^:#]+?)\s*", line)
    if found is None:
        return None
    says = f"`{found[1]}` lacks its colon: write `{found[1]}: {found[2]}`"
    return fault_on(found[1], says, begins[0], lines, file, f"{found[1]}:")


def _in_braces(begins: At, noticed: At, problem: str, lines: list[str], file: str) -> Fault | None:
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
        return mendable(f"{says}, {value}", place, hides, value)
    deeper = indent(line) > indent(opening) or opening[:1] in ("{", "[")
    if begins[0] != noticed[0] and not deeper:
        return None
    sign = sign_at(noticed, lines)
    if sign == ":":
        found = re.search(r"([\w-]+|\"[^\"]*\"|'[^']*')\s*$", line[: noticed[1] - 1])
    else:
        found = re.compile(r"(\"[^\"]*\"|'[^']*')").match(line, noticed[1] - 1)
    if found is None:
        return None
    at = (noticed[0], found.start(1) + 1)
    says = f"a comma is missing before `{found[1]}`: write `, {found[1]}`"
    return Fault("plan-file", says, Place(file, *at, at[0], at[1] + len(found[1])))


def _of_a_list(begins: At, noticed: At, problem: str, lines: list[str], file: str) -> Fault | None:
    """A line that should begin with a dash and does not, or should not and does."""
    line = lines[noticed[0] - 1]
    first = line[: noticed[1] - 1].strip() == ""
    sign = _LIKE_A_DASH.match(line)
    if "an alias" in problem:
        line = lines[begins[0] - 1]
        sign = _LIKE_A_DASH.match(line)
        if sign and line[sign.end() : sign.end() + 1] == " ":
            says = f"a line of a list begins with a dash: write `- ` for `{sign[1]}`"
            return fault_on(sign[1], says, begins[0], lines, file, "-")
        return None
    in_list = "'-' indicator" in problem or "a block collection" in problem
    if not first or not (in_list or "expected key" in problem or "a block mapping" in problem):
        return None
    if not in_list:
        if sign is None or sign[1] != "-":
            return None
        says = "this line begins with a dash, and the ones above it do not: delete the dash"
        return fault_on("-", says, noticed[0], lines, file)
    if sign:
        why = "this dash lacks a space" if sign[1] == "-" else "a line of a list begins with a dash"
        says = f"{why}: write `- ` for `{sign[1]}`"
        new = "-" if line[sign.end() : sign.end() + 1] == " " else "- "
        return fault_on(sign[1], says, noticed[0], lines, file, new)
    if noticed[1] < begins[1]:
        return None
    says = "this line lacks its dash, as each line of a list has one: write `- ` before it"
    return Fault("plan-file", says, sign_place(noticed, lines, file))


def behind_its_end(noticed: At, lines: list[str], file: str) -> Fault:
    """`'Skipper's rope'`, or a bracket too many."""
    sign, line = sign_at(noticed, lines), lines[noticed[0] - 1]
    if sign and sign in "}])":
        says = f"there is a {sign} too many here: delete it"
        return Fault("plan-file", says, sign_place(noticed, lines, file))
    found = re.search(r":\s+((['\"]).*?)\s*$", line)
    if found is None:
        says = "there is text after a closing bracket: delete it, or put the whole text in quotes"
        return Fault("plan-file", says, sign_place(noticed, lines, file))
    text = found[1].strip("'") if found[2] == "'" else found[1]
    apostrophe = "an apostrophe ends this text, which begins with one"
    why = apostrophe if found[2] == "'" else "there is text after the closing quote"
    says = f"{why}: put the whole text in quotes, {quoted(text)}"
    place = sign_place(noticed, lines, file)
    within = place._replace(column=found.start(1) + 1, end_column=found.end(1) + 1)
    certain = "#" not in text and not ("'" in text and '"' in text)
    return mendable(says, place, within, quoted(text) if certain else None)


def quoted(text: str) -> str:
    """A text in quotes that YAML reads as it stands.

    >>> print(quoted("Skipper's rope"), quoted('3" wide'))
    "Skipper's rope" '3" wide'
    """
    return f"'{text}'" if '"' in text or "\\" in text else f'"{text}"'


def indent(line: str) -> int:
    """How many blanks a line begins with."""
    return len(line) - len(line.lstrip())


def line_above(number: int, lines: list[str]) -> str:
    """The line above one, comments and blank lines aside."""
    return next((line for line in reversed(lines[: number - 1]) if line.strip(" #")), "")


def sign_at(at: At, lines: list[str]) -> str:
    """The sign at a place; empty at the end of a line."""
    return lines[at[0] - 1][at[1] - 1 : at[1]]


def sign_place(at: At, lines: list[str], file: str) -> Place:
    """The place of one sign."""
    return Place(file, *at, at[0], at[1] + len(sign_at(at, lines)))


def fault_on(
    words: str, says: str, line: int, lines: list[str], file: str, new: str | None = None
) -> Fault:
    """A fault at the first of these words in a line, with what to write instead."""
    start = lines[line - 1].index(words) + 1
    place = Place(file, line, start, line, start + len(words))
    return mendable(says, place, place, new)


def mendable(says: str, place: Place, instead: Place, new: str | None) -> Fault:
    """A fault with what to write instead of what; without an edit where that is not certain."""
    return Fault("plan-file", says, place, edits=() if new is None else (Edit(instead, new),))
