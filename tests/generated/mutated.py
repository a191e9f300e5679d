"""Plans whose bytes were changed, by a slip of the hand, a bad copy or malice."""

from __future__ import annotations

import re
from collections.abc import Callable

from generated.choices import Choices, pick

#: what means something to YAML, to the reader of sizes, or to a terminal
SCRAPS = (
    *(
        scrap.encode()
        for scrap in (
            *"\n\r\t,:#'\"`0~\u202e\u200b\ufeff\u00a0\u2028\x00é\U0001f4ff½²%",
            *(
                ": ",
                "- ",
                " #",
                "[]",
                "{}",
                "[",
                "]",
                "{",
                "}",
                "&a ",
                "*a",
                "!!str ",
                "|\n",
                ">\n",
            ),
            *(
                "? ",
                "<<: ",
                "---\n",
                "\r\n",
                "\n  ",
                "-1",
                "1e9",
                "1e400",
                "-0",
                ".5",
                "010",
                "1:30",
            ),
            *("0x1f", "999999999999", "null", "yes", "mm", " in", " 8 mm", " ±", "± 0 mm", "1/0"),
            *("..", " per ", "AWG", "plan: 2", "from: ", "repeat: ", "of: ", "times: ", "count: "),
            *("kind: ", ".a", ".b", "\x1b[31m"),
        )
    ),
    *(b"\xff", b"\xc3", b"\xed\xa0\x80"),
)
_NUMBER = re.compile(rb"\d+(?:\.\d+)?")
_WORD = re.compile(rb"[A-Za-z][A-Za-z_-]+")
_NUMBERS = (b"0", b"1", b"-3", b"0.001", b"7", b"250", b"100000", b"1e12", b"3.14159265358979")

Change = Callable[[Choices, bytes, bytes], bytes]


def _span(choices: Choices, text: bytes, most: int = 40) -> tuple[int, int]:
    start = choices.whole(0, max(0, len(text) - 1))
    return start, min(len(text), start + choices.whole(0, most))


def _flipped(choices: Choices, text: bytes, _: bytes) -> bytes:
    at, _end = _span(choices, text)
    return text[:at] + bytes([choices.whole(0, 255)]) + text[at + 1 :]


def _cut(choices: Choices, text: bytes, _: bytes) -> bytes:
    start, end = _span(choices, text)
    return text[:start] + text[end:]


def _twice(choices: Choices, text: bytes, _: bytes) -> bytes:
    start, end = _span(choices, text)
    return text[:end] + text[start:]


def _put_in(choices: Choices, text: bytes, _: bytes) -> bytes:
    at, _end = _span(choices, text)
    scrap: bytes = pick(choices, SCRAPS)
    return text[:at] + scrap + text[at:]


def _moved(choices: Choices, text: bytes, _: bytes) -> bytes:
    start, end = _span(choices, text)
    rest = text[:start] + text[end:]
    at, _end = _span(choices, rest)
    return rest[:at] + text[start:end] + rest[at:]


def _of_another(choices: Choices, text: bytes, other: bytes) -> bytes:
    start, end = _span(choices, other, 200)
    at, _end = _span(choices, text)
    return text[:at] + other[start:end] + text[at:]


def _cut_short(choices: Choices, text: bytes, _: bytes) -> bytes:
    return text[: choices.whole(0, len(text))]


def _line_changed(choices: Choices, text: bytes, other: bytes) -> bytes:
    """A line left out, written twice, or put elsewhere; or one of another plan."""
    lines = text.split(b"\n")
    at = choices.whole(0, len(lines) - 1)
    line = lines[at] if choices.whole(0, 1) else pick(choices, other.split(b"\n"))
    if choices.whole(0, 1):
        del lines[at]
    lines.insert(choices.whole(0, len(lines)), line)
    return b"\n".join(lines)


def _found(choices: Choices, what: re.Pattern[bytes], text: bytes) -> tuple[int, int]:
    found = [match.span() for match in what.finditer(text)]
    return pick(choices, found) if found else (0, 0)


def _number(choices: Choices, text: bytes, _: bytes) -> bytes:
    start, end = _found(choices, _NUMBER, text)
    return text[:start] + pick(choices, _NUMBERS) + text[end:]


def _word(choices: Choices, text: bytes, other: bytes) -> bytes:
    """A word for another, of this plan or of another one."""
    start, end = _found(choices, _WORD, text)
    source = pick(choices, (text, other))
    first, last = _found(choices, _WORD, source)
    return text[:start] + source[first:last] + text[end:]


CHANGES: tuple[Change, ...] = (
    _word, _number, _word, _number, _line_changed, _put_in, _put_in, _cut, _twice, _moved,
    _of_another, _flipped, _cut_short,
)  # fmt: skip


def mutated(choices: Choices, text: bytes, other: bytes) -> bytes:
    """A plan with one to four changes; `other` is a plan that some of them take from."""
    for _ in range(choices.whole(1, 4)):
        text = pick(choices, CHANGES)(choices, text, other)
    return text
