"""Numbers that no phrase is read with: `6,5 mm` would be 5 mm, `-6 mm` would be 6 mm."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from copy import copy

from wellstrung.common import units
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.reading import tree
from wellstrung.reading.faults import fault
from wellstrung.short_forms.phrase import part

#: a decimal comma, a power of ten, or a minus behind a word; behind a number it is a range
_ODD = Pattern(
    r"(?<![\w./,-])(?:\d+,\d+|\d+(?:\.\d+)?e-?\d+"
    r"|(?:(?<=^)|(?<=, )|(?<=[a-z]{3} ))[-−]\d+(?:\.\d+)?)\s*"
    r"(?:(?P<length>mm|cm|m|in(?:ch(?:es)?)?|ft|\"|″)|(?P<mass>g|grams?|kg|oz)"
    r"|(?P<force>lbs?|N)|(?P<duration>min(?:utes?)?|h(?:ours?)?)|(?P<bead>/\s*[0oO]))(?!\w)",
    re.IGNORECASE,
)
_READERS: Mapping[str, Callable[[str], object]] = {
    "length": units.length,
    "mass": units.mass,
    "force": units.force,
    "duration": units.duration,
    "bead": units.bead_size,
}
#: the phrases in the fields of a part, and the lists of phrases
_FIELDS, _LISTS = ("thread", "needle"), ("hung", "work", "supplies")


def in_plain_figures(whole: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with each such number written plainly, and a fault for each.

    The rest of its phrase can then be read, and gets no second message.
    """

    def plain(node: tree.Node) -> tree.Node:
        if not isinstance(node, tree.Scalar) or not isinstance(node.value, str):
            return node
        text = _ODD.sub(lambda found: _plain(found, node, faults), node.text)
        if text == node.text:
            return node
        mended = copy(node)
        mended.text = mended.value = text
        return mended

    def in_fields(node: tree.Node) -> tree.Node:
        if not isinstance(node, tree.Mapping):
            return plain(node)
        said = {name: node.entries[name].node for name in _FIELDS if name in node.entries}
        return tree.with_nodes(node, {name: plain(one) for name, one in said.items()})

    new: dict[str, tree.Node] = {}
    for name, entry in whole.entries.items():
        node = entry.node
        if name in ("parts", "beads") and isinstance(node, tree.Mapping):
            each = {one: in_fields(own.node) for one, own in node.entries.items()}
            new[name] = tree.with_nodes(node, each)
        elif name in _LISTS and isinstance(node, tree.Sequence):
            new[name] = tree.with_items(node, [plain(item) for item in node.items])
    return tree.with_nodes(whole, new)


def _plain(found: re.Match[str], node: tree.Scalar, faults: list[Fault]) -> str:
    """A number of as many signs that can be read; the fault of the one that was written."""
    said = part(node, *found.span())
    try:
        _READERS[str(found.lastgroup)](said.text)
    except units.UnitFault as why:
        edits = (Edit(said.place, why.suggestion),) if why.suggestion else ()
        faults.append(fault(why.says, said.place, edits=edits))
    return re.sub("[-−]", " ", re.sub("[,e]", ".", said.text, count=1, flags=re.IGNORECASE))
