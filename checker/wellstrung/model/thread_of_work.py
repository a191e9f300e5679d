"""The thread of legs that name none: that of the work they hang from, by a line of `hung`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.model.item import node_at
from wellstrung.model.parts import Kind, Role
from wellstrung.reading import tree as reading


def with_thread_of_work(
    tree: reading.Mapping, kinds: Mapping[str, Kind]
) -> Mapping[str, reading.Mapping]:
    """The parts of a tree; legs that hang by a thread they do not name have that of the work."""
    parts = node_at(tree, "parts")
    found = {
        name: entry.node
        for name, entry in (parts.entries.items() if parts is not None else ())
        if isinstance(entry.node, reading.Mapping)
    }
    for name, source in _hung_by_thread(tree):
        leg, work = found.get(name), found.get(source)
        if leg is None or work is None or kinds[leg.value["kind"]].role is not Role.DROP:
            continue
        if "thread" in work.entries and "thread" not in leg.entries:
            found[name] = reading.with_more(leg, {"thread": work.entries["thread"].node})
    return found


def _hung_by_thread(tree: reading.Mapping) -> Iterator[tuple[str, str]]:
    """What hangs by thread, each with what it hangs from."""
    lines = node_at(tree, "hung")
    for line in lines.items if isinstance(lines, reading.Sequence) else ():
        source = node_at(line, "from", "part") or node_at(line, "from")
        part, by = node_at(line, "part"), node_at(line, "by")
        if part is not None and source is not None and by is not None and by.value == "thread":
            yield str(part.value), str(source.value)
