"""Plain words of a plan: which are numbers, and which other YAML readers take for other values.

`010`, `1:30` or a date are refused with what to write instead.
"""

from __future__ import annotations

import re

from wellstrung.common.patterns import Pattern
from wellstrung.reading.yaml_errors import short

#: Up to 15 figures, which a float holds exactly.
_INT = Pattern(r"-?(0|[1-9][0-9]{0,14})")
_FLOAT = Pattern(r"-?(0|[1-9][0-9]{0,14})\.[0-9]+")

#: Plain words that YAML readers disagree about, and what to write.
_SURPRISES = (
    (
        r"[-+]?0[0-9]+(\.[0-9]*)?",
        "begins with a zero, which some readers take for another number:"
        " write {number}, or {quoted} in quotes if it is text",
    ),
    (
        r"(?=.*_)[-+]?([0-9][0-9_]*(\.[0-9_]*)?|\.[0-9][0-9_]*)",
        "has an underscore inside a number: write {number}, or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?0(b[01_]+|o[0-7_]+|x[0-9A-Fa-f_]+)",
        "is a number in another base to some readers: write it in decimal,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?([0-9][0-9_]*\.?[0-9_]*|\.[0-9][0-9_]*)[eE][-+]?[0-9]+",
        "is a number to some readers and text to others: write it out in full,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[-+]?[0-9]{16,}(\.[0-9]*)?",
        "has more digits than a number can hold: write fewer, or {quoted} in quotes if it is text",
    ),
    (r"[-+]?\.[0-9]+", "has no digit before its decimal point: write {number}"),
    (r"[-+]?[0-9]+\.", "has no digit after its decimal point: write {number}"),
    (r"\+[0-9]+(\.[0-9]+)?", "needs no plus sign: write {number}"),
    (
        r"[-+]?[0-9][0-9_]*(:[0-5]?[0-9])+(\.[0-9_]*)?",
        "is a number in base 60 to some readers: write a time with its unit, such as `90 min`,"
        " or {quoted} in quotes if it is text",
    ),
    (
        r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(([Tt]|[ \t]+)[0-9].*)?",
        "is a date to some readers: write {quoted} in quotes",
    ),
    (
        r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)|NaN",
        "is not a number that can be measured: write one",
    ),
    (r"~|null|Null|NULL", "means no value: write one, or delete the line"),
    (r"<<|=", "has a meaning of its own in YAML: write {quoted} in quotes if it is text"),
)
_FIRST_OF_SURPRISES = frozenset("-+.0123456789~nN<=")
#: All of them at once, since almost every size begins like one.
_SURPRISING = Pattern("|".join(f"(?:{pattern})" for pattern, _ in _SURPRISES))


class Surprise(ValueError):
    """A word that some YAML reader takes for another value; the message says what to write."""


def plain_value(text: str) -> str | int | float | None:
    """The value of an unquoted word: None if it is empty; raises Surprise.

    >>> plain_value("8 mm"), plain_value("12"), plain_value("0.5")
    ('8 mm', 12, 0.5)
    """
    if not text:
        return None
    # almost every size has a space in it, and of all surprises only a date has
    if text[0] in _FIRST_OF_SURPRISES and (" " not in text or text[:4].isdigit()):
        if _INT.fullmatch(text):
            return int(text)
        if _FLOAT.fullmatch(text):
            return float(text)
        if _SURPRISING.fullmatch(text):
            says = next(says for pattern, says in _SURPRISES if re.fullmatch(pattern, text))
            raise Surprise(says.format(quoted=f'"{short(text)}"', number=_tidied(text)))
    return text


def _tidied(text: str) -> str:
    """A number as any reader takes it: `-.5` is -0.5, `010` is 10, `1_000.` is 1000.0."""
    sign = "-" if text.startswith("-") else ""
    whole, point, part = text.lstrip("+-").replace("_", "").partition(".")
    return sign + (whole.lstrip("0") or "0") + (f".{part or '0'}" if point else "")


def composed(text: str) -> str:
    r"""The text with each accent and its letter as one sign, however a keyboard writes them.

    >>> composed("co\u0302ne") == "c\u00f4ne"
    True
    """
    if text.isascii():
        return text
    from unicodedata import normalize  # few plans need it

    return normalize("NFC", text)
