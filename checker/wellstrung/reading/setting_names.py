"""Which setting a name that is none may mean: by its letters, by its words, never by one alone.

`tail` is a word of two limits and the name of neither, so both are shown and none is put in its
place. Only a slip of the fingers, or another word for the very same, is corrected.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping

from wellstrung.common.places import Fault
from wellstrung.common.wording import article, either, nearest
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, unknown_word
from wellstrung.reading.settings import Setting

#: settings by group, as a bench has them
Groups = Mapping[str, Mapping[str, Setting]]
#: other words for a setting as a whole
_CALLED = {
    "pupil": "student",
    "learner": "student",
    "beginner": "student",
    "teacher": "maker",
    "safety factor": "hold factor",
}
#: words that are used for each other when one looks for a setting; common practice, no source
_ALIKE = tuple(
    frozenset(words.split())
    for words in (
        "tail end",
        "ease room comfort",
        "loose play slack clearance",
        "tight snug squeeze",
        "spare extra cull waste",
        "weight mass heavy",
        "class lesson session meeting workshop",
        "glue adhesive epoxy",
        "safety hold strength factor",
        "tolerance allowance",
        "crowd close dense",
        "thick thin gauge wire",
    )
)
_SMALL = frozenset(
    ["a", "an", "the", "of", "in", "on", "at", "to", "for", "and", "or", "is", "that", "per"]
)
_FEW = 4


def unknown(key: tree.Scalar, group: str, groups: Groups) -> Fault:
    """The fault of a name that no setting of its group has."""
    name, place, known = key.text, key.place, groups[group]
    head = f"there is no {_one(group)} called `{name}`"
    near = nearest(name, known) or _CALLED.get(name.casefold())
    if near in known:
        return unknown_word(head, name, place, near, known)
    for other, its in groups.items():
        right = name if name in its else nearest(name, its)
        if right is not None and other != group:
            says = f"{head}: `{right}` is {article(_one(other))}, write it under `{other}`"
            return fault(says, place, name, f"`{right}` under `{other}`")
    about = [
        f"`{one}`" + (f" of `{other}`" if other != group else "")
        for other, one in meant(name, groups)
    ]
    if about:
        says = f"{head}: you may mean {either(about)}; `wellstrung bench` says what each is"
        return fault(says, place, name, either(about))
    if len(known) <= _FEW:
        return unknown_word(head, name, place, None, known)
    return fault(f"{head}: `wellstrung bench` lists them", place, name)


def meant(name: str, groups: Groups) -> list[tuple[str, str]]:
    """The few settings that all words of a name are about, by their names or by their reasons.

    >>> from wellstrung.reading.settings import ALLOWANCES, LIMITS
    >>> meant("glue minutes", {"allowances": ALLOWANCES, "limits": LIMITS})
    [('limits', 'minutes a joint')]
    >>> meant("spring-back of rings", {"allowances": ALLOWANCES, "limits": LIMITS})
    [('allowances', 'ring spring-back')]
    """
    asked = _words(name)
    settings = [(group, one, its) for group, found in groups.items() for one, its in found.items()]
    by_name = [(group, one) for group, one, _ in settings if _about(asked, one)]
    by_reason = [(group, one) for group, one, its in settings if _about(asked, one, its.reason)]
    found = by_name or by_reason
    return found if asked and len(found) <= _FEW else []


def _about(asked: Collection[str], *texts: str) -> bool:
    words = {word for text in texts for word in _words(text)}
    return all(not words.isdisjoint(_alike(word)) for word in asked)


def _alike(word: str) -> frozenset[str]:
    return frozenset({word}).union(*(words for words in _ALIKE if word in words))


def _words(text: str) -> set[str]:
    """The words of a text that mean something, each in the singular."""
    plain = "".join(sign if sign.isalnum() else " " for sign in text.casefold())
    return {_singular(word) for word in plain.split() if word not in _SMALL}


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def _one(group: str) -> str:
    return group.removesuffix("s")
