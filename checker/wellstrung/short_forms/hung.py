"""What hangs from what, as one says it: `drop from link`, `2 drops from frame by ring`."""

from __future__ import annotations

import re
from collections.abc import Collection

from wellstrung.common.places import Fault
from wellstrung.common.trade_words import ACCEPTED, words
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.reading.numbers import SET, in_sets, whole
from wellstrung.short_forms.phrase import part

_NEAR = ACCEPTED["field of hung"]
_FROM, _BY = ("|".join((name, *words(_NEAR[name]))) for name in ("from", "by"))
_LINE = re.compile(
    r"\s*(?:hang\s+)?(?P<part>[^,]*?\S)(?:\s+(?:hangs?|hung))?"
    rf"\s+(?:{_FROM})\s+(?P<source>[^,]*?[^\s,])(?:\s+(?:{_BY})\s+(?P<by>[^,]*?[^\s,]))?"
    r"(?:,\s*(?P<note>.*\S))?\s*",
    re.IGNORECASE | re.DOTALL,
)
_ARTICLE = re.compile(r"(?:each|every|the|an?|its)\s+", re.IGNORECASE)
_MANY = re.compile(r"(\w+)(?:\s*[x×]|\s+times)?(?:\s+of)?\s+", re.IGNORECASE)
_OF = re.compile(r"(?:\s+of)?\s+", re.IGNORECASE)
#: `bottom eyes of frame`, `first edge of band`
_EYES = re.compile(r"(?P<eyes>.*?\S)(?:\s+eyes?)?\s+of\s+(?P<part>.*)", re.IGNORECASE)


def hung(node: tree.Scalar, names: Collection[str], faults: list[Fault]) -> tree.Mapping | None:
    """A line of `hung` from a phrase; None, with a fault, where it does not say from what.

    A word that no part is called stays as it is: it is answered as it is in a group of fields.
    """
    said = _LINE.fullmatch(node.text)
    if said is None:
        says = f"{shown(node)} does not say what hangs from what"
        line = "write it as in `drop from link` or `2 drops from link by ring`"
        faults.append(fault(f"{says}: {line}", node.place))
        return None
    (first, last), times = said.span("part"), None
    counted = None if _called(said["part"], names) else _counted(node.text, first, last)
    if counted is not None:
        many, end, after = counted
        times, first = part(node, first, end), after
        times.value = many
    fields: dict[str, tree.Node | None] = {
        "part": _part(node, first, last, names),
        "from": _source(node, *said.span("source"), names),
        "by": _part(node, *said.span("by"), names) if said["by"] else None,
        "times": times,
        "note": part(node, *said.span("note")) if said["note"] else None,
    }
    return tree.Spelled(node, fields)


def _counted(text: str, first: int, last: int) -> tuple[int, int, int] | None:
    """How many the first words are, where they end, and where what is counted begins."""
    if found := SET.match(text, first, last):
        of = _OF.match(text, found.end(), last)
        return in_sets(found[0]), found.end(), of.end() if of else found.end()
    if (found := _MANY.match(text, first, last)) and (many := whole(found[1])):
        return many, found.end(1), found.end()
    return None


def _source(node: tree.Scalar, first: int, last: int, names: Collection[str]) -> tree.Node:
    """What a part hangs from: a part, or a set of its eyes."""
    of = _EYES.fullmatch(node.text, first, last)
    if of is None or _called(node.text[first:last], names):
        return _part(node, first, last, names)
    article = _ARTICLE.match(node.text, *of.span("eyes"))
    eyes = part(node, article.end() if article else of.start("eyes"), of.end("eyes"))
    return tree.Spelled(
        part(node, first, last), {"part": _part(node, *of.span("part"), names), "eyes": eyes}
    )


def _part(node: tree.Scalar, first: int, last: int, names: Collection[str]) -> tree.Scalar:
    """The words for a part, with its name as their value where one has it."""
    article = _ARTICLE.match(node.text, first, last)
    if article is not None and not _called(node.text[first:last], names):
        first = article.end()
    said = part(node, first, last)
    name = _called(said.text, names)
    return tree.meaning(said, name) if name else said


def _called(text: str, names: Collection[str]) -> str:
    """The part that is called so, one or many of it; empty where none is."""
    plain = text.casefold()
    forms = (plain, plain.removesuffix("s"), plain.removesuffix("es"))
    return next((name for form in forms for name in names if name.casefold() == form), "")
