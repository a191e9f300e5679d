"""What beaders say in a phrase, spelled out as the fields that the phrase means.

`pearl: 8/0 round Japanese, matte green` means the same as a group of fields. Each field keeps
the place of its own words, so that a remark about the size points at `8/0`, and an edit changes it
alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wellstrung.common.places import Fault
from wellstrung.reading import tree
from wellstrung.short_forms.beads import bead
from wellstrung.short_forms.parts import part

#: what spells out a value; where it cannot, it adds a fault and answers None
Speller = Callable[[tree.Scalar, str, list[Fault]], tree.Mapping | None]


def spelled_out(read: tree.Read) -> tuple[tree.Read, tuple[Fault, ...]]:
    """The plan with every phrase spelled out, and what is wrong with those that cannot be."""
    assert read.tree is not None
    faults: list[Fault] = []
    spelled = _phrases(read.tree, "beads", bead, faults)
    spelled = _phrases(spelled, "parts", part, faults)
    for field, spell in _OF_PARTS.items():
        spelled = _in_parts(spelled, field, spell, faults)
    if spelled is read.tree:
        return read, tuple(faults)
    return tree.Read(read.file, read.text, spelled, ()), tuple(faults)


def _phrases(
    whole: tree.Mapping, section: str, spell: Speller, faults: list[Fault]
) -> tree.Mapping:
    """The plan with the phrases of a section spelled out; the very same where it has none."""
    node = _node(whole, section)
    if not isinstance(node, tree.Mapping):
        return whole
    new = {
        name: group
        for name, entry in node.entries.items()
        if (group := _group(entry.node, name, spell, faults)) is not None
    }
    return tree.with_nodes(whole, {section: tree.with_nodes(node, new)}) if new else whole


def _in_parts(whole: tree.Mapping, field: str, spell: Speller, faults: list[Fault]) -> tree.Mapping:
    """The plan with the phrase of one field of every part spelled out."""
    parts = _node(whole, "parts")
    if not isinstance(parts, tree.Mapping):
        return whole
    new = {
        name: tree.with_nodes(entry.node, {field: group})
        for name, entry in parts.entries.items()
        if isinstance(entry.node, tree.Mapping)
        and (group := _group(_node(entry.node, field), name, spell, faults)) is not None
    }
    return tree.with_nodes(whole, {"parts": tree.with_nodes(parts, new)}) if new else whole


def _group(
    node: tree.Node | None, name: str, spell: Speller, faults: list[Fault]
) -> tree.Mapping | None:
    """A phrase spelled out; None for what is no phrase."""
    said = isinstance(node, tree.Scalar) and isinstance(node.value, str)
    return spell(node, name, faults) if said else None  # type: ignore[arg-type]


def _node(group: tree.Mapping, name: str) -> tree.Node | None:
    entry = group.entries.get(name)
    return entry.node if entry is not None else None


#: the fields of parts that may be said in a phrase
_OF_PARTS: Mapping[str, Speller] = {}
