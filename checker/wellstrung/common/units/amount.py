"""From a number and a unit, as an author writes them, to a value in the base unit.

A bare number is refused: nobody can tell whose 8 it is. A suggestion is the whole value as it
should stand and can itself be read: it replaces what was written.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import inf
from typing import NamedTuple

from wellstrung.common.patterns import Pattern
from wellstrung.common.units.known import EVERY_UNIT, FOREIGN, RATING, SPELLINGS, Kind, name_of

_VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
#: Full-width letters, digits and signs, and the fraction slash.
_PLAIN = {wide: wide - 0xFEE0 for wide in range(0xFF01, 0xFF5F)} | {ord("⁄"): "/"}

#: A number, a fraction or both, and a unit.
_PIECE = Pattern(r"""(\d+(?:[ -]\d+)?/\d+|\d+(?:\.\d+)?) ?([A-Za-zµμ"'″′”’%#][^\d.,±+/–—−-]*)?""")
#: a tolerance in percent
_SHARE = Pattern(r"([\d.]+) ?([A-Za-z\"']+) ± ([\d.]+) ?%")
_SIGNS = ("±", "..", " to ")
#: a range with a dash; `7-1/2 in` is none, but a number with its fraction
_DASHED = Pattern(
    r"""(?P<head>(?:(?P<whole>\d+)|\d+\.\d+|(?:\d+ )?\d+/\d+)(?: ?[A-Za-z'"″]+)?)"""
    r" ?[-–—] ?(?P<tail>\d.*)"
)
_FRACTION = Pattern(r"\d+/\d+(?!\d)")
# The patterns below are compiled when something is wrong, and most plans have nothing wrong.
_LAST_UNIT = r"[^\d\s./]+$"
#: thousands, or three decimals behind a comma
_THOUSANDS = Pattern(r"(?<!\d)(?<!\d[.,])([1-9]\d{0,2}),(\d{3})(?![\d,])")
#: units of which nothing at the bench has a thousand
_NEVER_IN_THOUSANDS = ("in", "h", "d", "week")
#: What is often written, what it means, and how a message names it.
_SLIPS = (
    (
        r"^(?:[~≈]|(?:about|circa|around|roughly|approx(?:imately)?|ca?"
        r"|max(?:imum)?|min(?:imum)?|at (?:least|most)|up to|under|over)\b\.?) ?",
        "",
        "has a word before its number",
    ),
    (r"^half an? ", "1/2 ", "has its number in words"),
    (r"^(?:one|an?) (?=[a-z])", "1 ", "has its number in words"),
    (r"(?<=\d),(?=\d)", ".", "has a comma as its decimal point"),
    (r"(?<![\d.])\.(?=\d)", "0.", "has no digit before its decimal point"),
    (r"(?<=\d)\.(?![\d.])", "", "has no digit after its decimal point"),
    (r"(?<=[a-z])\.(?!\.)", "", "has a full stop after its unit"),
    (r"± ?[-−] ?", "± ", "has a minus in its tolerance"),
    (r"^([\d./ ]*\d)( ?[a-z'\"″]+)? ?[-–—] ?(?=\d)", r"\1\2..", "may be a range or a fraction"),
)
#: Longer than any size that is written by hand, in characters.
_LONGEST = 60
_METRIC = (1.0, 10.0)
#: Nothing at the bench is smaller or larger, in the base unit: a tenth of a micrometre, 10 km.
_SMALLEST, _LARGEST = 1e-4, 1e7
#: A plan says the same sizes again and again; what a text means never changes.
REMEMBERED = 4096


class Parsed(NamedTuple):
    """A value in its base unit, the tolerance that was written with it, and how it was written.

    `unit` is the author's, as `show` takes it: `in/` where inches were written as fractions, `lbf`
    and `kgf` for ratings.
    """

    value: float
    low: float
    high: float
    unit: str
    text: str


class UnitFault(ValueError):
    """What is wrong with a value, and what could stand there instead.

    `bare` is a value that lacks its unit and no more, where nothing in it shows which.
    """

    def __init__(self, says: str, suggestion: str | None = None, bare: str = "") -> None:
        super().__init__(says)
        self.says = says
        self.suggestion = suggestion
        self.bare = bare


class _Amount(NamedTuple):
    value: float
    unit: str


def clean(text: str | int | float, what: str, example: str) -> str:
    """What was written, in plain characters and single spaces."""
    try:
        written = str(text)
    except ValueError:  # Python prints no whole number of more than 4,300 figures
        written = "9" * (_LONGEST + 1)
    if not written.isascii():
        for sign, fraction in _VULGAR.items():
            written = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", written).replace(sign, fraction)
        written = written.translate(_PLAIN)
    written = " ".join(written.split())
    if len(written) > _LONGEST:
        raise UnitFault(f"`{written[:20]}...` is too long for a {what}: write one as `{example}`")
    if not written:
        raise UnitFault(f"a {what} is missing: write one such as `{example}`")
    if " or " in written:
        written = re.sub(" (?:give or take|plus or minus) ", " ± ", written)
    if "+" in written:
        written = re.sub(r"\+ ?/ ?-|\+-", "±", written)
    return re.sub(" ?± ?", " ± ", written) if "±" in written else written


def one_line(text: str | int | float) -> str:
    """What was written, on one line."""
    return " ".join(str(text).split())


def measure(text: str | int | float, kind: Kind) -> Parsed:
    """A value of that kind, as an author writes it; raises UnitFault."""
    written = clean(text, kind.name, kind.example)
    if written == text:
        return _read(written, kind, written)
    return _read(written, kind, one_line(text))._replace(text=str(text))


def _read(written: str, kind: Kind, text: str) -> Parsed:
    """A value from cleaned text; faults quote `text`, what the author wrote."""
    head, sign, tail = split(written)
    last = _amount(tail, written, kind, text)
    value, unit = last
    low = high = value
    if sign:
        first = _amount(head, written, kind, text, unit)
        if sign == "±":
            value, unit = first
            low, high = around(value, last.value, text)
        else:
            low, value = first.value, (first.value + high) / 2
            if low > high:
                raise _turned(head, sign, tail, kind, text)
    if low <= 0:
        zero = "is 0" if value == 0 else "begins at 0 or less"
        raise UnitFault(f"`{text}` {zero}: write a {kind.name} of more than 0")
    if high > _LARGEST:
        raise UnitFault(f"`{text}` is larger than any piece: check it")
    if value < _SMALLEST:
        raise UnitFault(f"`{text}` is too small to measure: check it")
    name = name_of(unit, kind.units)
    if name == "in" and "/" in (head if sign == "±" else written):
        unit = "in/"
    elif kind is RATING:
        unit = {"lb": "lbf", "kg": "kgf"}.get(name, name)
    return Parsed(value, low, high, unit, text)


def split(written: str) -> tuple[str, str, str]:
    """What stands before a tolerance or range sign, the sign, and what follows, or is alone."""
    for sign in _SIGNS:
        head, found, tail = written.partition(sign)
        if found:
            return head.strip(), sign, tail.strip()
    dashed = _DASHED.fullmatch(written)
    if dashed and not (dashed["whole"] and _FRACTION.match(dashed["tail"])):
        return dashed["head"], "..", dashed["tail"]
    return "", "", written


def around(value: float, by: float, text: str) -> tuple[float, float]:
    """The ends of a value with its tolerance, by definition; UnitFault if that reaches down to 0.

    >>> around(46.0, 1.0, "46 cm ± 1 cm")
    (45.0, 47.0)
    """
    # rounded, so that 46 cm + 1 cm is 47 cm to the last digit
    low, high = round(value - by, 9), round(value + by, 9)
    if value and low <= 0:
        raise UnitFault(f"in `{text}` the tolerance is as large as the value: write a smaller one")
    return min(low, value), max(high, value)


def _turned(head: str, sign: str, tail: str, kind: Kind, text: str) -> UnitFault:
    """The fault of a range that begins at its larger end."""
    says = f"`{text}` runs from the larger to the smaller: write the smaller first"
    unit = "" if re.search(_LAST_UNIT, head) else re.findall(_LAST_UNIT, tail)[0]
    turned = f"{tail.removesuffix(unit).strip()}{sign}{head} {unit}".strip()
    return UnitFault(says, turned if _reads(turned, kind) else None)


def _amount(part: str, written: str, kind: Kind, text: str, unit: str = "") -> _Amount:
    """One part of what was written: a number with its unit, or a sum as `5 ft 6 in`.

    `unit` is the one to take where a single number has none.
    """
    pieces = list(_PIECE.finditer(part))
    if not pieces or sum(len(piece[0]) for piece in pieces) != len(part):
        raise _unreadable(written, kind, text)
    total, larger = 0.0, inf
    for piece in pieces:
        number, spelled = piece[1], (piece[2] or "").strip()
        if not spelled and len(pieces) > 1:
            raise _unreadable(written, kind, text)
        unit = spelled or unit
        if not unit:
            raise _unitless(written, kind, text)
        name = name_of(unit, kind.units)
        if name not in kind.units:
            raise _unknown_unit(unit, written, kind, text)
        if kind.units[name] >= larger:  # 8 mm 9 mm is a slip, no sum
            raise _unreadable(written, kind, text)
        larger = kind.units[name]
        if larger in _METRIC and _is_a_range(number):
            mended = written.replace("/", "..", 1)
            near = mended if _reads(mended, kind) else None
            raise UnitFault(f"`{text}` may be a range or a fraction: write `{mended}`", near)
        try:
            total += _number(number) * larger
        except ZeroDivisionError:
            raise UnitFault(f"`{text}` divides by 0: check the fraction") from None
    # rounded, so that 16 1/2 in is 419.1 mm to the last digit
    return _Amount(float(f"{total:.12g}"), unit)


def _number(text: str) -> float:
    """A number, a fraction or a number and a fraction; raises ZeroDivisionError."""
    if "/" not in text:
        return float(text)
    *whole, last = text.replace("-", " ").split()
    over, _, under = last.partition("/")
    return sum(map(float, whole)) + float(over) / float(under)


def _is_a_range(number: str) -> bool:
    """Whether a fraction of a millimetre is none that anyone measures, as `8/9` for 8 to 9."""
    over, _, under = number.partition("/")
    return bool(under) and under not in ("1", "2", "4", "8") and over != "1" and " " not in over


def _reads(written: str, kind: Kind) -> bool:
    try:
        _read(written, kind, written)
    except UnitFault:
        return False
    return True


def _unitless(written: str, kind: Kind, text: str) -> UnitFault:
    """The fault of a value without its unit; what else is wrong with it is raised first."""
    own = re.findall(_LAST_UNIT, split(written)[0])
    inches = ["in"] if "/" in written and "in" in kind.units else []
    likely = own or inches
    _read(f"{written} {(likely or kind.usual)[0]}", kind, text)
    return lacks_unit(written, kind, likely or kind.usual, "" if likely else written)


def lacks_unit(written: str, kind: Kind, units: Iterable[str], bare: str = "") -> UnitFault:
    """The fault of a value without its unit, and the units that it may have, likeliest first."""
    each = [f"{written} {unit}" for unit in units]
    choice = " or ".join(f"`{one}`" for one in each)
    return UnitFault(f"a {kind.name} needs a unit: write {choice}", each[0], bare)


def _unknown_unit(unit: str, written: str, kind: Kind, text: str) -> UnitFault:
    if unit in ("x", "×", "or"):
        mended = re.sub(" or ", "..", written)
        near = mended if unit == "or" and _reads(mended, kind) else None
        both = f", or the range `{near}`" if near else ""
        both = both or ", and the other in a field of its own" * (unit != "or")
        return UnitFault(f"`{text}` names two sizes: write one{both}", near)
    if share := _SHARE.fullmatch(written):
        by = float(f"{float(share[1]) * float(share[3]) / 100:.3g}")
        mended = f"{share[1]} {share[2]} ± {by} {share[2]}"
        if _reads(mended, kind):
            says = f"`{text}` has its tolerance in percent"
            return UnitFault(f"{says}: write `{mended}`", mended)
    says = f"`{unit}` in `{text}` is not a unit of {kind.name}"
    real = unit.lower() in FOREIGN or name_of(unit, EVERY_UNIT) in EVERY_UNIT
    near = None if real else _nearest_unit(unit, kind)
    if near:
        mended = re.sub(rf"(?<=[\d ]){re.escape(unit)}(?=$|[\d ±.])", near, written)
        if mended != written and _reads(mended, kind):
            return UnitFault(f"{says}: write `{mended}`", mended)
    return UnitFault(f"{says}: use {kind.takes}")


def _nearest_unit(unit: str, kind: Kind) -> str | None:
    """The likeliest unit meant: a slip of one key keeps the length of a short one."""
    from difflib import get_close_matches  # only needed if a unit is misspelt

    words = {**{name: name for name in kind.units}, **SPELLINGS}
    known = [word for word, name in words.items() if name in kind.units and name != "µm"]
    near = get_close_matches(unit.lower(), known, n=5, cutoff=0.5)
    if len(unit) > 3:
        return near[0] if near else None
    return min(near, key=lambda word: (len(word) != len(unit), near.index(word)), default=None)


def _unreadable(written: str, kind: Kind, text: str) -> UnitFault:
    """The fault of text that is not a number with a unit; a common slip gets its correction."""
    if re.match(r"[-−] ?[0-9]", written):
        return UnitFault(f"`{text}` is negative: write a {kind.name} of more than 0")
    thousands = _THOUSANDS.sub(r"\1\2", written)
    unit = name_of("".join(re.findall(_LAST_UNIT, written)), kind.units)
    if thousands != written and unit not in _NEVER_IN_THOUSANDS and _reads(thousands, kind):
        point = _THOUSANDS.sub(r"\1.\2", written)
        return UnitFault(
            f"`{text}` may be thousands or a decimal: write `{thousands}` or `{point}`"
        )
    mended, slip = written, ""
    for pattern, meant, says in _SLIPS:
        changed = re.sub(pattern, meant, mended)
        if changed != mended:
            mended, slip = changed, slip or says
    if slip and _reads(mended, kind):
        return UnitFault(f"`{text}` {slip}: write `{mended}`", mended)
    return UnitFault(
        f"`{text}` is not a {kind.name}: write a number and a unit, such as `{kind.example}`"
    )
