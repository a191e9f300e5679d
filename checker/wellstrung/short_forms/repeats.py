"""Beads in the order in which they are strung, with groups that repeat, written out.

`beads: [{repeat: 20, of: [pearl, gold]}, shell]` is forty-one beads one after another.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from wellstrung.reading import tree

#: more beads than anyone lists: what is longer stays as it is, and its shape is refused
_MOST = 10_000
_LISTS = ("beads", "outer")


def written_out(whole: tree.Mapping) -> tree.Mapping:
    """The plan with every group of beads that repeats written out; the very same without one."""
    parts = whole.entries.get("parts")
    if parts is None or not isinstance(parts.node, tree.Mapping):
        return whole
    new: dict[str, tree.Node] = {}
    for name, entry in parts.node.entries.items():
        node = entry.node
        if isinstance(node, tree.Mapping):
            lists = [field for field in _LISTS if field in node.entries]
            strung = {field: _all_of(node.entries[field].node) for field in lists}
            new[name] = tree.with_nodes(node, strung)
    return tree.with_nodes(whole, {"parts": tree.with_nodes(parts.node, new)})


def _all_of(node: tree.Node) -> tree.Node:
    if not isinstance(node, tree.Sequence) or not any(item.entries for item in node.items):
        return node
    each = (one for item in node.items for one in _repeated(item))
    items = list(islice(each, _MOST + 1))
    return tree.with_items(node, items) if len(items) <= _MOST else node


def _repeated(item: tree.Node) -> Iterator[tree.Node]:
    """What one item of a list stands for: itself, or the beads of a group so many times over."""
    times, beads = item.entries.get("repeat"), item.entries.get("of")
    if times is None or beads is None or not isinstance(beads.node, tree.Sequence):
        yield item
        return
    many = times.node.value
    if isinstance(many, int) and 0 < many <= _MOST and len(item.entries) == 2:
        for _ in range(many):
            yield from beads.node.items
    else:
        yield item
