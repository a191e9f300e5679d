"""Faults of shape: how a message names what it found, what it needs and the nearest known word."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault, Place
from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import tree as reading

#: of what is quoted from a plan or shown as an example; the rest is cut off
LONGEST = 60
#: what stands between the entries of a list that is written as text
APART = Pattern(r"\s*[,;+&]\s*|\s+(?:and|-+>?|[–—→])\s+")
#: the command that lists every word of the plan language
EVERY_WORD = "wellstrung schema language"


def fault(
    says: str,
    place: Place,
    found: str = "",
    needed: str = "",
    remedy: str = "",
    also: tuple[Place, ...] = (),
    edits: tuple[Edit, ...] = (),
) -> Fault:
    """A fault of shape; its message is one line, whatever it quotes."""
    if place.line != place.end_line:
        edits = ()  # text over several lines ends with a line break that an edit would swallow
    return Fault("plan-shape", says.replace("\n", " "), place, found, needed, remedy, also, edits)


def unknown(node: reading.Scalar, head: str, choices: Collection[str]) -> Fault:
    """The fault of a word that is none of the choices, with the nearest of them."""
    return unknown_word(head, node.text, node.place, meant_by(node.text, choices), choices)


def choose(head: str, node: reading.Node, choices: Collection[str]) -> Fault:
    """The fault of a word that is none of the choices."""
    if not isinstance(node, reading.Scalar):
        return fault(head, node.place, needed=one_of(choices, see=EVERY_WORD))
    if node.quoted and node.text in choices:  # "1" for 1
        edits = (Edit(node.place, node.text),)
        says = f"{head}: write {node.text} without quotes"
        return fault(says, node.place, f'"{node.text}"', node.text, edits=edits)
    near = next(iter(choices)) if len(choices) == 1 else meant_by(node.text, choices)
    return unknown_word(head, node.text, node.place, near, choices)


def in_quotes(head: str, node: reading.Scalar) -> Fault:
    """The fault of a word that must be quoted."""
    quoted = f'"{node.text}"'
    edits = (Edit(node.place, quoted),)
    return fault(f"{head}: write {quoted} in quotes", node.place, node.text, quoted, edits=edits)


def unknown_word(
    head: str, word: str, place: Place, near: str | None, choices: Iterable[str]
) -> Fault:
    """The fault of an unknown word: the nearest known one is offered, or all of them."""
    if near is None:
        return fault(head, place, word, one_of(choices, word, EVERY_WORD))
    advice = f"write `{near}`"
    edits = (Edit(place, near),)
    return fault(f"{head}: {advice}", place, word, f"`{near}`", remedy=advice, edits=edits)


def meant_by(word: str, known: Collection[str]) -> str | None:
    """The known word that another most likely means, in whatever case; None if none is near."""
    return nearest(word, known) or nearest(word.lower(), known)


def shown(node: reading.Node) -> str:
    """A value as a message quotes it."""
    if not isinstance(node, reading.Scalar):
        return "a list" if isinstance(node, reading.Sequence) else "a group"
    text = " ".join(node.text.split())
    return f"`{text}`" if len(text) <= LONGEST else f"`{text[:LONGEST]}…`"
