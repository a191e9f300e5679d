"""What came with a piece for repair: it is on hand, as lines of `supplies` are."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.item import node_at
from wellstrung.reading import tree as reading

#: the groups of what came, and what a line of supplies calls one of them
CAME = {"beads": "bead", "parts": "part"}


def with_what_came(tree: reading.Mapping) -> reading.Mapping:
    """The plan with a line of supplies for everything that came, before its own lines."""
    lines = list(_lines(tree))
    if not lines:
        return tree
    own = tree.entries.get("supplies")
    key = own.key if own is not None else lines[0].entries["count"].key
    written = own.node.items if own is not None and isinstance(own.node, reading.Sequence) else []
    both = reading.sequence(own.node if own is not None else lines[0], [*lines, *written])
    return reading.group(tree, {**tree.entries, "supplies": reading.Entry(key, both)})


def _lines(tree: reading.Mapping) -> Iterator[reading.Mapping]:
    for group, what in CAME.items():
        node = node_at(tree, "repair", "came", group)
        if not isinstance(node, reading.Mapping):
            continue
        for entry in node.entries.values():
            fields = {what: reading.Entry(entry.key, entry.key), "count": entry}
            yield reading.group(node, fields)
