"""A chain that says how much of it is cut is a piece, and the chain that it is cut from.

`front: 3 mm cup chain, 15 cm` means a chain piece `front` of 15 cm, of a chain `uncut front`. Parts
that say the same but for that are cut from one chain.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from wellstrung import tables
from wellstrung.common.patterns import Pattern
from wellstrung.common.units import length
from wellstrung.reading import tree
from wellstrung.short_forms.phrase import LENGTH, NUMBER, Phrase
from wellstrung_schemas import fragment

#: how many of its links, by the words that people have for it
_COUNTED = ("links", "cups", "stones", "count")
#: a size of stones, by its letters before or after the number
STONES = Pattern(
    r"(?<![\w.])(?:(?:SS|PP)[\s-]*\d{1,2}|\d{1,2}[\s-]*(?:SS|PP))(?![\w.])", re.IGNORECASE
)

#: how much of a chain is cut: its links, or a length
_COUNT = Pattern(
    r"(?<![\w./])(\d{1,4})\s*(?:links?|cups?|stones?|rhinestones?|crystals?)(?!\w)", re.IGNORECASE
)
_LONG = Pattern(
    rf"{LENGTH}|(?<![\w./]){NUMBER}\s*(?:met(?:re|er)s?|m|feet|foot|ft|yards?|yds?)(?!\w)",
    re.IGNORECASE,
)
#: what says no more of a chain
_FILLER = Pattern(r"(?<!\w)(?:of|with|stones?|rhinestones?)(?!\w)", re.IGNORECASE)
#: a chain is thinner than this, mm, and what is cut of it is seldom shorter
_THICKEST = 14.0


def stone_size(said: tree.Scalar) -> tree.Scalar | None:
    """A size of stones, of either scale, as the lengths that it means; None for any other text."""
    text = said.text.strip()
    if not STONES.fullmatch(text):
        return None
    letters, number = re.sub(r"[\d\s-]", "", text), re.sub(r"\D", "", text)
    row = tables.load("stone_sizes").rows.get(f"{letters.upper()} {int(number)}")
    if row is None:
        return None
    outside = row.cell("outside")
    return tree.meaning(said, f"{outside.low:g}..{outside.high:g} mm")


def size_of_stones(phrase: Phrase) -> tree.Scalar | None:
    """The size of stones in a phrase, in mm; as it is said where no table has it."""
    said = phrase.take(STONES)
    return (stone_size(said) or said) if said is not None else None


def of_stones(group: tree.Mapping) -> tree.Mapping:
    """A part whose size is that of stones, in mm."""
    size = group.entries.get("size")
    if size is None or not isinstance(size.node, tree.Scalar):
        return group
    meant = stone_size(size.node)
    return tree.with_nodes(group, {"size": meant}) if meant is not None else group


def cut_of(phrase: Phrase, two: Pattern) -> Iterator[tuple[str, tree.Node | None]]:
    """How thick a chain is, or how large its stones are, and how much is cut of it.

    `two` finds two sizes, of which the first is the one that shops go by.
    """
    across = size_of_stones(phrase)
    if (links := phrase.take(_COUNT)) is not None:
        links.value = int(links.text)
    across = across or phrase.take(two)
    long: tree.Scalar | None = None
    while long is None and (said := phrase.take(_LONG)) is not None:
        if across is None and length(said.text).value < _THICKEST:
            across = said
        else:
            long = said
    while phrase.take(_FILLER) is not None:
        pass
    yield from (("links", links), ("size", across), ("length", long))


def uncut(parts: tree.Mapping) -> tuple[tree.Mapping, Mapping[str, str]]:
    """The parts with every such chain in two, and by the name of a piece that of its chain."""
    entries: dict[str, tree.Entry] = {}
    chains: dict[str, str] = {}
    alike: dict[str, str] = {}
    for name, entry in parts.entries.items():
        node, piece = entry.node, _piece(entry.node)
        if not piece or not isinstance(node, tree.Mapping):
            entries[name] = entry
            continue
        rest = {word: one for word, one in node.entries.items() if one not in piece.values()}
        chain = tree.group(node, rest)
        chains[name] = alike.setdefault(str(chain.value), f"uncut {name}")
        own: dict[str, tree.Node] = {
            "kind": tree.meaning(_kind(chain), "chain piece"),
            "of": tree.implied(node, chains[name]),
        }
        own |= {word: one.node for word, one in piece.items()}
        bought = tree.Entry(tree.implied(entry.key, chains[name]), chain)
        entries.setdefault(chains[name], bought)
        entries[name] = tree.Entry(entry.key, tree.with_fields(node, own))
    return (tree.group(parts, entries) if chains else parts), chains


def of_chain(line: tree.Node, chains: Mapping[str, str]) -> tree.Node:
    """A line of supplies by the name of its chain, where it has that of a piece."""
    field = next((field for field in ("chain", "part") if field in line.entries), "")
    entry = line.entries.get(field)
    if entry is None or not isinstance(line, tree.Mapping):
        return line
    if not isinstance(entry.node, tree.Scalar) or entry.node.value not in chains:
        return line
    named = tree.meaning(entry.node, chains[entry.node.value])
    others = {word: one.node for word, one in line.entries.items() if word != field}
    return tree.with_fields(line, {"chain": named, **others})


def _kind(chain: tree.Mapping) -> tree.Scalar:
    """What a shop calls it."""
    type_ = chain.entries.get("type")
    return tree.implied(chain, f"{type_.node.value} chain" if type_ else "chain piece")


def _piece(node: tree.Node) -> Mapping[str, tree.Entry]:
    """The fields of a chain that say what is cut of it, each by the name that a piece has."""
    kind = node.entries.get("kind")
    if kind is None or kind.node.value != "chain" or not isinstance(node, tree.Mapping):
        return {}
    own = fragment("chain piece")["properties"].keys() - fragment("chain")["properties"].keys()
    found = {word: entry for word, entry in node.entries.items() if word in own}
    for word in _COUNTED:
        entry = node.entries.get(word)
        if entry is not None and isinstance(entry.node, tree.Scalar):
            found["links"] = entry
    return found
