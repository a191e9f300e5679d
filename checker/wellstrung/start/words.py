"""Readers of answers: lengths, whole numbers, wearers, beads, thread, as people write them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any, NamedTuple

from wellstrung.common import units
from wellstrung.common.trade_words import ACCEPTED, plain, words
from wellstrung.common.wording import nearest
from wellstrung.start import said
from wellstrung.start.leaves import Noted
from wellstrung.start.question import Answers, Refused

Fields = dict[str, Any]


@contextmanager
def as_in_a_plan() -> Iterator[None]:
    """Refuse what a plan does not take as a value, in the same words."""
    try:
        yield
    except units.UnitFault as fault:
        raise Refused(fault.says) from None


#: what people say before a measure: `wrist 16 cm`, `about 7 in`
_BEFORE = re.compile(r"^(?:[A-Za-z]+[ :]+)+(?=[\d½¼¾⅛⅜⅝⅞⅓⅔])")


@as_in_a_plan()
def length(text: str, answers: Answers) -> units.Parsed:
    """A length, as a plan writes it."""
    return units.target(_BEFORE.sub("", text))


@as_in_a_plan()
def measure(text: str, answers: Answers) -> units.Parsed:
    """What a wearer measures."""
    return units.length(_BEFORE.sub("", text))


@as_in_a_plan()
def size(text: str, answers: Answers) -> units.Parsed:
    """The size of a part."""
    return units.size(text)


@as_in_a_plan()
def wire(text: str, answers: Answers) -> units.Parsed:
    """A wire, by its gauge with the system, or in mm."""
    return units.wire(text)


def whole(least: int, most: int, what: str) -> Callable[[str, Answers], int]:
    """Reads a number between two others; `what` says of what."""

    def read(text: str, answers: Answers) -> int:
        if not (text.isdecimal() and text.isascii() and least <= int(text[:6]) <= most):
            raise Refused(f"`{text}` is not a number of {what}: write one from {least} to {most}")
        return int(text)

    return read


class Wearer(NamedTuple):
    """Who wears it: the age as written, and whether metals trouble them."""

    age: str
    metals: bool

    @property
    def child(self) -> bool:
        """Whether it is a child by the age that laws name."""
        return units.age(self.age) != units.age("adult")


#: who wears it, the youngest first, in words beside those that the trade has for an age
_WHO = {
    "under three": (),
    "child": ("daughter", "son", "niece", "nephew"),
    "adult": (
        "grown", "friend", "me", "myself", "her", "him", "mother", "father", "sister", "brother",
        "wife", "husband", "customer", "anyone", "nobody", "shop", "sale",
    ),
}  # fmt: skip
_AGE = re.compile(r"\d+(?:[.,]\d+)? ?(?:years?|yrs?|months?|mths?)?", re.IGNORECASE)
_METALS = re.compile(r"\b(nickel|metals?|allerg\w*|sensitive)\b", re.IGNORECASE)


@as_in_a_plan()
def wearer(text: str, answers: Answers) -> Wearer:
    """Who wears it.

    >>> from wellstrung.start.question import Answers
    >>> wearer("a friend, nickel troubles her", Answers({})), wearer("a girl of 7", Answers({}))
    (Wearer(age='adult', metals=True), Wearer(age='7 years', metals=False))
    """
    metals = bool(_METALS.search(text))
    found = _AGE.search(text)
    if found is not None:
        written = found[0] if not found[0].isdecimal() else f"{found[0]} years"
        units.age(written)
        return Wearer(written, metals)
    spoken = plain(re.sub(r"[^\w -]", " ", text))
    for age, others in _WHO.items():
        called = (age, *map(plain, words(ACCEPTED["age"][age])), *others)
        if any(f" {word} " in f" {spoken} " for word in called):
            return Wearer(age, metals)
    if metals and len(text.split()) <= 4:
        return Wearer("adult", metals)
    near = nearest(text, ("adult", "child"))
    advice = f"`{near}`" if near else "`adult`, or an age as `7 years`"
    raise Refused(f"`{text}` does not say how old: write {advice}")


_MAKE = Noted("Japanese", "you did not say: Czech beads of this size have smaller holes")


def bead(text: str) -> Fields:
    """One bead; a seed bead whose make was not said is taken for a Japanese one."""
    fields = said.bead(text)
    if fields["type"] == "round" and is_seed(fields) and "make" not in fields:
        fields["make"] = _MAKE
    return fields


def beads(text: str, answers: Answers) -> list[Fields]:
    """Beads in the order of their repeat: `6 mm glass pearl and 8/0 Japanese`."""
    return [bead(one.strip()) for one in re.split(r";|\band\b|\bthen\b", text) if one.strip()]


def one_bead(text: str, answers: Answers) -> Fields:
    """One bead and no more."""
    found = beads(text, answers)
    if len(found) != 1:
        raise Refused("one bead is asked for here")
    return found[0]


def is_seed(fields: Fields) -> bool:
    """Whether a bead is one of those that are sold by aughts."""
    return str(fields.get("size", "")).endswith("/0")


class Had(NamedTuple):
    """Something on the table already: a bead with how much of it, or other words."""

    said: str
    bead: Fields | None
    grams: str
    pieces: int


_GRAMS = re.compile(r"(\d+(?:\.\d+)? ?(?:g|oz))\b(?: of)?", re.IGNORECASE)
_COUNT = re.compile(r"^(\d+)(?= (?:of |x )?)(?! ?/| ?mm|\.)(?: of| x)?\b ", re.IGNORECASE)
#: the size of a bead
_SIZED = re.compile(
    r"\b[1-9][0-9]? ?/ ?0(?!\w)|\bmm\b(?!.*\b(?:clasp|lobster|toggle|ring|hook|cap))", re.IGNORECASE
)
_NOTHING = re.compile(r"^(no|nothing|none|not)\b", re.IGNORECASE)


def had(text: str, answers: Answers) -> list[Had]:
    """What is on the table: `20 g of grey 8/0, 50 6 mm pearls, fused 6 lb, lobster, no clasp`."""
    found = []
    for part in re.split(r"[,;]|\band\b", text):
        item = part.strip()
        if not item or _NOTHING.match(item):
            continue
        grams, count, rest = "", 0, item
        if weighed := _GRAMS.search(rest):
            grams, rest = weighed[1], rest.replace(weighed[0], "").strip()
        elif counted := _COUNT.match(rest):
            count, rest = int(counted[1]), rest[counted.end() :].strip()
        sized = grams or count or _SIZED.search(rest)
        found.append(Had(rest, bead(rest) if sized else None, grams, count))
    return found
