"""A plan as text: each part on one line or over several, with a comment here and there."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import TypeAlias

from generated.choices import Choices, chance, pick

Node: TypeAlias = "str | int | float | Mapping[str, Node] | Sequence[Node]"

#: what can stand without quotes, also within brackets
_BARE = re.compile(r"[A-Za-z0-9½¼¾£][A-Za-z0-9_ ½¼¾./±+'\"°%éèñ()-]*")
#: what YAML or people would take for a number
_NUMBER = re.compile(r"[0-9][0-9._]*")
_WIDEST = 150
_COMMENTS = (
    "as tried at the table", "checked twice", "from the box by the window", "see the sketch",
    "the old ones were too small", "asked for by the wearer",
)  # fmt: skip


def scalar(value: str | int | float) -> str:
    """A value as written, in quotes where it needs them.

    >>> scalar("40 cm ± 1 cm"), scalar("6"), scalar(6), scalar("a: b")
    ('40 cm ± 1 cm', '"6"', '6', '"a: b"')
    """
    if not isinstance(value, str):
        return str(value)
    bare = _BARE.fullmatch(value) and not _NUMBER.fullmatch(value) and not value.endswith(" ")
    if bare:
        return value
    return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'


def flow(node: Node) -> str:
    """A node on one line."""
    if isinstance(node, Mapping):
        return "{" + ", ".join(f"{scalar(key)}: {flow(value)}" for key, value in node.items()) + "}"
    if isinstance(node, str | int | float):
        return scalar(node)
    return "[" + ", ".join(flow(value) for value in node) + "]"


class Layout:
    """Writes the text of one plan."""

    def __init__(self, choices: Choices) -> None:
        self._choices = choices
        self._lines: list[str] = []
        self._talks = chance(choices, 35)
        self._blocks = pick(choices, (20, 5, 60))

    def text(self, plan: Mapping[str, Node]) -> str:
        """The whole plan."""
        if self._talks:
            self._lines.append(f"# {pick(self._choices, _COMMENTS)}")
        for key, node in plan.items():
            if key in ("beads", "parts", "run", "hung", "work", "supplies") and self._talks:
                self._lines.append("")
            self._entry(key, node, 0)
        return "\n".join(self._lines) + "\n"

    def _entry(self, key: str, node: Node, depth: int) -> None:
        indent = "  " * depth
        start = f"{indent}{scalar(key)}:"
        if isinstance(node, Mapping) and self._opened(key, node, depth):
            self._lines.append(start + self._comment())
            for name, value in node.items():
                self._entry(name, value, depth + 1)
        elif self._listed(key, node):
            self._lines.append(start + self._comment())
            assert isinstance(node, Sequence)
            self._lines += [f"{indent}  - {flow(item)}{self._comment()}" for item in node]
        else:
            self._lines.append(f"{start} {flow(node)}{self._comment()}")

    def _opened(self, key: str, node: Mapping[str, Node], depth: int) -> bool:
        if depth == 0 and key in ("beads", "parts"):
            return True
        return depth == 1 and (len(flow(node)) > _WIDEST or chance(self._choices, self._blocks))

    def _listed(self, key: str, node: Node) -> bool:
        if isinstance(node, str | int | float | Mapping):
            return False
        return key in ("hung", "work", "supplies", "accept") or len(flow(node)) > 2 * _WIDEST

    def _comment(self) -> str:
        said = self._talks and chance(self._choices, 6)
        return f"    # {pick(self._choices, _COMMENTS)}" if said else ""
