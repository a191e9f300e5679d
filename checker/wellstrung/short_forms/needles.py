"""Needles in a phrase: `size 11 beading needle`, `#10 sharps`, `big eye`, `none`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from wellstrung import tables
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.short_forms.phrase import Phrase

#: worked without one: its line is stiff enough to go through by itself
NONE = "none"
#: words for each class of needle, as the rows of trade table `needles` name it; common practice
_CLASSES: Mapping[str, str] = {
    word: kind
    for kind, words in {
        "beading": "beading, english beading, japanese beading, long beading, short beading",
        "sharps": "sharps, sharp",
        "betweens": "betweens, between, quilting",
        "embroidery": "embroidery, crewel",
        "tapestry": "tapestry, cross stitch, darning, yarn",
        "big-eye": "big eye, bigeye, wide eye, large eye, split eye",
        "twisted": "twisted wire, twisted, twist, collapsible eye, wire needle",
        "long stringing": "long stringing, stringing",
        NONE: "crochet hook, hook, none, no needle, no, without, by hand, stiffened end",
    }.items()
    for word in words.split(", ")
}
_SIZE = Pattern(r"(?<![\w./])(?:size|no\.?|number|#)? *#?(\d{1,2})(?![\w./])", re.IGNORECASE)
_HOOK = Pattern(r"(?<!\w)\d+(?:\.\d+)? ?mm(?!\w)", re.IGNORECASE)
_FINENESS = Pattern(r"(?<!\w)(fine|medium|heavy)(?!\w)", re.IGNORECASE)
_NOTHING = Pattern(
    r"(?<!\w)(?:needles?|an?|the|size|eyed?|wire|steel|attached|with)(?!\w)", re.IGNORECASE
)


def needle(
    node: tree.Scalar, name: str, known: Mapping[str, tree.Scalar], faults: list[Fault]
) -> tree.Scalar | None:
    """The needle as its table names it, in the author's words; or a needle of the plan's parts."""
    if node.text in known and node.text != name:
        return tree.meaning(node, str(known[node.text].value))
    if node.text in tables.load("needles").rows:
        return node
    phrase, what = Phrase(node), f"the needle {shown(node)} of `{name}`"
    kind = phrase.take_word(_CLASSES)
    fineness = phrase.take(_FINENESS) if kind is not None and kind.value == "twisted" else None
    size = fineness or phrase.take(_SIZE)
    if kind is not None and kind.value == NONE:
        phrase.take(_HOOK)
    while phrase.take(_NOTHING) is not None:
        pass
    left = phrase.take_rest()
    if kind is None and left is None and size is not None:
        near = f"beading {size.text}"
        says = f"{what} lacks its class, since a size of one class is no size of another: write"
        edits = (Edit(node.place, near),)
        faults.append(fault(f"{says} `{near}`", node.place, remedy=f"write `{near}`", edits=edits))
        return None
    if kind is None or left is not None:
        faults.append(_unknown(node, left, what))
        return None
    fine = size.text.lower() if size is not None else ""
    return tree.meaning(node, f"{kind.value} {fine}".strip())


def _unknown(node: tree.Scalar, left: tree.Scalar | None, what: str) -> Fault:
    """The fault of a word that no class of needle has, with the nearest that one has."""
    word = left.text if left is not None else node.text
    near = nearest(word, _CLASSES)
    place = left.place if left is not None else node.place
    if near is not None:
        says, edits = f"{what}: there is no `{word}`: write `{near}`", (Edit(place, near),)
        return fault(says, place, word, f"`{near}`", f"write `{near}`", edits=edits)
    classes = dict.fromkeys(kind for kind in _CLASSES.values() if kind != NONE)
    return fault(
        f"{what} says `{word}`, which is no class of needle: write {one_of(classes, word)}, with"
        " its size if it has one, or `none`",
        place,
        word,
    )
