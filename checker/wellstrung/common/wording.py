"""How messages name things: articles, lists, and the nearest known word."""

from __future__ import annotations

from collections.abc import Iterable, Sequence


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


def in_steps(numbers: Sequence[int]) -> str:
    """Steps by their numbers.

    >>> in_steps([3]), in_steps([3, 4, 6])
    ('step 3', 'steps 3, 4 and 6')
    """
    return f"step{'s' if len(numbers) > 1 else ''} {together(str(number) for number in numbers)}"


def hours(minutes: float, *, days: bool = False) -> str:
    """A time as one would say it, to the minute; with days, to the hour from one day on.

    >>> hours(40), hours(130), hours(1505), hours(0.4)
    ('40 min', '2 h 10 min', '25 h 5 min', 'under 1 min')
    >>> hours(95, days=True), hours(1505, days=True), hours(2880, days=True)
    ('1 h 35 min', '1 day 1 h', '2 days')
    """
    if 0 < minutes < 0.5:
        return "under 1 min"
    if days and minutes >= 1440:
        many, left = divmod(round(minutes / 60), 24)
        said = f"{many} day{'s' if many > 1 else ''}"
        return f"{said} {left} h" if left else said
    whole, left = divmod(round(minutes), 60)
    if not whole:
        return f"{left} min"
    return f"{whole} h {left} min" if left else f"{whole} h"


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


def slip_of(word: str, known: Iterable[str]) -> str | None:
    """The known word that this one is a slip of: a letter off, or two in a long word.

    For words that must never be taken for each other, such as metals.

    >>> slip_of("stirling silver", ["sterling silver"]), slip_of("nickel silver", ["fine silver"])
    ('sterling silver', None)
    """
    found = {name: _letters_apart(word.casefold(), name.casefold()) for name in known}
    name = min(found, key=lambda name: found[name], default="")
    return name if name and found[name] <= (1 if len(word) < 8 else 2) else None


def _letters_apart(one: str, other: str) -> int:
    """How many letters to add, take out or change (the distance of Levenshtein)."""
    row = list(range(len(other) + 1))
    for number, letter in enumerate(one, 1):
        above, row = row, [number]
        for column, also in enumerate(other, 1):
            row.append(min(above[column] + 1, row[-1] + 1, above[column - 1] + (letter != also)))
    return row[-1]
