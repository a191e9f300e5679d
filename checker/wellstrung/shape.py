"""Whether a tree has the shape of a plan; where it has not, what is wrong in plain words.

A compiled validator decides, branch by branch: the plan, then every part by its `kind`, every step
by its verb. Only where it says no is `jsonschema` imported, to say what and where. Values with
units are then read one by one, so that a slip in a unit is told with the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import jsonschema_rs

import wellstrung_schemas as schemas
from wellstrung import reading, units
from wellstrung.place import Edit, Fault, Place
from wellstrung.words import article, listed, nearest

_UNITS: Mapping[str, Callable[[str | int | float], object]] = {
    "length": units.length,
    "window": units.target,
    "mass": units.mass,
    "rating": units.force,
    "duration": units.duration,
    "wire": units.wire,
    "bead_size": units.bead_size,
    "needle": units.needle,
}
_SWITCHES = frozenset({"yes", "no", "on", "off", "true", "false", "y", "n"})


@dataclass(frozen=True)
class Known:
    """The kinds of parts there are, by schema fragment, and the validators built so far."""

    kinds: Mapping[str, Mapping[str, Any]]
    _built: dict[int, Any] = field(default_factory=dict)

    def validator(self, schema: Mapping[str, Any]) -> Any:
        """The compiled validator of a schema, built when first asked for."""
        if id(schema) not in self._built:
            self._built[id(schema)] = jsonschema_rs.Draft202012Validator(dict(schema))
        return self._built[id(schema)]


@dataclass(frozen=True)
class _Branch:
    """A stretch of the tree with the schema that holds for it and what the author calls it."""

    node: reading.Mapping
    schema: Mapping[str, Any]
    name: str
    key: reading.Scalar | None = None

    @property
    def head(self) -> Place:
        """Where something that is missing would be written."""
        if self.key is not None:
            return self.key.place
        first = next(iter(self.node.entries.values()), None)
        return first.key.place if first else self.node.place


def check(read: reading.Read, known: Known) -> tuple[Fault, ...]:
    """Every fault of shape, in the author's order; an empty tuple for a well-shaped plan."""
    assert read.tree is not None
    faults: list[Fault] = []
    for branch in _branches(read.tree, known, faults):
        if not known.validator(branch.schema).is_valid(branch.node.value):
            faults += _explained(branch)
        faults += _units(branch.node, branch.schema, branch.name)
    return tuple(sorted(faults, key=lambda fault: fault.place))


def _branches(tree: reading.Mapping, known: Known, faults: list[Fault]) -> Iterator[_Branch]:
    yield _Branch(tree, schemas.plan(), "the plan")
    parts = tree.entries.get("parts")
    if parts and isinstance(parts.node, reading.Mapping):
        for name, entry in parts.node.entries.items():
            if isinstance(entry.node, reading.Mapping):
                yield from _chosen(entry.node, "kind", known.kinds, f"`{name}`", entry.key, faults)
    work = tree.entries.get("work")
    if work and isinstance(work.node, reading.Sequence):
        for number, item in enumerate(work.node.items, 1):
            if isinstance(item, reading.Mapping) and "do" in item.entries:
                yield from _chosen(item, "do", schemas.verbs(), f"step {number}", None, faults)


def _chosen(
    node: reading.Mapping,
    key: str,
    choices: Mapping[str, Mapping[str, Any]],
    name: str,
    named: reading.Scalar | None,
    faults: list[Fault],
) -> Iterator[_Branch]:
    """The branch that a part's `kind` or a step's `do` chooses."""
    entry = node.entries.get(key)
    words = listed(choices)
    if entry is None:
        place = named.place if named else node.place
        says = f"{name} does not say its `{key}`: write one of {words}"
        faults.append(Fault("plan-shape", says, place, needed=words))
        return
    word = entry.node.value
    if isinstance(word, str) and word in choices:
        yield _Branch(node, choices[word], f"{name} ({article(word)})" if named else name, named)
        return
    what = "kind of part" if key == "kind" else "step"
    faults.append(
        _unknown(f"there is no {what} called `{word}`", str(word), choices, entry.node.place)
    )


def _explained(branch: _Branch) -> list[Fault]:
    """Each independent fault of one branch, said in plain words."""
    from jsonschema import Draft202012Validator

    faults: list[Fault] = []
    for error in Draft202012Validator(branch.schema).iter_errors(branch.node.value):
        faults += _said(branch, error)
    # a misspelt field is not missing as well: one cause, one remark
    meant = {fault.needed for fault in faults if fault.edits}
    return [fault for fault in faults if fault.edits or fault.needed not in meant]


def _said(branch: _Branch, error: Any) -> Iterator[Fault]:
    path = list(error.absolute_path)
    key, node = _walk(branch, path)
    name = _called(branch, path)
    place = node.place
    if "propertyNames" in error.absolute_schema_path and isinstance(node, reading.Mapping):
        yield _bad_name(error.instance, node.entries[error.instance].key.place)
    elif error.validator == "additionalProperties" and isinstance(node, reading.Mapping):
        fields = error.schema.get("properties", {})
        for word, entry in node.entries.items():
            if word not in fields:
                head = f"`{word}` is not a field of {name}"
                yield _unknown(head, word, fields, entry.key.place)
    elif error.validator == "required":
        missing = next(word for word in error.validator_value if word not in error.instance)
        head_place = key.place if key is not None else branch.head
        example = _example(error.schema, missing)
        yield Fault(
            "plan-shape",
            f"{name} lacks `{missing}`: write {example}",
            head_place,
            needed=f"`{missing}`",
        )
    elif error.validator in ("oneOf", "not"):
        yield _one_of(error, name, key.place if key is not None else branch.head, node)
    elif error.validator in ("enum", "const"):
        words = error.validator_value if error.validator == "enum" else [error.validator_value]
        shown = error.instance if not isinstance(error.instance, dict | list) else "a group"
        yield _unknown(
            f"{name} is `{shown}`", str(shown), {str(word): None for word in words}, place
        )
    elif error.validator == "type":
        yield from _type(error, name, node)
    elif error.validator == "pattern" and error.schema.get("$comment") in _UNITS:
        return  # the reader of units says it better
    elif error.validator in ("minimum", "exclusiveMinimum", "maximum"):
        least = _BOUNDS[error.validator]
        yield Fault(
            "plan-shape",
            f"{name} is {error.instance}: write {least}",
            place,
            found=str(error.instance),
            needed=least,
        )
    else:
        yield Fault("plan-shape", f"{name} {_other(error)}", place)


_BOUNDS = {
    "minimum": "1 or more",
    "exclusiveMinimum": "more than 0",
    "maximum": "10000 or less",
}


def _type(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    wanted = error.validator_value
    if error.schema.get("$comment") in _UNITS and isinstance(error.instance, int | float):
        return  # the reader of units says it better
    words = {
        "object": "a group of fields",
        "array": "a list",
        "integer": "a whole number",
        "number": "a number",
        "string": "words",
    }
    need = " or ".join(words[one] for one in ([wanted] if isinstance(wanted, str) else wanted))
    shown = error.instance
    found = (
        "a list"
        if isinstance(shown, list)
        else "a group"
        if isinstance(shown, dict)
        else f"`{shown}`"
    )
    example = error.schema.get("examples", [None])[0]
    advice = f", such as `{example}`" if isinstance(example, str | int) else ""
    if "string" in need and isinstance(shown, int | float):
        advice = f': write "{shown}" in quotes'
    yield Fault(
        "plan-shape",
        f"{name} is {found}, and {need} is needed{advice}",
        node.place,
        found=found,
        needed=need,
    )


def _one_of(error: Any, name: str, place: Place, node: reading.Node) -> Fault:
    groups = error.validator_value
    choices = groups["required"] if isinstance(groups, dict) else [g["required"][0] for g in groups]
    entries = node.entries if isinstance(node, reading.Mapping) else {}
    found = [word for word in choices if word in entries]
    listed = ", ".join(f"`{word}`" for word in choices[:-1]) + f" or `{choices[-1]}`"
    if not found:
        return Fault("plan-shape", f"{name} lacks one of {listed}: write one", place, needed=listed)
    places = [entries[word].key.place for word in found]
    both = " and ".join(f"`{word}`" for word in found)
    return Fault(
        "plan-shape",
        f"{name} has {both}: keep one",
        places[-1],
        found=both,
        needed=f"one of {listed}",
        also=tuple(places[:-1]),
    )


def _bad_name(name: str, place: Place) -> Fault:
    reason = "a name has no point in it" if "." in name else "it is kept for the program"
    return Fault("plan-shape", f"`{name}` cannot be a name: {reason}, choose another", place, name)


def _other(error: Any) -> str:
    if error.validator in ("minItems", "minProperties", "minLength"):
        return "is empty: write something, or take it out"
    if error.validator in ("maxProperties", "maxItems"):
        return f"has too many entries: keep {error.validator_value} at most"
    if error.validator == "pattern":
        return f"is `{error.instance}`: write a name, or a name and a half such as `toggle.a`"
    return f"does not fit: {error.message}"


def _walk(branch: _Branch, path: list[Any]) -> tuple[reading.Scalar | None, reading.Node]:
    key, node = branch.key, branch.node
    found: reading.Node = node
    for step in path:
        if isinstance(found, reading.Mapping):
            entry = found.entries[step]
            key, found = entry.key, entry.node
        elif isinstance(found, reading.Sequence):
            key, found = None, found.items[step]
            if isinstance(found, reading.Mapping) and found.entries:
                key = next(iter(found.entries.values())).key
    return key, found


def _called(branch: _Branch, path: list[Any]) -> str:
    """What the author calls the place: `hole` of `eye` of `cap`."""
    whole = branch.name
    if not path:
        return whole
    words = []
    for before, step in zip([None, *path], path, strict=False):
        words.append(f"line {step + 1} of `{before}`" if isinstance(step, int) else f"`{step}`")
    words = [
        w for w, after in zip(words, [*path[1:], None], strict=True) if not isinstance(after, int)
    ]
    name = " of ".join(reversed(words))
    return (
        name if branch.key is None and whole == "the plan" else f"{name} of {whole.split(' (')[0]}"
    )


def _unknown(head: str, word: str, known: Mapping[str, object], place: Place) -> Fault:
    near = nearest(word, known)
    if near is None:
        return Fault(
            "plan-shape",
            f"{head}: it takes {listed(known)}",
            place,
            found=word,
            needed=listed(known),
        )
    return Fault(
        "plan-shape",
        f"{head}: write `{near}`",
        place,
        found=word,
        needed=f"`{near}`",
        remedy=f"write `{near}`",
        edits=(Edit(place, near),),
    )


def _example(schema: Mapping[str, Any], field: str) -> str:
    field_schema = schema.get("properties", {}).get(field, {})
    example = field_schema.get("const", field_schema.get("examples", ["..."])[0])
    if isinstance(example, str | int):
        return f"`{field}: {example}`"
    return f"`{field}:` with what belongs under it"


def _units(node: reading.Node, schema: Mapping[str, Any], name: str) -> Iterator[Fault]:
    """Read every value with a unit, and ask for quotes where a word may be taken for a switch."""
    if isinstance(node, reading.Mapping):
        fields, rest = schema.get("properties", {}), schema.get("additionalProperties")
        for word, entry in node.entries.items():
            inner = fields.get(word, rest)
            if isinstance(inner, dict):
                yield from _units(entry.node, inner, f"`{word}` of {name.split(' (')[0]}")
    elif isinstance(node, reading.Sequence):
        inner = schema.get("items")
        if isinstance(inner, dict):
            for item in node.items:
                yield from _units(item, inner, name)
    elif isinstance(node, reading.Scalar):
        yield from _scalar(node, schema, name.removesuffix(" of the plan"))


def _scalar(node: reading.Scalar, schema: Mapping[str, Any], name: str) -> Iterator[Fault]:
    kind = schema.get("$comment", "")
    read = _UNITS.get(kind)
    if read is not None:
        try:
            read(node.value)
        except units.UnitFault as fault:
            edits = (Edit(node.place, fault.suggestion),) if fault.suggestion else ()
            remedy = f"write `{fault.suggestion}`" if fault.suggestion else ""
            yield Fault(
                "plan-shape",
                f"{name}: {fault.says}",
                node.place,
                str(node.value),
                remedy=remedy,
                edits=edits,
            )
    elif kind in ("text", "name") and not node.quoted and str(node.value).lower() in _SWITCHES:
        says = f'{name}: `{node.text}` is a switch to some readers: write "{node.text}" in quotes'
        yield Fault(
            "plan-shape",
            says,
            node.place,
            node.text,
            f'"{node.text}"',
            edits=(Edit(node.place, f'"{node.text}"'),),
        )
