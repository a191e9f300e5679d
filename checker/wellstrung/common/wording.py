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


def either(words: Iterable[str]) -> str:
    """Words of which one will do.

    >>> either(["a rope", "a band", "a strand"]), either(["a rope"])
    ('a rope, a band or a strand', 'a rope')
    """
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last


def together(words: Iterable[str]) -> str:
    """Words that all count.

    >>> together(["1", "2", "5"]), together(["1"])
    ('1, 2 and 5', '1')
    """
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that looks most like this one, or the only one that contains it.

    >>> nearest("weeve", ["weave", "wait"]), nearest("epoxy", ["two-part epoxy", "UV resin"])
    ('weave', 'two-part epoxy')
    """
    from difflib import get_close_matches  # only needed if something is misspelt

    names = list(known)
    holding = [name for name in names if word.casefold() in name.casefold().split()]
    found = get_close_matches(word, names, n=1) or (holding if len(holding) == 1 else [])
    return found[0] if found else None
