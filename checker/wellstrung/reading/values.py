"""Values with units, read one by one, and words that other YAML readers take for switches."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from wellstrung.common import money, units
from wellstrung.common.places import Edit, Fault
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch, Path
from wellstrung.reading.faults import fault, in_quotes

#: Who reads a value of each kind that the schemas name in `$comment`.
READERS: Mapping[str, Callable[[str | int | float], object]] = {
    "length": units.length,
    "length_or_rest": lambda value: value if value == units.REST else units.length(value),
    "window": units.target,
    "mass": units.mass,
    "rating": units.force,
    "duration": units.duration,
    "volume": units.volume,
    "temperature": units.temperature,
    "wire": units.wire,
    "bead_size": units.bead_size,
    "needle": units.needle,
    "amount": money.budget,
    "age": units.age,
}

_SWITCHES = frozenset({"yes", "no", "on", "off", "true", "false", "y", "n"})


def values(branch: Branch) -> Iterator[Fault]:
    """Read every value with a unit, and ask for quotes where a word may be taken for a switch."""
    waiting: list[tuple[reading.Node, Mapping[str, Any], Path]] = [(branch.node, branch.schema, ())]
    while waiting:
        node, schema, path = waiting.pop()
        if isinstance(node, reading.Mapping):
            fields, rest = schema.get("properties", {}), schema.get("additionalProperties")
            for word, entry in node.entries.items():
                inner = fields.get(word, rest)
                if isinstance(inner, dict):
                    waiting.append((entry.node, inner, (*path, word)))
        elif isinstance(node, reading.Sequence):
            inner = schema.get("items")
            if isinstance(inner, dict):
                waiting += [(item, inner, (*path, at)) for at, item in enumerate(node.items)]
        elif isinstance(node, reading.Scalar):
            kind = schema.get("$comment", "")
            wrong = unit_fault(kind, node) if kind in READERS else None
            if wrong is not None:
                near = wrong.suggestion
                yield fault(
                    f"{branch.called(path)}: {wrong.says}",
                    node.place,
                    str(node.value),
                    remedy=f"write `{near}`" if near else "",
                    edits=(Edit(node.place, near),) if near else (),
                )
            elif kind in ("text", "name") and not node.quoted and node.text.lower() in _SWITCHES:
                says = f"{branch.called(path)}: `{node.text}` is a switch to some readers"
                yield in_quotes(says, node)


def unit_fault(kind: str, node: reading.Node) -> units.UnitFault | None:
    """What is wrong with a value of that kind; None if nothing is."""
    try:
        READERS[kind](node.value)
    except units.UnitFault as wrong:
        return wrong
    return None
