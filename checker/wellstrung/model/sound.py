"""What has the right shape in a plan that has faults elsewhere, so that its names are checked."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Mapping
from copy import copy

from msgspec import Struct

from wellstrung.common.places import Fault
from wellstrung.reading import tree as reading

#: the sections that name parts and beads line by line, and what no line of them can lack
_LINES: Mapping[str, tuple[str, ...]] = {
    "hung": ("part", "from"),
    "work": ("do",),
    "supplies": (),
}


class Sound(Struct, frozen=True):
    """The tree without its faults.

    `unread` are the parts and beads that are there and could not be read, each with which of the
    two it is; `doubtful` are those that lack something.
    """

    tree: reading.Mapping
    unread: frozenset[tuple[str, str]] = frozenset()
    doubtful: frozenset[str] = frozenset()


def sound(tree: reading.Mapping, faults: Collection[Fault]) -> Sound | None:
    """What of a tree can be taken; None where its parts and beads cannot be told."""
    sections = [tree.entries.get(name) for name in ("parts", "beads")]
    named = [one.node for one in sections if one and isinstance(one.node, reading.Mapping)]
    if len(named) < 2 or any(one.place.file != tree.file for one in faults):
        return None
    at, misnamed = _Faults(faults), {(one.place, one.found) for one in faults}
    changed: dict[str, reading.Node] = {}
    unread, doubtful = set(), set()
    for section, what, must in zip(named, ("part", "bead"), (("kind",), ()), strict=True):
        kept: dict[str, reading.Node] = {}
        for name, entry in section.entries.items():
            if not name.strip() or (entry.key.place, name) in misnamed:
                return None  # what others call it cannot be told
            if at.within(entry.key) or at.within(entry.node):
                doubtful.add(name)
            # a part that stands among the fields of another is there all the same
            unread |= {(what, inner) for inner in entry.node.entries if _is_part(entry.node, inner)}
            whole = at.without(entry.node, must)
            if whole and "from" not in whole.entries:  # what the drawer has of it is not known
                kept[name] = whole
            else:
                unread.add((what, name))
        changed[f"{what}s"] = _mapping(section, kept)
    for name, entry in tree.entries.items():
        if isinstance(entry.node, reading.Sequence) and name in (*_LINES, "run"):
            lines = copy(entry.node)
            lines.items = [
                whole
                for line in entry.node.items
                if (whole := at.without(line, _LINES.get(name))) is not None
            ]
            changed[name] = lines
        elif name not in changed and not at.within(entry.node):
            changed[name] = entry.node
    return Sound(_mapping(tree, changed), frozenset(unread), frozenset(doubtful))


def _is_part(node: reading.Node, inner: str) -> bool:
    return "kind" in node.entries[inner].node.entries


class _Faults:
    """Where the faults are, to be asked whether one is in a node."""

    def __init__(self, faults: Collection[Fault]) -> None:
        self._places = sorted((one.place.line, one.place.column) for one in faults)

    def within(self, node: reading.Node) -> bool:
        """Whether a fault begins in a node."""
        place = node.place
        first = bisect_left(self._places, (place.line, place.column))
        end = place.end_line, place.end_column
        return first < len(self._places) and self._places[first] < end

    def without(self, node: reading.Node, must: Collection[str] | None) -> reading.Node | None:
        """A node without the fields that are wrong; None if it lacks one that it must have.

        With None for `must` it has to be right as a whole.
        """
        if not self.within(node):
            has_all = isinstance(node, reading.Mapping) and {*(must or ())} <= {*node.entries}
            return node if has_all or must is None else None
        if must is None or not isinstance(node, reading.Mapping):
            return None
        kept = {
            name: entry.node
            for name, entry in node.entries.items()
            if not (self.within(entry.key) or self.within(entry.node))
        }
        return _mapping(node, kept) if {*must} <= {*kept} else None


def _mapping(old: reading.Mapping, kept: Mapping[str, reading.Node]) -> reading.Mapping:
    """A group with these entries of it alone."""
    new = copy(old)
    new.entries = {name: reading.Entry(old.entries[name].key, node) for name, node in kept.items()}
    new.value = {name: node.value for name, node in kept.items()}
    return new
