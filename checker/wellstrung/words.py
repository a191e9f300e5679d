"""How messages name things: articles, lists, and the nearest known word."""

from __future__ import annotations

from collections.abc import Iterable


def article(word: str) -> str:
    """The word with its article.

    >>> article("end cap"), article("jump ring")
    ('an end cap', 'a jump ring')
    """
    return f"{'an' if word[:1] in 'aeiou' else 'a'} {word}"


def listed(words: Iterable[str]) -> str:
    """Words as the author would write them, one after another.

    >>> listed(["open", "closed"])
    '`open`, `closed`'
    """
    return ", ".join(f"`{word}`" for word in words)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that looks most like this one, if any does.

    >>> nearest("weeve", ["weave", "wait"])
    'weave'
    """
    from difflib import get_close_matches  # only wanted where something is misspelt

    found = get_close_matches(word, list(known), n=1)
    return found[0] if found else None
