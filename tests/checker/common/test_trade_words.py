"""No suggestion takes one trade word for another: what looks alike is not the same."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
import yaml

import wellstrung_schemas as schemas
from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.trade_words import meaning
from wellstrung.common.wording import nearest
from wellstrung.kinds import KINDS
from wellstrung.kinds.thread import THREAD
from wellstrung.model.references import STATEMENTS
from wellstrung.plugins import host
from wellstrung.reading.faults import meant_by

WORDS, APART = yaml.safe_load_all(
    Path(__file__).with_name("trade_words.yaml").read_text(encoding="utf-8")
)


def choices(kind: str, field: str) -> list[str]:
    """The words that a field of a kind takes."""
    properties: Any = schemas.fragment(kind)["properties"]
    return list(properties[field]["enum"])


def fields(kind: str) -> list[str]:
    """The fields of a kind."""
    properties: Any = schemas.fragment(kind)["properties"]
    return list(properties)


#: what is known where a word is written
KNOWN: Mapping[str, list[str]] = {
    "kinds": [kind.name for kind in KINDS],
    "clasp types": choices("clasp", "type"),
    "ear wire types": choices("ear wire", "type"),
    "pins": choices("wire link", "type"),
    "closings": choices("jump ring", "closing"),
    "stitches": list(host.load(()).stitches),
    "metals": list(tables.load("metals").rows),
    "states": list(STATEMENTS),
    "adhesives": list(tables.load("adhesives").rows),
    "ages": ["adult", "child", "under three"],
    "threads": list(THREAD.types),
    "thread rows": list(tables.load("threads").rows),
    "fields": sorted({field for kind in KINDS for field in fields(kind.name)}),
    "verbs": list(schemas.verbs()),
}
#: the place where the words of each list stand in a plan
PLACE = {
    "kinds": "kind",
    "clasp types": "type of clasp",
    "ear wire types": "type of ear wire",
    "pins": "type of wire link",
    "closings": "closing",
    "stitches": "stitch",
    "metals": "metal",
    "adhesives": "type of adhesive",
    "ages": "age",
    "threads": "type of thread",
    "fields": "field",
    "verbs": "do",
}


def answers(where: str, word: str) -> str | None:
    """What a word means where it stands, or else what the program suggests for it."""
    meant = meaning(PLACE.get(where, ""), word)
    if meant:
        return " or ".join(meant)
    return suggested(where, word)


def suggested(where: str, word: str) -> str | None:
    """What the program suggests for a word."""
    if where == "ages":
        with pytest.raises(units.UnitFault) as fault:
            units.age(word)
        return fault.value.suggestion
    look = meant_by if where in ("kinds", "fields") else nearest
    return look(word, KNOWN[where])


def test_there_are_two_hundred_words() -> None:
    assert sum(len(words) for words in WORDS.values()) >= 200


@pytest.mark.parametrize("where", WORDS)
def test_a_trade_word_is_answered_with_the_right_one_or_none(where: str) -> None:
    found = {word: answers(where, str(word)) for word in WORDS[where]}
    assert found == WORDS[where]


@pytest.mark.parametrize("words", APART, ids=lambda words: str(words[0]))
def test_what_the_trade_keeps_apart_is_never_equated(words: list[str]) -> None:
    for word, other in permutations(words, 2):
        assert nearest(word, [other]) is None, (word, other)


def slips(word: str) -> Iterator[str]:
    """A letter left out, two swapped, one struck twice."""
    for at in range(len(word)):
        yield word[:at] + word[at + 1 :]
        yield word[:at] + word[at : at + 2][::-1] + word[at + 2 :]
        yield word[:at] + word[at] + word[at:]


@pytest.mark.parametrize("where", [where for where in KNOWN if where != "ages"])
def test_a_slip_is_answered_with_its_own_word_or_none(where: str) -> None:
    right = 0
    for word in KNOWN[where]:
        for slip in set(slips(word)) - {word}:
            answer = suggested(where, slip)
            assert answer in (word, slip, None), (slip, answer)
            right += answer == word
    assert right
