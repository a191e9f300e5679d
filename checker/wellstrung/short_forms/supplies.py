"""Lines of supplies as they are bought: `20 g of kelp`, `2 tubes of kelp, 7.2 g`, `14 rings`.

So is the `pack` of a line: `hank`, `16 in strand`, `100 count`. A number of a colour and a finish
say nothing of an amount: they follow a comma, as a note.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

from wellstrung.common.packs import SOLD_AS, in_words
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.short_forms.phrase import LENGTH, NUMBER, TO, Phrase
from wellstrung.short_forms.phrase import part as within

_GRAMS, _ML = (
    Pattern(rf"(?<![\w./])(?:{NUMBER}\s*(?:{unit})?{TO})?{NUMBER}\s*(?:{unit})\b", re.IGNORECASE)
    for unit in ("grams?|g|kg|oz", "ml")
)
_LENGTH = Pattern(rf"{LENGTH}|(?<![\w./])\d+(?:\.\d+)?\s*(?:m|yd|ft|yards?|feet)\b")
_PACK_OF = Pattern(
    r"(?:packs?|packets?|bags?|box(?:es)?|strands?|strings?)\s+of\s+(\d+)\b(?!\s*(?:g|oz|mm|cm|in|m)\b)"
    r"|(?<![\w./])(\d+)\s*(?:count|ct|pcs?|pieces?|beads?)\b",
    re.IGNORECASE,
)
_MANY = Pattern(r"(?<![\w./])(\d+)(?:\s*[x×])?(?![\w./])")
#: what makes a range of a count
_OR_MORE = Pattern(rf"(?:{TO}\d+|\s*\+)(?![\w./])")
_FILLER = Pattern(r"(?<!\w)(?:of|a|an|the|with needle|each|in)(?!\w)", re.IGNORECASE)
_NOTE = Pattern(r",\s*([^\s,\0][^,\0]*)")
#: `20 g of kelp, lot L7`
_LOT = Pattern(r",?\s*(?<!\w)(?:dye\s+)?lot\s+(?!of\b)([^\s,\0]+)", re.IGNORECASE)
#: half of what one is sold in
_HALF = Pattern(r"\bhalf\b", re.IGNORECASE)
#: what thread is sold on or in, and what it is called
_OF_THREAD = ("spool", "card")
_THREAD = Pattern(
    r"(?<!\w)(?:spools?|reels?|bobbins?|cards?|balls?|threads?|silk|cord|line|cotton|wire)(?!\w)",
    re.IGNORECASE,
)
_EXAMPLE = "`20 g of kelp`, `2 tubes of kelp, 7.2 g` or `14 small`"
#: the field of a line for parts of a kind; all others are `part`
_NAMED_BY = {"chain": "chain", "thread": "thread"}
#: how many of each a line counts
_COUNTED: Mapping[str, str] = {
    "bead": "count",
    "part": "count",
    "thread": "spools",
    "chain": "pieces",
}

Names = Mapping[str, str]


def named_by(whole: tree.Mapping) -> Names:
    """Each name in supplies -> the field for it; empty where its entry cannot be read."""
    beads, parts = (whole.entries.get(section) for section in ("beads", "parts"))
    found = dict.fromkeys(beads.node.entries, "bead") if beads else {}
    for name, entry in parts.node.entries.items() if parts else ():
        kind = entry.node.entries.get("kind")
        unread = kind is None and "from" not in entry.node.entries
        found[name] = "" if unread else _NAMED_BY.get(str(kind.node.value) if kind else "", "part")
    return found


def supply(
    node: tree.Node, names: Names, faults: list[Fault], by_phrase: Names = MappingProxyType({})
) -> tree.Mapping | None:
    """A line of supplies with its phrases spelled out; None where it has none, or cannot be.

    `by_phrase` has the names of what the plan describes in a phrase: it may be named by that.
    """
    if isinstance(node, tree.Scalar) and isinstance(node.value, str):
        return _line(node, names, faults, by_phrase)
    pack = node.entries.get("pack")
    if pack is None or not isinstance(pack.node, tree.Scalar) or not in_words(pack.node.value):
        return None
    assert isinstance(node, tree.Mapping)
    what = next((field for field in _COUNTED if field in node.entries), "bead")
    phrase = Phrase(pack.node)
    fields = {
        "pack_of" if field == "count" else field: said
        for field, said in _amount(phrase, what).items()
    }
    if _said_nothing(phrase, pack.node, fields, "`pack`", faults):
        return None
    twice = next((name for name in fields if name in node.entries and name != "pack"), None)
    if twice is not None:
        words = shown(fields[twice])
        says = f"`pack` says {words}, and the line has `{twice}` as well: write it once"
        faults.append(fault(says, fields[twice].place, also=(node.entries[twice].node.place,)))
        return None
    return tree.with_more(tree.without(node, "pack"), fields)


def _line(
    node: tree.Scalar, names: Names, faults: list[Fault], by_phrase: Names
) -> tree.Mapping | None:
    phrase = Phrase(node)
    called = {**by_phrase, **{name: name for name in names}}
    known = {f"{words}s".casefold(): name for words, name in called.items()}
    known |= {words.casefold(): name for words, name in called.items()}
    # the last that is named: a part called `strand` is not what a strand of another is of
    longest = "|".join(map(re.escape, sorted(known, key=len, reverse=True))) or "(?!)"
    named = rf"(?<![\w/])({longest})(?![\w/])"
    name = phrase.take(re.compile(f"{named}(?!.*{named})", re.IGNORECASE | re.DOTALL))
    if name is None:
        faults.append(_unnamed(node, names))
        return None
    name.value = known[name.text.casefold()]
    what = names[name.value]
    if not what:
        return None  # what it is could not be read, and that is remarked on
    fields = _amount(phrase, what)
    sold_as = fields.get("sold_as")
    if what == "part" and sold_as is not None and sold_as.value in _OF_THREAD:
        says = f"{shown(sold_as)} is how thread is sold, and `{name.value}` is no thread"
        faults.append(fault(f"{says}: {_thread_of(names)}", node.place))
        return None
    if _said_nothing(phrase, node, fields, "the line", faults):
        return None
    return tree.Spelled(node, {what: name, **fields})


def _thread_of(names: Names) -> str:
    """How to write a thread that is on hand."""
    own = next((name for name, what in names.items() if what == "thread"), None)
    if own is not None:
        return f"name the thread, as in `1 spool of {own}`"
    return "write the thread as a part, as in `line: nylon D`, and here `1 spool of line`"


def _unnamed(node: tree.Scalar, names: Names) -> Fault:
    """The fault of a line that names nothing of the plan, with the name that it is nearest to."""
    last = re.search(r"\bof\s+(?!.*\bof\b)([^,]*[^,\s])", node.text, re.IGNORECASE)
    last = last or re.search(r"\d\s+([^\d,]*[^\d,\s])", node.text)
    near = nearest(last[1], names) if last else None
    if near is None and _THREAD.search(node.text):
        says = f"{shown(node)} names no thread of the plan"
        return fault(f"{says}: {_thread_of(names)}", node.place)
    if last is None or near is None:
        some = one_of(names, last[1] if last else node.text)
        says = f"{shown(node)} names no bead or part: name {some}, as in {_EXAMPLE}"
        return fault(says, node.place)
    word = within(node, *last.span(1))
    advice, edits = f"write `{near}`", (Edit(word.place, near),)
    says = f"there is no bead or part called {shown(word)}: {advice}"
    return fault(says, word.place, remedy=advice, edits=edits)


def _amount(phrase: Phrase, what: str) -> dict[str, tree.Node]:
    """How much there is, by field, in the order of the author's words."""
    lot = phrase.take(_LOT)
    mass, volume, pack_of = phrase.take(_GRAMS), phrase.take(_ML), phrase.take(_PACK_OF)
    sets, half = phrase.take_sets(), phrase.take(_HALF)
    sold_as = phrase.take_word(SOLD_AS)
    length, many = phrase.take(_LENGTH), sets or _whole(phrase.take(_MANY))
    while phrase.take(_FILLER):
        pass
    in_packs = pack_of if what == "part" else what == "bead" and (mass or pack_of or sold_as)
    found = {
        "pack": mass,
        "volume": volume,
        "pack_of": _whole(pack_of),
        "sold_as": sold_as,
        "strands": _whole(half, 6) if sold_as and sold_as.value == "hank" else None,
        "strand" if what == "bead" else "length": length,
        "packs" if in_packs or volume else _COUNTED[what]: many,
        "lot": lot,
        "note": phrase.take(_NOTE),
    }
    written = [(field, node) for field, node in found.items() if node is not None]
    return dict(sorted(written, key=lambda one: (one[1].line, one[1].column)))


def _whole(node: tree.Scalar | None, value: int = 0) -> tree.Scalar | None:
    """A count as a number."""
    if node is not None:
        node.value = value or int(node.text)
    return node


def _said_nothing(
    phrase: Phrase,
    node: tree.Scalar,
    fields: Mapping[str, tree.Node],
    called: str,
    faults: list[Fault],
) -> bool:
    """Whether a phrase has words that are not known, or no amount; a fault for either."""
    more = phrase.take(_OR_MORE)
    if more is not None:
        says = (
            f"{called} says {shown(more)} behind a number: write one number, the fewest there are"
        )
        faults.append(fault(says, more.place))
        return True
    advice = "take it out, or write it after a comma, as in `20 g of kelp, 401`"
    if phrase.head and re.search(rf"\b{re.escape(phrase.head)}\s+of\b", node.text):
        advice = "write how many pieces or grams there are, as in `14 small` or `20 g of kelp`"
    unknown = phrase.unknown(called, advice)
    if unknown is not None:
        faults.append(unknown)
    elif not fields.keys() - {"note"}:
        faults.append(fault(f"{shown(node)} has no amount: write it as in {_EXAMPLE}", node.place))
    return unknown is not None or not fields.keys() - {"note"}
