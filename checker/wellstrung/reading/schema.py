"""Whether a tree has the shape of a plan, and if not, what is wrong in plain words.

A compiled validator decides, branch by branch: the plan, then every part by its `kind`, every step
by its verb. Only if it says no is `jsonschema` imported, to say what and where. Values with units
are read as well, so that a slip in a unit is reported with the rest.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

import jsonschema_rs
from msgspec import Struct, field

import wellstrung_schemas as schemas
from wellstrung.common.places import Fault
from wellstrung.common.wording import one_of
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch
from wellstrung.reading.faults import EVERY_WORD, choose, fault, shown
from wellstrung.reading.values import values

#: fields of a bead that no part has
_BEADS_ALONE = frozenset({"make", "colour", "finish", "per_gram"})


class Known(Struct, frozen=True):
    """The kinds of parts there are, by schema fragment, and the validators built so far."""

    kinds: Mapping[str, Mapping[str, Any]]
    _built: dict[int, Any] = field(default_factory=dict)

    def validator(self, schema: Mapping[str, Any]) -> Any:
        """The compiled validator of a schema, built when first asked for."""
        if id(schema) not in self._built:
            self._built[id(schema)] = jsonschema_rs.Draft202012Validator(dict(schema))
        return self._built[id(schema)]


def check(read: reading.Read, known: Known) -> tuple[Fault, ...]:
    """Every fault of shape, in the author's order; an empty tuple for a well-shaped plan."""
    assert read.tree is not None
    faults: list[Fault] = []
    branches = list(_branches(read.tree, known, faults))
    for branch in branches:
        faults += _faults(branch, known, branches)
    return tuple(sorted(faults, key=lambda fault: fault.place))


def against(tree: reading.Mapping, schema: Mapping[str, Any], name: str) -> tuple[Fault, ...]:
    """Every fault of a tree that has one schema; `name` is what the author calls the whole."""
    return tuple(of_branch(Branch(tree, schema, name), Known({})))


def of_branch(branch: Branch, known: Known) -> list[Fault]:
    """Every fault of a stretch of a tree that has one schema."""
    return _faults(branch, known, [branch])


def _faults(branch: Branch, known: Known, among: Iterable[Branch]) -> list[Fault]:
    """What is wrong in one branch."""
    found = list(values(branch, among))
    if not known.validator(branch.schema).is_valid(branch.node.value):
        from wellstrung.reading.schema_errors import explained

        # should the two validators ever differ, the one that decides is believed
        found = [*explained(branch), *found] or [_unexplained(branch)]
    return found


def _branches(tree: reading.Mapping, known: Known, faults: list[Fault]) -> Iterator[Branch]:
    yield Branch(tree, schemas.plan())
    parts = tree.entries.get("parts")
    if parts and isinstance(parts.node, reading.Mapping):
        for name, entry in parts.node.entries.items():
            if not isinstance(entry.node, reading.Mapping):
                continue  # the plan's own schema says so
            kind = _chosen(entry.node, "kind", "kind of part", known.kinds, faults)
            if kind:
                yield Branch(entry.node, known.kinds[kind], f"`{name}`", kind, entry.key)
            elif "kind" not in entry.node.entries:
                faults.append(_without_kind(name, entry, known))
    work = tree.entries.get("work")
    if work and isinstance(work.node, reading.Sequence):
        for number, item in enumerate(work.node.items, 1):
            if isinstance(item, reading.Mapping):
                verb = _chosen(item, "do", "step", schemas.verbs(), faults)
                if verb:
                    yield Branch(item, schemas.verbs()[verb], f"step {number}")


def _without_kind(name: str, entry: reading.Entry, known: Known) -> Fault:
    """The fault of a part without its kind, which may be a bead."""
    says = f"`{name}` has no `kind`"
    if {*entry.node.entries} & _BEADS_ALONE:
        says = f"{says}: write one, or move it under `beads` if it is a bead"
    return fault(says, entry.key.place, needed=one_of(known.kinds, see=EVERY_WORD))


def _chosen(
    node: reading.Mapping, key: str, what: str, choices: Mapping[str, object], faults: list[Fault]
) -> str | None:
    """The word by which a part or a step chooses its schema; None if it has no such word."""
    entry = node.entries.get(key)
    if entry is None:
        return None
    chosen = entry.node.value
    if isinstance(chosen, str) and chosen in choices:
        return chosen
    word = isinstance(entry.node, reading.Scalar)
    head = f"there is no {what} called" if word else f"`{key}` is"
    faults.append(choose(f"{head} {shown(entry.node)}", entry.node, choices))
    return None


def _unexplained(branch: Branch) -> Fault:
    place, _ = branch.walk(())
    return fault(f"{branch.called(())} does not fit its schema: compare its fields", place)
