"""How much a plan may list: far more than any piece has, and no more than is checked in seconds."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Fault
from wellstrung.reading.tree import Mapping, Node, Sequence

#: entries of one list, and of one group, each of which is judged: our own choice, no source
MOST_LISTED, MOST_NAMED = 10_000, 6_000


def too_many(tree: Node) -> tuple[Fault, ...]:
    """A fault for each list or group of a tree that is longer than any plan needs."""
    return tuple(_long(tree))


def _long(whole: Node) -> Iterator[Fault]:
    waiting = [("plan", whole)]
    while waiting:
        name, node = waiting.pop()
        listed = node.items if isinstance(node, Sequence) else [*node.entries.values()]
        most = MOST_LISTED if isinstance(node, Sequence) else MOST_NAMED
        if len(listed) > most:
            says = f"`{name}` has {len(listed)} entries, more than is checked ({most})"
            yield Fault("plan-shape", f"{says}: write a plan for each piece", node.place)
        elif isinstance(node, Sequence):
            waiting += [(name, item) for item in node.items if isinstance(item, Mapping | Sequence)]
        else:
            waiting += [
                (key, entry.node)
                for key, entry in node.entries.items()
                if isinstance(entry.node, Mapping | Sequence)
            ]
