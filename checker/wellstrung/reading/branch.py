"""Stretches of a plan's tree with the schema that holds for each, and the author's words for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.common.wording import article
from wellstrung.reading import tree as reading

Path = tuple[str | int, ...]


class Branch(Struct, frozen=True):
    """A stretch of the tree with the schema that holds for it and what the author calls it."""

    node: reading.Mapping
    schema: Mapping[str, Any]
    name: str = ""
    kind: str = ""
    key: reading.Scalar | None = None

    def called(self, path: Path) -> str:
        """What the author calls a place in it: `hole` of `eye` of `cap`."""
        if not path:
            name = self.name or "the plan"
            return f"{name} ({article(self.kind)})" if self.kind else name
        steps = list(self._said(path))
        return " of ".join([*reversed(steps), *([self.name] if self.name else [])])

    def _said(self, path: Path) -> Iterator[str]:
        """The author's names for the steps of a path."""
        node: reading.Node | None = self.node
        for step in path:
            if isinstance(step, int):
                yield f"entry {step + 1}"
                items = node.items if isinstance(node, reading.Sequence) else []
                node = items[step] if step < len(items) else None
            else:
                entry = node.entries.get(step) if node is not None else None
                yield f"`{entry.key.text if entry is not None else step}`"
                node = entry.node if entry is not None else None

    def walk(self, path: Path) -> tuple[Place, reading.Node]:
        """What stands at a path, and the place where something missing in it would go."""
        key = self.key
        node: reading.Node = self.node
        for step in path:
            if isinstance(node, reading.Mapping) and isinstance(step, str):
                key, node = node.entries[step].key, node.entries[step].node
            elif isinstance(node, reading.Sequence) and isinstance(step, int):
                key, node = None, node.items[step]
        if key is None and isinstance(node, reading.Mapping) and node.entries:
            key = next(iter(node.entries.values())).key
        return (key or node).place, node
