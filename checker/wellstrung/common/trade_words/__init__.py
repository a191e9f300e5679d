"""Words of the trade by the place where they stand: accepted, asked about, answered, or their own.

What goes in is what a beader writes; what comes out is the plan's own word, or what to write.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cache, lru_cache

from msgspec import Struct

from wellstrung.common.trade_words.accepted import ACCEPTED
from wellstrung.common.trade_words.answered import ASKED, KNOWN
from wellstrung.common.trade_words.own import OWN

__all__ = [
    "ACCEPTED",
    "ASKED",
    "KNOWN",
    "TradeWord",
    "answer",
    "bring",
    "close",
    "fields_meant",
    "fields_of",
    "meaning",
    "own",
    "plain",
    "said",
    "same",
    "words",
    "words_at",
]


@lru_cache(10_000)  # each word of a phrase is held against the same few hundred words
def plain(word: str) -> str:
    """A word in small letters, with single spaces for hyphens and underscores.

    >>> plain("Lever-Back"), plain("closed_length")
    ('lever back', 'closed length')
    """
    return " ".join(word.casefold().replace("-", " ").replace("_", " ").split())


def words(listed: str) -> Iterator[str]:
    """The words of a list, each as people write it."""
    return (word.strip() for word in listed.split(",") if word.strip())


def close(word: str) -> str:
    """A word without what people write differently: capitals, hyphens, spaces."""
    return plain(word).replace(" ", "")


class TradeWord(Struct, frozen=True):
    """A word that a plugin brings: at a place (`kind`, `stitch`, `field` ...) it means another."""

    name: str
    place: str
    means: str


#: words of plugins by place: set once, when plugins are loaded
_BROUGHT: dict[str, dict[str, str]] = {}


def bring(brought: Iterable[TradeWord]) -> None:
    """Take the words of plugins; raises ValueError for a place or a word that is taken."""
    _BROUGHT.clear()
    _meanings.cache_clear()
    new: dict[str, dict[str, str]] = {}
    for word in brought:
        if word.place not in ACCEPTED:
            raise ValueError(f"`{word.name}` stands at `{word.place}`, which is no place of words")
        if meaning(word.place, word.name) or answer(word.place, word.name):
            raise ValueError(f"`{word.name}` has a meaning already as a word of `{word.place}`")
        new.setdefault(word.place, {})[word.name] = word.means
    _BROUGHT.update(new)
    _meanings.cache_clear()


def meaning(place: str, word: str) -> tuple[str, ...]:
    """The plan's words that a word of the trade may mean at a place; empty for one not known.

    >>> meaning("kind", "Calotte"), meaning("field", "weight"), meaning("metal", "calotte")
    (('bead tip',), ('mass',), ())
    """
    return _meanings(place).get(close(word), ())


def said(place: str, word: str) -> tuple[str, Mapping[str, str]] | None:
    """The plan's word that a word means at a place, and the fields that it says beside.

    >>> said("kind", "lobster clasp"), said("kind", "cap")
    (('clasp', {'type': 'lobster'}), None)
    """
    meant = meaning(place, word)
    return fields_of(meant[0]) if meant else None


def fields_of(own: str) -> tuple[str, Mapping[str, str]]:
    """A word of the plan, and the fields that stand beside it."""
    word, *beside = own.split(", ")
    return word, dict(field.split(": ") for field in beside)


def fields_meant(word: str, fields: Collection[str], holder: str = "") -> tuple[str, ...]:
    """Which fields of a group the name of one may mean; `holder` is what the group is of.

    >>> fields_meant("Weight", ["mass", "inside"]), fields_meant("id", ["bore", "inside"])
    (('mass',), ('inside', 'bore'))
    """
    alike = tuple(field for field in fields if close(field) == close(word))
    for place in (f"field of {holder}", "field"):
        alike = alike or tuple(field for field in meaning(place, word) if field in fields)
    return alike


def words_at(place: str) -> list[str]:
    """Every word that is accepted at a place."""
    return [word for listed in ACCEPTED[place].values() for word in words(listed)]


def answer(place: str, word: str) -> tuple[str, bool] | None:
    """What to say of a word that is asked about or answered; whether it has several meanings."""
    return _answers(place).get(close(word))


@cache
def _meanings(place: str) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for own, listed in ACCEPTED.get(place, {}).items():
        for word in words(listed):
            found.setdefault(close(word), {})[own] = None
    for word, means in _BROUGHT.get(place, {}).items():
        found[close(word)] = {means: None}
    return {word: tuple(meant) for word, meant in found.items()}


@cache
def _answers(place: str) -> Mapping[str, tuple[str, bool]]:
    return {
        close(word): (advice, asked)
        for table, asked in ((KNOWN, False), (ASKED, True))
        for listed, advice in table.get(place, {}).items()
        for word in words(listed)
    }


@cache
def _same() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for own, listed in _everywhere():
        if ", " not in own:  # which says one thing
            for word in words(listed):
                found.setdefault(plain(word), {})[own] = None
    return {word: tuple(meant) for word, meant in found.items()}


def _everywhere() -> Iterator[tuple[str, str]]:
    """The plan's own words with those that mean the same, but of fields, steps and one kind."""
    for place, meanings in ACCEPTED.items():
        if place != "do" and not place.startswith(("field", "stitch of")):
            yield from meanings.items()


def same(word: str) -> tuple[str, ...]:
    """The words that a word means the same as, wherever it stands.

    >>> same("german silver"), same("pin")
    (('nickel silver',), ())
    """
    return _same().get(plain(word), ())


@cache
def _own() -> frozenset[str]:
    answered = [listed for table in (ASKED, KNOWN) for place in table.values() for listed in place]
    accepted = [listed for _, listed in _everywhere()]
    return frozenset(plain(word) for each in (OWN, *answered, *accepted) for word in words(each))


def own(word: str) -> bool:
    """Whether a word is one of the trade, and so no slip of any other.

    >>> own("bead cap"), own("bead tipp")
    (True, False)
    """
    return plain(word) in _own()
