"""How messages name things: articles, lists, and the nearest known word."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence

from wellstrung.common.patterns import Pattern
from wellstrung.common.trade_words import close, own, plain, same


def article(word: str) -> str:
    """The word with its article.

    >>> article("end cap"), article("jump ring")
    ('an end cap', 'a jump ring')
    """
    return f"{'an' if word[:1] in 'aeiou' else 'a'} {word}"


#: what sets text apart, and the escape sign of our own colours: no text of a plan can hold that
_LAYOUT = "\n\t\u00a0\x1b"


def visible(text: str) -> str:
    """A text in which signs that hide, or turn the reading round, show as their numbers.

    >>> visible("loop\u202ecap\u200b"), visible("été 5 mm")
    ('loop<U+202E>cap<U+200B>', 'été 5 mm')
    """
    bare = text
    for sign in _LAYOUT:
        bare = bare.replace(sign, "")
    if bare.isprintable():
        return text
    return "".join(
        sign if sign.isprintable() or sign in _LAYOUT else f"<U+{ord(sign):04X}>" for sign in text
    )


def spelt_out(text: str) -> str:
    r"""The name of a file for reports: it may hold bytes that are no text, or steer a terminal.

    >>> spelt_out("\udcff\x1b[31m.yaml"), spelt_out("caf\xe9.yaml")
    ('\\udcff\\x1b[31m.yaml', 'caf\xe9.yaml')
    """
    return "".join(
        sign if sign.isprintable() else sign.encode("unicode_escape").decode() for sign in text
    )


#: So many words of what is known a message lists at most; of more than `_COMPARED` the first.
_KNOWN, _COMPARED = 8, 200
#: Words share such a part of their pairs of letters by chance.
_CHANCE = 0.2
#: a name that YAML reads as text as it stands, between the commas of `{...}`
_PLAIN = Pattern(r"[A-Za-z][\w'-]*(?: [\w'-]+)*")
_CODE = Pattern("`[^`]*`")
_ADVICE = Pattern(
    "(?:: |, so )(?=(?:write|put|delete|keep|give|choose|close|begin|use|name|save|fix|indent|check"
    "|take|move|leave|correct|hang|let|look)[ ,])"
)
_SWITCHES = frozenset({"yes", "no", "on", "off", "true", "false", "y", "n", "null"})


def in_yaml(name: str) -> str:
    """A name as it is written in a line of a plan: in quotes where it needs them.

    >>> in_yaml("long drop"), in_yaml("drop, blue"), in_yaml("no"), in_yaml("toggle.a")
    ('long drop', '"drop, blue"', '"no"', 'toggle.a')
    """
    plain = all(_PLAIN.fullmatch(word) for word in name.split("."))
    return name if plain and name.lower() not in _SWITCHES else json.dumps(name, ensure_ascii=False)


def listed(words: Iterable[str]) -> str:
    """Words as the author would write them, one after another.

    >>> listed(["open", "closed"])
    '`open`, `closed`'
    """
    return ", ".join(f"`{word}`" for word in words)


def one_of(words: Iterable[str], asked: str = "", see: str = "") -> str:
    """What a field takes, as the words that the author could write.

    Of many those that look most like what was `asked` for; `see` is a command that lists all.

    >>> one_of(["open", "closed"]), one_of(["open"]), one_of([])
    ('one of `open`, `closed`', '`open`', 'none is known')
    >>> one_of(map(str, range(100, 112)), "108", "wellstrung tables sizes")[-55:]
    '`106` and 4 more (`wellstrung tables sizes` lists them)'
    """
    known = [*words]
    if len(known) <= 1:
        return listed(known) or "none is known"
    more = len(known) - _KNOWN
    if more <= 0:
        return f"one of {listed(known)}"
    see = f" (`{see}` lists them)" if see else ""
    return f"one of {listed(_most_like(asked, known))} and {more} more{see}"


def _most_like(asked: str, known: Sequence[str]) -> list[str]:
    """The words that share most pairs of letters with what was asked for."""
    if len(known) <= _COMPARED:
        pairs = _pairs(asked)
        known = sorted(known, key=lambda word: -_alike(pairs, _pairs(word)))
    return [*known[:_KNOWN]]


def _pairs(word: str) -> frozenset[str]:
    low = f" {word.casefold()} "
    return frozenset(low[at : at + 2] for at in range(len(low) - 1))


def _alike(one: frozenset[str], other: frozenset[str]) -> float:
    """The share of pairs that both have (Dice's: from memory); little is nothing at all."""
    share = 2 * len(one & other) / (len(one) + len(other) or 1)
    return share if share > _CHANCE else 0.0


def advice_in(says: str) -> str:
    """The advice that ends a message; empty where it gives none.

    >>> advice_in("`cap: 8` has no unit: write `8 mm`"), advice_in("`a: write` is not known")
    ('write `8 mm`', '')
    """
    found = _ADVICE.search(_CODE.sub(lambda code: "`" * len(code[0]), says))
    return says[found.end() :] if found else ""


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


def some_of(words: Sequence[str], most: int) -> str:
    """Words that all count, the first of them where there are more than `most`.

    >>> some_of(["1", "2"], 2), some_of(["1", "2", "3", "4"], 2)
    ('1 and 2', '1, 2 and 2 more')
    """
    shown = words if len(words) <= most else [*words[:most], f"{len(words) - most} more"]
    return together(shown)


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
    """The known word that this one is a slip of, or that means the same in the trade.

    Never one that the trade must not take for it, such as another metal.

    >>> nearest("weeve", ["weave", "wait"]), nearest("stirling silver", ["sterling silver"])
    ('weave', 'sterling silver')
    >>> nearest("bead cap", ["end cap"]), nearest("18k gold", ["14k gold"])
    (None, None)
    >>> nearest("bead", ["beads", "around"]), nearest("round", ["rounds", "around"])
    ('beads', None)
    """
    names = list(known)
    means = same_as(word, names)
    if means is not None or same(word):
        return means
    said = plain(word).split()
    found = {name: _slips(said, plain(name).split()) for name in names}
    least = min((slips for slips in found.values() if slips is not None), default=None)
    near = [name for name, slips in found.items() if slips is not None and slips == least]
    if own(word):  # of what it means, one or many
        near = near if [close(name) for name in near] in _one_or_many(word) else []
    return near[0] if len(near) == 1 else None


def same_as(word: str, known: Iterable[str]) -> str | None:
    """The known word that this one is, written otherwise, or that means the same in the trade.

    >>> same_as("Jumpring", ["jump ring"]), same_as("german silver", ["nickel silver"])
    ('jump ring', 'nickel silver')
    """
    meant, said = same(word), close(word)
    alike = [name for name in known if name in meant or close(name) == said]
    return alike[0] if len(alike) == 1 else None


def _one_or_many(word: str) -> list[list[str]]:
    return [[f"{close(word)}s"], [close(word).removesuffix("s")]]


_COUNT = Pattern(r"(?:(?P<first>\d+) ?(?:x|times)? (?P<of>\D+)|(?P<word>\D+?) ?x ?(?P<last>\d+))")


def split_count(name: str) -> tuple[int, str]:
    """How many of a thing a name says, and of which; 0 where it says no number.

    >>> split_count("2 rings"), split_count("ring x 3"), split_count("left strand")
    ((2, 'rings'), (3, 'ring'), (0, 'left strand'))
    """
    found = _COUNT.fullmatch(name)
    if found is None:
        return 0, name
    return int(found["first"] or found["last"]), found["of"] or found["word"]


def _slips(words: Sequence[str], others: Sequence[str]) -> int | None:
    """How many slips of the fingers turn words into others; None where they are too many."""
    if len(words) != len(others):
        return None
    slips = 0
    for one, other in zip(words, others, strict=True):
        may = _may_slip(one, other)
        apart = 0 if one == other else may + 1
        if may and apart and abs(len(one) - len(other)) <= may:
            apart = _letters_apart(one, other)
        if apart > may:
            return None
        slips += apart
    return slips


def _may_slip(word: str, other: str) -> int:
    """How many slips a word may hold: none in a number, two in a long word, in a short one a swap.

    >>> _may_slip("14k", "18k"), _may_slip("ahng", "hang"), _may_slip("cpa", "cap")
    (0, 1, 1)
    """
    if any(letter.isdigit() for letter in word + other):
        return 0
    if max(len(word), len(other)) < 4:
        return int(sorted(word) == sorted(other))
    return 2 if min(len(word), len(other)) >= 8 else 1


def _letters_apart(one: str, other: str) -> int:
    """How many letters to add, take out, change or swap (the distance of Damerau: from memory)."""
    rows = [list(range(len(other) + 1))]
    for number, letter in enumerate(one, 1):
        row = [number]
        for column, also in enumerate(other, 1):
            row.append(
                min(rows[-1][column] + 1, row[-1] + 1, rows[-1][column - 1] + (letter != also))
            )
            if number > 1 and column > 1 and (one[number - 2], letter) == (also, other[column - 2]):
                row[-1] = min(row[-1], rows[-2][column - 2] + 1)
        rows.append(row)
    return rows[-1][-1]
